// What a fit says where limits conflict, against a grid that shares no code with the search.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "base/split_mix.hpp"
#include "fit_fixture.hpp"
#include "plan/window/seam_alone.hpp"
#include "support/sanitized.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

constexpr std::size_t wanted_conflicts = rounds<std::size_t>(200, 20),
                      wanted_seams_that_fit = rounds<std::size_t>(40, 10);

enum Value { feed, speed, current, heat, fastest, slowest, leg, throat, value_count };
using Values = std::array<double, value_count>;

struct Limit {
  std::string rule;
  Value of;
  bool is_upper;
  double bound;
};

struct Range {
  double lower, upper;
};

/// A tee of 10 and 8 mm with one run of 550 mm, and the limits of its schedule.
struct Case {
  std::string id;
  double leg_mm = 6;
  Range feed{}, speed{}, volts{};
  std::optional<double> heat_upper{}, current_upper{}, cooling_lower{}, cooling_upper{};

  std::vector<Limit> limits() const {
    std::vector<Limit> all{{"limit.wire-feed-speed.low", Value::feed, false, feed.lower},
                           {"limit.wire-feed-speed.high", Value::feed, true, feed.upper},
                           {"limit.travel-speed.low", Value::speed, false, speed.lower},
                           {"limit.travel-speed.high", Value::speed, true, speed.upper},
                           {"fillet.leg.undersize", Value::leg, false, leg_mm}};
    // Common practice: no more than 1 mm or a quarter above the drawn throat.
    const double drawn_mm = leg_mm / std::numbers::sqrt2;
    all.push_back({"fillet.throat.oversize", Value::throat, true, drawn_mm + std::max(1.0, 0.25 * drawn_mm)});
    if (heat_upper) all.push_back({"limit.heat-input.high", heat, true, *heat_upper});
    if (current_upper) all.push_back({"limit.current.high", current, true, *current_upper});
    if (cooling_lower) all.push_back({"limit.cooling-time.low", fastest, false, *cooling_lower});
    if (cooling_upper) all.push_back({"limit.cooling-time.high", slowest, true, *cooling_upper});
    return all;
  }
};

// The plan's figures, and the formulas with their constants written out.
constexpr double planned_feed = 9.5, planned_V = 29, planned_A = 290, preheat_C = 60;

double law_A(double feed_m_min) {
  const double W = feed_m_min * 1000 / 60, alpha = 0.3, beta_l = 5e-5 * 15;
  return (-alpha + std::sqrt(alpha * alpha + 4 * beta_l * W)) / (2 * beta_l);
}

double area_mm2(double feed_m_min, double speed_mm_s) {
  return 0.96 * std::numbers::pi / 4 * 1.2 * 1.2 * feed_m_min * 1000 / 60 / speed_mm_s;
}

/// EN 1011-2, annex D.
double cooling_s(double Q, double d, double f2, double f3) {
  const double a = 1 / (500 - preheat_C), b = 1 / (800 - preheat_C);
  return std::max((6700 - 5 * preheat_C) * Q * (a - b) * f3,
                  (4300 - 4.3 * preheat_C) * 1e5 * Q * Q / d / d * (a * a - b * b) * f2);
}

Values values_at(const Case& c, double feed_m_min, double speed_mm_s, double off_line_V, int passes) {
  Values v{};
  v[feed] = feed_m_min;
  v[speed] = speed_mm_s;
  v[current] = law_A(feed_m_min) * planned_A / law_A(planned_feed);
  const double on_line = planned_V + off_line_V + 0.05 * (v[current] - planned_A);
  const double held = std::clamp(on_line, c.volts.lower, c.volts.upper);
  const double volts = std::clamp(std::round(held * 10) / 10, c.volts.lower, c.volts.upper);
  v[heat] = 0.8 * volts * v[current] / speed_mm_s / 1000;
  v[fastest] = cooling_s(v[heat], 10, 0.45, 0.67);
  v[slowest] = cooling_s(v[heat], 8, 0.67, 0.67);
  v[leg] = std::sqrt(2 * passes * area_mm2(feed_m_min, speed_mm_s));
  v[throat] = v[leg] / std::numbers::sqrt2;
  return v;
}

