#pragma once

#include "plan/fields/field_path.hpp"

namespace seamtakt {

/// What no field of a plate alone can tell: that u and v are unit vectors at right angles (1e-6), and that
/// the outlines of the plate and of its holes have at most 2000 corners, have an area and neither cross nor
/// touch themselves. A corner that repeats the one before it counts once, at the end too. Refuses the first
/// that doesn't hold. `place` is at the weldment.
void check_plate_relations(const Weldment& weldment, FieldPath& place);

}  // namespace seamtakt
