#pragma once

#include <vector>

namespace seamtakt::desk {

/// A label that wants to stand beside a line.
struct RowLabel {
  double at_px = 0, wide_px = 0;
  bool left = false;  ///< of the line, where there is room
};

/// Left edges of labels in one row of a given width, none over another and each as near to its line as the
/// ones before it leave room; the first ones choose first.
std::vector<double> placed_labels(const std::vector<RowLabel>& labels, double row_px);

}  // namespace seamtakt::desk