bool is_broken(const Limit& limit, const Values& v) {
  const double slack = 2e-9 * std::abs(limit.bound);
  return limit.is_upper ? v[limit.of] > limit.bound + slack : v[limit.of] < limit.bound - slack;
}

constexpr double off_line_V[] = {0, -0.5, 0.5, -1, 1, -1.5, 1.5, -2, 2, -3, 3};

/// As many as could fill the fillet half as much again with the least bead.
int most_passes(const Case& c) {
  const double needed = c.leg_mm * c.leg_mm / 2, least = area_mm2(c.feed.lower, c.speed.upper);
  return std::clamp(static_cast<int>(std::ceil(1.5 * needed / least) + 1), 1, 20);
}

/// Multiples of 0.1 in a range, every so many-th.
std::vector<double> tenths(Range range, int every) {
  std::vector<double> all;
  for (int k = static_cast<int>(std::ceil(range.lower * 10 - 1e-9)); k <= range.upper * 10 + 1e-9; k += every)
    if (k > 0) all.push_back(k / 10.0);
  return all;
}

template <class Visit>
void each_point(const Case& c, const std::vector<double>& feeds, const std::vector<double>& speeds,
                const Visit& visit) {
  for (int passes = 1; passes <= most_passes(c); ++passes)
    for (const double volts : off_line_V)
      for (const double feed_m_min : feeds)
        for (const double speed_mm_s : speeds) visit(values_at(c, feed_m_min, speed_mm_s, volts, passes));
}

bool fits(const Case& c) {
  const std::vector<Limit> limits = c.limits();
  bool found = false;
  each_point(c, tenths(c.feed, 1), tenths(c.speed, 1), [&](const Values& v) {
    found =
        found || std::none_of(limits.begin(), limits.end(), [&](const Limit& l) { return is_broken(l, v); });
  });
  return found;
}

Case random_case(std::uint64_t seed) {
  std::uint64_t drawn = 0;
  const auto from = [&](double low, double high, int digits) {
    const double value = low + (high - low) * unit_interval_from_zero(split_mix(seed * 64 + drawn++));
    return std::round(value * std::pow(10, digits)) / std::pow(10, digits);
  };
  Case c;
  c.id = "C" + std::to_string(seed);
  c.leg_mm = from(4.5, 8, 1);
  c.feed.lower = from(6, 9, 1);
  c.feed.upper = std::round(10 * (c.feed.lower + from(0.5, 3, 1))) / 10;
  c.speed.lower = from(4, 9, 1);
  c.speed.upper = std::round(10 * (c.speed.lower + from(0.5, 3, 1))) / 10;
  c.volts.lower = from(24, 28, 1);
  c.volts.upper = std::round(10 * (c.volts.lower + from(1, 4, 1))) / 10;
  if (from(0, 1, 3) < 0.7) c.heat_upper = from(0.4, 1.3, 2);
  if (from(0, 1, 3) < 0.3) c.current_upper = from(220, 330, 0);
  if (from(0, 1, 3) < 0.5) c.cooling_lower = from(3, 12, 1);
  if (from(0, 1, 3) < 0.3) c.cooling_upper = from(6, 20, 1);
  return c;
}

