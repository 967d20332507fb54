// Stretches outside a limit, though the mean of the pass is inside.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <numbers>

#include "base/json/json_node.hpp"
#include "excursion_fixture.hpp"
#include "records/passes/audit_json.hpp"
#include "records/passes/planned_pass.hpp"

namespace seamtakt::test {
namespace {

constexpr const char* rule = "record.current.excursion";

TEST(Excursions, HalfAPassTooHotAndHalfTooColdFailsThoughItsMeanIsInside) {
  const auto result = audited({.amperes = [](double t) { return t < 25 ? 361 : 231; }}, plan_with_current());
  const PassRecord& pass = result.passes[0];
  EXPECT_NEAR(*pass.steady.current_A, 296, 1e-9);
  EXPECT_EQ(pass.verdict, Verdict::fail);
  EXPECT_EQ(pass.failed_by, std::vector<std::string>{rule});
  ASSERT_EQ(pass.excursions.size(), 2u);
  EXPECT_EQ(pass.excursion_count, 2u);
  EXPECT_STREQ(pass.excursions[0].quantity, "current_A");
  EXPECT_DOUBLE_EQ(pass.excursions[0].start_s, 0);
  EXPECT_DOUBLE_EQ(pass.excursions[0].end_s, 25);
  EXPECT_NEAR(pass.excursions[0].length_mm, 200, 1e-9);
  EXPECT_DOUBLE_EQ(pass.excursions[0].value, 361);
  EXPECT_DOUBLE_EQ(pass.excursions[0].limit, 331);
  EXPECT_DOUBLE_EQ(pass.excursions[1].start_s, 25);
  EXPECT_DOUBLE_EQ(pass.excursions[1].end_s, 50);
  EXPECT_DOUBLE_EQ(pass.excursions[1].value, 231);
  EXPECT_DOUBLE_EQ(pass.excursions[1].limit, 271);
}

TEST(Excursions, FiveSecondsOfHardlyAnyCurrentFail) {
  const auto result = audited({.amperes = with_stretches(102, {20}, 5)}, plan_with_current());
  EXPECT_EQ(result.passes[0].verdict, Verdict::fail);
  const auto found = findings_of(result, rule);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::fail);
  EXPECT_EQ(found[0].where, "U1/W/S1/pass 1");
  EXPECT_DOUBLE_EQ(*found[0].value, 102);
  EXPECT_DOUBLE_EQ(*found[0].limit, 271);
  EXPECT_NE(found[0].source.find("iso-5817"), std::string::npos);
  EXPECT_NE(found[0].text().find("from 20 s to 25 s"), std::string::npos) << found[0].text();
  EXPECT_NE(found[0].text().find("160 mm along"), std::string::npos) << found[0].text();
}

TEST(Excursions, NoMoreThanTenMillimetresAreANote) {
  const auto result = audited({.amperes = with_stretches(102, {20}, 1)}, plan_with_current());
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
  const auto found = findings_of(result, rule);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_NEAR(result.passes[0].excursions.at(0).length_mm, 8, 1e-9);
}

TEST(Excursions, ALongerStretchIsUndecidedAndAnOpenItem) {
  const auto result = audited({.amperes = with_stretches(361, {20}, 2)}, plan_with_current());
  const PassRecord& pass = result.passes[0];
  EXPECT_EQ(pass.verdict, Verdict::undecided);
  EXPECT_EQ(pass.undecided_by, std::vector<std::string>{rule});
  EXPECT_EQ(findings_of(result, rule).at(0).severity, Severity::warn);
  ASSERT_EQ(result.units[0].open_items.size(), 1u);
  EXPECT_EQ(result.units[0].open_items[0].cause, rule);
  EXPECT_NE(result.units[0].open_items[0].sentence.english().find("from 20 s to 22 s"), std::string::npos);
}

TEST(Excursions, ManyShortOnesAreUndecidedByTheirShareOfTheWeld) {
  // 8 mm each: 16 of 400 mm are 4 %, 24 are 6 %.
  const Plan plan = plan_with_current();
  const auto two = audited({.amperes = with_stretches(361, {5, 25}, 1)}, plan);
  EXPECT_EQ(two.passes[0].verdict, Verdict::pass);
  const auto three = audited({.amperes = with_stretches(361, {5, 25, 45}, 1)}, plan);
  EXPECT_EQ(three.passes[0].verdict, Verdict::undecided);
  EXPECT_EQ(three.passes[0].excursion_count, 3u);
}

TEST(Excursions, ShortOnesThatLieCloseTogetherFail) {
  // Four of 8 mm in 56 mm.
  const auto result = audited({.amperes = with_stretches(361, {20, 22, 24, 26}, 1)}, plan_with_current());
  EXPECT_EQ(result.passes[0].verdict, Verdict::fail);
  EXPECT_EQ(result.passes[0].failed_by, std::vector<std::string>{rule});
}

TEST(Excursions, AWeldShorterThanTheRuleIsJudgedInProportion) {
  Plan plan = plan_with_current();
  plan.weldments[0].seams[0].path_mm = {{0, 0, 0}, {80, 0, 0}};
  const auto quarter = audited({.to_s = 10, .amperes = with_stretches(361, {4}, 2)}, plan);
  EXPECT_EQ(quarter.passes[0].verdict, Verdict::undecided) << "16 of 80 mm, 20 are allowed";
  const auto more = audited({.to_s = 10, .amperes = with_stretches(361, {4}, 3)}, plan);
  EXPECT_EQ(more.passes[0].verdict, Verdict::fail) << "24 of 80 mm";
}

TEST(Excursions, EachFigureOfTheRuleCanBeSet) {
  const Plan plan = plan_with_current();
  const Weld two_seconds{.amperes = with_stretches(361, {20}, 2)};
  const auto verdict_with = [&](const std::function<void(ExcursionOptions&)>& set) {
    AuditOptions options;
    set(options.excursions);
    return audited(two_seconds, plan, options).passes[0].verdict;
  };
  EXPECT_EQ(verdict_with([](auto&) {}), Verdict::undecided);
  EXPECT_EQ(verdict_with([](auto& o) { o.note_mm = 16; }), Verdict::pass);
  EXPECT_EQ(verdict_with([](auto& o) { o.note_mm = 16, o.share_pct = 3.9; }), Verdict::undecided);
  EXPECT_EQ(verdict_with([](auto& o) { o.fail_mm = 15; }), Verdict::fail);
  EXPECT_EQ(verdict_with([](auto& o) { o.within_mm = 200; }), Verdict::undecided);
  EXPECT_EQ(verdict_with([](auto& o) { o.fail_mm = 25, o.within_mm = 400; }), Verdict::undecided);
  EXPECT_EQ(verdict_with([](auto& o) { o.window_s = 20; }), Verdict::pass) << "301 and 361 A make 307";
}

TEST(Excursions, APulsedArcWithItsMeanInsidePasses) {
  Plan plan = plan_with_current();
  plan.weldments[0].seams[0].path_mm = {{0, 0, 0}, {40, 0, 0}};
  const auto pulses = [](double t) { return std::fmod(t * 100 + 1e-6, 1) < 0.5 ? 420.0 : 182.0; };
  const auto result = audited({.to_s = 5, .step_s = 1e-4, .amperes = pulses}, plan);
  const PassRecord& pass = result.passes[0];
  EXPECT_GT(*pass.max_current_A, 331);
  EXPECT_LT(*pass.min_current_A, 271);
  EXPECT_EQ(pass.verdict, Verdict::pass);
  EXPECT_TRUE(pass.excursions.empty());
  const auto low = [&](double t) { return pulses(t) - (t >= 2 && t < 4 ? 60 : 0); };
  EXPECT_EQ(audited({.to_s = 5, .step_s = 1e-4, .amperes = low}, plan).passes[0].verdict, Verdict::fail)
      << "16 of 40 mm";
}

TEST(Excursions, ADipArcsShortCircuitsAreNoExcursions) {
  ScheduleLimits limits;
  limits.current_A = Interval{140, 180};
  limits.voltage_V = Interval{17, 20};
  Plan plan = plan_with(limits);
  plan.weldments[0].seams[0].path_mm = {{0, 0, 0}, {40, 0, 0}};
  // 80 dips in a second, each a quarter of the time.
  const auto dips = [](double t) { return std::fmod(t * 80 + 1e-6, 1) < 0.25; };
  const auto result = audited({.to_s = 5,
                               .step_s = 2e-4,
                               .amperes = [&](double t) { return dips(t) ? 280.0 : 120.0; },
                               .volts = [&](double t) { return dips(t) ? 3.0 : 23.5; }},
                              plan);
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
  EXPECT_TRUE(result.passes[0].excursions.empty());
  EXPECT_LT(*result.passes[0].min_voltage_V, 17);
}

TEST(Excursions, TheWindowHoldsFiveWeavesOfThePlan) {
  Plan plan = plan_with_current();
  EXPECT_DOUBLE_EQ(default_limits_window_s(plan.schedules[0]), 1);
  const Weld weaving{.amperes = [](double t) { return 301 + 60 * std::sin(std::numbers::pi * t); }};
  EXPECT_EQ(audited(weaving, plan).passes[0].verdict, Verdict::fail);
  plan.schedules[0].weave = Weave{};
  plan.schedules[0].weave->frequency_Hz = 0.5;
  EXPECT_DOUBLE_EQ(default_limits_window_s(plan.schedules[0]), 10);
  const auto result = audited(weaving, plan);
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
  EXPECT_TRUE(result.passes[0].excursions.empty());
  plan.schedules[0].weave->frequency_Hz = 10;
  EXPECT_DOUBLE_EQ(default_limits_window_s(plan.schedules[0]), 1);
}

/// Arcs of 8 s with 2 s between them; hot in their first second and cold in their last.
double restarted(double t) {
  const double in_arc = std::fmod(t + 1e-9, 10);
  return in_arc >= 8 ? 0 : in_arc < 1 ? 400 : in_arc >= 7 ? 150 : 301;
}

TEST(Excursions, StartAndCraterAreCutOffAtEveryRestart) {
  Plan plan = plan_with_current();
  const Weld weld{.to_s = 50, .amperes = restarted, .seam = "S2"};
  EXPECT_EQ(audited(weld, plan).passes[0].excursion_count, 10u);
  plan.schedules[0].arc_start_s = 1;
  plan.schedules[0].crater_fill_s = 1;
  const auto result = audited(weld, plan);
  EXPECT_NEAR(result.passes[0].steady.time_s, 30, 1e-9);
  EXPECT_EQ(result.passes[0].excursion_count, 0u);
}

TEST(Excursions, BinsGoOnBehindAGapAndLengthsAreOfWeldAlone) {
  // Cold from 7.5 s, half a second before the first stitch ends, to 10.5 s, half a second into the second.
  const auto cold = [](double t) {
    if (std::fmod(t + 1e-9, 10) >= 8) return 0.0;
    return t >= 7.5 - 1e-9 && t < 10.5 - 1e-9 ? 150.0 : 301.0;
  };
  AuditOptions options;
  options.excursions.window_s = 0.5;
  const auto result = audited({.to_s = 30, .amperes = cold, .seam = "S2"}, plan_with_current(), options);
  const auto& found = result.passes[0].excursions;
  ASSERT_EQ(found.size(), 1u);
  EXPECT_DOUBLE_EQ(found[0].start_s, 7.5);
  EXPECT_DOUBLE_EQ(found[0].end_s, 10.5);
  EXPECT_NEAR(found[0].length_mm, 8, 1e-9);
}

TEST(Excursions, TheLastBinHasHalfAWindowAtLeast) {
  const Plan plan = plan_with_current();
  const auto cold_from = [](double from_s) {
    return [=](double t) { return t >= from_s - 1e-9 ? 240.0 : 301.0; };
  };
  const auto own = audited({.to_s = 10.6, .amperes = cold_from(10)}, plan);
  ASSERT_EQ(own.passes[0].excursions.size(), 1u);
  EXPECT_DOUBLE_EQ(own.passes[0].excursions[0].start_s, 10);
  EXPECT_DOUBLE_EQ(own.passes[0].excursions[0].end_s, 10.6);
  EXPECT_NEAR(own.passes[0].excursions[0].length_mm, 4.8, 1e-9);
  const auto joined = audited({.to_s = 10.4, .amperes = cold_from(10)}, plan);
  EXPECT_TRUE(joined.passes[0].excursions.empty()) << "(301 + 0.4 x 240) / 1.4 = 284";
  const auto colder = audited({.to_s = 10.4, .amperes = with_stretches(150, {10}, 1)}, plan);
  ASSERT_EQ(colder.passes[0].excursions.size(), 1u);
  EXPECT_DOUBLE_EQ(colder.passes[0].excursions[0].start_s, 9);
  EXPECT_DOUBLE_EQ(colder.passes[0].excursions[0].end_s, 10.4);
  EXPECT_NEAR(colder.passes[0].excursions[0].value, (301 + 0.4 * 150) / 1.4, 1e-9);
}

TEST(Excursions, ASteadyPartShorterThanTheWindowIsJudgedByItsMean) {
  Plan plan = plan_with_current();
  plan.weldments[0].seams[0].path_mm = {{0, 0, 0}, {7.2, 0, 0}};
  const auto inside = audited({.to_s = 0.8, .amperes = [](double t) { return t < 0.4 ? 361 : 241; }}, plan);
  EXPECT_TRUE(inside.passes[0].excursions.empty());
  EXPECT_EQ(inside.passes[0].verdict, Verdict::pass);
  const auto outside = audited({.to_s = 0.8, .amperes = [](double) { return 240; }}, plan);
  EXPECT_TRUE(outside.passes[0].excursions.empty());
  EXPECT_EQ(outside.passes[0].failed_by, std::vector<std::string>{"record.current.low"});
}

TEST(Excursions, AMeanOutsideFailsAloneAndTheRecordSaysWhere) {
  const auto result = audited({.amperes = with_stretches(102, {5}, 30)}, plan_with_current());
  EXPECT_EQ(result.passes[0].failed_by, std::vector<std::string>{"record.current.low"});
  EXPECT_FALSE(has_finding(result, rule));
  EXPECT_EQ(result.passes[0].excursions.size(), 1u);
}

TEST(Excursions, TheGuardBandBelongsToTheMeanAlone) {
  Plan plan = plan_with_current();
  plan.measuring = Measuring{};
  plan.measuring->u_current_pct = 2;  // U = 12 A at 301 A
  plan.measuring->decision = "guarded";
  const auto result = audited({.amperes = with_stretches(330, {20}, 5)}, plan);
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
  EXPECT_TRUE(result.passes[0].excursions.empty());
}

TEST(Excursions, JsonHasThem) {
  std::string text;
  write_audit_json(audited({.amperes = with_stretches(102, {20}, 5)}, plan_with_current()), text);
  const JsonNode root = parse_json(text, "audit.json");
  const JsonNode& pass = root.find("passes")->elements.at(0);
  const JsonNode& found = pass.find("excursions")->elements.at(0);
  EXPECT_EQ(found.find("quantity")->string, "current_A");
  EXPECT_DOUBLE_EQ(found.find("start_s")->number, 20);
  EXPECT_DOUBLE_EQ(found.find("end_s")->number, 25);
  EXPECT_NEAR(found.find("length_mm")->number, 40, 1e-9);
  EXPECT_DOUBLE_EQ(found.find("value")->number, 102);
  EXPECT_DOUBLE_EQ(found.find("limit")->number, 271);
  EXPECT_EQ(pass.find("excursion_count")->number, 1);
  EXPECT_EQ(pass.find("lead_resistance_mOhm"), nullptr);
}

TEST(Excursions, WithoutALimitThereAreNone) {
  const Plan plan = small_plan();
  const auto result = audited({.amperes = with_stretches(102, {20}, 5)}, plan);
  EXPECT_TRUE(result.passes[0].excursions.empty());
  EXPECT_EQ(result.passes[0].verdict, Verdict::pass);
}

}  // namespace
}  // namespace seamtakt::test
