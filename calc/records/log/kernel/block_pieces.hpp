#pragma once

#include "records/log/sample_run.hpp"
#include "records/passes/pass_accumulator.hpp"

namespace seamtakt {

/// A block's sums of whole numbers on the grid that all sums are on: exact. Only of an arc-on block.
ArcPiece piece_of(const SampleRun& run, const RowBlock& block, bool power_logged);

}  // namespace seamtakt
