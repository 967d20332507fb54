#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "base/sentences/sentence.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// How large the fillet obtained may become. "Needed" is the drawn size.

/// Throat over the drawn one that the seam's quality level allows.
struct ExcessThroat {
  double excess_mm = 0;
  const char* source = "";
};

/// ISO 5817, 5214 (iso-5817); empty where the seam states no level or its level has no limit (D).
/// throat_needed_mm: as drawn.
std::optional<ExcessThroat> excess_throat(const Seam& seam, double throat_needed_mm);

/// An upper limit of the fillet that fit and window keep to.
struct LargestFillet {
  std::string rule;
  Sentence what;
  std::string source;
  bool is_leg = false;  ///< a limit of the leg, else of the throat
  double limit_mm = 0;
  double less_mm = 0;     ///< taken off the value first: what the largest gap costs
  bool is_stated = true;  ///< by the plan or its quality level; else common practice
};

/// The least of those that the seam has and whose rule isn't skipped: its leg_max_mm and throat_max_mm, the
/// drawn throat with the excess that its quality level allows, and the drawn throat with max(1 mm, 25 %)
/// (common practice, no source; judged at the largest gap where the plan states one, as a seam that is
/// planned for that gap is larger where the parts fit). Empty for a groove.
std::optional<LargestFillet> largest_fillet(const Seam& seam,
                                            const std::function<bool(std::string_view)>& is_skipped);

/// The drawn throat of a fillet seam (mm).
double throat_needed_mm(const Seam& seam);

}  // namespace seamtakt
