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

std::optional<Severity> browsed_severity(const BrowsedRecord& record) {
  if (record.is_void) return Severity::note;
  if (record.verdict == "fail") return Severity::fail;
  if (record.verdict == "undecided") return Severity::warn;
  return record.verdict.empty() ? std::optional(Severity::note) : std::nullopt;
}

QString browsed_state(const BrowsedRecord& record) {
  if (record.is_void) return BrowsedTable::tr("void");
  for (const Verdict verdict : {Verdict::pass, Verdict::fail, Verdict::undecided})
    if (record.verdict == to_string(verdict)) return verdict_word(verdict);
  return record.verdict.empty() ? verdict_word(std::nullopt) : QString::fromStdString(record.verdict);
}

}  // namespace

std::vector<GridColumn> browsed_columns() {
  return {text_column("mark", BrowsedTable::tr("Verdict")),
          number_column("record", BrowsedTable::tr("Record")),
          text_column("unit", BrowsedTable::tr("Unit")),
          text_column("weldment", BrowsedTable::tr("Weldment")),
          text_column("seam", BrowsedTable::tr("Seam")),
          number_column("pass", BrowsedTable::tr("Pass")),
          text_column("schedule", BrowsedTable::tr("Schedule")),
          text_column("robot", BrowsedTable::tr("Robot")),
          text_column("welder", BrowsedTable::tr("Welder")),
          text_column("lot", BrowsedTable::tr("Lot")),
          text_column("time", BrowsedTable::tr("Welded (UTC)")),
          number_column("heat_input_kJ_mm", BrowsedTable::tr("Heat input"), {}, "kJ/mm")};
}

std::vector<ValueModel::Row> browsed_rows(const std::vector<BrowsedRecord>& records) {
  std::vector<ValueModel::Row> rows;
  for (const BrowsedRecord& record : records) {
    ValueModel::Row row;
    row.severity = browsed_severity(record);
    const auto pass = record.pass ? std::optional<double>(*record.pass) : std::nullopt;
    row.cells = {text_cell(browsed_state(record)), number_cell(static_cast<double>(record.seq), 15),
                 name_cell(record.unit_serial),    name_cell(record.weldment),
                 name_cell(record.seam),           number_cell(pass, 9),
                 name_cell(record.schedule),       name_cell(record.robot),
                 name_cell(record.welder),         name_cell(record.lot),
                 name_cell(record.time),           number_cell(record.heat_input_kJ_mm, 4)};
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
