#include "exchange/report/column_sheet.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

ReportSection seams_section(const PlanReport& report) {
  Sheet sheet = column_sheet("seams", seam_columns(), report.evaluation.seams);
  return {{TitleBlock{2, "Seams"_word}, TableBlock{sheet}}, {sheet}};
}

}  // namespace seamtakt
