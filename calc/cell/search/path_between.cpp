#include <algorithm>

#include "cell/timeline/cycle_result.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

std::vector<Point_mm> path_between(const Seam& seam, double from_mm, double to_mm) {
  const double low = std::min(from_mm, to_mm), high = std::max(from_mm, to_mm);
  std::vector<Point_mm> points{point_at(seam, low)};
  const std::size_t corners = seam.path_mm.size();
  double along = 0;
  // The second time round is the overlap of a closed seam.
  for (std::size_t i = 1; i < 2 * corners - 1 && along < high; ++i) {
    const std::size_t at = i < corners ? i : i - corners + 1;
    along += distance_mm(seam.path_mm[at - 1], seam.path_mm[at]);
    if (along > low && along < high && distance_mm(points.back(), seam.path_mm[at]) > 0)
      points.push_back(seam.path_mm[at]);
  }
  points.push_back(point_at(seam, high));
  if (from_mm > to_mm) std::reverse(points.begin(), points.end());
  return points;
}

}  // namespace seamtakt
