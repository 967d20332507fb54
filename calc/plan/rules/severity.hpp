#pragma once

#include <string>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// A rule whose source recommends: a plan may give it another severity. What a standard demands can't be
/// lowered, so no other rule is here.
struct RecommendingRule {
  const char* rule;
  std::string RuleSeverities::*chosen;
  const char* word;  ///< of a form
  const char* help;
};

inline constexpr RecommendingRule recommending_rules[] = {
    {"preheat.below-needed", &RuleSeverities::preheat_needed, "preheat below the need",
     "EN 1011-2 recommends: a shortfall of preheat."},
    {"tack.leg.too-large", &RuleSeverities::tack_leg, "large tacks",
     "Common practice: a tack that is larger than the seam."},
    {"tack.length.short", &RuleSeverities::tack_length, "short tacks",
     "Common practice: a tack that is shorter than recommended."},
    {"tracking.leg.too-small", &RuleSeverities::tracking_leg, "small legs tracked",
     "Common practice: a leg too small to be tracked through the arc."},
    {"tracking.no-weave", &RuleSeverities::tracking_weave, "tracking without weave",
     "Common practice: tracking through the arc without a weave."},
    {"fillet.run.too-short", &RuleSeverities::run_length, "short runs",
     "Runs of an intermittent weld that are shorter than recommended."},
    {"composition.basis.no-certificate", &RuleSeverities::certificate, "no certificate",
     "Common practice: a composition that isn't from a certificate."}};

/// Gives the findings of those rules the severities that the plan chooses.
void apply_severities(const Plan& plan, Findings& findings);

}  // namespace seamtakt
