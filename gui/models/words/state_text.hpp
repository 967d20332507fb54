#pragma once

#include <QString>

#include "models/tables/finding_index.hpp"

namespace seamtakt::desk {

/// A link's name in the user's language: "Heat".
QString link_word(Link link);

/// "partly judged": what is shown in place of "ok" where not all is judged.
QString partly_judged_word();
/// "not judged": the same where nothing is.
QString not_judged_word();

/// "fail", or "ok; Heat: fail" where another link's finding on the same thing is worse.
QString state_text(const RowState& state);

/// The number that rows are sorted by: the worst own findings last, among equals the worst elsewhere.
double state_rank(const RowState& state);

/// "Findings: 3 fail, 1 warnings, 12 notes", or that there are none.
QString tally_text(const Tally& tally);

}  // namespace seamtakt::desk
