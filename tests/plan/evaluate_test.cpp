#include "plan/evaluate/evaluate.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;

namespace {

// The figures below were computed by a script independent of the program, from the definitions of the
// contract.
class Evaluated : public testing::Test {
 protected:
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  Evaluation evaluation = evaluate(plan);

  const PassEvaluation& pass(std::size_t index) const { return evaluation.passes.at(index); }
  bool has_finding(const Evaluation& of, const std::string& rule) const {
    return std::any_of(of.findings.begin(), of.findings.end(),
                       [&](const Finding& f) { return f.rule == rule; });
  }
};

}  // namespace

TEST_F(Evaluated, PassFiguresAgreeWithTheWorkedExample) {
  ASSERT_EQ(evaluation.passes.size(), 6u);
  const PassEvaluation& first = pass(0);
  EXPECT_DOUBLE_EQ(first.length_mm, 550);
  EXPECT_NEAR(first.current_A, 301.1099, 5e-5);
  EXPECT_NEAR(first.arc_power_kW, 8.732186, 5e-7);
  EXPECT_NEAR(first.arc_energy_kJ_mm, 1.164292, 5e-7);
  EXPECT_NEAR(first.heat_input_kJ_mm, 0.9314332, 5e-8);
  EXPECT_NEAR(first.melting_rate_kg_h, 5.06054, 5e-6);
  EXPECT_NEAR(first.deposition_rate_kg_h, 4.858119, 5e-7);
  EXPECT_NEAR(first.deposit_area_mm2, 22.92106, 5e-6);
  EXPECT_NEAR(first.arc_time_s, 73.33333, 5e-6);
  EXPECT_NEAR(first.wire_g, 103.0851, 5e-5);
  EXPECT_NEAR(*first.CE_IIW, 0.4236667, 5e-8);
  EXPECT_NEAR(*first.CET, 0.31475, 5e-8);
  EXPECT_NEAR(*first.Pcm, 0.2531667, 5e-8);
  EXPECT_NEAR(*first.CEN, 0.4141162, 5e-8);
}

TEST_F(Evaluated, IntermittentSeamWeldsWholeRunsOnly) {
  EXPECT_DOUBLE_EQ(pass(1).length_mm, 180);
}

TEST_F(Evaluated, CoolingTimeOfAPreheatedButtAgreesWithTheWorkedExample) {
  EXPECT_NEAR(*pass(2).cooling_time_s, 14.48289, 5e-6);
  EXPECT_EQ(pass(2).cooling_regime, "2D");
  ASSERT_TRUE(pass(2).cooling_time_hot_s);
  EXPECT_GT(*pass(2).cooling_time_hot_s, pass(2).cooling_time_s);
}

TEST_F(Evaluated, LegAndThroatAgreeWithTheWorkedExample) {
  EXPECT_NEAR(*evaluation.seams[0].leg_mm, 6.770681, 5e-7);
  EXPECT_NEAR(*evaluation.seams[0].throat_mm, 4.787594, 5e-7);
  EXPECT_NEAR(*evaluation.seams[1].leg_mm, 5.955591, 5e-7);
  EXPECT_NEAR(*evaluation.seams[1].throat_mm, 4.211239, 5e-7);
  EXPECT_FALSE(evaluation.seams[2].leg_mm);
  EXPECT_NEAR(evaluation.seams[2].area_needed_mm2, 93.86, 5e-3);
}

TEST_F(Evaluated, HeatInputUncertaintyIsTheRootOfTheSquaresOfItsParts) {
  // u(Q)/Q^2 = 0.02^2 + 0.01^2 + 0.015^2 (JCGM 100:2008, 5.1.6), and 0.075^2 of a current by the melting law,
  // of which U is 15 %; U = 2u.
  const double relative = std::sqrt(0.02 * 0.02 + 0.01 * 0.01 + 0.015 * 0.015 + 0.075 * 0.075);
  ASSERT_TRUE(pass(0).U_heat_input_kJ_mm);
  EXPECT_NEAR(*pass(0).U_heat_input_kJ_mm, 2 * relative * pass(0).heat_input_kJ_mm, 1e-12);
}

