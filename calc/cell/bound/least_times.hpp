#pragma once

#include <cstdint>
#include <vector>

#include "cell/timeline/cell_model.hpp"

namespace seamtakt {

/// The least times of the seams, over all robots, directions and orders.
struct LeastTimes {
  std::vector<double> work_s;      ///< [seam]
  std::vector<double> way_home_s;  ///< [robot] from the nearest seam that it can weld
  double turns_s = 0;              ///< of the positioner, that can't be avoided (turn_bound.hpp)
};

LeastTimes least_times(const CellModel& model);

/// The shortest way home of any of these robots (s); 0 where none of them has a seam.
double least_way_home_s(const LeastTimes& least, std::uint64_t robots);

/// A seam's arc time, each run capped at what the torch may weld between two services (s).
double capped_arc_s(const CellModel& model, const CellSeam& seam);

/// Between two services there is at most every_arc_s of arc, or one run that is longer: the least time of
/// services that so many robots need for so much arc.
double services_s(const CellModel& model, double capped_arc_s, int robots);

}  // namespace seamtakt
