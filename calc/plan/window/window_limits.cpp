#include <algorithm>
#include <cmath>
#include <limits>

#include "formula/metal/composition.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "plan/evaluate/joint_metals.hpp"
#include "plan/evaluate/largest_fillet.hpp"
#include "plan/limited_quantities.hpp"
#include "plan/rules/rule_limits.hpp"
#include "plan/window/window_model.hpp"

namespace seamtakt {

namespace {

/// A bound as its rule states it.
WindowLimit limit_of(const RuleLimit& rule, double bound, double at_working_point) {
  return {.rule = rule.rule,
          .what = rule.what,
          .key = rule.key,
          .unit = rule.unit,
          .bound = bound,
          .at_working_point = at_working_point,
          .sentence = {},
          .source = rule.source};
}

/// Collects the limits of the rules for the window. What fails at any pair of speeds comes last.
class LimitCollector {
 public:
  LimitCollector(const PassFacts& facts, const PassEvaluation& pass, const SeamEvaluation& seam,
                 WindowProblem& problem)
      : facts_(facts), pass_(pass), seam_(seam), problem_(problem) {}

  void collect() {
    collect_schedule_limits();
    collect_cooling();
    collect_hardness();
    collect_preheat();
    collect_power_source();
    collect_qualification();
    collect_size();
    collect_largest_fillet();
    collect_constant();
  }

 private:
  /// Whether a person accepted what this limit would find, on every pass that it judges.
  bool is_accepted(const std::string& rule, bool of_seam) const {
    const auto accepted_at = [&](const std::string& where) {
      for (const Acceptance& accepted : facts_.plan.accepted)
        if (accepted.rule == rule && accepted.where == where) return true;
      return false;
    };
    if (of_seam) return accepted_at(seam_place(facts_.weldment.id, facts_.seam.id));
    return std::all_of(problem_.passes.begin(), problem_.passes.end(), [&](int pass) {
      return accepted_at(pass_place(facts_.weldment.id, facts_.seam.id, pass));
    });
  }

  void add(WindowLimit limit, WindowBound bound, bool of_seam = false) {
    known_rules_.push_back(limit.rule);
    if (is_accepted(limit.rule, of_seam)) return;
    limit.is_upper = bound.is_upper;
    if (limit.source.empty()) limit.source = "plan limit";
    problem_.limits.push_back(std::move(limit));
    problem_.model.bounds.push_back(bound);
  }

  void add(const RuleLimit& rule, bool is_upper, double bound, double at_working_point) {
    add(limit_of(rule, bound, at_working_point),
        {.judged = rule.judged, .is_upper = is_upper, .bound = bound});
  }

  void add_end(const LimitedQuantity& quantity, Word what, const Interval& limit, bool is_upper,
               double at_working_point, WindowBound judged, bool cuts = true) {
    const auto& bound = is_upper ? limit.upper : limit.lower;
    if (!bound) return;
    judged.is_upper = is_upper;
    judged.bound = *bound;
    add({.rule = std::string(quantity.pass_rule) + (is_upper ? ".high" : ".low"),
         .what = what,
         .key = quantity.key_in_results(),
         .unit = quantity.unit,
         .bound = bound,
         .at_working_point = at_working_point,
         .sentence = {},
         .source = {},
         .cuts = cuts},
        judged);
  }

  static bool is_axis(const LimitedQuantity& quantity) {
    return quantity.in_window == Judged::wire_feed || quantity.in_window == Judged::travel_speed;
  }

  /// The window's own axes first.
  void collect_schedule_limits() {
    if (!facts_.schedule.limits) return;
    for (const bool of_axes : {true, false})
      for (const LimitedQuantity& each : limited_quantities) {
        const auto& limit = (*facts_.schedule.limits).*each.limit;
        if (!limit || each.in_window == Judged::always || is_axis(each) != of_axes) continue;
        for (const bool upper : {false, true})
          add_end(each, each.label, *limit, upper, each.planned(facts_.schedule, pass_),
                  {.judged = each.in_window});
      }
  }

