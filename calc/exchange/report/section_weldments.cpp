#include "exchange/report/column_sheet.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

ReportSection weldments_section(const PlanReport& report) {
  Sheet sheet = column_sheet("weldments", weldment_columns(), report.evaluation.weldments);
  return {{TitleBlock{2, "Weldments"_word}, TableBlock{with_all_columns(sheet)}}, {sheet}};
}

}  // namespace seamtakt
