#include <algorithm>

#include "base/sentences/place_sentence.hpp"
#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

namespace {

constexpr Word findings_title = "Findings"_word;

Sheet findings_sheet(const Findings& findings) {
  // The page has no place for value, limit and unit: the text names them.
  Sheet sheet{"findings",
              {{"severity", {"Severity"_word}, 0},
               {"where", {"Where"_word}, 0},
               {"rule", {"Rule"_word}, 0},
               {"value", {"Value"_word}, {}, false},
               {"limit", {"Limit"_word}, {}, false},
               {"unit", {"Unit"_word}, 0, false},
               {"text", {"Finding"_word}, 0},
               {"source", {"Source"_word}, 0}},
              {}};
  const auto figure = [](const std::optional<double>& value, const std::string& unit) {
    return value ? SheetCell(Figure{*value, unit}) : SheetCell();
  };
  for (const Finding& finding : findings)
    sheet.rows.push_back({SeverityCell{finding.severity}, SentenceCell{place_sentence(finding.where)},
                          finding.rule, figure(finding.value, finding.unit),
                          figure(finding.limit, finding.unit), UnitCell{finding.unit},
                          SentenceCell{finding.sentence}, SourceCell{finding.source}});
  return sheet;
}

}  // namespace

ReportSection findings_section(const PlanReport& report) {
  Findings findings = report.evaluation.findings;
  for (const CycleResult& cycle : report.cycles)
    findings.insert(findings.end(), cycle.findings.begin(), cycle.findings.end());
  ReportSection section{{}, {findings_sheet(findings)}};
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  section.blocks = titled_table(findings_title, findings_sheet(findings));
  return section;
}

}  // namespace seamtakt
