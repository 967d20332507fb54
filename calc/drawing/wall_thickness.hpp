#pragma once

#include <optional>

#include "drawing/part.hpp"

namespace seamtakt::drawing {

/// Material behind a place of a surface, straight in, up to a surface that looks the other way. Empty where
/// that isn't a thickness: the surface ahead is at a slant, or the body reaches less far to the sides than it
/// is deep. Then the line runs along a plate, not through it: the 5 mm wall of a slot in a plate of 450 mm is
/// no wall of 450 mm. `along`: the seam, which gives the two directions to the sides.
std::optional<double> wall_thickness_mm(const Body& body, const gp_Pnt& place, const gp_Vec& outward_normal,
                                        const gp_Vec& along);

}  // namespace seamtakt::drawing
