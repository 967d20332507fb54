#include "models/tables/record_rows.hpp"

#include <QCoreApplication>

#include "document/shown_text.hpp"
#include "models/words/cause_word.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt::desk {

namespace {

class RecordTable : public QObject {
  Q_OBJECT
};

QString yes_no(const std::optional<bool>& truth) {
  return !truth ? QStringLiteral("–") : *truth ? RecordTable::tr("yes") : RecordTable::tr("no");
}

QString passes_text(const std::vector<PassRef>& passes) {
  QStringList names;
  for (const PassRef& pass : passes)
    names << QString::fromStdString(pass.seam) +
                 (pass.pass ? QStringLiteral("/%1").arg(*pass.pass) : QString());
  return names.join(QStringLiteral(", "));
}

/// What of a record is shown, in this order; the verdict is the row's mark.
std::vector<const Column<PassRecord>*> shown_columns() {
  std::vector<const Column<PassRecord>*> columns;
  for (const char* key : {"seam", "pass", "schedule", "heat_input_kJ_mm", "U_heat_input_kJ_mm",
                          "mean_current_A", "mean_voltage_V", "travel_speed_mm_s", "arc_time_s", "length_mm",
                          "arc_starts", "cooling_time_s", "energy_method"})
    columns.push_back(find_column(seamtakt::record_columns(), key));
  return columns;
}

/// "12 × instrument overdue; 1 × too short"; the sentences and the passes as a tip.
ValueModel::Cell audited_items_cell(const std::vector<OpenItem>& items) {
  QStringList causes, tips;
  for (const OpenItem& item : items) {
    causes << QStringLiteral("%1 × %2").arg(item.passes.size()).arg(cause_word(item.cause));
    tips << shown_text(item.sentence) + QStringLiteral(" (") + passes_text(item.passes) + QStringLiteral(")");
  }
  return {causes.join(QStringLiteral("; ")), std::nullopt, 0, {}, tips.join(QLatin1Char('\n'))};
}

/// Passes of a unit counted by verdict.
struct Counts {
  int passes = 0, fail = 0, undecided = 0;
};

Counts counts_of(const AuditResult& audit, const std::string& unit) {
  Counts counts;
  for (const PassRecord& record : audit.passes) {
    if (record.unit_serial != unit) continue;
    ++counts.passes;
    counts.fail += record.verdict == Verdict::fail;
    counts.undecided += record.verdict == Verdict::undecided;
  }
  return counts;
}

}  // namespace

QString verdict_word(const std::optional<Verdict>& verdict) {
  if (!verdict) return RecordTable::tr("not judged");
  switch (*verdict) {
    case Verdict::pass:
      return RecordTable::tr("pass");
    case Verdict::fail:
      return RecordTable::tr("fail");
    case Verdict::undecided:
      return RecordTable::tr("undecided");
  }
  return {};
}

std::optional<Severity> verdict_severity(const std::optional<Verdict>& verdict) {
  if (!verdict) return Severity::note;
  if (*verdict == Verdict::fail) return Severity::fail;
  if (*verdict == Verdict::undecided) return Severity::warn;
  return std::nullopt;
}

std::vector<GridColumn> unit_columns() {
  return {
      text_column("mark", RecordTable::tr("State")),
      text_column("unit", RecordTable::tr("Unit")),
      text_column("weldment", RecordTable::tr("Weldment")),
      text_column("complete", RecordTable::tr("Complete"),
                  RecordTable::tr("All robot and manual passes there, each of them with verdict pass")),
      number_column("passes", RecordTable::tr("Passes")),
      number_column("fail", RecordTable::tr("Failed")),
      number_column("undecided", RecordTable::tr("Undecided")),
      text_column("open", RecordTable::tr("Open items"),
                  RecordTable::tr("What was welded and keeps the unit incomplete, with the number of passes "
                                  "by cause")),
      text_column("missing", RecordTable::tr("Missing passes"))};
}

std::vector<ValueModel::Row> unit_rows(const AuditResult& audit) {
  std::vector<ValueModel::Row> rows;
  for (const UnitRecord& unit : audit.units) {
    const Counts counts = counts_of(audit, unit.unit_serial);
    ValueModel::Row row;
    row.severity = counts.fail             ? std::optional(Severity::fail)
                   : unit.complete == true ? std::nullopt
                                           : std::optional(Severity::warn);
    const QString state = counts.fail             ? RecordTable::tr("fail")
                          : unit.complete == true ? RecordTable::tr("complete")
                                                  : RecordTable::tr("open");
    row.cells = {text_cell(state),
                 text_cell(QString::fromStdString(unit.unit_serial)),
                 text_cell(QString::fromStdString(unit.weldment)),
                 text_cell(yes_no(unit.complete)),
                 number_cell(counts.passes, 9),
                 number_cell(counts.fail, 9),
                 number_cell(counts.undecided, 9),
                 audited_items_cell(unit.open_items),
                 text_cell(passes_text(unit.missing_passes))};
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<GridColumn> record_columns() {
  std::vector<GridColumn> columns = {text_column("mark", RecordTable::tr("Verdict"))};
  for (const auto* column : shown_columns())
    columns.push_back({column->key, core_label(column->label), column->unit, core_text(column->help),
                       column->digits > 0, true, nullptr});
  return columns;
}

ValueModel::Row record_row(const PassRecord& record) {
  ValueModel::Row row;
  row.severity = verdict_severity(record.verdict);
  row.cells = {text_cell(verdict_word(record.verdict))};
  for (const auto* column : shown_columns()) {
    const ColumnValue value = column->value(record);
    row.cells.push_back(column->digits > 0
                            ? number_cell(column_number(value), column->digits)
                            : text_cell(UnitView::shared().columnText(value, column->unit, column->digits)));
  }
  return row;
}

}  // namespace seamtakt::desk

#include "record_rows.moc"
