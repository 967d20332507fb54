#include <algorithm>

#include "exchange/report/column_sheet.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

namespace {

constexpr Word passes_title = "Heat input by pass"_word;
constexpr Word passes_basis =
    "Heat input = thermal efficiency (EN 1011-1) x arc energy (ISO/TR 18491). t8/5 by EN 1011-2, annex D."_word;

constexpr Word partly_judged = "partly judged"_word;
constexpr Word what_partly_judged_means =
    "Partly judged: nothing judges the pass's size, its heat or its position, so that no finding doesn't "
    "mean "
    "that it is in order."_word;

/// The last column says of each pass whether all of it is judged.
void add_judged_state(const std::vector<PassEvaluation>& passes, Sheet& sheet) {
  sheet.columns.push_back({"judged_state", {"Judged"_word}, 0});
  for (std::size_t row = 0; row < passes.size(); ++row)
    sheet.rows[row].push_back(is_partly_judged(passes[row]) ? partly_judged : "judged"_word);
}

}  // namespace

ReportSection passes_section(const PlanReport& report) {
  const std::vector<PassEvaluation>& passes = report.evaluation.passes;
  Sheet sheet = column_sheet("passes", pass_columns(), passes);
  add_judged_state(passes, sheet);
  ReportSection section{
      {TitleBlock{2, passes_title}, ParagraphBlock{passes_basis, ParagraphBlock::Look::quiet}}, {sheet}};
  if (std::any_of(passes.begin(), passes.end(), is_partly_judged))
    section.blocks.emplace_back(ParagraphBlock{what_partly_judged_means, ParagraphBlock::Look::quiet});
  section.blocks.emplace_back(TableBlock{std::move(sheet)});
  return section;
}

}  // namespace seamtakt