TEST_F(Evaluated, TwoDimensionalCoolingTimeHasTwiceTheRelativeUncertaintyOfHeatInput) {
  plan.schedules[0].current_A = pass(0).current_A;  // measured: so that the regime can't change within 3 u
  evaluation = evaluate(plan);
  ASSERT_EQ(pass(0).cooling_regime, "2D");
  const double heat = *pass(0).U_heat_input_kJ_mm / pass(0).heat_input_kJ_mm;
  EXPECT_NEAR(*pass(0).U_cooling_time_s / *pass(0).cooling_time_s, 2 * heat, 1e-12);
}

TEST_F(Evaluated, InterpassWaitIsThatOfTheHotterPlateFormula) {
  ASSERT_EQ(evaluation.seams[2].interpass_waits_s.size(), 3u);
  // Thin plate: (Q/d)^2 F2 / (4 pi lambda rho_c (Ti-T0)^2), with 1133.94 J/mm, 12 mm, 100 K, handbook
  // properties.
  const double thin = std::pow(1133.942 / 12 / 100, 2) * 0.9 / (4 * M_PI * 0.028 * 0.0044);
  EXPECT_NEAR(evaluation.seams[2].interpass_wait_s, thin, 1e-3 * thin);
}

TEST_F(Evaluated, UndersizedLegIsAFailFindingWithValueAndLimit) {
  plan.schedules[0].travel_speed_mm_s = 12;
  const Evaluation slow = evaluate(plan);
  const auto found = std::find_if(slow.findings.begin(), slow.findings.end(),
                                  [](const Finding& f) { return f.rule == "fillet.leg.undersize"; });
  ASSERT_NE(found, slow.findings.end());
  EXPECT_EQ(found->severity, Severity::fail);
  EXPECT_EQ(found->where, "X/S1");
  EXPECT_EQ(found->limit, 6);
  EXPECT_FALSE(has_finding(evaluation, "fillet.leg.undersize"));
}

TEST_F(Evaluated, GapMaxIsJudgedWhereTheSeamFitsWorst) {
  EXPECT_FALSE(has_finding(evaluation, "fillet.leg.undersize-at-gap-max"));
  plan.weldments[0].seams[0].gap_max_mm = 1.5;
  EXPECT_TRUE(has_finding(evaluate(plan), "fillet.leg.undersize-at-gap-max"));
}

TEST_F(Evaluated, ScheduleLimitsFireOnBothSidesAndNotInside) {
  plan.schedules[0].limits.emplace();
  plan.schedules[0].limits->heat_input_kJ_mm = Interval{0.5, 0.9};
  plan.schedules[0].limits->current_A = Interval{310, 350};
  const Evaluation limited = evaluate(plan);
  EXPECT_TRUE(has_finding(limited, "limit.heat-input.high"));
  EXPECT_TRUE(has_finding(limited, "limit.current.low"));
  EXPECT_FALSE(has_finding(evaluation, "limit.heat-input.high"));
  EXPECT_FALSE(has_finding(evaluation, "limit.current.low"));
}

TEST_F(Evaluated, GuardedDecisionWarnsWithinTheUncertaintyOfALimit) {
  plan.schedules[0].limits.emplace();
  plan.schedules[0].limits->heat_input_kJ_mm = Interval{{}, 0.95};
  EXPECT_FALSE(has_finding(evaluate(plan), "limit.heat-input.guard-band"));
  plan.measuring->decision = "guarded";
  EXPECT_TRUE(has_finding(evaluate(plan), "limit.heat-input.guard-band"));
}