  void collect_cooling() {
    if (!facts_.schedule.limits || !facts_.schedule.limits->cooling_time_s || !pass_.cooling_time_s) return;
    for (const CoolingSide& side : cooling_sides)
      add_end(limited_quantity(&ScheduleLimits::cooling_time_s), side.what,
              side.of(*facts_.schedule.limits->cooling_time_s), side.bound == &Interval::upper,
              *(pass_.*side.time_s), {.judged = side.judged});
  }

  /// Shown, and no bound of the window: an estimate beyond its limit is a warning, from where it is one. A
  /// measured hardness that is too high fails at any pair of speeds.
  void collect_hardness() {
    if (!facts_.schedule.limits || !facts_.schedule.limits->hardness_HV || !pass_.haz_hardness_HV) return;
    const Interval warned = warned_hardness(*facts_.schedule.limits->hardness_HV);
    for (const bool upper : {false, true}) {
      const auto& bound = upper ? warned.upper : warned.lower;
      if (!bound || (upper && measured_above_limit_HV(facts_))) continue;
      WindowBound judged{.judged = upper ? Judged::hardness_highest : Judged::hardness_lowest};
      for (std::size_t plate = 0; plate < 2; ++plate)
        judged.plate_time_s[plate] = time_of_hardness_s(steel_of_plate(plate), *bound, upper);
      if (upper) leave_out_measured(judged);
      const LimitedQuantity& quantity = limited_quantity(&ScheduleLimits::hardness_HV);
      add_end(quantity, quantity.label, warned, upper, *pass_.haz_hardness_HV, judged, false);
    }
  }

  /// The limit from where an estimate is a warning.
  static Interval warned_hardness(const Interval& limit) {
    Interval warned;
    if (limit.lower) warned.lower = *limit.lower - haz_hardness_scatter_HV;
    if (limit.upper) warned.upper = *limit.upper + haz_hardness_scatter_HV;
    return warned;
  }

  /// From the heat input of a test whose hardness was measured, the estimate isn't judged.
  void leave_out_measured(WindowBound& judged) const {
    const auto from_kJ_mm = measured_hardness_from_kJ_mm(facts_);
    if (!from_kJ_mm) return;
    for (std::size_t plate = 0; plate < 2; ++plate) {
      CoolingCase at = problem_.model.cooling.nominal;
      at.thickness_mm = problem_.model.plate_mm[plate];
      judged.plate_time_s[plate] = std::min(judged.plate_time_s[plate], cooling_time(*from_kJ_mm, at).time_s);
    }
  }

  Composition<double> steel_of_plate(std::size_t plate) const {
    return steel_of(*facts_.metals[plate], facts_.seam.thickness_mm[plate]).steel;
  }

  /// Hardness falls with the cooling time. Upper bound: the least time that keeps it; lower bound: the
  /// greatest. A composition that gives no hardness breaks neither.
  static double time_of_hardness_s(const Composition<double>& steel, double hardness_HV, bool upper) {
    const HardeningElements elements = hardening_elements(steel);
    constexpr double infinity = std::numeric_limits<double>::infinity();
    if (!yurioka_hardness_HV(elements, 1.0)) return 0;
    const auto beyond = [&](double time_s) {
      const double value = *yurioka_hardness_HV(elements, time_s);
      return upper ? value > hardness_HV : value >= hardness_HV;
    };
    double low = 1e-6, high = 1e9;
    if (!beyond(low)) return 0;
    if (beyond(high)) return infinity;
    for (double middle = std::sqrt(low * high); low < middle && middle < high; middle = (low + high) / 2)
      (beyond(middle) ? low : high) = middle;
    return upper ? high : low;
  }

  /// Shown, and no bound of the window: an estimate's shortfall is a warning, from where it is one.
  void collect_preheat() {
    if (!problem_.model.preheat) return;
    const double most = preheat_given_C(facts_.schedule) + preheat_tolerance_K;
    WindowLimit limit = limit_of(preheat_limit, most, 0);
    limit.at_working_point = pass_.preheat_needed_C;
    limit.cuts = false;
    add(std::move(limit), {.judged = preheat_limit.judged, .bound = most});
  }