/// A weldment, a schedule and a wire of the case's own, so that no seam takes another's schedule.
void add(Plan& plan, const Case& c) {
  Schedule schedule = *find_by_id(plan.schedules, "F");
  schedule.id = c.id;
  schedule.wire = "W-" + c.id;
  schedule.power_source.clear();
  schedule.current_A = planned_A;
  schedule.preheat_C = preheat_C;
  schedule.limits = ScheduleLimits{};
  schedule.limits->wire_feed_speed_m_min = Interval{c.feed.lower, c.feed.upper};
  schedule.limits->travel_speed_mm_s = Interval{c.speed.lower, c.speed.upper};
  schedule.limits->voltage_V = Interval{c.volts.lower, c.volts.upper};
  if (c.heat_upper) schedule.limits->heat_input_kJ_mm = Interval{{}, c.heat_upper};
  if (c.current_upper) schedule.limits->current_A = Interval{{}, c.current_upper};
  if (c.cooling_lower || c.cooling_upper)
    schedule.limits->cooling_time_s = Interval{c.cooling_lower, c.cooling_upper};
  Wire wire = *find_by_id(plan.wires, "W");
  wire.id = schedule.wire;
  Weldment weldment;
  weldment.id = c.id;
  weldment.seams = {seam_of(plan, "X", "S1")};
  weldment.seams[0].leg_mm = c.leg_mm;
  weldment.seams[0].schedules = {c.id};
  plan.schedules.push_back(std::move(schedule));
  plan.wires.push_back(std::move(wire));
  plan.weldments.push_back(std::move(weldment));
}

Plan plan_of(const std::vector<Case>& cases) {
  Plan plan = two_schedules();
  for (const Case& c : cases) add(plan, c);
  return plan;
}

FitResult fit_of(const std::vector<Case>& cases) {
  FitOptions options;
  for (const Case& c : cases) options.seams.push_back(c.id + "/S1");
  return fit(plan_of(cases), options);
}

/// Of the points that break `limit` and no other limit of the conflict: the fewest limits broken, and with so
/// few the value nearest to the bound.
struct Least {
  std::size_t broken = 99;
  double value = 0;
  Values at{};
};

/// Compares one conflict with the grid; says what differs.
void compare(const Case& c, const FittedSeam& seam) {
  const std::vector<Limit> limits = c.limits();
  std::vector<std::size_t> set;
  for (const FitLimit& named : seam.conflicts) {
    const auto found = std::find_if(limits.begin(), limits.end(),
                                    [&](const Limit& limit) { return limit.rule == named.rule; });
    ASSERT_NE(found, limits.end()) << c.id << " " << named.rule;
    EXPECT_NEAR(*named.bound, found->bound, 1e-9) << c.id << " " << named.rule;
    set.push_back(static_cast<std::size_t>(found - limits.begin()));
  }
  ASSERT_FALSE(set.empty()) << c.id;
  std::vector<Least> least(set.size());
  std::size_t keeping_all = 0;
  const Range feeds{c.feed.lower / 3, c.feed.upper * 3}, speeds{c.speed.lower / 3, c.speed.upper * 3};
  const auto look = [&](const Values& v) {
    std::size_t broken = 0, of_set = 0, last = 0;
    for (const Limit& limit : limits) broken += is_broken(limit, v);
    for (std::size_t i = 0; i < set.size(); ++i)
      if (is_broken(limits[set[i]], v)) {
        ++of_set;
        last = i;
      }
    if (of_set == 0) ++keeping_all;
    if (of_set != 1) return;
    const Limit& limit = limits[set[last]];
    const double value = v[limit.of];
    Least& best = least[last];
    const bool is_nearer = limit.is_upper ? value < best.value : value > best.value;
    if (broken < best.broken || (broken == best.broken && is_nearer)) best = {broken, value, v};
  };
  each_point(c, tenths(feeds, 2), tenths(speeds, 2), look);
  each_point(c, tenths(c.feed, 1), tenths(c.speed, 1), look);
  for (std::size_t i = 0; i < set.size(); ++i) {
    const Values at = least[i].at;
    const auto beside = [](double value, const Range& range) {
      return tenths({std::max(value - 0.4, range.lower), std::min(value + 0.4, range.upper)}, 1);
    };
    each_point(c, beside(at[feed], feeds), beside(at[speed], speeds), look);
  }
  EXPECT_EQ(keeping_all, 0u) << c.id << ": settings keep all limits that are said to conflict";
  for (std::size_t i = 0; i < set.size(); ++i) {
    const FitLimit& named = seam.conflicts[i];
    ASSERT_TRUE(named.needed) << c.id << " " << named.rule;
    const Limit& limit = limits[set[i]];
    EXPECT_TRUE(limit.is_upper ? *named.needed > limit.bound : *named.needed < limit.bound);
    // The search looks more closely than this grid: it may find settings that break fewer limits.
    const std::size_t broken = 1 + named.needed_with.size();
    EXPECT_LE(broken, least[i].broken) << c.id << " " << named.rule;
    if (broken != least[i].broken) continue;
    // The grid's steps of 0.2, and of 0.1 near its best point, may miss a narrow way round by more than a
    // tenth; the search looks at every step.
    const double better = limit.is_upper ? least[i].value / *named.needed : *named.needed / least[i].value;
    EXPECT_GE(better, 0.98) << c.id << " " << named.rule << ": grid " << least[i].value << ", fit "
                            << *named.needed;
    EXPECT_LE(better, 1.2) << c.id << " " << named.rule << ": grid " << least[i].value << ", fit "
                           << *named.needed;
  }
}

}  // namespace

