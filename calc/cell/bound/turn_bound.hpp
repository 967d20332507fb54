#pragma once

#include "cell/timeline/cell_model.hpp"

namespace seamtakt {

/// The least time of all turns of the positioner (s) in any cycle: the orientations that seams ask for are
/// each there once at least, in any order, from any first one; or out of the load orientation and back to it
/// where there is one. Exact for up to 12 orientations (held-karp dynamic programme over sets; turns may lead
/// over other orientations); above, each orientation counts its shortest turn into it. Source: held-karp-1962
/// (recalled).
double least_turns_s(const CellModel& model);

/// What returning to an orientation that isn't the load orientation adds to that at least (s).
double least_return_s(const CellModel& model);

}  // namespace seamtakt
