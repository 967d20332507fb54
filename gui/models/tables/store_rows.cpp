#include "models/tables/store_rows.hpp"

#include <QCoreApplication>

#include "document/shown_text.hpp"
#include "models/words/cause_word.hpp"
#include "models/words/place_text.hpp"

namespace seamtakt::desk {

namespace {

class StoreTable : public QObject {
  Q_OBJECT
};

ValueModel::Cell count_cell(std::size_t count) {
  return {{}, static_cast<double>(count), 9, {}, {}};
}

/// Nonconformances and causes of undecided passes; the latter named in the tip.
ValueModel::Cell kept_items_cell(const UnitStatus& unit) {
  ValueModel::Cell cell = count_cell(unit.open_items());
  QStringList tips;
  for (const OpenCause& each : unit.open_causes)
    tips << QStringLiteral("%1 × %2").arg(each.records.size()).arg(cause_word(each.cause));
  cell.tip = tips.join(QStringLiteral("; "));
  return cell;
}

QString places_text(const std::vector<std::string>& passes) {
  QStringList names;
  for (const std::string& pass : passes) names << place_text(pass);
  return names.join(QStringLiteral(", "));
}

std::optional<Severity> kept_unit_severity(const UnitStatus& unit) {
  if (unit.complete == true) return std::nullopt;
  return unit.scrapped || unit.open_nonconformances() > 0 ? Severity::fail : Severity::warn;
}

QString kept_unit_state(const UnitStatus& unit) {
  if (unit.scrapped) return StoreTable::tr("scrapped");
  if (!unit.complete) return StoreTable::tr("not known");
  return *unit.complete ? StoreTable::tr("complete") : StoreTable::tr("incomplete");
}

}  // namespace

std::vector<GridColumn> store_unit_columns() {
  return {
      text_column("mark", StoreTable::tr("State"),
                  StoreTable::tr("complete: all passes there, nothing open, none to be welded again; not "
                                 "known: no plan said what the unit needs")),
      text_column("unit", StoreTable::tr("Unit")),
      text_column("weldment", StoreTable::tr("Weldment")),
      number_column("passes", StoreTable::tr("Passes")),
      number_column("failed", StoreTable::tr("Failed")),
      number_column("undecided", StoreTable::tr("Undecided")),
      number_column("manual", StoreTable::tr("By hand")),
      number_column("open", StoreTable::tr("Open"),
                    StoreTable::tr("Nonconformances without an end, and causes that left passes undecided")),
      text_column("missing", StoreTable::tr("Missing passes"))};
}

std::vector<ValueModel::Row> store_unit_rows(const std::vector<UnitStatus>& units) {
  std::vector<ValueModel::Row> rows;
  for (const UnitStatus& unit : units) {
    ValueModel::Row row;
    row.severity = kept_unit_severity(unit);
    row.cells = {text_cell(kept_unit_state(unit)),
                 text_cell(QString::fromStdString(unit.unit_serial)),
                 text_cell(QString::fromStdString(unit.weldment)),
                 count_cell(unit.passes.size()),
                 count_cell(unit.failed),
                 count_cell(unit.undecided),
                 count_cell(unit.manual.size()),
                 kept_items_cell(unit),
                 text_cell(places_text(unit.missing))};
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<GridColumn> problem_columns() {
  return {text_column("mark", StoreTable::tr("State")), text_column("record", StoreTable::tr("Record")),
          text_column("text", StoreTable::tr("What isn't as it was written"))};
}

std::vector<ValueModel::Row> problem_rows(const VerifyReport& report) {
  std::vector<ValueModel::Row> rows;
  const auto add = [&](Severity severity, const QString& record, const Sentence& sentence) {
    ValueModel::Row row;
    row.severity = severity;
    row.cells = {text_cell(severity_word(severity)), text_cell(record), text_cell(shown_text(sentence))};
    rows.push_back(std::move(row));
  };
  for (const LedgerProblem& problem : report.problems)
    add(Severity::fail,
        problem.seq == 0                  ? QString()
        : problem.last_seq <= problem.seq ? QString::number(problem.seq)
                                          : StoreTable::tr("%1 to %2").arg(problem.seq).arg(problem.last_seq),
        problem.sentence);
  for (const Sentence& warning : report.warnings) add(Severity::note, {}, warning);
  return rows;
}

}  // namespace seamtakt::desk

#include "store_rows.moc"
