#include "models/tables/browsed_rows.hpp"

#include <QCoreApplication>

#include "models/tables/record_rows.hpp"

namespace seamtakt::desk {

namespace {

class BrowsedTable : public QObject {
  Q_OBJECT
};

ValueModel::Cell name_cell(const std::string& name) {
  return text_cell(QString::fromStdString(name));
}
GridColumn column(const char* key, const QString& label, const char* unit = "", bool is_number = false) {
  return {key, label, unit, {}, is_number, true, nullptr};
}

std::optional<Severity> severity_of(const BrowsedRecord& record) {
  if (record.is_void) return Severity::note;
  if (record.verdict == "fail") return Severity::fail;
  if (record.verdict == "undecided") return Severity::warn;
  return record.verdict.empty() ? std::optional(Severity::note) : std::nullopt;
}

QString state_of(const BrowsedRecord& record) {
  if (record.is_void) return BrowsedTable::tr("void");
  for (const Verdict verdict : {Verdict::pass, Verdict::fail, Verdict::undecided})
    if (record.verdict == to_string(verdict)) return verdict_word(verdict);
  return record.verdict.empty() ? verdict_word(std::nullopt) : QString::fromStdString(record.verdict);
}

}  // namespace

std::vector<GridColumn> browsed_columns() {
  return {column("mark", BrowsedTable::tr("Verdict")),
          column("record", BrowsedTable::tr("Record"), "", true),
          column("unit", BrowsedTable::tr("Unit")),
          column("weldment", BrowsedTable::tr("Weldment")),
          column("seam", BrowsedTable::tr("Seam")),
          column("pass", BrowsedTable::tr("Pass"), "", true),
          column("schedule", BrowsedTable::tr("Schedule")),
          column("robot", BrowsedTable::tr("Robot")),
          column("welder", BrowsedTable::tr("Welder")),
          column("lot", BrowsedTable::tr("Lot")),
          column("time", BrowsedTable::tr("Welded (UTC)")),
          column("heat_input_kJ_mm", BrowsedTable::tr("Heat input"), "kJ/mm", true)};
}

std::vector<ValueModel::Row> browsed_rows(const std::vector<BrowsedRecord>& records) {
  std::vector<ValueModel::Row> rows;
  for (const BrowsedRecord& record : records) {
    ValueModel::Row row;
    row.severity = severity_of(record);
    const auto pass = record.pass ? std::optional<double>(*record.pass) : std::nullopt;
    row.cells = {{state_of(record), std::nullopt, 0, {}, {}},
                 number_cell(static_cast<double>(record.seq), 15),
                 name_cell(record.unit_serial),
                 name_cell(record.weldment),
                 name_cell(record.seam),
                 number_cell(pass, 9),
                 name_cell(record.schedule),
                 name_cell(record.robot),
                 name_cell(record.welder),
                 name_cell(record.lot),
                 name_cell(record.time),
                 number_cell(record.heat_input_kJ_mm, 4)};
    rows.push_back(std::move(row));
  }
  return rows;
}

QString browsed_text(const BrowsedRecord& record) {
  const QString seam = QString::fromStdString(record.weldment + "/" + record.seam);
  const QString pass = record.pass ? BrowsedTable::tr(", pass %1").arg(*record.pass) : QString();
  return BrowsedTable::tr("Record %1: unit %2, seam %3")
             .arg(QString::number(record.seq), QString::fromStdString(record.unit_serial), seam) +
         pass;
}

}  // namespace seamtakt::desk

#include "browsed_rows.moc"
