#pragma once

#include "records/log/sample_run.hpp"
#include "records/passes/pass_accumulator.hpp"

namespace seamtakt {

/// A block's sums of whole numbers on the grid that all sums are on: exact. Only of an arc-on block.
ArcPiece piece_of(const SampleRun& run, const RowBlock& block, bool power_logged);

/// The rows of an arc-on block, or of a group of the run's blocks. Sums of what the bins of a pass are judged
/// on, and no others. Borrows both.
class BlockRows : public StretchRows {
 public:
  BlockRows(const SampleRun& run, const RowBlock& block) : run_(run), block_(block) {}

  SteadyPiece first(std::int64_t least_ns) const override;

 private:
  const SampleRun& run_;
  const RowBlock& block_;
};

}  // namespace seamtakt
