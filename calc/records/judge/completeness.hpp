#pragma once

#include <span>
#include <vector>

#include "base/finding.hpp"
#include "records/passes/pass_record.hpp"
#include "records/passes/planned_pass.hpp"
#include "records/passes/unit_times.hpp"

namespace seamtakt {

/// What completeness needs to know of a robot's pass.
struct WeldedPass {
  const PassRecord* record = nullptr;
  bool known_to_plan = false;
  bool in_another_log_too = false;
  double planned_length_mm = 0;  ///< 0 where not known
};

/// What there is of the units beside their logs.
struct BesideTheLogs {
  std::span<const ManualSeam> manual;  ///< judged (manual_judgement.hpp)
  std::span<const UnitTime> expected;  ///< units that count even where nothing was logged of them
  std::span<const StoredPass> stored;  ///< what the store has
};

/// Which passes each unit has, lacks, has beyond the plan and has twice, and which are welded but open, with
/// the cause. A unit is complete with all robot and all manual passes, each of them with a record that
/// passed. An open failure in the store keeps its unit incomplete. plan: nullptr leaves completeness
/// open. Adds findings.
std::vector<UnitRecord> check_completeness(const std::vector<WeldedPass>& welded, const BesideTheLogs& beside,
                                           const PlannedPasses* plan, Findings& findings);

/// Completeness and open items again, after verdicts have changed. `units` are those of an audit of
/// these records.
void restate_completeness(std::vector<UnitRecord>& units, const std::vector<PassRecord>& records,
                          const BesideTheLogs& beside, const PlannedPasses& plan, const Findings& findings);

}  // namespace seamtakt
