#pragma once

#include <cstddef>
#include <span>

#include "plan/plan.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// The record that gives the required length and by how much the union may be short: the one with the largest
/// allowance, as the union is no more certain than the least certain of them. At least one record.
const PassCoverage& least_certain(std::span<const PassCoverage* const> records);

/// What the records of one pass cover together, each place counted once: an interrupted pass continues in the
/// next log.
struct SeamUnion {
  double covered_mm = 0;                        ///< of what is needed, at most all of it
  std::size_t runs_needed = 1, runs_found = 0;  ///< 1 needed: a continuous seam
  /// Drawn runs that what was found may be: a run that was welded on through a gap is two. As many as needed
  /// where no positions tell.
  std::size_t runs_counted = 1;
  double longest_gap_mm = 0;  ///< between neighbouring runs of an intermittent seam
  double longest_run_mm = 0;  ///< of an intermittent seam
};

/// What a seam needs, with nothing welded of it yet.
PassCoverage coverage_needed(const Seam& seam);

/// Whether both were projected on the same seam, judged by lengths: path, runs and gaps agree.
bool same_seam(const PassCoverage& a, const PassCoverage& b);

/// The union of the records' spans; the length of a record without spans is added. Of an intermittent seam
/// only its runs count: what is where they are drawn, or, where the runs were moved along the seam, as many
/// of the longest as are drawn, each up to its drawn length. Of a closed seam the overlap counts too. None of
/// this is from a standard.
SeamUnion union_of(std::span<const PassCoverage* const> records);

/// Whether that is less than the seam needs, by more than is allowed, or in fewer runs.
bool is_short(const PassCoverage& seam, const SeamUnion& found);

}  // namespace seamtakt
