#pragma once

#include "cell/timeline/sequence.hpp"

namespace seamtakt {

/// Pairs: two seams that two robots begin together. In a sequence the first steps of the two follow one
/// another and are of different robots; in what order, doesn't matter.

/// Whether a seam can't be begun before another one is done: by `after`, directly or through others, where
/// what is begun together with a seam waits as long as that seam.
bool has_to_follow(const CellModel& model, int seam, int before);

/// Puts the first step of a pair's later seam behind that of the other, and gives one of them another robot
/// where both have the same. The result may be one that can't be welded.
void join_pairs(const CellModel& model, Sequence& sequence);

/// The same model without pairs.
CellModel without_pairs(const CellModel& model);

/// A sequence that can be welded, made of one that can be welded without_pairs: the steps in their order,
/// except where a pair or what waits for it has to come later.
Sequence paired_order(const CellModel& model, const Sequence& wanted);

}  // namespace seamtakt