TEST_F(Evaluated, LowerCoolingLimitIsJudgedOnTheFastestCooling) {
  plan.schedules[0].limits.emplace();
  // Between the thicker plate's low end and the thinner plate's value: only the fastest one is below it.
  const double limit = (*pass(0).cooling_time_fastest_s + *pass(0).cooling_time_s) / 2;
  plan.schedules[0].limits->cooling_time_s = Interval{limit, {}};
  EXPECT_LT(pass(0).cooling_time_fastest_s, pass(0).cooling_time_s);
  EXPECT_TRUE(has_finding(evaluate(plan), "limit.cooling-time.low"));
}

TEST_F(Evaluated, AcceptedFindingBecomesANoteAndAVanishedOneIsReported) {
  plan.schedules[0].travel_speed_mm_s = 12;
  plan.accepted = {{"fillet.leg.undersize", "X/S1", "welding engineer", "2026-03-02", "trial", {}},
                   {"fillet.leg.undersize", "X/S9", "welding engineer", "2026-03-02", "gone", {}}};
  const Evaluation accepted = evaluate(plan);
  std::vector<Severity> severities;
  for (const Finding& finding : accepted.findings)
    if (finding.rule == "fillet.leg.undersize" && finding.where == "X/S1")
      severities.push_back(finding.severity);
  EXPECT_EQ(severities, std::vector{Severity::note});
  EXPECT_TRUE(has_finding(accepted, "acceptance.without-finding"));
}

TEST_F(Evaluated, ExplanationEndsInTheSameNumberAsTheEvaluation) {
  const std::vector<Explanation> chain = explain(plan, "X/S1/pass 1", "heat_input_kJ_mm");
  ASSERT_GE(chain.size(), 3u);
  EXPECT_EQ(chain[0].result, pass(0).heat_input_kJ_mm);
  EXPECT_NE(explanation_text(chain[0]).find("en-1011-1"), std::string::npos) << explanation_text(chain[0]);
  EXPECT_EQ(explain(plan, "X/S2", "leg_mm")[0].result, *evaluation.seams[1].leg_mm);
}

TEST_F(Evaluated, ExplainRefusesAnUnknownPlaceAndAnUnknownKey) {
  EXPECT_EQ(explain(plan, "S2", "leg_mm")[0].result, *evaluation.seams[1].leg_mm) << "one weldment has it";
  EXPECT_EQ(explain(plan, "X/S1", "heat_input_kJ_mm")[0].result, evaluation.passes[0].heat_input_kJ_mm)
      << "of its only pass";
  EXPECT_THROW(explain(plan, "X/S3", "heat_input_kJ_mm"), InputError) << "of three passes";
  EXPECT_THROW(explain(plan, "X/S7", "leg_mm"), InputError);
  EXPECT_THROW(explain(plan, "X/S1", "lge_mm"), InputError);
}

TEST_F(Evaluated, WeldmentSumsItsPasses) {
  double wire_g = 0;
  for (const PassEvaluation& each : evaluation.passes) wire_g += each.wire_g;
  EXPECT_NEAR(evaluation.weldments[0].wire_kg, wire_g / 1000, 1e-12);
  EXPECT_DOUBLE_EQ(evaluation.weldments[0].robot_share_pct, 100);
}

TEST_F(Evaluated, an_instrument_of_the_wire_feed_alone_gives_a_heat_input_no_uncertainty) {
  Instrument feed;
  feed.id = "feed";
  feed.quantity = "wire_feed_speed";
  feed.half_width_pct = 1;
  feed.of = "reading";
  plan.measuring.reset();
  plan.instruments = {feed};
  const Evaluation measured = evaluate(plan);
  EXPECT_FALSE(measured.passes[0].U_heat_input_kJ_mm);
  EXPECT_FALSE(measured.passes[0].U_cooling_time_s);
  ASSERT_TRUE(measured.seams[0].leg_mm);
  EXPECT_GT(measured.seams[0].U_leg_mm.value_or(0), 0) << "the leg rests on the wire that is fed";
}
