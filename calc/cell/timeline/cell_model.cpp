#include "cell/timeline/cell_model.hpp"

#include "formula/move_time.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

double CellModel::air_between_s(const Motion& motion, const Point_mm& from, const Point_mm& to) {
  const double acceleration_mm_s2 = motion.acceleration_mm_s2;
  return move_time(distance_mm(from, to), motion.speed_mm_s, acceleration_mm_s2, acceleration_mm_s2).time_s +
         motion.wrist_s;
}

double CellModel::air_on_demand_s(const Motion& motion, int from, int to) const {
  if (motion.is_plain()) return air_between_s(motion, points[from], points[to]);
  return air_way(motion, place(from), place(to)).time_s;
}

}  // namespace seamtakt
