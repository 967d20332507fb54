#include "cell/cell_model.hpp"

#include "cell/motion.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

double CellModel::air_between_s(const Motion& motion, const Point_mm& from, const Point_mm& to) {
  return move_time_s(distance_mm(from, to), motion.speed_mm_s, motion.acceleration_mm_s2) + motion.wrist_s;
}

bool may_reverse(const Seam& seam) {
  return seam.direction != "as-drawn" && seam.position != "PF" && seam.position != "PG";
}

}  // namespace seamtakt
