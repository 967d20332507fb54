#pragma once

#include <vector>

#include "drawing/edge_contact.hpp"
#include "drawing/seam_side.hpp"

namespace seamtakt::drawing {

/// The joints of one pair of parts, from the pieces found between them: a joint is a contact in one plane (or
/// on one curved surface), its type is decided for all its sides together.
std::vector<Joint> build_joints(const std::vector<Part>& parts, std::vector<SeamPiece> pieces,
                                const FindOptions& options);

}  // namespace seamtakt::drawing
