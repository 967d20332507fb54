#include "formula/wire/melting.hpp"
#include "plan/rules/rules.hpp"
#include "plan/wire_extension.hpp"

namespace seamtakt {

void judge_melting_law(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (facts.schedule.current_A) return;
  const double extension = wire_extension_mm(facts.schedule);
  if (!is_inside(melting_current_range, pass.current_A))
    add_if_any(findings, outside_range(melting_current_range, pass.current_A, facts.place()));
  if (!is_inside(melting_extension_range, extension))
    add_if_any(findings, outside_range(melting_extension_range, extension, facts.place()));
}

}  // namespace seamtakt
