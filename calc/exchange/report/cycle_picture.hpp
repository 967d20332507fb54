#pragma once

#include <string>

#include "base/sentences/sentence_text.hpp"
#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// The robots' timelines as an SVG drawing: a row a robot, each kind of move with its own height and hatch as
/// well as its colour, the takt limit as a line. Empty where there is nothing to draw.
std::string cycle_svg(const CycleResult& cycle, const TextView& view);

}  // namespace seamtakt