TEST(FitConflicts, the_grids_formulas_give_what_evaluate_gives) {
  const Case c{.id = "K", .leg_mm = 6, .feed = {6, 12}, .speed = {4, 12}, .volts = {26, 32}};
  const Evaluation evaluation = evaluate(plan_of({c}));
  const PassEvaluation& pass = evaluation.passes.back();
  const Values v = values_at(c, planned_feed, 7.5, 0, 1);
  EXPECT_NEAR(v[heat], pass.heat_input_kJ_mm, 1e-9);
  EXPECT_NEAR(v[fastest], *pass.cooling_time_fastest_s, 1e-9);
  EXPECT_NEAR(v[slowest], *pass.cooling_time_slowest_s, 1e-9);
  EXPECT_NEAR(v[leg], *evaluation.seams.back().leg_mm, 1e-9);
}

TEST(FitConflicts, random_seams_without_settings_agree_with_a_grid) {
  std::vector<Case> without, with;
  for (std::uint64_t seed = 1; without.size() < wanted_conflicts + wanted_conflicts / 5; ++seed) {
    ASSERT_LT(seed, 5000u);
    const Case c = random_case(seed);
    if (!fits(c))
      without.push_back(c);
    else if (with.size() < wanted_seams_that_fit)
      with.push_back(c);
  }
  for (const FittedSeam& seam : fit_of(with).seams) EXPECT_TRUE(seam.has_settings) << seam.weldment;
  const FitResult result = fit_of(without);
  std::size_t compared = 0;
  for (std::size_t i = 0; i < without.size(); ++i) {
    // Steps of 0.02, which the grid hasn't, may fit.
    if (result.seams[i].has_settings || compared == wanted_conflicts) continue;
    ASSERT_EQ(result.seams[i].weldment, without[i].id);
    compare(without[i], result.seams[i]);
    ++compared;
  }
  EXPECT_EQ(compared, wanted_conflicts);
}

TEST(FitConflicts, a_limit_that_gives_way_as_far_as_is_said_leaves_settings) {
  // The coldest pass has 0.8*26 V*I(6 m/min)/(12 mm/s), some 0.36 kJ/mm.
  Case c{.id = "K", .leg_mm = 6, .feed = {6, 12}, .speed = {4, 12}, .volts = {26, 32}};
  c.heat_upper = 0.3;
  FitResult result = fit_of({c});
  ASSERT_FALSE(only_seam(result).has_settings);
  const auto heat_limit =
      std::find_if(only_seam(result).conflicts.begin(), only_seam(result).conflicts.end(),
                   [](const FitLimit& limit) { return limit.rule == "limit.heat-input.high"; });
  ASSERT_NE(heat_limit, only_seam(result).conflicts.end());
  ASSERT_TRUE(heat_limit->needed_with.empty());
  c.heat_upper = *heat_limit->needed * (1 + 1e-9);
  EXPECT_TRUE(only_seam(fit_of({c})).has_settings);
  c.heat_upper = *heat_limit->needed * 0.99;
  EXPECT_FALSE(only_seam(fit_of({c})).has_settings);
}

