#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "base/sentences/sentence_text.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// How a seam is shown: the worst of what is found on it, and the figures of the finding that fails.
struct SeamMark {
  std::optional<Severity> severity;
  std::optional<double> value, limit;  ///< in `unit`
  std::string unit;
};

/// The marks of a weldment's seams, in their order, from the findings on them and their passes. Of several
/// that fail the first one with figures counts.
std::vector<SeamMark> seam_marks(const Weldment& weldment, const Findings& findings);

/// "5.1 of 6 mm" in the view's units; empty where the mark has no two figures.
std::string mark_text(const SeamMark& mark, const TextView& view);

/// The weldment in parallel projection as an SVG drawing: its plates in three tones, seams as beads in the
/// colour of their state, hidden parts thin, stitches as stitches; seams that fail have a label with their
/// figures (at most 12 of them). Empty where the weldment has neither plates nor seams.
std::string weldment_svg(const Weldment& weldment, const std::vector<SeamMark>& marks, const TextView& view);

}  // namespace seamtakt
