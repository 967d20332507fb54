#pragma once

#include <QString>
#include <string>
#include <vector>

#include "plan/fields/field.hpp"

namespace seamtakt::desk {

/// A node of the tree of all that a plan holds.
struct PlanNode {
  enum class Kind { object, list, absent };  ///< absent: an object that may be there and isn't
  Kind kind = Kind::object;
  std::string pointer;
  QString text;
  std::vector<PlanNode> below;
  bool is_item = false;  ///< of a list
};

/// The plan's node, whose own fields are those of the plan as a whole.
PlanNode plan_tree(const Plan& plan);

/// The keys of an object's own fields that a form shows: without what the program itself keeps.
std::vector<std::string> shown_keys(const FieldTable& table);
/// Whether objects of this struct have objects within them, and so a node of their own.
bool is_compound(const FieldTable& table);

}  // namespace seamtakt::desk
