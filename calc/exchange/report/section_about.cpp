#include "exchange/report/caution.hpp"
#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

namespace {

constexpr Word about_title = "Made with and from"_word;

ItemsBlock origin_items(const Provenance& provenance) {
  return {{{"Program"_word, "seamtakt " + provenance.program_version},
           {"Plan"_word, provenance.plan_file},
           {"Plan SHA-256"_word, provenance.plan_sha256},
           {"Reference tables SHA-256"_word, provenance.catalogue_sha256},
           {"Made at"_word, provenance.made_at_utc}}};
}

}  // namespace

ReportSection about_section(const PlanReport& report) {
  const ItemsBlock origin = origin_items(report.provenance);
  Sheet sheet{"about", {{"item", {"Item"_word}}, {"value", {"Value"_word}}}, {}};
  sheet.rows = {{"Title"_word, report.plan.title}, {"Caution"_word, Word::of_table(caution_text())}};
  for (const auto& [label, value] : origin.items) sheet.rows.push_back({label, value});
  return {{TitleBlock{2, about_title}, origin, SignBlock{{"Drafted"_word, "Checked"_word, "Approved"_word}}},
          {sheet}};
}

}  // namespace seamtakt
