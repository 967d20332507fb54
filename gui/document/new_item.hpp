#pragma once

#include <concepts>
#include <string>

#include "plan/plan.hpp"

namespace seamtakt::desk {

std::string id_after(const std::string& id);

/// "S12" -> "S13", "BD" -> "BD-2": the next id that isn't taken.
template <std::predicate<const std::string&> IsTaken>
std::string next_id(const std::string& like, const IsTaken& is_taken) {
  std::string id = like.empty() ? "1" : like;
  while (is_taken(id)) id = id_after(id);
  return id;
}

/// The next id that the list doesn't have.
template <class List>
std::string next_id(const List& list, const std::string& like) {
  return next_id(like, [&](const std::string& id) { return find_by_id(list, id) != nullptr; });
}

/// A tee fillet beside the last seam of the weldment, with its metals and schedule: a valid seam at once, to
/// be corrected then.
Seam new_seam(const Plan& plan, const Weldment& weldment);

}  // namespace seamtakt::desk