  void collect_power_source() {
    const WindowModel& model = problem_.model;
    if (model.max_current_A) add(max_current_limit, true, *model.max_current_A, pass_.current_A);
    if (!model.rated_current_A) return;
    const FeedFigures feed = feed_figures(model, facts_.schedule.wire_feed_speed_m_min);
    // The duty falls as the current rises: this bound moves with the wire feed speed.
    add(single_arc_limit, true, std::min(feed.longest_arc_s, duty_period_s),
        model.longest_run_mm / facts_.schedule.travel_speed_mm_s);
  }

  void collect_qualification() {
    const TestedWeld* const test = facts_.index.parts_of(facts_.schedule).iso_test;
    const auto range = test ? qualified_heat_input(facts_, *test) : std::nullopt;
    if (!range) return;
    for (const bool upper : {false, true})
      if (const auto& bound = upper ? range->high : range->low)
        add(limit_of(qualified_heat_limit, *bound, pass_.heat_input_kJ_mm),
            {.judged = qualified_heat_limit.judged,
             .is_upper = upper,
             .bound = *bound * (upper ? 1 + qualified_rounding : 1 - qualified_rounding)});
  }

  void collect_size() {
    each_size_limit(facts_.seam, seam_, [&](const SizeLimit& size) {
      add(limit_of(size.limit, size.needed, size.obtained),
          {.judged = size.limit.judged,
           .is_upper = false,
           .bound = size.needed * (1 - size_tolerance),
           .less = size.less},
          true);
    });
  }

  void collect_largest_fillet() {
    const auto largest = largest_fillet(
        facts_.seam, [&](std::string_view rule) { return is_accepted(std::string(rule), true); });
    if (!largest) return;
    const double obtained = largest->is_leg ? *seam_.leg_mm : *seam_.throat_mm;
    add({.rule = largest->rule,
         .what = largest->what,
         .key = largest->is_leg ? "leg_mm" : "throat_mm",
         .unit = "mm",
         .is_upper = true,
         .bound = largest->limit_mm,
         .at_working_point = obtained - largest->less_mm,
         .sentence = {},
         .source = largest->source,
         .is_stated = largest->is_stated},
        {.judged = largest->is_leg ? Judged::leg : Judged::throat,
         .is_upper = true,
         .bound = largest->limit_mm * (1 + size_tolerance),
         .less = largest->less_mm},
        true);
    // The quality level's own limit is kept where a lower one is.
    known_rules_.emplace_back("fillet.throat.excess");
  }

  /// What else fails at the schedule's settings fails everywhere: it doesn't depend on the two speeds.
  void collect_constant() {
    constexpr std::size_t most_limits = 32;
    for (const Finding& finding : problem_.fails) {
      if (problem_.limits.size() >= most_limits) break;
      if (std::find(known_rules_.begin(), known_rules_.end(), finding.rule) != known_rules_.end()) continue;
      known_rules_.push_back(finding.rule);
      problem_.limits.push_back({.rule = finding.rule,
                                 .what = Sentence::verbatim(finding.rule),
                                 .key = {},
                                 .unit = finding.unit,
                                 .is_upper = true,
                                 .bound = {},
                                 .at_working_point = finding.value,
                                 .sentence = finding.sentence,
                                 .source = finding.source});
      problem_.model.bounds.push_back({.judged = Judged::always});
    }
  }

  const PassFacts& facts_;
  const PassEvaluation& pass_;
  const SeamEvaluation& seam_;
  WindowProblem& problem_;
  std::vector<std::string> known_rules_;
};

}  // namespace

void add_window_limits(const PassFacts& facts, const PassEvaluation& pass, const SeamEvaluation& seam,
                       WindowProblem& problem) {
  LimitCollector(facts, pass, seam, problem).collect();
}

}  // namespace seamtakt
