#pragma once

#include <span>

#include "exchange/picture/parallel_view.hpp"

namespace seamtakt {

/// A label beside the picture of what it names, joined to it by a line. In the units of the rectangle, y
/// down.
struct LeaderLabel {
  double anchor_x = 0, anchor_y = 0;  ///< what it names
  double width = 0, height = 0;
  double x = 0, y = 0;  ///< its upper left corner, which place_labels sets
};

/// Gives each label, in this order, the nearest of a few places round its anchor where it lies in the
/// rectangle and on no other label; where there is none, the last that lies in the rectangle.
void place_labels(std::span<LeaderLabel> labels, const FitRectangle& rectangle);

}  // namespace seamtakt
