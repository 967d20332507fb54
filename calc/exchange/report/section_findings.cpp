#include <algorithm>

#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

namespace {

constexpr Words title{"Findings"};

Sheet findings_sheet(const Findings& findings) {
  // The page has no place for value, limit and unit: the text names them.
  Sheet sheet{"findings",
              {{"severity", {"Severity"}, 0},
               {"where", {"Where"}, 0},
               {"rule", {"Rule"}, 0},
               {"value", {"Value"}, {}, false},
               {"limit", {"Limit"}, {}, false},
               {"unit", {"Unit"}, 0, false},
               {"text", {"Finding"}, 0},
               {"source", {"Source"}, 0}},
              {}};
  const auto cell = [](const std::optional<double>& value) {
    return value ? SheetCell(*value) : SheetCell();
  };
  for (const Finding& finding : findings)
    sheet.rows.push_back({Words{to_string(finding.severity)}, finding.where, finding.rule,
                          cell(finding.value), cell(finding.limit), finding.unit,
                          SentenceCell{finding.sentence}, finding.source});
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
  section.blocks = titled_table(title, findings_sheet(findings));
  return section;
}

}  // namespace seamtakt
