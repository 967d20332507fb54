#include "exchange/report/caution.hpp"
#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

ReportSection opening_section(const PlanReport& report) {
  ReportSection section;
  if (!report.plan.notes.empty())
    section.blocks.emplace_back(ParagraphBlock{report.plan.notes, ParagraphBlock::Look::quiet});
  section.blocks.emplace_back(ParagraphBlock{Word::of_table(caution_text()), ParagraphBlock::Look::caution});
  return section;
}

}  // namespace seamtakt
