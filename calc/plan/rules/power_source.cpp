#include "formula/wire/duty_cycle.hpp"
#include "plan/rules/rules.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

// One arc alone: the source's duty over the whole shift is judged on the robot's timeline.
void judge_power_source(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  if (!facts.power_source || !facts.power_source->rated_current_A) return;
  const double rated = *facts.power_source->rated_current_A;
  const double duty = facts.power_source->rated_duty_pct.value_or(100);
  if (pass.current_A > rated)
    findings.push_back({"power-source.current.above-rating", Severity::fail, facts.place(), pass.current_A,
                        rated, "A",
                        Sentence("power-source.current.above-rating"_key,
                                 {{"current", UnitValue{pass.current_A, "A"}},
                                  {"rated", UnitValue{rated, "A"}},
                                  {"source", facts.power_source->id}}),
                        "IEC 60974-1, rating plate (recalled)"});
  constexpr double period_s = 600;
  const double allowed_pct = std::min(100.0, duty_at_current_pct(rated, duty, pass.current_A));
  const auto runs = weld_runs(facts.seam);
  const double longest_s =
      (runs.empty() ? 0 : runs[0].to_mm - runs[0].from_mm) / facts.schedule.travel_speed_mm_s;
  const double allowed_s = allowed_pct / 100 * period_s;
  if (allowed_pct < 100 && longest_s > allowed_s)
    findings.push_back(
        {"power-source.duty.single-arc", Severity::fail, facts.place(), longest_s, allowed_s, "s",
         Sentence("power-source.duty.single-arc"_key, {{"arc", UnitValue{longest_s, "s"}},
                                                       {"current", UnitValue{pass.current_A, "A"}},
                                                       {"allowed", UnitValue{allowed_s, "s"}},
                                                       {"source", facts.power_source->id},
                                                       {"period", UnitValue{period_s / 60, "min"}}}),
         "power-source makers' duty-cycle rule I2 = I1*sqrt(D1/D2)"});
}

}  // namespace seamtakt
