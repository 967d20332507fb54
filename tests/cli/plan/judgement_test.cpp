// The program's judgement of a plan: cooling, size, metals and qualifications, through the command line.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "cli/plan/judgement_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

TEST_F(Judgement, FormulasForFerriticSteelsAreNullOnOthersAndSayWhy) {
  const CompositionPct stainless = {{"C", 0.04}, {"Cr", 18.1}, {"Ni", 8.1}, {"Mn", 1.4}};
  const CompositionPct aluminium = {{"Mg", 4.5}, {"Mn", 0.7}, {"Si", 0.3}, {"Fe", 0.3}};
  for (const CompositionPct& composition : {stainless, aluminium}) {
    Plan plan = tee();
    schedule_of(plan).limits = ScheduleLimits{};
    schedule_of(plan).limits->cooling_time_s = Interval{100, 200};
    schedule_of(plan).limits->hardness_HV = Interval{{}, 100};
    set_metals(plan, composition);
    const JsonNode document = evaluated(plan);
    for (const char* key :
         {"cooling_time_s", "cooling_regime", "cooling_time_span_s", "cooling_time_plate_s", "CE_IIW", "CET",
          "Pcm", "CEN", "preheat_needed_C", "haz_hardness_HV", "penetration_mm", "U_cooling_time_s"})
      EXPECT_TRUE(is_null(first_pass(document), key)) << key;
    EXPECT_FALSE(is_null(first_pass(document), "heat_input_kJ_mm"));
    EXPECT_EQ(found(document, "composition.not-ferritic").size(), 2u);  // both metals
    EXPECT_EQ(run.exit_code, 0) << "limits on what isn't computed fail nothing";
    // One plate of the two is enough.
    plan.base_metals[1].composition_pct = {{"C", 0.12}, {"Mn", 0.8}};
    EXPECT_TRUE(is_null(first_pass(evaluated(plan)), "cooling_time_s"));
    const ProgramRun window =
        run_program({"window", saved(plan), "--schedule", "F", "--seam", "X/S1", "--json"});
    const JsonNode map = parse_json(window.output, "window");
    EXPECT_EQ(window.exit_code, any_fail(map)) << window.errors;
    EXPECT_TRUE(is_null(*map.find("maps"), "cooling_time_s"));
    EXPECT_TRUE(is_null(*map.find("maps"), "preheat_needed_C"));
    EXPECT_TRUE(is_null(*map.find("maps"), "haz_hardness_HV"));
  }
}

TEST_F(Judgement, EachFormulaHasItsOwnRangeOfCompositions) {
  Plan plan = tee();
  // S700MC at its standard's maxima: beyond CET's range, yet a ferritic steel with a t8/5.
  const CompositionPct s700mc = {{"C", 0.12},  {"Si", 0.6},  {"Mn", 2.1}, {"V", 0.2},
                                 {"Nb", 0.09}, {"Ti", 0.22}, {"Mo", 0.5}, {"B", 0.005}};
  set_metals(plan, s700mc);
  JsonNode document = evaluated(plan);
  for (const char* key : {"CET", "preheat_needed_C"}) EXPECT_TRUE(is_null(first_pass(document), key)) << key;
  for (const char* key : {"cooling_time_s", "CE_IIW", "haz_hardness_HV", "penetration_mm"})
    EXPECT_FALSE(is_null(first_pass(document), key)) << key;
  EXPECT_EQ(found(document, "composition.cet-range").size(), 2u);
  EXPECT_TRUE(found(document, "composition.not-ferritic").empty());
  // Hardness alone is out of its domain with much nitrogen.
  set_metals(plan, {{"C", 0.15}, {"Mn", 1.4}, {"N", 0.012}});
  document = evaluated(plan);
  EXPECT_TRUE(is_null(first_pass(document), "haz_hardness_HV"));
  for (const char* key : {"CET", "preheat_needed_C", "cooling_time_s"})
    EXPECT_FALSE(is_null(first_pass(document), key)) << key;
  EXPECT_EQ(found(document, "composition.hardness-range").size(), 2u);
  // calc continues giving values, with its note.
  const ProgramRun calc = run_program(
      {"calc", "haz-hardness", "--composition", "C=0.15,Mn=1.4,N=0.012", "--cooling-time", "8", "--json"});
  EXPECT_FALSE(is_null(parse_json(calc.output, "calc"), "hardness_HV")) << calc.errors;
}

