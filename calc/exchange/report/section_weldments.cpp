#include <memory>
#include <utility>

#include "exchange/picture/weldment_svg.hpp"
#include "exchange/report/column_sheet.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

namespace {

/// A picture is some 100 kB of the page.
constexpr std::size_t most_pictures = 60;

/// Drawn later than the section is made, so it keeps the weldment.
FigureBlock weldment_figure(const Weldment& weldment, const Findings& findings) {
  return {[kept = std::make_shared<const Weldment>(weldment), marks = seam_marks(weldment, findings)](
              const TextView& view) { return weldment_svg(*kept, marks, view); }};
}

}  // namespace

ReportSection weldments_section(const PlanReport& report) {
  Sheet sheet = column_sheet("weldments", weldment_columns(), report.evaluation.weldments);
  ReportSection section{{TitleBlock{2, "Weldments"_word}, TableBlock{with_all_columns(sheet)}}, {sheet}};
  if (report.plan.costs && !report.plan.costs->currency.empty())
    section.blocks.emplace_back(ParagraphBlock{
        PatternCell{"Costs are in {1}."_word, {report.plan.costs->currency}}, ParagraphBlock::Look::quiet});
  std::size_t pictures = 0;
  for (const Weldment& weldment : report.plan.weldments) {
    if (weldment.seams.empty() && weldment.plates.empty()) continue;
    if (++pictures > most_pictures) {
      section.blocks.emplace_back(
          ParagraphBlock{PatternCell{"Only the first {1} weldments have a picture here."_word,
                                     {static_cast<double>(most_pictures)}},
                         ParagraphBlock::Look::quiet});
      break;
    }
    section.blocks.emplace_back(GroupBlock{GroupBlock::Kind::whole,
                                           {TitleBlock{3, PatternCell{"Picture of {1}"_word, {weldment.id}}},
                                            weldment_figure(weldment, report.evaluation.findings)}});
  }
  return section;
}

}  // namespace seamtakt
