#include "cell/travel/box_crossing.hpp"

#include <algorithm>

namespace seamtakt {

bool passes_through(const Point_mm& from, const Point_mm& to, const Point_mm& low, const Point_mm& high) {
  constexpr double skin_mm = 1e-6;
  double enters = 0, leaves = 1;
  for (std::size_t axis = 0; axis < 3; ++axis) {
    const double begin = from[axis], way = to[axis] - from[axis];
    const double near_mm = low[axis] + skin_mm, far_mm = high[axis] - skin_mm;
    if (way == 0) {
      if (begin <= near_mm || begin >= far_mm) return false;
      continue;
    }
    const double a = (near_mm - begin) / way, b = (far_mm - begin) / way;
    enters = std::max(enters, std::min(a, b));
    leaves = std::min(leaves, std::max(a, b));
  }
  return enters < leaves;
}

}  // namespace seamtakt
