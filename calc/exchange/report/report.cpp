#include "exchange/report/report.hpp"

#include <algorithm>
#include <iterator>

#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

namespace {

/// Tables that a workbook has first, in this order; others follow in the page's.
constexpr std::string_view first_tables[] = {"judgement", "passes", "seams",    "weldments",
                                             "cycle",     "order",  "findings", "schedules"};

std::size_t place_of(const Sheet& sheet) {
  return static_cast<std::size_t>(std::find(std::begin(first_tables), std::end(first_tables), sheet.name) -
                                  std::begin(first_tables));
}

}  // namespace

Report plan_report(const Plan& plan, const Evaluation& evaluation, const std::vector<CycleResult>& cycles,
                   const Provenance& provenance, const CycleActual* actual) {
  Report report;
  report.title = plan.title.empty() ? SheetCell("Weld plan"_word) : SheetCell(plan.title);
  for (const auto& section : plan_sections) {
    std::vector<Block> blocks = section({plan, evaluation, cycles, provenance, actual}).blocks;
    std::move(blocks.begin(), blocks.end(), std::back_inserter(report.blocks));
  }
  return report;
}

std::vector<Sheet> report_sheets(const Plan& plan, const Evaluation& evaluation,
                                 const std::vector<CycleResult>& cycles, const Provenance& provenance,
                                 const CycleActual* actual) {
  std::vector<Sheet> sheets;
  for (const auto& section : plan_sections) {
    std::vector<Sheet> of_section = section({plan, evaluation, cycles, provenance, actual}).sheets;
    std::move(of_section.begin(), of_section.end(), std::back_inserter(sheets));
  }
  std::stable_sort(sheets.begin(), sheets.end(),
                   [](const Sheet& a, const Sheet& b) { return place_of(a) < place_of(b); });
  return sheets;
}

std::string report_html(const Plan& plan, const Evaluation& evaluation,
                        const std::vector<CycleResult>& cycles, const Provenance& provenance,
                        const TextView& view, const CycleActual* actual) {
  return report_page(plan_report(plan, evaluation, cycles, provenance, actual), view);
}

}  // namespace seamtakt
