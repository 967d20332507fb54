#include "models/tables/statistics_rows.hpp"

#include <set>

#include "plan/limited_quantities.hpp"

namespace seamtakt::desk {

namespace {

class StatisticsTable : public QObject {
  Q_OBJECT
};

/// What the audit found of this row.
std::optional<Severity> statistics_severity(const QuantityStatistics& of, const AuditResult& audit) {
  for (const Finding& finding : audit.findings)
    if (finding.rule == "statistics.capability.low" &&
        finding.where == "schedule " + of.schedule + "/" + of.robot && of.capability &&
        finding.value == of.capability->Ppk_low_95)
      return finding.severity;
  return of.chart_signals.empty() ? std::nullopt : std::optional(Severity::note);
}

QString signals_text(const QuantityStatistics& of) {
  std::set<RunsRule> rules;
  for (const RunsSignal& signal : of.chart_signals) rules.insert(signal.rule);
  QStringList words;
  for (const RunsRule rule : rules) words << runs_rule_word(rule);
  return words.join(QStringLiteral(", "));
}

}  // namespace

QString quantity_word(std::string_view quantity) {
  const LimitedQuantity* known = limited_quantity(quantity);
  return core_text(known ? known->word : quantity);
}

QString runs_rule_word(RunsRule rule) {
  switch (rule) {
    case RunsRule::beyond_3_sigma:
      return StatisticsTable::tr("one beyond 3 σ");
    case RunsRule::two_of_three:
      return StatisticsTable::tr("two of three beyond 2 σ");
    case RunsRule::four_of_five:
      return StatisticsTable::tr("four of five beyond 1 σ");
    case RunsRule::eight_in_a_row:
      return StatisticsTable::tr("eight in a row on one side");
  }
  return {};
}

std::optional<Interval> limits_of(const Schedule* schedule, std::string_view quantity) {
  const LimitedQuantity* known = limited_quantity(quantity);
  if (!known || !schedule || !schedule->limits) return std::nullopt;
  return (*schedule->limits).*known->limit;
}

std::vector<GridColumn> statistics_columns() {
  return {
      text_column(
          "mark", StatisticsTable::tr("State"),
          StatisticsTable::tr("warning: Ppk is low; note: the chart shows a pattern that chance rarely "
                              "makes")),
      text_column("schedule", StatisticsTable::tr("Schedule")),
      text_column("robot", core_label("robot")),
      text_column("quantity", StatisticsTable::tr("Quantity")),
      number_column("values", StatisticsTable::tr("Passes")),
      number_column("mean", StatisticsTable::tr("Mean")),
      number_column("Ppk", StatisticsTable::tr("Ppk"),
                    StatisticsTable::tr("Performance: distance to the nearer limit in units of three overall "
                                        "standard deviations")),
      number_column("Ppk_low", StatisticsTable::tr("Ppk, at least"),
                    StatisticsTable::tr("95 % lower bound of Ppk for so few passes")),
      number_column("Cpk", StatisticsTable::tr("Cpk"),
                    StatisticsTable::tr("Capability: the same with the sigma of the moving ranges")),
      number_column("Pp", StatisticsTable::tr("Pp")),
      number_column("Cp", StatisticsTable::tr("Cp")),
      number_column("lower", StatisticsTable::tr("Lower control limit"),
                    StatisticsTable::tr("Mean less three times the sigma of the moving ranges")),
      number_column("upper", StatisticsTable::tr("Upper control limit"),
                    StatisticsTable::tr("Mean and three times the sigma of the moving ranges")),
      text_column("signals", StatisticsTable::tr("Patterns"),
                  StatisticsTable::tr("Runs rules that the chart completes"))};
}

std::vector<ValueModel::Row> statistics_rows(const AuditResult& audit) {
  std::vector<ValueModel::Row> rows;
  for (const QuantityStatistics& of : audit.statistics.quantities) {
    const Capability can = of.capability.value_or(Capability{});
    ValueModel::Row row;
    row.severity = statistics_severity(of, audit);
    row.cells = {text_cell(severity_word(row.severity)),
                 text_cell(QString::fromStdString(of.schedule)),
                 text_cell(QString::fromStdString(of.robot)),
                 text_cell(quantity_word(of.quantity)),
                 number_cell(static_cast<double>(of.values.size()), 9),
                 quantity_cell(of.chart.centre, of.unit),
                 number_cell(can.Ppk, 3),
                 number_cell(can.Ppk_low_95, 3),
                 number_cell(can.Cpk, 3),
                 number_cell(can.Pp, 3),
                 number_cell(can.Cp, 3),
                 quantity_cell(of.chart.lower, of.unit),
                 quantity_cell(of.chart.upper, of.unit),
                 text_cell(signals_text(of))};
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace seamtakt::desk

#include "statistics_rows.moc"
