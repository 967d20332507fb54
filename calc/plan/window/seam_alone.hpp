#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A plan cut down to one seam with all that the seam refers to: `evaluate` gives for it the same as for the
/// seam in the whole plan, at the cost of one seam.
struct SeamAlone {
  Plan plan;

  Weldment& weldment() { return plan.weldments.front(); }
  const Weldment& weldment() const { return plan.weldments.front(); }
  Seam& seam() { return weldment().seams.front(); }
  const Seam& seam() const { return weldment().seams.front(); }
  std::string place() const;
};

/// `place`: "WELDMENT/SEAM", or a seam's id that only one weldment has. InputError naming `option` where
/// there is no such seam, or more than one.
SeamAlone seam_alone(const Plan& plan, std::string_view place, const std::string& option);
SeamAlone seam_alone(const Plan& plan, const Weldment& weldment, const Seam& seam);

/// Places where a fail counts for the passes (1, 2, ...) of the seam and for the seam itself.
std::vector<std::string> judged_places(const SeamAlone& alone, const std::vector<int>& passes);

/// The passes of the seam that are welded with a schedule.
std::vector<int> passes_with(const Seam& seam, std::string_view schedule);

}  // namespace seamtakt
