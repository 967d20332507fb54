#include "formula/wire/melting.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

void judge_melting_law(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (facts.schedule.current_A) return;
  const double extension = facts.schedule.contact_tip_distance_mm - facts.schedule.arc_length_mm;
  if (!is_inside(melting_current_range, pass.current_A))
    add_if_any(findings, outside_range(melting_current_range, pass.current_A, facts.place()));
  if (!is_inside(melting_extension_range, extension))
    add_if_any(findings, outside_range(melting_extension_range, extension, facts.place()));
}

}  // namespace seamtakt
