#include "exchange/sheets/sheet.hpp"

#include "exchange/report/caution.hpp"
#include "exchange/report/schedule_sheet.hpp"
#include "exchange/sheets/column_text.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

namespace {

template <class Row>
bool has_pair(const Column<Row>& column, const std::vector<Row>& rows) {
  for (const Row& row : rows)
    if (std::holds_alternative<std::array<double, 2>>(column.value(row))) return true;
  return false;
}

SheetCell cell_of(const ColumnValue& value) {
  if (const auto number = column_number(value)) return *number;
  if (const auto* text = std::get_if<std::string_view>(&value)) return std::string(*text);
  if (const bool* truth = std::get_if<bool>(&value)) return std::string(*truth ? "yes" : "no");
  return {};
}

void append_pair(std::vector<SheetCell>& cells, const ColumnValue& value) {
  const auto* pair = std::get_if<std::array<double, 2>>(&value);
  cells.push_back(pair ? SheetCell((*pair)[0]) : SheetCell());
  cells.push_back(pair ? SheetCell((*pair)[1]) : SheetCell());
}

template <class Row>
Sheet column_sheet(const char* name, std::span<const Column<Row>> columns, const std::vector<Row>& rows) {
  Sheet sheet{name, {}, {}};
  std::vector<bool> pairs;
  for (const auto& column : columns) {
    pairs.push_back(has_pair(column, rows));
    const std::string key = column.key, heading = column_heading(column.label, column.unit);
    if (pairs.back()) {
      sheet.columns.push_back({key + "_lo", heading + " (low)"});
      sheet.columns.push_back({key + "_hi", heading + " (high)"});
    } else {
      sheet.columns.push_back({key, heading});
    }
  }
  for (const Row& row : rows) {
    std::vector<SheetCell> cells;
    for (std::size_t i = 0; i < columns.size(); ++i) {
      if (pairs[i])
        append_pair(cells, columns[i].value(row));
      else
        cells.push_back(cell_of(columns[i].value(row)));
    }
    sheet.rows.push_back(std::move(cells));
  }
  return sheet;
}

SheetCell cell_of(const std::optional<double>& value) {
  return value ? SheetCell(*value) : SheetCell();
}

Sheet cycle_sheet(const std::vector<CycleResult>& cycles) {
  Sheet sheet{"cycle",
              {{"weldment", "Weldment"},
               {"cycle_time_s", "Cycle time, s"},
               {"takt_s", "Takt to plan to, s"},
               {"takt_margin_s", "Margin, s"},
               {"lower_bound_s", "Proven lower bound, s"},
               {"gap_pct", "Gap, %"},
               {"weld_s", "Robots at work, s"},
               {"arc_on_s", "Arc on, s"},
               {"arc_on_ratio", "Arc-on ratio"},
               {"air_s", "Air moves, s"},
               {"sense_s", "Sensing, s"},
               {"start_end_s", "Starts and ends, s"},
               {"wait_s", "Waits, s"},
               {"orientation_s", "Positioner, s"},
               {"service_s", "Torch service, s"},
               {"wire_change_s", "Wire changes, s"},
               {"load_unload_s", "Load and unload, s"},
               {"robot_seams", "Robot seams"},
               {"unwelded_seams", "Unwelded of them"}},
              {}};
  for (const CycleResult& cycle : cycles)
    sheet.rows.push_back({cycle.weldment, cycle.cycle_time_s, cell_of(cycle.takt_s),
                          cell_of(cycle.takt_margin_s), cell_of(cycle.lower_bound_s), cell_of(cycle.gap_pct),
                          cycle.weld_s, cycle.arc_on_s, cycle.arc_on_ratio, cycle.air_s, cycle.sense_s,
                          cycle.start_end_s, cycle.wait_s, cycle.orientation_s, cycle.service_s,
                          cycle.wire_change_s, cycle.load_unload_s, static_cast<double>(cycle.robot_seams),
                          static_cast<double>(cycle.unwelded.size())});
  return sheet;
}

void append_findings(Sheet& sheet, const Findings& findings) {
  for (const Finding& finding : findings)
    sheet.rows.push_back({to_string(finding.severity), finding.where, finding.rule, cell_of(finding.value),
                          cell_of(finding.limit), finding.unit, finding.text, finding.source});
}

Sheet findings_sheet(const Evaluation& evaluation, const std::vector<CycleResult>& cycles) {
  Sheet sheet{"findings",
              {{"severity", "Severity"},
               {"where", "Where"},
               {"rule", "Rule"},
               {"value", "Value"},
               {"limit", "Limit"},
               {"unit", "Unit"},
               {"text", "Finding"},
               {"source", "Source"}},
              {}};
  append_findings(sheet, evaluation.findings);
  for (const CycleResult& cycle : cycles) append_findings(sheet, cycle.findings);
  return sheet;
}

Sheet schedules_sheet(const Plan& plan) {
  const PlanIndex index(plan);
  Sheet sheet{"schedules", {{"schedule", "Schedule"}, {"item", "Item"}, {"value", "Value"}}, {}};
  for (const Schedule& schedule : plan.schedules)
    for (const auto& [item, value] : schedule_sheet(schedule, index))
      sheet.rows.push_back({schedule.id, item, value});
  return sheet;
}

Sheet about_sheet(const Plan& plan, const Provenance& provenance) {
  Sheet sheet{"about", {{"item", "Item"}, {"value", "Value"}}, {}};
  sheet.rows = {{"Title", plan.title},
                {"Caution", caution_text()},
                {"Program", "seamtakt " + provenance.program_version},
                {"Plan", provenance.plan_file},
                {"Plan SHA-256", provenance.plan_sha256},
                {"Reference tables SHA-256", provenance.catalogue_sha256},
                {"Made at", provenance.made_at_utc}};
  return sheet;
}

}  // namespace

std::vector<Sheet> report_sheets(const Plan& plan, const Evaluation& evaluation,
                                 const std::vector<CycleResult>& cycles, const Provenance& provenance) {
  std::vector<Sheet> sheets;
  sheets.push_back(column_sheet("passes", pass_columns(), evaluation.passes));
  sheets.push_back(column_sheet("seams", seam_columns(), evaluation.seams));
  sheets.push_back(column_sheet("weldments", weldment_columns(), evaluation.weldments));
  sheets.push_back(cycle_sheet(cycles));
  sheets.push_back(findings_sheet(evaluation, cycles));
  sheets.push_back(schedules_sheet(plan));
  sheets.push_back(about_sheet(plan, provenance));
  return sheets;
}

}  // namespace seamtakt
