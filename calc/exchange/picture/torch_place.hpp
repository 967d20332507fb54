#pragma once

#include <string>
#include <vector>

#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// Where a robot's torch is at a time of the cycle.
struct TorchPlace {
  std::string robot;
  Point_mm at_mm{0, 0, 0};
  bool is_welding = false;
};

/// The torch of each robot that has moved by `at_s` (s from the cycle's begin): on its way in a move by the
/// share of the move's time, at equal speed, else where its last move ended. In the order of the robots'
/// first moves. Waits and changes without points don't move it.
std::vector<TorchPlace> torch_places(const CycleResult& cycle, double at_s);

}  // namespace seamtakt
