#pragma once

#include <vector>

#include "drawing/seam_side.hpp"

namespace seamtakt::drawing {

struct ChainedPiece {
  SeamPiece piece;
  std::array<std::optional<double>, 2> thickness_mm;
};

/// The end of one is the other's end, and they run on in line.
bool go_on_in_line(const SeamPiece& one, const SeamPiece& other);

/// Joins pieces that go on in line and are of the same kind.
std::vector<SeamSide> chain(std::vector<ChainedPiece> pieces);

}  // namespace seamtakt::drawing
