#include "plan/rules/hardness.hpp"

#include "formula/metal/haz_hardness.hpp"
#include "plan/limited_quantities.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/rules/rules.hpp"

namespace seamtakt {

namespace {

constexpr const LimitedQuantity& quantity = limited_quantity(&ScheduleLimits::hardness_HV);
constexpr const char* hardness_source = "Yurioka et al. 1987 (recalled); plan limit";
constexpr double scatter_HV = haz_hardness_scatter_HV;

/// The schedule's limit where the pass has an estimate to be judged by it; nullptr otherwise.
const Interval* limit_of(const PassFacts& facts, const PassEvaluation& pass) {
  const auto& limits = facts.schedule.limits;
  return limits && limits->hardness_HV && pass.haz_hardness_HV ? &*limits->hardness_HV : nullptr;
}

/// The end of the limit that the estimate is beyond, or nearer to than its scatter.
struct End {
  bool is_upper = true;
  double limit_HV = 0;
  double beyond_HV = 0;  ///< negative: inside
};

std::optional<End> end_in_doubt(const PassFacts& facts, const PassEvaluation& pass, const Interval& limit) {
  const double hardness = *pass.haz_hardness_HV;
  if (limit.upper && hardness > *limit.upper - scatter_HV &&
      !measured_hardness_covers(facts, pass.heat_input_kJ_mm))
    return End{true, *limit.upper, hardness - *limit.upper};
  if (limit.lower && hardness < *limit.lower + scatter_HV)
    return End{false, *limit.lower, *limit.lower - hardness};
  return std::nullopt;
}

void add_measured(const PassFacts& facts, double measured_HV, double limit_HV, Findings& findings) {
  findings.push_back(
      {std::string(quantity.pass_rule) + ".high", Severity::fail, facts.place(), measured_HV, limit_HV,
       quantity.unit,
       Sentence("limit.hardness.measured"_key, {{"qualification", facts.schedule.qualification},
                                                {"hardness", UnitValue{measured_HV, quantity.unit}},
                                                {"limit", UnitValue{limit_HV, quantity.unit}}}),
       "plan limit"});
}

}  // namespace

// An estimate never fails a pass: beyond the limit by more than its scatter it is a warning, by less a note.
// A hardness that was measured decides: where the test weld was too hard, colder passes are harder still.
void judge_hardness(const PassFacts& facts, const PassEvaluation& pass, Findings& findings) {
  const Interval* const limit = limit_of(facts, pass);
  if (!limit) return;
  if (const auto measured_HV = measured_above_limit_HV(facts))
    return add_measured(facts, *measured_HV, *limit->upper, findings);
  const auto end = end_in_doubt(facts, pass, *limit);
  if (!end || end->beyond_HV <= 0) return;
  const bool is_sure = end->beyond_HV > scatter_HV;
  findings.push_back({std::string(quantity.pass_rule) + (end->is_upper ? ".high" : ".low"),
                      is_sure ? Severity::warn : Severity::note, facts.place(), *pass.haz_hardness_HV,
                      end->limit_HV, quantity.unit,
                      Sentence(end->is_upper ? "limit.hardness.high"_key : "limit.hardness.low"_key,
                               {{"what", quantity.label},
                                {"value", UnitValue{*pass.haz_hardness_HV, quantity.unit}},
                                {"limit", UnitValue{end->limit_HV, quantity.unit}},
                                {"scatter", UnitValue{scatter_HV, quantity.unit}}}),
                      hardness_source});
}

void HardnessTally::add(const PassFacts& facts, const PassEvaluation& pass) {
  const Interval* const limit = limit_of(facts, pass);
  if (!limit || measured_above_limit_HV(facts)) return;
  const auto end = end_in_doubt(facts, pass, *limit);
  if (end && end->beyond_HV <= 0)
    add({1, end->beyond_HV, *pass.haz_hardness_HV, end->limit_HV}, near_[facts.schedule.id]);
}

void HardnessTally::add(const Near& more, Near& to) {
  const std::size_t passes = to.passes + more.passes;
  if (to.passes == 0 || more.beyond_HV > to.beyond_HV) to = more;
  to.passes = passes;
}

void HardnessTally::add(const HardnessTally& other) {
  for (const auto& [schedule, near] : other.near_) add(near, near_[schedule]);
}

void HardnessTally::report(const Plan& plan, Findings& findings) const {
  for (const Schedule& schedule : plan.schedules) {
    const auto at = near_.find(schedule.id);
    if (at == near_.end()) continue;
    const Near& near = at->second;
    findings.push_back(
        {std::string(quantity.pass_rule) + ".near", Severity::note, schedule.id, near.hardness_HV,
         near.limit_HV, quantity.unit,
         Sentence("limit.hardness.near"_key, {{"schedule", schedule.id},
                                              {"passes", near.passes},
                                              {"value", UnitValue{near.hardness_HV, quantity.unit}},
                                              {"limit", UnitValue{near.limit_HV, quantity.unit}},
                                              {"scatter", UnitValue{scatter_HV, quantity.unit}}}),
         hardness_source});
  }
}

}  // namespace seamtakt
