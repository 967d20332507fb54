#pragma once

#include <cstdint>
#include <string>

#include "records/keep/record_history.hpp"

namespace seamtakt {

/// Whether the plan by which a pass or manual seam was stored asks for four eyes (`record_requires`:
/// four_eyes_requirement): who opened what is open about it doesn't decide alone to use it as it is.
bool needs_four_eyes(RecordHistory& history, std::uint64_t weld);

/// InputError at --who where `who` wrote record `opening` (a nonconformance, or the undecided pass itself),
/// which is about `weld` or is it, and four eyes are asked for. Names are compared without regard to case and
/// blanks; one that was erased is nobody's.
void check_four_eyes(RecordHistory& history, std::uint64_t weld, std::uint64_t opening,
                     const std::string& who);

}  // namespace seamtakt
