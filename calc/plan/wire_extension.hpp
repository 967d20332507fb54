#pragma once

#include "plan/plan.hpp"

namespace seamtakt {

/// Length of wire that carries the current (mm): from the contact tip to the arc. A checked plan's is above
/// 0.
inline double wire_extension_mm(const Schedule& schedule) {
  return schedule.contact_tip_distance_mm - schedule.arc_length_mm;
}

}  // namespace seamtakt
