#include "exchange/report/report.hpp"

#include <algorithm>

#include "base/units/units.hpp"
#include "cell/timeline/cycle_columns.hpp"
#include "exchange/report/caution.hpp"
#include "exchange/report/cycle_picture.hpp"
#include "exchange/report/schedule_sheet.hpp"
#include "exchange/sheets/column_text.hpp"
#include "exchange/sheets/html.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

namespace {

template <class Row>
void column_table(HtmlPage& page, std::span<const Column<Row>> columns, const std::vector<Row>& rows,
                  bool brief_only) {
  std::vector<std::string> head;
  std::vector<bool> numeric;
  for (const auto& column : columns) {
    if (brief_only && !column.brief) continue;
    head.push_back(column_heading(column.label, column.unit));
    numeric.push_back(column.digits > 0);
  }
  std::vector<std::vector<std::string>> cells;
  for (const Row& row : rows) {
    std::vector<std::string> line;
    for (const auto& column : columns)
      if (!brief_only || column.brief) line.push_back(column_text(column.shown(row), column.digits));
    cells.push_back(std::move(line));
  }
  page.table(head, numeric, cells);
}

void findings_section(HtmlPage& page, const Findings& findings) {
  page.heading(2, "Findings");
  if (findings.empty()) return page.paragraph("None.");
  std::vector<std::vector<std::string>> rows;
  for (const Finding& finding : findings)
    rows.push_back({to_string(finding.severity), finding.where, finding.rule, finding.text, finding.source});
  page.table({"Severity", "Where", "Rule", "Finding", "Source"}, {}, rows);
}

void schedules_section(HtmlPage& page, const Plan& plan) {
  const PlanIndex index(plan);
  page.heading(2, "Schedule sheets");
  page.paragraph("Data items as ISO 15609-1 lists them for a welding procedure specification.", "quiet");
  page.begin_sheets();
  for (const Schedule& schedule : plan.schedules) {
    page.begin_section();
    page.heading(3, "Schedule " + schedule.id);
    page.data_list(schedule_sheet(schedule, index));
    page.end_section();
  }
  page.end_sheets();
}

std::string margin_text(const CycleResult& cycle) {
  if (!cycle.unwelded.empty())
    return "none: " + std::to_string(cycle.unwelded.size()) + " of " + std::to_string(cycle.robot_seams) +
           " robot seams unwelded";
  return cycle.takt_margin_s ? rounded_text(*cycle.takt_margin_s, 5) + " s" : "not stated";
}

void cycles_section(HtmlPage& page, const std::vector<CycleResult>& cycles) {
  page.heading(2, "Cycle sheets");
  const auto seconds = [](double value) { return rounded_text(value, 5) + " s"; };
  for (const CycleResult& cycle : cycles) {
    page.begin_section();
    page.heading(3, "Weldment " + cycle.weldment);
    std::vector<std::pair<std::string, std::string>> items = {
        {"Cycle time", seconds(cycle.cycle_time_s)},
        {"Takt to plan to", cycle.takt_s ? seconds(*cycle.takt_s) : "not stated"},
        {"Margin", margin_text(cycle)},
        {"Proven lower bound", cycle.lower_bound_s ? seconds(*cycle.lower_bound_s) : "none"},
        {"Arc on, all robots",
         seconds(cycle.arc_on_s) + " (" + rounded_text(100 * cycle.arc_on_ratio, 3) + " % of robot time)"}};
    for (const CyclePart which : {CyclePart::loss, CyclePart::handling})
      for (const auto* part : cycle_parts(which))
        items.emplace_back(part->label, seconds(column_number(part->value(cycle)).value_or(0)));
    page.data_list(items);
    page.raw(cycle_svg(cycle));
    page.end_section();
  }
}

void closing_section(HtmlPage& page, const Provenance& provenance) {
  page.heading(2, "Made with and from");
  page.data_list({{"Program", "seamtakt " + provenance.program_version},
                  {"Plan", provenance.plan_file},
                  {"Plan SHA-256", provenance.plan_sha256},
                  {"Reference tables SHA-256", provenance.catalogue_sha256},
                  {"Made at", provenance.made_at_utc}});
  page.raw("<div class=\"sign\"><div>Drafted</div><div>Checked</div><div>Approved</div></div>\n");
}

}  // namespace

std::string report_html(const Plan& plan, const Evaluation& evaluation,
                        const std::vector<CycleResult>& cycles, const Provenance& provenance) {
  HtmlPage page(plan.title.empty() ? "Weld plan" : plan.title);
  if (!plan.notes.empty()) page.paragraph(plan.notes, "quiet");
  page.paragraph(caution_text(), "caution");
  page.heading(2, "Weldments");
  column_table(page, weldment_columns(), evaluation.weldments, false);
  Findings findings = evaluation.findings;
  for (const CycleResult& cycle : cycles)
    findings.insert(findings.end(), cycle.findings.begin(), cycle.findings.end());
  std::stable_sort(findings.begin(), findings.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  findings_section(page, findings);
  schedules_section(page, plan);
  page.heading(2, "Heat input by pass");
  page.paragraph(
      "Heat input = thermal efficiency (EN 1011-1) x arc energy (ISO/TR 18491). t8/5 by EN 1011-2, annex D.",
      "quiet");
  column_table(page, pass_columns(), evaluation.passes, true);
  page.heading(2, "Seams");
  column_table(page, seam_columns(), evaluation.seams, true);
  cycles_section(page, cycles);
  closing_section(page, provenance);
  return page.finish();
}

}  // namespace seamtakt
