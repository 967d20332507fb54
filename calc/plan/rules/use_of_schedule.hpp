#pragma once

#include "base/sentences/sentence.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A value of a seam that the use of a schedule limits.
struct UsedValue {
  const char* rule;  ///< of the finding, without its side
  Word what;
  double value_mm = 0;
  const Interval& limit;

  bool is_inside() const {
    return (!limit.lower || value_mm >= *limit.lower) && (!limit.upper || value_mm <= *limit.upper);
  }
};

/// The leg as drawn: of a throat the one that it has, to a hundredth of a millimetre: a drawing's throat is
/// itself rounded. Empty for a groove.
std::optional<double> drawn_leg_mm(const Seam& seam);

/// False where both name positions and the seam's isn't among the schedule's.
bool is_used_position(const ScheduleUse& use, const Seam& seam);

/// Calls visit(UsedValue) for each value that the use limits and the seam has: both thicknesses, the largest
/// gap that is planned for, the leg as drawn.
template <class Visit>
void each_used_value(const ScheduleUse& use, const Seam& seam, const Visit& visit) {
  if (use.thickness_mm)
    for (const double thickness_mm : seam.thickness_mm)
      visit(UsedValue{"schedule.use.thickness", "Plate thickness"_word, thickness_mm, *use.thickness_mm});
  if (use.gap_mm)
    visit(UsedValue{"schedule.use.gap", "Gap"_word, seam.gap_max_mm.value_or(seam.gap_mm), *use.gap_mm});
  if (!use.leg_mm) return;
  if (const auto leg_mm = drawn_leg_mm(seam))
    visit(UsedValue{"schedule.use.leg", "Leg as drawn"_word, *leg_mm, *use.leg_mm});
}

/// Whether a schedule's use holds for a seam: what either doesn't say isn't compared. The plan's rule finds a
/// fail exactly where it doesn't.
bool use_holds(const ScheduleUse& use, const Seam& seam);

}  // namespace seamtakt
