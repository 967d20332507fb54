#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "cell/timeline/timeline.hpp"

namespace seamtakt::desk {

/// An order in which one pass was moved, and which pass of its seam that was.
struct MovedPass {
  std::vector<OrderStep> order;
  int pass = 1;
};

/// Moves one pass of a seam past what its robot welds next (`later`) or before. Of the passes that the robot
/// welds there in a row with the named one, the last one goes later, or the first one earlier: passes of a
/// seam keep their order. Nothing where the robot has nothing more on that side.
std::optional<MovedPass> moved_pass(const CycleResult& now, std::string_view seam, int pass, bool later);

}  // namespace seamtakt::desk
