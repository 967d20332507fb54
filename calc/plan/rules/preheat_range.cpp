#include "plan/rules/preheat_range.hpp"

#include <algorithm>
#include <string>

#include "base/units/units.hpp"
#include "plan/evaluate/joint_metals.hpp"

namespace seamtakt {

namespace {

/// In the order of preheat_input_ranges.
constexpr const char* names[] = {"CET", "plate thickness", "diffusible hydrogen", "heat input"};

std::string quantity_text(double value, const char* unit) {
  return rounded_text(value, 3) + " " + unit;
}

/// The end of the range beyond which the method isn't judged.
double judged_end(const PreheatInputRange& input) {
  return input.edge_is_upper ? input.range.lower : input.range.upper;
}

}  // namespace

void PreheatRangeTally::add_beyond(const PassFacts& facts, const PassEvaluation& pass) {
  // CET takes a while to gather, and is seldom what is beyond.
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
  std::string edges;
  for (std::size_t i = 0; i < inputs; ++i) {
    const PreheatInputRange& input = preheat_input_ranges[i];
    if (!(inputs_at_edge_ & input.bit)) continue;
    edges += edges.empty() ? "" : "; ";
    edges += std::string(names[i]) + " " +
             quantity_text(input.edge_is_upper ? input.range.upper : input.range.lower, input.range.unit);
  }
  findings.push_back(remark("preheat.at-range-edge", "plan",
                            "Preheat of " + std::to_string(passes_at_edge_) +
                                " passes is judged at the edge of method B's range (" + edges +
                                "): that asks for no less than they need.",
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
      Finding finding =
          remark("preheat.not-judged", schedule.id,
                 "Preheat isn't judged on " + std::to_string(beyond.passes) + " passes with schedule " +
                     schedule.id + ": " + names[i] + " " + quantity_text(beyond.farthest, input.range.unit) +
                     (input.edge_is_upper ? ", method B begins at " : ", method B ends at ") +
                     quantity_text(judged_end(input), input.range.unit) + ".",
                 method_b_source);
      finding.value = beyond.farthest;
      finding.limit = judged_end(input);
      finding.unit = input.range.unit;
      findings.push_back(std::move(finding));
    }
  }
}

}  // namespace seamtakt
