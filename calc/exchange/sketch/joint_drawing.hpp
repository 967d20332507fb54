#pragma once

#include <set>

#include "base/sentences/sentence_text.hpp"
#include "exchange/sketch/drawing.hpp"
#include "exchange/sketch/joint_shape.hpp"

namespace seamtakt {

/// The joint to scale in a box of 228 x 168 units, its dimensions with ticks and texts, its runs numbered:
/// those in `filled` as filled discs. `caption`: below it, and what it is called.
Drawing joint_drawing(const SketchedJoint& shape, const std::set<int>& filled, const SheetCell& caption,
                      const TextView& view);

}  // namespace seamtakt
