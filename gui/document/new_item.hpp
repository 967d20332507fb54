#pragma once

#include <string>

#include "plan/plan.hpp"

namespace seamtakt::desk {

/// "S12" -> "S13", "BD" -> "BD-2": the next id that the list doesn't have.
template <class List>
std::string next_id(const List& list, const std::string& like);

std::string id_after(const std::string& id);

template <class List>
std::string next_id(const List& list, const std::string& like) {
  std::string id = like.empty() ? "1" : like;
  while (find_by_id(list, id)) id = id_after(id);
  return id;
}

/// A tee fillet beside the last seam of the weldment, with its metals and schedule: something that holds at
/// once and is then drawn right.
Seam new_seam(const Plan& plan, const Weldment& weldment);

}  // namespace seamtakt::desk
