#pragma once

#include <vector>

#include "cell/search/seeded_draws.hpp"
#include "cell/timeline/scheduler.hpp"

namespace seamtakt {

/// The given order with balance kept: seams in the order of `sequence_given`; where one can't be next, the
/// first one after it that can.
Sequence repaired_order(const CellModel& model, const Sequence& wanted);

/// A sequence built step by step: of all passes that may come next without turning the positioner the one
/// that can be begun first, with its start changed at random by `noise` (0: unchanged). When nothing is left
/// in an orientation, the positioner turns to the next of `orientations` in which something can be welded.
Sequence greedy_order(const CellModel& model, const std::vector<int>& orientations, double noise,
                      SeededDraws& draws);

}  // namespace seamtakt
