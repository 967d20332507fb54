#include "base/text/comma_list.hpp"
#include "plan/rules/rules.hpp"
#include "plan/rules/use_of_schedule.hpp"

namespace seamtakt {

namespace {

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
  if (!is_used_position(use, facts.seam))
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
  each_used_value(use, facts.seam, [&](const UsedValue& used) {
    judge_interval(used.rule, used.what, "mm", used.value_mm, {}, used.limit, false, facts, findings);
  });
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
