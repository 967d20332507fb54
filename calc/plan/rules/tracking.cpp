#include "plan/rules/rules.hpp"

namespace seamtakt {

// The through-arc signal needs side walls: below about 3 mm of leg it is lost in the noise, and without a
// weave there is no signal.
void judge_tracking(const SeamFacts& facts, Findings& findings) {
  if (facts.seam.tracking != "through-arc") return;
  constexpr double least_leg_mm = 3, sure_leg_mm = 4;
  if (facts.figures.leg_needed_mm && *facts.figures.leg_needed_mm < least_leg_mm)
    findings.push_back(
        {"tracking.leg.too-small", Severity::warn, facts.place(), *facts.figures.leg_needed_mm, least_leg_mm,
         "mm",
         Sentence("tracking.leg.too-small"_key, {{"leg", UnitValue{*facts.figures.leg_needed_mm, "mm", 3}},
                                                 {"from", UnitValue{least_leg_mm, "mm"}},
                                                 {"to", UnitValue{sure_leg_mm, "mm"}}}),
         "common practice, no source"});
  for (const std::string& id : facts.seam.schedules) {
    const Schedule* schedule = facts.index.schedule(id);
    if (!schedule || (schedule->weave && schedule->weave->half_width_mm > 0)) continue;
    findings.push_back({"tracking.no-weave",
                        Severity::warn,
                        facts.place(),
                        {},
                        {},
                        "",
                        Sentence("tracking.no-weave"_key, {{"schedule", id}}),
                        "common practice, no source"});
    break;
  }
}

}  // namespace seamtakt
