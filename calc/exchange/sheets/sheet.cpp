#include "exchange/sheets/sheet.hpp"

#include "cell/timeline/cycle_columns.hpp"
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
Sheet column_sheet(const char* name, std::span<const Column<Row>> described, const std::vector<Row>& rows,
                   std::span<const std::string_view> first = {}) {
  const auto columns = ordered_columns(described, first, Shown::all);
  Sheet sheet{name, {}, {}};
  std::vector<bool> pairs;
  for (const auto* column : columns) {
    pairs.push_back(has_pair(*column, rows));
    const std::string key = column->key, heading = column_heading(column->label, column->unit);
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
        append_pair(cells, columns[i]->value(row));
      else
        cells.push_back(cell_of(columns[i]->value(row)));
    }
    sheet.rows.push_back(std::move(cells));
  }
  return sheet;
}

SheetCell cell_of(const std::optional<double>& value) {
  return value ? SheetCell(*value) : SheetCell();
}

/// What a reader of a cycle sheet looks for first.
constexpr std::string_view first_of_cycle[] = {"weldment",      "cycle_time_s",  "takt_s",
                                               "takt_margin_s", "lower_bound_s", "gap_pct",
                                               "weld_s",        "arc_on_s",      "arc_on_ratio"};

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
  sheets.push_back(column_sheet("cycle", cycle_columns(), cycles, first_of_cycle));
  sheets.push_back(findings_sheet(evaluation, cycles));
  sheets.push_back(schedules_sheet(plan));
  sheets.push_back(about_sheet(plan, provenance));
  return sheets;
}

}  // namespace seamtakt
