#pragma once

#include <string>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt::desk {

/// A reviewed or approved schedule is what someone looked at and answers for: it stays as it is, and what
/// shall be different goes into the next revision.
bool is_locked(const Schedule& schedule);

/// What an edit would change although it is locked. Indices are those of the plan before.
struct LockedChange {
  std::vector<std::size_t> changed;    ///< schedules whose own fields would change
  std::vector<std::size_t> withdrawn;  ///< schedules of which the status alone would go back
  std::vector<std::size_t> removed;
  std::string item;  ///< pointer of the wire, gas or power source whose figures would change; empty: none
  std::vector<std::size_t> users;  ///< locked schedules that name the item

  bool none() const { return changed.empty() && withdrawn.empty() && removed.empty() && item.empty(); }
};

/// Compares two plans. What may change: a status that goes forward, who approved it and from when while that
/// isn't stated or the schedule is only reviewed, free keys; of a wire its price and the coefficients of its
/// melting law, which are refitted; a gas's price; a power source's efficiency.
LockedChange locked_change(const Plan& before, const Plan& after);

/// The schedule of `after` that stands for the one at `at` of `before`: that of the same id, else, where none
/// came or went, the one in its place. The number of schedules where it is gone.
std::size_t same_schedule(const Plan& before, std::size_t at, const Plan& after);

}  // namespace seamtakt::desk
