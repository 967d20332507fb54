#pragma once

#include <string_view>
#include <vector>

#include "cell/timeline/cycle_result.hpp"

namespace seamtakt {

/// What robots do in a cycle beside the arc.
struct CycleLoss {
  std::string_view what;  ///< "air moves"
  double time_s = 0;      ///< robot-seconds: summed over the robots
};

/// The losses of a cycle, largest first; those that take no time are left out.
std::vector<CycleLoss> cycle_losses(const CycleResult& cycle);

}  // namespace seamtakt
