#pragma once

#include <string>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt::desk {

/// Somebody checked a reviewed or approved schedule and is responsible for it: it stays unchanged, and
/// changes go into the next revision.
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

/// Compares two plans. What may change: a status that advances, approver and effective date while these
/// aren't stated or the schedule is only reviewed, free keys; of a wire its price and the coefficients of its
/// melting law, which are refitted; a gas's price; a power source's efficiency.
LockedChange locked_change(const Plan& before, const Plan& after);

/// Who approves a schedule approves what it holds then: its digest (approval_sha256) is stated. An approver
/// and a first day that are filled in later are taken into a digest that was right; one that was wrong stays,
/// so that a change from outside isn't covered up. What isn't approved any more states none.
void seal_approvals(const Plan& before, Plan& after);

/// The schedule of `after` that corresponds to the one at `at` of `before`: that of the same id, else, if
/// none was added or removed, the one in its place. The number of schedules where it is gone.
std::size_t same_schedule(const Plan& before, std::size_t at, const Plan& after);

}  // namespace seamtakt::desk
