#include "plan/rules/preheat_range.hpp"

#include <algorithm>
#include <string>

#include "plan/evaluate/joint_metals.hpp"

namespace seamtakt {

namespace {

/// In the order of preheat_input_ranges.
constexpr Word names[] = {"CET"_word, "plate thickness"_word, "diffusible hydrogen"_word, "heat input"_word};

constexpr int digits = 3;

/// The end of the range beyond which the method isn't judged.
double judged_end(const PreheatInputRange& input) {
  return input.edge_is_upper ? input.range.lower : input.range.upper;
}

}  // namespace

void PreheatRangeTally::add_beyond(const PassFacts& facts, const PassEvaluation& pass) {
  // CET is expensive to compute and is seldom the cause.
  const std::uint8_t cet_bit = preheat_input_ranges[0].bit;
  const PreheatInputs values{
      pass.preheat_beyond & cet_bit ? joint_metals(facts).design_cet_pct.value_or(0) : 0,
      std::max(facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]),
      facts.wire.hydrogen_ml_100g.value_or(0), pass.heat_input_kJ_mm};
  for (std::size_t i = 0; i < inputs; ++i)
    if (const PreheatInputRange& input = preheat_input_ranges[i]; pass.preheat_beyond & input.bit)
      take(beyond_[facts.schedule.id][i], {1, values.*input.value}, input);
}

void PreheatRangeTally::take(Beyond& to, const Beyond& more, const PreheatInputRange& input) {
  if (more.passes == 0) return;
  const bool is_farther = input.edge_is_upper ? more.farthest < to.farthest : more.farthest > to.farthest;
  if (to.passes == 0 || is_farther) to.farthest = more.farthest;
  to.passes += more.passes;
}

void PreheatRangeTally::add(const PreheatRangeTally& other) {
  passes_at_edge_ += other.passes_at_edge_;
  inputs_at_edge_ |= other.inputs_at_edge_;
  for (const auto& [schedule, others] : other.beyond_)
    for (std::size_t i = 0; i < inputs; ++i) take(beyond_[schedule][i], others[i], preheat_input_ranges[i]);
}

void PreheatRangeTally::report_edge(Findings& findings) const {
  if (passes_at_edge_ == 0) return;
  std::vector<Sentence> edges;
  for (std::size_t i = 0; i < inputs; ++i) {
    const PreheatInputRange& input = preheat_input_ranges[i];
    if (!(inputs_at_edge_ & input.bit)) continue;
    const double edge = input.edge_is_upper ? input.range.upper : input.range.lower;
    edges.emplace_back(
        "preheat.range-input"_key,
        std::vector<Argument>{{"input", names[i]}, {"value", UnitValue{edge, input.range.unit, digits}}});
  }
  findings.push_back(remark(
      "preheat.at-range-edge", "plan",
      Sentence("preheat.at-range-edge"_key, {{"passes", passes_at_edge_}, {"edges", std::move(edges)}}),
      method_b_source));
}

void PreheatRangeTally::report(const Plan& plan, Findings& findings) const {
  report_edge(findings);
  for (const Schedule& schedule : plan.schedules) {
    const auto found = beyond_.find(schedule.id);
    if (found == beyond_.end()) continue;
    for (std::size_t i = 0; i < inputs; ++i) {
      const Beyond& beyond = found->second[i];
      if (beyond.passes == 0) continue;
      const PreheatInputRange& input = preheat_input_ranges[i];
      Finding finding = remark(
          "preheat.not-judged", schedule.id,
          Sentence(input.edge_is_upper ? "preheat.not-judged.below"_key : "preheat.not-judged.above"_key,
                   {{"passes", beyond.passes},
                    {"schedule", schedule.id},
                    {"input", names[i]},
                    {"value", UnitValue{beyond.farthest, input.range.unit, digits}},
                    {"bound", UnitValue{judged_end(input), input.range.unit, digits}}}),
          method_b_source);
      finding.value = beyond.farthest;
      finding.limit = judged_end(input);
      finding.unit = input.range.unit;
      findings.push_back(std::move(finding));
    }
  }
}

}  // namespace seamtakt
