#pragma once

#include "plan/fields/field_path.hpp"

namespace seamtakt {

/// What no field of a line alone can tell: that days and times of its calendar are some, breaks lie in their
/// shift, shifts don't overlap and leave time to work; that assembly's takt is given where it pulls at it;
/// that a stage's time varies in one way, least <= usual <= most; that a stage has people of one group.
/// Refuses the first that doesn't hold. `place` is at the line.
void check_line_relations(const Line& line, FieldPath& place);

}  // namespace seamtakt
