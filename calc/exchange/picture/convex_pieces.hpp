#pragma once

#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// A convex part of a polygon.
struct ConvexPiece {
  std::vector<NumberPair> corners_mm;  ///< anticlockwise
  std::vector<char> is_edge;           ///< whether the side from this corner to the next is the polygon's own
};

/// A polygon without its holes as convex parts: each hole is joined to the outline by a cut, ears are cut
/// off, and triangles joined again where the result is convex. `outline` and holes: anticlockwise, without
/// self-crossings, holes inside and apart. Where that doesn't hold, the parts may overlap or leave gaps.
/// Recalled: ear clipping, and joining of triangles over inner sides.
std::vector<ConvexPiece> convex_pieces(const std::vector<NumberPair>& outline,
                                       const std::vector<std::vector<NumberPair>>& holes);

}  // namespace seamtakt
