#include "formula/melting.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

void judge_melting_law(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (facts.schedule.current_A) return;
  const std::string place = facts.place();
  add_if_any(findings, outside_range(melting_current_range, pass.current_A, place));
  add_if_any(findings,
             outside_range(melting_extension_range,
                           facts.schedule.contact_tip_distance_mm - facts.schedule.arc_length_mm, place));
}

}  // namespace seamtakt