TEST_F(Judgement, SlowestAndFastestCoolingAreGuardedByTheirOwnUncertainty) {
  Plan plan = tee();
  plan.measuring = Measuring{};
  plan.measuring->u_current_pct = plan.measuring->u_voltage_pct = plan.measuring->u_travel_speed_pct = 0.5;
  plan.measuring->decision = "guarded";
  plan.wires.front().U_melting_pct = 0;  // by the instruments alone
  schedule_of(plan).limits = ScheduleLimits{};
  schedule_of(plan).limits->interpass_C = Interval{{}, 180};
  const auto with_upper = [&](double upper_s) {
    schedule_of(plan).limits->cooling_time_s = Interval{{}, upper_s};
    return evaluated(plan);
  };
  // Nominal 10.32 s with U = 0.36 s; slowest 22.94 s (thinner plate from 180 C), whose U is 0.80 s.
  const JsonNode document = with_upper(22.94 + 0.78);
  EXPECT_NEAR(first_pass(document).find("cooling_time_s")->number, 10.32, 0.005);
  EXPECT_NEAR(first_pass(document).find("U_cooling_time_s")->number, 0.36, 0.005);
  ASSERT_EQ(severity_of(document, "limit.cooling-time.guard-band"), "warn");
  EXPECT_NEAR(found(document, "limit.cooling-time.guard-band")[0].find("value")->number, 22.94, 0.005);
  EXPECT_EQ(severity_of(with_upper(22.94 + 0.81), "limit.cooling-time.guard-band"), "");
  EXPECT_EQ(severity_of(with_upper(22.94 - 0.01), "limit.cooling-time.high"), "fail");
  // The fastest is three-dimensional here and its own U smaller than the nominal's: 2.4 % of 4.6 s.
  schedule_of(plan).limits->cooling_time_s = Interval{4.0, {}};
  seam_of(plan).thickness_mm = {30, 8};
  const double fastest = 6700.0 - 5 * 20;
  const double three_d = fastest * 0.9314332 * (1 / 480.0 - 1 / 780.0) * 0.67;
  const double U_three_d = three_d * 2 * std::sqrt(3.0) * 0.005;
  schedule_of(plan).limits->cooling_time_s = Interval{three_d - 0.9 * U_three_d, {}};
  EXPECT_EQ(severity_of(evaluated(plan), "limit.cooling-time.guard-band"), "warn");
  schedule_of(plan).limits->cooling_time_s = Interval{three_d - 1.1 * U_three_d, {}};
  EXPECT_EQ(severity_of(evaluated(plan), "limit.cooling-time.guard-band"), "");
}

TEST_F(Judgement, ExcessThroatIsJudgedByTheQualityLevel) {
  Plan plan = tee();
  seam_of(plan).leg_mm = 4;  // throat 2.83 drawn, 4.79 obtained
  EXPECT_EQ(severity_of(evaluated(plan), "fillet.throat.excess"), "");
  // ISO 5817, 5214: B 1 + 0.15a = 1.42 mm, C 1 + 0.2a = 1.57 mm, D no limit.
  for (const auto& [level, severity] : {std::pair("B", "fail"), {"C", "fail"}, {"D", ""}}) {
    seam_of(plan).quality = level;
    const JsonNode document = evaluated(plan);
    EXPECT_EQ(severity_of(document, "fillet.throat.excess"), severity) << level;
    EXPECT_EQ(run.exit_code, *severity ? 1 : 0);
    for (const JsonNode& finding : found(document, "fillet.throat.excess")) {
      EXPECT_NEAR(finding.find("value")->number, 4.7876, 5e-5);
      const double drawn = 4 / std::sqrt(2.0), factor = *level == 'B' ? 0.15 : 0.2;
      EXPECT_NEAR(finding.find("limit")->number, drawn + 1 + factor * drawn, 1e-9);
    }
  }
  seam_of(plan).leg_mm = 5;  // 3.54 drawn: 1.53 over at level B is enough
  seam_of(plan).quality = "B";
  EXPECT_EQ(severity_of(evaluated(plan), "fillet.throat.excess"), "");
}

