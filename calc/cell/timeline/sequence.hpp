#pragma once

#include <cstdint>
#include <vector>

#include "cell/timeline/cell_model.hpp"

namespace seamtakt {

/// One pass of a seam by a robot. Which pass it is follows from the sequence: the k-th step of a seam is its
/// pass k.
struct Step {
  std::int32_t seam = 0;  ///< index in CellModel::seams
  std::int16_t robot = 0;
  bool reversed = false;  ///< against the drawn direction
};

/// All passes of all seams. A robot's own list is the subsequence of its steps; the common order is that in
/// which steps claim what robots share: zones, the positioner, precedence. Every timeline without needless
/// idle time is some such order (take the steps by their start), so a search over sequences loses none.
using Sequence = std::vector<Step>;

/// The order "given": each seam by the first robot of its list that can weld it, each robot in file order,
/// passes of a seam in a row, odd ones as drawn, even ones reversed where the seam allows. Of the robots'
/// next seams the one that can leave earliest claims first; of equals, the first in the file. Where every
/// robot's next seam comes after one that is later in a list, the first seam in the file that may be welded
/// is taken instead, and the seam it overtakes is reported in `overtaken` (each once).
Sequence sequence_given(const CellModel& model, std::vector<int>* overtaken = nullptr);

}  // namespace seamtakt
