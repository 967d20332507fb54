#pragma once

#include <vector>

#include "drawing/edge_contact.hpp"
#include "drawing/seam_side.hpp"

namespace seamtakt::drawing {

/// Where a round surface of one part touches a flat or a round one of the other in a line: no edge runs
/// there, and the air beside it begins at an angle of nothing. Each open side is a piece with the flag
/// `flare` and without an angle.
std::vector<SeamPiece> touch_lines(const std::vector<Part>& parts, int a, int b,
                                   const std::vector<const Body*>& thirds, const FindOptions& options);

}  // namespace seamtakt::drawing
