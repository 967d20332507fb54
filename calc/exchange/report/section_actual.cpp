#include "exchange/report/column_sheet.hpp"
#include "exchange/report/plan_sections.hpp"
#include "records/actual/actual_rows.hpp"

namespace seamtakt {

/// Units of a log beside their planned cycles: a line a unit, then each robot's arcs and gaps.
ReportSection actual_section(const PlanReport& report) {
  if (report.actual == nullptr) return {};
  const std::vector<ActualUnitRow> units = actual_unit_rows(*report.actual);
  const std::vector<ActualStepRow> steps = actual_step_rows(*report.actual);
  ReportSection section;
  section.sheets = {column_sheet<ActualStepRow>("actual", actual_step_columns(), steps),
                    column_sheet<ActualUnitRow>("actual-units", actual_unit_columns(), units)};
  section.blocks = titled_table("Planned against actual"_word, section.sheets[1]);
  for (Block& block : titled_table("Arcs and the gaps between them"_word, section.sheets[0]))
    section.blocks.push_back(std::move(block));
  return section;
}

}  // namespace seamtakt
