#pragma once

#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"

namespace seamtakt::test {

/// What the checks allow two times that should be the same.
inline constexpr double slack_s = 1e-6;

/// Replays a cycle's moves against the plan and says, a sentence each, which rules of the cell it breaks. It
/// knows only the moves and the plan and shares no code with the scheduler. Seams in `left_out` aren't
/// expected.
std::vector<std::string> check_timeline(const Plan& plan, const Weldment& weldment,
                                        const Evaluation& evaluation, const CycleResult& cycle,
                                        const std::vector<std::string>& left_out = {});

/// Whether the seams of each balance group are begun alternately on its two sides, computed from the plan and
/// the moves alone. Groups that the cycle's own findings exclude (`cycle.balance.circular`) aren't judged.
std::vector<std::string> check_balance(const Weldment& weldment, const CycleResult& cycle,
                                       const std::vector<std::string>& left_out = {});

/// Time of a turn of the positioner, computed from the plan alone: an entry, either way; else the slowest
/// axis, the shorter way round; else the cell's.
double turn_s(const Cell& cell, const std::string& from, const std::string& to);

/// The orientation that a seam asks for, or the one that is begun together with it.
std::string asked_orientation(const Weldment& weldment, const std::string& seam);

/// The same for what robots share: boxes, torches' distance, seams begun together, and for tips and spools.
std::vector<std::string> check_shared(const Plan& plan, const Weldment& weldment, const CycleResult& cycle);

/// The same for the sums, the cycle time and the bound alone.
std::vector<std::string> check_sums(const Plan& plan, const Weldment& weldment, const CycleResult& cycle);

}  // namespace seamtakt::test
