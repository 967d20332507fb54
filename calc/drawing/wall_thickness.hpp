#pragma once

#include <optional>

#include "drawing/part.hpp"

namespace seamtakt::drawing {

/// Material behind a place of a surface, straight in, up to a surface that looks the other way; empty where
/// the next surface is at a slant.
std::optional<double> wall_thickness_mm(const Body& body, const gp_Pnt& place, const gp_Vec& outward_normal);

}  // namespace seamtakt::drawing
