#include "exchange/report/caution.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/rules/severity.hpp"

namespace seamtakt {

namespace {

constexpr Word chosen_severities =
    "The plan chooses the severity of these findings, whose sources recommend and don't demand:"_word;

SheetCell code_of(const Plan& plan) {
  return plan.code.empty() ? SheetCell(not_stated) : SheetCell(plan.code);
}

/// Rules to which the plan gives a severity of its own.
std::vector<const RecommendingRule*> chosen_rules(const Plan& plan) {
  std::vector<const RecommendingRule*> chosen;
  if (!plan.severity) return chosen;
  for (const RecommendingRule& rule : recommending_rules)
    if (!(*plan.severity.*rule.chosen).empty()) chosen.push_back(&rule);
  return chosen;
}

/// By what the plan is judged: its code, and the severities that it chooses.
Sheet judgement_sheet(const Plan& plan) {
  Sheet sheet{"judgement", {{"item", {"Item"_word}}, {"value", {"Value"_word}}, {"rule", {"Rule"_word}}}, {}};
  sheet.rows.push_back({"Code"_word, code_of(plan), std::string()});
  for (const RecommendingRule* rule : chosen_rules(plan))
    sheet.rows.push_back(
        {Word::of_table(rule->word), Choice{*plan.severity.*rule->chosen}, std::string(rule->rule)});
  return sheet;
}

}  // namespace

ReportSection opening_section(const PlanReport& report) {
  ReportSection section;
  if (!report.plan.notes.empty())
    section.blocks.emplace_back(ParagraphBlock{report.plan.notes, ParagraphBlock::Look::quiet});
  section.blocks.emplace_back(ParagraphBlock{Word::of_table(caution_text()), ParagraphBlock::Look::caution});
  section.blocks.emplace_back(ItemsBlock{{{"Code"_word, code_of(report.plan)}}});
  if (const auto chosen = chosen_rules(report.plan); !chosen.empty()) {
    section.blocks.emplace_back(ParagraphBlock{chosen_severities});
    ItemsBlock severities;
    for (const RecommendingRule* rule : chosen)
      severities.items.emplace_back(Word::of_table(rule->word), Choice{*report.plan.severity.*rule->chosen});
    section.blocks.emplace_back(std::move(severities));
  }
  section.sheets.push_back(judgement_sheet(report.plan));
  return section;
}

}  // namespace seamtakt
