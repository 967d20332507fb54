#pragma once

#include <QString>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

/// Where a finding leads: the object's pointer in the plan and the key of the field or value that it is
/// about. Empty address: the plan as a whole; empty key: the object as a whole.
struct FindingTarget {
  QString address, key;
};

/// The key that leads to a weldment's cycle.
inline constexpr const char* cycle_key = "cycle_time_s";

FindingTarget target_of(const Plan& plan, const Finding& finding);

}  // namespace seamtakt::desk
