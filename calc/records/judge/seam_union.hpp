#pragma once

#include <cstddef>
#include <span>

#include "plan/plan.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// Which of the records says what is needed and by how much all together may be short: the one that is
/// allowed most, as the union is no more certain than the least certain of them. At least one record.
const PassCoverage& least_certain(std::span<const PassCoverage* const> records);

/// What the records of one pass cover together, each place counted once: an interrupted pass goes on in the
/// next log.
struct SeamUnion {
  double covered_mm = 0;                        ///< of what is needed, at most all of it
  std::size_t runs_needed = 1, runs_found = 0;  ///< 1 needed: a continuous seam
  double longest_gap_mm = 0;                    ///< between neighbouring runs of an intermittent seam
};

/// What a seam needs, with nothing welded of it yet.
PassCoverage coverage_needed(const Seam& seam);

/// Whether both were projected on the same seam as far as lengths tell: path, runs and gaps agree.
bool same_seam(const PassCoverage& a, const PassCoverage& b);

/// The union of the records' spans; the length of a record without spans is added. Of an intermittent seam
/// only its runs count: what lies where they are drawn, or, where the runs were moved along the seam, as many
/// of the longest as are drawn, each up to its drawn length. Of a closed seam the overlap counts too. None of
/// this is from a standard.
SeamUnion union_of(std::span<const PassCoverage* const> records);

/// Whether that is less than the seam needs, by more than is allowed.
bool is_short(const PassCoverage& seam, const SeamUnion& found);

}  // namespace seamtakt
