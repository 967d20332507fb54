#pragma once

#include <gtest/gtest.h>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/fit/fit.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {

inline Plan demo() {
  return load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
}
inline Plan two_schedules() {
  return load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
}

/// Fails on a seam and its passes.
inline Findings fails_on(const Plan& plan, const std::string& place) {
  Findings fails;
  for (const Finding& finding : evaluate(plan).findings)
    if (finding.severity == Severity::fail &&
        (finding.where == place || finding.where.rfind(place + "/", 0) == 0))
      fails.push_back(finding);
  return fails;
}

inline const FittedSeam& only_seam(const FitResult& result) {
  EXPECT_EQ(result.seams.size(), 1u);
  return result.seams.front();
}

inline Seam& seam_of(Plan& plan, const std::string& weldment, const std::string& seam) {
  return *find_by_id(find_by_id(plan.weldments, weldment)->seams, seam);
}

/// The measure as a plan's evaluation gives it, without starts and ends.
inline double arc_time_s(const Plan& plan, const std::string& weldment, const std::string& seam) {
  double sum = 0;
  for (const PassEvaluation& pass : evaluate(plan).passes)
    if (pass.weldment == weldment && pass.seam == seam) sum += pass.arc_time_s;
  return sum;
}

/// A tee whose schedule has limits, and which no other schedule of the plan fits.
inline Plan limited_tee() {
  Plan plan = two_schedules();
  Schedule& schedule = *find_by_id(plan.schedules, "F");
  schedule.limits = ScheduleLimits{};
  schedule.limits->wire_feed_speed_m_min = Interval{6, 12};
  schedule.limits->travel_speed_mm_s = Interval{4, 12};
  schedule.limits->heat_input_kJ_mm = Interval{0.5, 1.5};
  schedule.limits->voltage_V = Interval{26, 32};
  // The other schedule can't replace this one.
  find_by_id(plan.schedules, "C")->process = "138";
  return plan;
}

}  // namespace seamtakt::test
