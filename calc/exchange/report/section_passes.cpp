#include "exchange/report/column_sheet.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

namespace {

constexpr Word title = "Heat input by pass"_word;
constexpr Word basis =
    "Heat input = thermal efficiency (EN 1011-1) x arc energy (ISO/TR 18491). t8/5 by EN 1011-2, annex D."_word;

}  // namespace

ReportSection passes_section(const PlanReport& report) {
  Sheet sheet = column_sheet("passes", pass_columns(), report.evaluation.passes);
  return {{TitleBlock{2, title}, ParagraphBlock{basis, ParagraphBlock::Look::quiet}, TableBlock{sheet}},
          {sheet}};
}

}  // namespace seamtakt
