#include "document/schedule_lock.hpp"

#include <algorithm>

#include "document/plan_address.hpp"
#include "plan/approval.hpp"

namespace seamtakt::desk {

namespace {

int rank_of(const Schedule& schedule) {
  return schedule.status == "approved" ? 2 : schedule.status == "reviewed" ? 1 : 0;
}

/// The locked content of `schedule` while `held` is in force, as text for comparison.
std::string locked_text_of(const Schedule& schedule, const Schedule& held) {
  std::string text = seamtakt::locked_text(schedule);
  if (held.status != "approved") return text;
  // The digest follows an approver and a first day that are filled in.
  if (schedule.approved_by == held.approved_by && schedule.effective_from == held.effective_from)
    text += '\n' + schedule.approved_sha256;
  else
    text += '\n' + held.approved_sha256;
  if (!held.approved_by.empty()) text += '\n' + schedule.approved_by;
  if (!held.effective_from.empty()) text += '\n' + schedule.effective_from;
  return text;
}

std::vector<std::size_t> locked_users(const Plan& plan, std::string Schedule::*member,
                                      const std::string& id) {
  std::vector<std::size_t> users;
  for (std::size_t i = 0; i < plan.schedules.size(); ++i)
    if (is_locked(plan.schedules[i]) && plan.schedules[i].*member == id) users.push_back(i);
  return users;
}

template <class List>
void find_changed_item(const Plan& before, const List& held, const List& asked, std::string Schedule::*member,
                       const std::string& list, LockedChange& change) {
  for (std::size_t i = 0; i < held.size() && change.item.empty(); ++i) {
    const auto* same = find_by_id(asked, held[i].id);
    if (!same || seamtakt::locked_text(*same) == seamtakt::locked_text(held[i])) continue;
    change.users = locked_users(before, member, held[i].id);
    if (!change.users.empty()) change.item = list + "/" + std::to_string(i);
  }
}

}  // namespace

bool is_locked(const Schedule& schedule) {
  return rank_of(schedule) > 0;
}

std::size_t same_schedule(const Plan& before, std::size_t at, const Plan& after) {
  if (const auto same = find_schedule(after, before.schedules[at].id)) return *same;
  return before.schedules.size() == after.schedules.size() ? at : after.schedules.size();
}

LockedChange locked_change(const Plan& before, const Plan& after) {
  LockedChange change;
  for (std::size_t i = 0; i < before.schedules.size(); ++i) {
    const Schedule& held = before.schedules[i];
    if (!is_locked(held)) continue;
    const std::size_t at = same_schedule(before, i, after);
    if (at == after.schedules.size()) {
      change.removed.push_back(i);
      continue;
    }
    const Schedule& asked = after.schedules[at];
    if (locked_text_of(asked, held) != locked_text_of(held, held))
      change.changed.push_back(i);
    else if (rank_of(asked) < rank_of(held))
      change.withdrawn.push_back(i);
  }
  find_changed_item(before, before.wires, after.wires, &Schedule::wire, "/wires", change);
  find_changed_item(before, before.gases, after.gases, &Schedule::gas, "/gases", change);
  find_changed_item(before, before.power_sources, after.power_sources, &Schedule::power_source,
                    "/power_sources", change);
  return change;
}

void seal_approvals(const Plan& before, Plan& after) {
  for (Schedule& schedule : after.schedules) {
    const Schedule* held = find_by_id(before.schedules, schedule.id);
    if (!held) continue;
    if (schedule.status != "approved") {
      if (held->status == "approved") schedule.approved_sha256.clear();
    } else if (held->status != "approved") {
      schedule.approved_sha256 = approval_sha256(after, schedule);
    } else if (schedule.approved_by != held->approved_by || schedule.effective_from != held->effective_from) {
      const bool was_right = held->approved_sha256 == approval_sha256(before, *held);
      if (was_right) schedule.approved_sha256 = approval_sha256(after, schedule);
    }
  }
}

}  // namespace seamtakt::desk
