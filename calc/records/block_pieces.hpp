#pragma once

#include "records/pass_accumulator.hpp"
#include "records/sample_run.hpp"

namespace seamtakt {

/// A block's sums of whole numbers on the grid that all sums are on: exact. Only of an arc-on block.
ArcPiece piece_of(const SampleRun& run, const RowBlock& block, bool power_logged);

}  // namespace seamtakt
