#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.hpp"

/// An id is changed by a command, and what refers to it follows in the same step.
namespace seamtakt::desk {

/// A field that names the item.
struct Reference {
  std::string pointer, key;
  bool operator==(const Reference&) const = default;
};
/// The fields that name the item at `pointer` (an item of a list), in the plan's order; accepted findings on
/// its place too, with the key "where".
std::vector<Reference> references_to(const Plan& plan, std::string_view pointer);

/// Gives the item another id, and all references to it. InputError where the id can't be used; whether it is
/// free is checked with the plan as a whole.
void rename_item(Plan& plan, std::string_view pointer, const std::string& id);

/// The ids on the way to the object at `pointer`, as a person names it: "BD/S03", "R1"; what has none is left
/// out.
std::string item_name(const Plan& plan, std::string_view pointer);

}  // namespace seamtakt::desk
