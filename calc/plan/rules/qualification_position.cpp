#include <map>
#include <set>
#include <string_view>

#include "base/text/comma_list.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

/// The test of a schedule, where its position may matter; nullptr otherwise.
const TestedWeld* test_with_position(const PlanIndex& index, const Schedule& schedule) {
  const TestedWeld* tested = index.parts_of(schedule).iso_test;
  const bool matters = tested && !tested->position.empty() &&
                       (tested->impact_tested.value_or(false) || tested->hardness_tested.value_or(false));
  return matters ? tested : nullptr;
}

using Positions = std::set<std::string_view>;

/// Of the seams of each schedule whose test's position may matter, those that weren't tested.
std::map<const Schedule*, Positions> untested_positions(const Plan& plan, const PlanIndex& index) {
  std::map<const Schedule*, Positions> found;
  for (const Schedule& schedule : plan.schedules)
    if (test_with_position(index, schedule)) found[&schedule];
  if (found.empty()) return found;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      for (const std::string& id : seam.schedules) {
        const auto at = found.find(index.schedule(id));
        if (at == found.end() || seam.position.empty() || seam.position == "PG") continue;
        if (seam.position != index.parts_of(*at->first).iso_test->position) at->second.insert(seam.position);
      }
  return found;
}

}  // namespace

// Impact specimens come from the position of the highest heat input, hardness from that of the lowest: a test
// in one position holds for others only as far as it was that one.
void judge_qualification_positions(const Plan& plan, const PlanIndex& index, Findings& findings) {
  const auto untested = untested_positions(plan, index);
  for (const Schedule& schedule : plan.schedules) {
    const auto at = untested.find(&schedule);
    if (at == untested.end() || at->second.empty()) continue;
    const std::vector<std::string> positions(at->second.begin(), at->second.end());
    findings.push_back({"qualification.position.other",
                        Severity::note,
                        schedule.id,
                        {},
                        {},
                        "",
                        Sentence("qualification.position.other"_key,
                                 {{"schedule", schedule.id},
                                  {"positions", comma_list(positions)},
                                  {"qualification", schedule.qualification},
                                  {"tested", index.parts_of(schedule).iso_test->position}}),
                        "ISO 15614-1:2017, 8.4.2 (recalled)"});
  }
}

}  // namespace seamtakt
