#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.hpp"

/// What differs between the lists that can be imported.
namespace seamtakt {

/// The items of a list: the seams of one of a plan's weldments, or its schedules.
inline std::vector<Seam>& items_of(Plan& plan, const std::string& weldment, const Seam*) {
  return find_by_id(plan.weldments, weldment)->seams;
}
inline std::vector<Schedule>& items_of(Plan& plan, const std::string&, const Schedule*) {
  return plan.schedules;
}

inline bool is_locked(const Seam&) {
  return false;
}
inline bool is_locked(const Schedule& schedule) {
  return schedule.status == "reviewed" || schedule.status == "approved";
}

/// Ids of other seams that this one refers to.
inline std::vector<std::string> referred(const Seam& seam) {
  std::vector<std::string> ids = seam.after;
  if (!seam.with.empty()) ids.push_back(seam.with);
  return ids;
}
inline std::vector<std::string> referred(const Schedule&) {
  return {};
}

/// The first key of a JSON pointer: the field that a check complains about.
inline std::string first_key(const std::string& pointer) {
  if (pointer.size() < 2) return {};
  return pointer.substr(1, pointer.find('/', 1) - 1);
}

}  // namespace seamtakt
