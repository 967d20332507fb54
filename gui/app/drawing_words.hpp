#pragma once

#include <QString>

#include "exchange/drawing/drawing_import.hpp"

namespace seamtakt::desk {

class UnitView;

/// The seam's id where it has one, else the joint and its side: "J3/2".
QString side_name(const DrawingCandidate& side);

/// "throat 4 mm".
QString size_text(const ProposedSize& size, const UnitView& units);

/// What becomes of a side, and why: "lacks metal, schedule", "left out: inner".
QString state_text(const DrawingCandidate& side);

}  // namespace seamtakt::desk
