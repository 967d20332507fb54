#include <algorithm>
#include <cmath>
#include <limits>

#include "formula/metal/composition.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "formula/metal/preheat.hpp"
#include "formula/tolerance/qualification_range.hpp"
#include "plan/evaluate/joint_metals.hpp"
#include "plan/evaluate/largest_fillet.hpp"
#include "plan/qualification_basis.hpp"
#include "plan/window/window_model.hpp"

namespace seamtakt {

namespace {

/// Below this share of the size asked for a difference is rounding (as the rule on a fillet's size has it).
constexpr double size_tolerance = 1e-9;

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

  void add_interval(const char* rule, const char* what, const char* key, const char* unit, Judged judged,
                    const std::optional<Interval>& interval, std::optional<double> at_working_point) {
    if (!interval || !at_working_point) return;
    for (const bool upper : {false, true})
      if (const auto& bound = upper ? interval->upper : interval->lower)
        add({.rule = std::string(rule) + (upper ? ".high" : ".low"),
             .what = what,
             .key = key,
             .unit = unit,
             .is_upper = upper,
             .bound = *bound,
             .at_working_point = at_working_point,
             .text = {},
             .source = {}},
            {.judged = judged, .is_upper = upper, .bound = *bound});
  }

  void collect_schedule_limits() {
    const Schedule& schedule = facts_.schedule;
    if (!schedule.limits) return;
    const ScheduleLimits& limits = *schedule.limits;
    add_interval("limit.wire-feed-speed", "Wire feed speed", "wire_feed_speed_m_min", "m/min",
                 Judged::wire_feed, limits.wire_feed_speed_m_min, schedule.wire_feed_speed_m_min);
    add_interval("limit.travel-speed", "Travel speed", "travel_speed_mm_s", "mm/s", Judged::travel_speed,
                 limits.travel_speed_mm_s, schedule.travel_speed_mm_s);
    add_interval("limit.current", "Current", "current_A", "A", Judged::current, limits.current_A,
                 pass_.current_A);
    add_interval("limit.voltage", "Arc voltage", "voltage_V", "V", Judged::voltage, limits.voltage_V,
                 pass_.voltage_V);
    add_interval("limit.heat-input", "Heat input", "heat_input_kJ_mm", "kJ/mm", Judged::heat_input,
                 limits.heat_input_kJ_mm, pass_.heat_input_kJ_mm);
  }

  void collect_cooling() {
    if (!facts_.schedule.limits || !facts_.schedule.limits->cooling_time_s) return;
    const Interval& limit = *facts_.schedule.limits->cooling_time_s;
    add_interval("limit.cooling-time", "Fastest cooling time t8/5 (cold, thicker plate)", "cooling_time_s",
                 "s", Judged::cooling_fastest, Interval{limit.lower, {}}, pass_.cooling_time_fastest_s);
    add_interval("limit.cooling-time", "Slowest cooling time t8/5 (hot, thinner plate)", "cooling_time_s",
                 "s", Judged::cooling_slowest, Interval{{}, limit.upper}, pass_.cooling_time_slowest_s);
  }

  void collect_hardness() {
    if (!facts_.schedule.limits || !facts_.schedule.limits->hardness_HV || !pass_.haz_hardness_HV) return;
    const Interval& limit = *facts_.schedule.limits->hardness_HV;
    for (const bool upper : {false, true}) {
      const auto& bound = upper ? limit.upper : limit.lower;
      if (!bound) continue;
      WindowBound judged{.judged = upper ? Judged::hardness_highest : Judged::hardness_lowest,
                         .is_upper = upper,
                         .bound = *bound};
      for (std::size_t plate = 0; plate < 2; ++plate)
        judged.plate_time_s[plate] = time_of_hardness_s(*facts_.metals[plate], *bound, upper);
      add({.rule = upper ? "limit.hardness.high" : "limit.hardness.low",
           .what = "Estimated HAZ hardness",
           .key = "haz_hardness_HV",
           .unit = "HV",
           .is_upper = upper,
           .bound = *bound,
           .at_working_point = *pass_.haz_hardness_HV,
           .text = {},
           .source = {}},
          judged);
    }
  }

  /// Hardness falls with the cooling time. Upper bound: the least time that keeps it; lower bound: the
  /// greatest. A composition that gives no hardness breaks neither.
  static double time_of_hardness_s(const BaseMetal& metal, double hardness_HV, bool upper) {
    const HardeningElements elements = hardening_elements(composition_of<double>(metal.composition_pct));
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
    const WindowModel& model = problem_.model;
    if (!model.preheat) return;
    const double most = std::max(model.cold_C, shop_temperature_C) + preheat_tolerance_K;
    add({.rule = "preheat.below-needed",
         .what = "Preheat needed (method B)",
         .key = "preheat_needed_C",
         .unit = "C",
         .is_upper = true,
         .bound = most,
         .at_working_point = pass_.preheat_needed_C,
         .text = {},
         .source = "EN 1011-2:2001, C.3 (method B)",
         .cuts = false},
        {.judged = Judged::preheat, .is_upper = true, .bound = most});
  }

