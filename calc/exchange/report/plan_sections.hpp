#pragma once

#include <vector>

#include "cell/timeline/timeline.hpp"
#include "exchange/report/provenance.hpp"
#include "exchange/sheets/report_model.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"
#include "records/actual/cycle_actual.hpp"

namespace seamtakt {

/// Shown for what the plan leaves out.
inline constexpr Word not_stated = "not stated"_word;

/// What a plan's report is made from.
struct PlanReport {
  const Plan& plan;
  const Evaluation& evaluation;
  const std::vector<CycleResult>& cycles;
  const Provenance& provenance;
  const CycleActual* actual = nullptr;  ///< units of a log beside their planned cycles; nullptr: no log
};

/// A section of a report: its blocks on the page, and its tables for files. Either may be empty.
struct ReportSection {
  std::vector<Block> blocks;
  std::vector<Sheet> sheets;
};

// A file each: section_NAME.cpp.
ReportSection opening_section(const PlanReport& report);
ReportSection weldments_section(const PlanReport& report);
ReportSection findings_section(const PlanReport& report);
ReportSection schedules_section(const PlanReport& report);
ReportSection passes_section(const PlanReport& report);
ReportSection seams_section(const PlanReport& report);
ReportSection cycles_section(const PlanReport& report);
ReportSection order_section(const PlanReport& report);
ReportSection actual_section(const PlanReport& report);
ReportSection about_section(const PlanReport& report);

/// In order of the page.
inline constexpr ReportSection (*plan_sections[])(const PlanReport&) = {
    opening_section, weldments_section, findings_section, schedules_section, passes_section,
    seams_section,   cycles_section,    order_section,    actual_section,    about_section};

}  // namespace seamtakt
