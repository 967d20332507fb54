#pragma once

#include <string>

#include "cell/timeline/timeline.hpp"

namespace seamtakt {

/// The robots' timelines as an SVG drawing: a row a robot, each kind of move with its own height and hatch as
/// well as its colour, the takt limit as a line.
std::string cycle_svg(const CycleResult& cycle);

}  // namespace seamtakt