  void collect_power_source() {
    const WindowModel& model = problem_.model;
    if (!model.rated_current_A) return;
    add({.rule = "power-source.current.above-rating",
         .what = "Current",
         .key = "current_A",
         .unit = "A",
         .is_upper = true,
         .bound = *model.rated_current_A,
         .at_working_point = pass_.current_A,
         .text = {},
         .source = "IEC 60974-1, rating plate (recalled)"},
        {.judged = Judged::current, .is_upper = true, .bound = *model.rated_current_A});
    const FeedFigures feed = feed_figures(model, facts_.schedule.wire_feed_speed_m_min);
    const double longest_s = model.longest_run_mm / facts_.schedule.travel_speed_mm_s;
    // The duty falls as the current rises: this bound moves with the wire feed speed.
    add({.rule = "power-source.duty.single-arc",
         .what = "Longest single arc",
         .key = "arc_time_s",
         .unit = "s",
         .is_upper = true,
         .bound = std::isfinite(feed.longest_arc_s) ? feed.longest_arc_s : 600.0,
         .at_working_point = longest_s,
         .text = {},
         .source = "power-source makers' duty-cycle rule I2 = I1*sqrt(D1/D2)"},
        {.judged = Judged::single_arc, .is_upper = true, .bound = 0});
  }

  void collect_qualification() {
    const Qualification* qualification = facts_.index.qualification(facts_.schedule.qualification);
    if (!qualification || !qualification->tested ||
        qualification_route(qualification->basis) != QualificationRoute::judged)
      return;
    const TestedWeld& tested = *qualification->tested;
    if (!tested.heat_input_kJ_mm) return;
    QualifiedTest test;
    test.joint = tested.throat_mm || tested.joint == "fillet" ? "fillet" : "butt";
    test.runs = tested.runs == "single" ? "single" : "multi";
    test.impact_tested = tested.impact_tested.value_or(false);
    test.hardness_tested = tested.hardness_tested.value_or(false);
    const RangeRule rule = heat_input_rule(test);
    if (!rule.has_limit()) return;
    const QualifiedRange<double> range = qualified_range(rule, *tested.heat_input_kJ_mm);
    constexpr double rounding = 1e-12;  // as is_qualified allows
    for (const bool upper : {false, true})
      if (const auto& bound = upper ? range.high : range.low)
        add({.rule = "qualification.heat-input",
             .what = "Heat input, as qualified",
             .key = "heat_input_kJ_mm",
             .unit = "kJ/mm",
             .is_upper = upper,
             .bound = *bound,
             .at_working_point = pass_.heat_input_kJ_mm,
             .text = {},
             .source = "ISO 15614-1:2017, level 2 (recalled)"},
            {.judged = Judged::heat_input,
             .is_upper = upper,
             .bound = *bound * (upper ? 1 + rounding : 1 - rounding)});
  }

  void add_size(const char* rule, const char* what, const char* key, Judged judged, double value,
                double needed, double less) {
    add({.rule = rule,
         .what = what,
         .key = key,
         .unit = judged == Judged::area ? "mm2" : "mm",
         .is_upper = false,
         .bound = needed,
         .at_working_point = value,
         .text = {},
         .source = {}},
        {.judged = judged, .is_upper = false, .bound = needed * (1 - size_tolerance), .less = less}, true);
  }

  void collect_size() {
    const Seam& seam = facts_.seam;
    if (seam.groove)
      return add_size("groove.area.underfilled", "Area of all passes", "area_mm2", Judged::area,
                      seam_.area_mm2, seam_.area_needed_mm2, 0);
    const double more_gap = seam.gap_max_mm ? *seam.gap_max_mm - seam.gap_mm : 0;
    const double per_leg = problem_.model.throat_per_leg;
    if (seam.leg_mm)
      add_size("fillet.leg.undersize", "Fillet leg", "leg_mm", Judged::leg, *seam_.leg_mm, *seam.leg_mm, 0);
    if (seam.leg_mm && more_gap > 0)
      add_size("fillet.leg.undersize-at-gap-max", "Fillet leg at the largest gap", "leg_mm", Judged::leg,
               *seam_.leg_mm - more_gap, *seam.leg_mm, more_gap);
    if (seam.throat_mm)
      add_size("fillet.throat.undersize", "Fillet throat", "throat_mm", Judged::throat, *seam_.throat_mm,
               *seam.throat_mm, 0);
    if (seam.throat_mm && more_gap > 0)
      add_size("fillet.throat.undersize-at-gap-max", "Fillet throat at the largest gap", "throat_mm",
               Judged::throat, *seam_.throat_mm - more_gap * per_leg, *seam.throat_mm, more_gap * per_leg);
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
         .text = {},
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

  /// What else fails at the schedule's settings fails at all: it doesn't hang on the two speeds.
  void collect_constant() {
    constexpr std::size_t most_limits = 32;
    for (const Finding& finding : problem_.fails) {
      if (problem_.limits.size() >= most_limits) break;
      if (std::find(known_rules_.begin(), known_rules_.end(), finding.rule) != known_rules_.end()) continue;
      known_rules_.push_back(finding.rule);
      problem_.limits.push_back({.rule = finding.rule,
                                 .what = finding.rule,
                                 .key = {},
                                 .unit = finding.unit,
                                 .is_upper = true,
                                 .bound = {},
                                 .at_working_point = finding.value,
                                 .text = finding.text(),
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
