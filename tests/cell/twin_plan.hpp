#pragma once

#include <gtest/gtest.h>

#include "cell_plan.hpp"
#include "timeline_check.hpp"

namespace seamtakt::test {

inline void expect_rules_kept(const Plan& plan, const Evaluation& evaluation, const CycleResult& cycle,
                              const std::vector<std::string>& left_out = {}) {
  for (const auto& sentence : check_timeline(plan, plan.weldments[0], evaluation, cycle, left_out))
    ADD_FAILURE() << sentence;
}

inline void expect_rules_kept(const Plan& plan, const CycleResult& cycle) {
  expect_rules_kept(plan, evaluation_of(plan), cycle);
}

/// R1 has S1 250 mm from its home, R2 has S2 250 mm from its own, each 100 mm long: 0.75 + 11.5 + 0.85 s
/// = 13.1 s.
inline Plan twin_plan() {
  Plan plan = plain_plan();
  plan.cell->robots.push_back(robot_at("R2", {0, 1000, 0}));
  plan.weldments[0].seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}),
                             seam_along("S2", {{250, 1000, 0}, {350, 1000, 0}})};
  plan.weldments[0].seams[0].robots = {"R1"};
  plan.weldments[0].seams[1].robots = {"R2"};
  return plan;
}

}  // namespace seamtakt::test
