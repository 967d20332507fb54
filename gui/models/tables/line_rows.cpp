#include "models/tables/line_rows.hpp"

#include <QCoreApplication>

#include "base/units/units.hpp"
#include "document/shown_text.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

class LineTable : public QObject {
  Q_OBJECT
};

constexpr std::size_t most_cures = 12;

/// A unit's time: on the clock where there is one ("2026-11-25 06:00"), else since the start.
QString time_text(const std::string& clock, double elapsed_s) {
  if (clock.empty()) return minutes_text(elapsed_s);
  constexpr qsizetype to_the_minute = 16;
  return QString::fromStdString(clock).left(to_the_minute).replace(QLatin1Char('T'), QLatin1Char(' '));
}

/// What there is to say of a unit that was run.
QString remark_of(const UnitResult& unit) {
  QStringList remarks;
  if (unit.late_s)
    remarks << LineTable::tr("%1 h after it was due").arg(UnitView::shared().rounded(*unit.late_s / 3600, 3));
  else if (unit.late_pct.value_or(0) > 0)
    remarks << LineTable::tr("after it was due in %1 % of the runs")
                   .arg(UnitView::shared().rounded(*unit.late_pct, 2));
  if (unit.wanted_s) remarks << LineTable::tr("missed takt: %1").arg(shown_text(unit.cause));
  if (unit.reworks > 0) remarks << LineTable::tr("reworked");
  return remarks.join(QStringLiteral("; "));
}

QString line_unit_state(const UnitResult& unit) {
  if (unit.scrapped) return LineTable::tr("scrap");
  if (unit.late_s) return LineTable::tr("overdue");
  return unit.wanted_s ? LineTable::tr("late") : LineTable::tr("in takt");
}

/// "2 P7 are missing (none there); its ..." piece by piece.
QString waits_for(const WaitingUnit& unit) {
  return shown_text(unit.sentence);
}

}  // namespace

std::vector<GridColumn> stage_columns() {
  std::vector<GridColumn> columns;
  for (const FieldInfo& field : fields_of<Stage>().fields)
    columns.push_back({std::string(field.key), core_label(field.label), field.unit, core_text(field.help),
                       field.kind != FieldKind::text, true, nullptr});
  return columns;
}

std::vector<ValueModel::Row> stage_rows(const Line& line) {
  std::vector<ValueModel::Row> rows;
  for (const Stage& stage : line.stages) {
    ValueModel::Row row;
    for (const FieldInfo& field : fields_of<Stage>().fields)
      row.cells.push_back(text_cell(UnitView::shared().fieldShown(field.text(stage), field)));
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<GridColumn> line_unit_columns() {
  return {text_column("mark", LineTable::tr("State")),        text_column("unit", LineTable::tr("Unit")),
          text_column("weldment", LineTable::tr("Weldment")), text_column("due", LineTable::tr("Due")),
          text_column("start", LineTable::tr("In")),          text_column("end", LineTable::tr("Out")),
          text_column("cause", LineTable::tr("Remark"))};
}

std::vector<ValueModel::Row> line_unit_rows(const LineResult& line) {
  std::vector<ValueModel::Row> rows;
  for (const UnitResult& unit : line.units) {
    ValueModel::Row row;
    if (unit.scrapped || unit.late_s)
      row.severity = Severity::fail;
    else if (unit.wanted_s)
      row.severity = Severity::warn;
    row.cells = {text_cell(line_unit_state(unit)),
                 text_cell(QString::fromStdString(unit.serial)),
                 text_cell(QString::fromStdString(unit.weldment)),
                 text_cell(QString::fromStdString(unit.due)),
                 text_cell(time_text(unit.start_clock, unit.start_s)),
                 text_cell(time_text(unit.end_clock, unit.end_s)),
                 text_cell(remark_of(unit))};
    rows.push_back(std::move(row));
  }
  for (const WaitingUnit& unit : line.waiting) {
    ValueModel::Row row;
    const bool unwelded = unit.unwelded_seams > 0;
    row.severity = unwelded ? Severity::fail : Severity::warn;
    const QString instead =
        unit.released_instead.empty()
            ? QString()
            : LineTable::tr("; released instead: %1").arg(QString::fromStdString(unit.released_instead));
    row.cells = {text_cell(unwelded ? LineTable::tr("not run") : LineTable::tr("waits")),
                 text_cell(QString::fromStdString(unit.order.serial)),
                 text_cell(QString::fromStdString(unit.order.weldment)),
                 text_cell(QString::fromStdString(unit.order.due)),
                 text_cell({}),
                 text_cell({}),
                 text_cell(waits_for(unit) + instead)};
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<GridColumn> cure_columns() {
  return {text_column("stage", LineTable::tr("Stage")), text_column("change", LineTable::tr("What if")),
          number_column("units_per_h", LineTable::tr("Units/h more"),
                        LineTable::tr("Change of throughput, mean of the runs")),
          number_column("se", LineTable::tr("± (1 SE)"),
                        LineTable::tr("Standard error of the change: both lines meet the same luck")),
          number_column("misses", LineTable::tr("Takt misses"),
                        LineTable::tr("Change of takt misses, mean of the runs"))};
}

std::vector<ValueModel::Row> cure_rows(const LineResult& line) {
  std::vector<ValueModel::Row> rows;
  for (const Improvement& cure : line.cures) {
    if (rows.size() == most_cures) break;
    ValueModel::Row row;
    row.cells = {text_cell(QString::fromStdString(cure.stage)), text_cell(shown_text(cure.change)),
                 number_cell(cure.throughput_change_per_h, 3),
                 number_cell(cure.throughput_change_se_per_h, 2), number_cell(cure.takt_misses_change, 3)};
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace seamtakt::desk

#include "line_rows.moc"
