#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/finding.hpp"
#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// cell.fewer-is-faster (note), where a weldment's cycle without one of the robots is shorter than with all
/// of them, and why: seams that went to hand work, else what the robots wait for less, else the order, which
/// suits fewer robots better. A given order is no best one, so that this can be. Empty where it isn't
/// shorter, and where seams are unwelded: a cycle that leaves seams out is none to compare.
/// `by_hand`: how many of its seams are welded by hand instead.
std::optional<Finding> faster_with_fewer(const CycleResult& whole, const CycleResult& fewer,
                                         std::string_view robot, std::size_t by_hand);

/// Of all weldments that are in both lists.
Findings faster_with_fewer(const std::vector<CycleResult>& whole, const std::vector<CycleResult>& fewer,
                           std::string_view robot, const std::vector<std::string>& by_hand);

/// The same of a line's units an hour, both with the same draws: why is hand work, else the shorter cycles,
/// else units that overtake one another. `cycles`: the findings of its weldments' cycles; `by_hand`: the
/// weldment of each seam that is welded by hand.
std::optional<Finding> more_with_fewer(double whole_per_h, double fewer_per_h, std::string_view robot,
                                       const Findings& cycles, const std::vector<std::string>& by_hand);

}  // namespace seamtakt
