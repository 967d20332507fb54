#pragma once

#include <vector>

#include "base/finding.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/planned_pass.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt {

/// A robot's pass as far as completeness goes.
struct WeldedPass {
  const PassRecord* record = nullptr;
  bool known_to_plan = false;
  bool in_another_log_too = false;
  double planned_length_mm = 0;  ///< 0 where not known
};

/// Which passes each unit has, lacks, has beyond the plan and has twice, and which were welded and are open
/// for what cause. A unit is complete with all robot and all manual passes, each of them with a record that
/// passed. Units of `expected` count even where nothing was logged of them. plan: nullptr leaves completeness
/// open. Adds findings.
std::vector<UnitRecord> check_completeness(const std::vector<WeldedPass>& welded,
                                           const std::vector<ManualSeam>& manual,
                                           const std::vector<UnitTime>& expected, const PlannedPasses* plan,
                                           Findings& findings);

/// Completeness and open items once more, after verdicts have changed. `units` are those of an audit of
/// these records.
void restate_completeness(std::vector<UnitRecord>& units, const std::vector<PassRecord>& records,
                          const std::vector<ManualSeam>& manual, const PlannedPasses& plan,
                          const Findings& findings);

}  // namespace seamtakt
