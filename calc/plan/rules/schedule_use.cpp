#include <algorithm>

#include "base/text/comma_list.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

bool contains(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

void judge_downhill(const PassFacts& facts, Findings& findings) {
  const std::string& position = facts.seam.position;
  if ((position != "PF" && position != "PG") || facts.seam.path_mm.size() < 2) return;
  const double rise = facts.seam.path_mm.back()[2] - facts.seam.path_mm.front()[2];
  // Only where the positioner leaves the part as drawn does the path's z tell up from down.
  if (!facts.seam.orientation.empty() || rise == 0) return;
  if ((position == "PF") == (rise > 0)) return;
  findings.push_back({"seam.direction.against-position",
                      Severity::warn,
                      facts.place(),
                      rise,
                      {},
                      "mm",
                      Sentence(rise > 0 ? "seam.direction.against-position.up"_key
                                        : "seam.direction.against-position.down"_key,
                               {{"position", position}}),
                      "ISO 6947:2019, 4"});
}

}  // namespace

void judge_schedule_use(const PassFacts& facts, const PassEvaluation&, Findings& findings) {
  judge_downhill(facts, findings);
  if (!facts.schedule.use) return;
  const ScheduleUse& use = *facts.schedule.use;
  if (!use.positions.empty() && !facts.seam.position.empty() && !contains(use.positions, facts.seam.position))
    findings.push_back({"schedule.use.position",
                        Severity::fail,
                        facts.place(),
                        {},
                        {},
                        "",
                        Sentence("schedule.use.position"_key, {{"schedule", facts.schedule.id},
                                                               {"positions", comma_list(use.positions)},
                                                               {"position", facts.seam.position}}),
                        "plan limit"});
  if (use.thickness_mm)
    for (double thickness : facts.seam.thickness_mm)
      judge_interval("schedule.use.thickness", "Plate thickness"_word, "mm", thickness, {}, *use.thickness_mm,
                     false, facts, findings);
  if (use.gap_mm)
    judge_interval("schedule.use.gap", "Gap"_word, "mm", facts.seam.gap_max_mm.value_or(facts.seam.gap_mm),
                   {}, *use.gap_mm, false, facts, findings);
  if (use.leg_mm && facts.seam.leg_mm)
    judge_interval("schedule.use.leg", "Leg as drawn"_word, "mm", *facts.seam.leg_mm, {}, *use.leg_mm, false,
                   facts, findings);
}

// A steady spray or globular pool of solid or metal-cored wire runs out of the joint where it isn't held from
// below; a flux-cored wire's slag holds it.
void judge_transfer_position(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  const std::string &process = facts.schedule.process, &position = facts.seam.position;
  const std::string& mode = pass.transfer_mode;
  if ((process != "135" && process != "138") || (mode != "spray" && mode != "globular")) return;
  if (position != "PF" && position != "PD" && position != "PE") return;
  findings.push_back(
      {"transfer.position",
       Severity::warn,
       facts.place(),
       {},
       {},
       "",
       Sentence("transfer.position"_key, {{"mode", mode == "spray" ? "spray"_word : "globular"_word},
                                          {"process", process},
                                          {"position", position}}),
       "common practice, no source"});
}

}  // namespace seamtakt
