#include "plan/rules/use_of_schedule.hpp"

#include <algorithm>
#include <cmath>

#include "formula/size/fillet.hpp"

namespace seamtakt {

std::optional<double> drawn_leg_mm(const Seam& seam) {
  if (seam.leg_mm) return seam.leg_mm;
  if (!seam.throat_mm) return std::nullopt;
  constexpr double steps_per_mm = 100;
  return std::round(fillet_leg_of_throat_mm<double>(*seam.throat_mm, seam.dihedral_deg) * steps_per_mm) /
         steps_per_mm;
}

bool is_used_position(const ScheduleUse& use, const Seam& seam) {
  return use.positions.empty() || seam.position.empty() ||
         std::find(use.positions.begin(), use.positions.end(), seam.position) != use.positions.end();
}

bool use_holds(const ScheduleUse& use, const Seam& seam) {
  bool holds = is_used_position(use, seam);
  each_used_value(use, seam, [&](const UsedValue& used) { holds = holds && used.is_inside(); });
  return holds;
}

}  // namespace seamtakt
