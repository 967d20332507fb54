#include "exchange/drawing/fitting_schedule.hpp"

#include <algorithm>

#include "formula/size/fillet.hpp"

namespace seamtakt {

namespace {

bool holds(const std::optional<Interval>& interval, double value) {
  if (!interval) return true;
  return (!interval->lower || value >= *interval->lower) && (!interval->upper || value <= *interval->upper);
}

std::optional<double> leg_of(const Seam& seam) {
  if (seam.leg_mm) return seam.leg_mm;
  if (!seam.throat_mm) return {};
  return fillet_leg_of_throat_mm<double>(*seam.throat_mm, seam.dihedral_deg);
}

bool fits(const ScheduleUse& use, const Seam& seam) {
  const bool says_position = !use.positions.empty() && !seam.position.empty();
  if (says_position &&
      std::find(use.positions.begin(), use.positions.end(), seam.position) == use.positions.end())
    return false;
  for (const double thickness : seam.thickness_mm)
    if (!holds(use.thickness_mm, thickness)) return false;
  const auto leg = leg_of(seam);
  return holds(use.gap_mm, seam.gap_mm) && (!leg || holds(use.leg_mm, *leg));
}

}  // namespace

const Schedule* fitting_schedule(const Plan& plan, const Seam& seam) {
  for (const Schedule& schedule : plan.schedules)
    if (schedule.use && fits(*schedule.use, seam)) return &schedule;
  return nullptr;
}

}  // namespace seamtakt
