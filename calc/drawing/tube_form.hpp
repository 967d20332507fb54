#pragma once

#include "drawing/part.hpp"

namespace seamtakt::drawing {

/// The straight hollow section that a body is, round or rectangular, whatever its ends; empty where it is
/// none.
std::optional<TubeShape> tube_of(const Body& body);

}  // namespace seamtakt::drawing