TEST_F(Judgement, TheWindowEndsAtTheLargestFilletAndShowsPreheatWithoutCuttingByIt) {
  Plan plan = tee();
  const auto limit_of = [&](const std::string& rule, JsonNode& map) -> const JsonNode* {
    run = run_program({"window", saved(plan), "--schedule", "F", "--seam", "X/S1", "--json"});
    map = parse_json(run.output, "window");
    for (const JsonNode& limit : map.find("limits")->elements)
      if (limit.find("rule")->string == rule) return &limit;
    return nullptr;
  };
  JsonNode map;
  const JsonNode* practice = limit_of("fillet.throat.oversize", map);
  ASSERT_TRUE(practice);
  EXPECT_NEAR(practice->find("bound")->number, 1.25 * 6 / std::sqrt(2.0), 1e-9);
  EXPECT_EQ(practice->find("source")->string, "common practice, no source");
  EXPECT_TRUE(practice->find("cuts")->boolean);
  EXPECT_TRUE(map.find("working_point")->find("feasible")->boolean);
  const JsonNode* preheat = limit_of("preheat.below-needed", map);
  ASSERT_TRUE(preheat);
  EXPECT_FALSE(preheat->find("cuts")->boolean);
  EXPECT_GT(preheat->find("broken_pct")->number, 0);
  EXPECT_EQ(preheat->find("alone_pct")->number, 0);
  EXPECT_GT(map.find("feasible_pct")->number, 0);
  EXPECT_EQ(run.exit_code, 0);
  seam_of(plan).leg_max_mm = 6.5;  // the schedule lays 6.77
  const JsonNode* stated = limit_of("fillet.leg.above-max", map);
  ASSERT_TRUE(stated);
  EXPECT_EQ(stated->find("bound")->number, 6.5);
  EXPECT_LT(stated->find("margin")->number, 0);
  EXPECT_FALSE(map.find("working_point")->find("feasible")->boolean);
}

TEST_F(Judgement, ALargestFilletBelowTheDrawnOneOrOnAGrooveIsRefused) {
  Plan plan = tee();
  const auto refused = [&](const char* words) {
    const ProgramRun evaluate = run_program({"evaluate", saved(plan)});
    EXPECT_EQ(evaluate.exit_code, 2);
    EXPECT_EQ(evaluate.output, "");
    EXPECT_EQ(std::count(evaluate.errors.begin(), evaluate.errors.end(), '\n'), 1) << evaluate.errors;
    EXPECT_NE(evaluate.errors.find(words), std::string::npos) << evaluate.errors;
  };
  seam_of(plan).leg_max_mm = 5.9;
  refused("leg_max_mm");
  seam_of(plan).leg_max_mm.reset();
  seam_of(plan).throat_max_mm = 4.2;
  refused("throat_max_mm");
  seam_of(plan).throat_max_mm = 6 / std::sqrt(2.0);
  EXPECT_EQ(run_program({"evaluate", saved(plan)}).exit_code, 0);
  seam_of(plan).leg_mm.reset();
  seam_of(plan).groove = Groove{};
  seam_of(plan).groove->type = "square";
  refused("groove");
}

TEST_F(Judgement, AQualificationThatIsNotJudgedIsSaid) {
  const auto said = [&](const std::string& basis, bool tested) {
    Plan plan = tee();
    Qualification qualification;
    qualification.id = "Q";
    qualification.basis = basis;
    if (tested) qualification.tested = TestedWeld{};
    if (tested) qualification.tested->process = "135";
    plan.qualifications = {qualification};
    schedule_of(plan).qualification = "Q";
    const JsonNode document = evaluated(plan);
    EXPECT_LE(found(document, "qualification.basis").size(), 1u);
    return severity_of(document, "qualification.basis");
  };
  EXPECT_EQ(said("ISO 15614-1", true), "");
  EXPECT_EQ(said("DIN EN ISO 15614-1:2017", true), "");
  EXPECT_EQ(said("ISO 15614-1", false), "warn");
  for (const char* basis : {"", "our own habit", "ASME IX", "AWS D1.1", "ISO 15614-12", "ISO 15614-2"})
    EXPECT_EQ(said(basis, true), "warn") << basis;
  for (const char* basis : {"ISO 15610", "ISO 15611:2019", "EN ISO 15612", "ISO 15613", "D1.1 prequalified",
                            "AWS D1.1 Prequalified"})
    EXPECT_EQ(said(basis, true), "note") << basis;
}

TEST_F(Judgement, AQualificationByItsFullNameIsJudged) {
  Plan plan = tee();
  Qualification qualification;
  qualification.id = "Q";
  qualification.basis = "EN ISO 15614-1:2017";
  qualification.tested = TestedWeld{};
  qualification.tested->process = "111";
  plan.qualifications = {qualification};
  schedule_of(plan).qualification = "Q";
  EXPECT_EQ(severity_of(evaluated(plan), "qualification.process"), "fail");
}
