#include "exchange/report/caution.hpp"
#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

namespace {

constexpr Words title{"Made with and from"};

ItemsBlock origin_items(const Provenance& provenance) {
  return {{{Words{"Program"}, "seamtakt " + provenance.program_version},
           {Words{"Plan"}, provenance.plan_file},
           {Words{"Plan SHA-256"}, provenance.plan_sha256},
           {Words{"Reference tables SHA-256"}, provenance.catalogue_sha256},
           {Words{"Made at"}, provenance.made_at_utc}}};
}

}  // namespace

ReportSection about_section(const PlanReport& report) {
  const ItemsBlock origin = origin_items(report.provenance);
  Sheet sheet{"about", {{"item", {"Item"}}, {"value", {"Value"}}}, {}};
  sheet.rows = {{Words{"Title"}, report.plan.title}, {Words{"Caution"}, Words{caution_text()}}};
  for (const auto& [label, value] : origin.items) sheet.rows.push_back({label, value});
  return {{TitleBlock{2, title}, origin, SignBlock{{{"Drafted"}, {"Checked"}, {"Approved"}}}}, {sheet}};
}

}  // namespace seamtakt