TEST(FitConflicts, what_is_printed_is_enough_and_ends_with_one_stop) {
  Case c{.id = "K", .leg_mm = 6, .feed = {6, 12}, .speed = {4, 12}, .volts = {26, 32}};
  c.heat_upper = 0.3;
  const FitResult result = fit_of({c});
  const auto finding = std::find_if(result.findings.begin(), result.findings.end(),
                                    [](const Finding& each) { return each.rule == "fit.no-settings"; });
  ASSERT_NE(finding, result.findings.end());
  const std::string text = finding->text();
  EXPECT_NE(text.find("No settings keep all of: "), std::string::npos) << text;
  EXPECT_NE(text.find("Heat input would have to be allowed up to 0."), std::string::npos) << text;
  EXPECT_EQ(text.find(".."), std::string::npos) << text;
  const std::string printed = "Heat input would have to be allowed up to ";
  const double heat_printed = std::stod(text.substr(text.find(printed) + printed.size()));
  c.heat_upper = heat_printed;
  EXPECT_TRUE(only_seam(fit_of({c})).has_settings) << text;
}

TEST(FitConflicts, a_cause_that_no_settings_mend_is_a_sentence_with_one_stop) {
  Plan plan = limited_tee();
  find_by_id(plan.schedules, "F")->use = ScheduleUse{};
  find_by_id(plan.schedules, "F")->use->positions = {"PC"};
  seam_of(plan, "X", "S1").position = "PB";
  FitOptions options;
  options.seams = {"X/S1"};
  const FitResult result = fit(plan, options);
  const auto finding = std::find_if(result.findings.begin(), result.findings.end(),
                                    [](const Finding& each) { return each.rule == "fit.no-settings"; });
  ASSERT_NE(finding, result.findings.end());
  const std::string text = finding->text();
  EXPECT_EQ(text.rfind("No settings help. ", 0), 0u) << text;
  EXPECT_EQ(text.find(".."), std::string::npos) << text;
  EXPECT_EQ(text.back(), '.') << text;
}

TEST(FitConflicts, a_side_without_a_limit_is_not_searched_beyond_what_was_said) {
  // No limit of speed: 0.6 to 1.4 times 7.5 mm/s, where 0.3 kJ/mm lays no leg of 6.
  Case c{.id = "K", .leg_mm = 6, .feed = {6, 6.4}, .speed = {4, 12}, .volts = {26, 32}};
  c.heat_upper = 0.3;
  Plan plan = plan_of({c});
  find_by_id(plan.schedules, "K")->limits->travel_speed_mm_s.reset();
  FitOptions options;
  options.seams = {"K/S1"};
  const FittedSeam seam = only_seam(fit(plan, options));
  ASSERT_FALSE(seam.has_settings);
  ASSERT_FALSE(seam.conflicts.empty());
  EXPECT_LT(seam.conflicts.size(), c.limits().size()) << "not just all limits";
  for (const FitLimit& limit : seam.conflicts) EXPECT_TRUE(limit.needed) << limit.rule;
}

TEST(SeamAlone, is_judged_by_the_plans_code_and_by_the_severities_that_it_chooses) {
  Plan plan = limited_tee();
  find_by_id(plan.schedules, "F")->preheat_C = 20;
  find_by_id(plan.wires, "W")->hydrogen_ml_100g = 12;
  const auto severities = [](const Plan& of) {
    std::vector<Severity> found;
    for (const Finding& finding : evaluate(of).findings)
      if (finding.rule == "preheat.below-needed" && finding.where.starts_with("X/S1/"))
        found.push_back(finding.severity);
    return found;
  };
  EXPECT_EQ(severities(seam_alone(plan, "X/S1", "seam").plan), std::vector{Severity::warn});
  plan.severity.emplace();
  plan.severity->preheat_needed = "fail";
  EXPECT_EQ(severities(plan), std::vector{Severity::fail});
  EXPECT_EQ(severities(seam_alone(plan, "X/S1", "seam").plan), std::vector{Severity::fail});
}
