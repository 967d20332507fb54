// The program's judgement of preheat, through the command line.
#include <gtest/gtest.h>

#include <cmath>

#include "cli/plan/judgement_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

TEST_F(Judgement, APreheatShortfallIsAWarningAndWithinFiveKelvinANote) {
  Plan plan = tee();
  JsonNode document = evaluated(plan);
  const double needed = first_pass(document).find("preheat_needed_C")->number;
  EXPECT_GT(needed, 26);
  EXPECT_EQ(severity_of(document, "preheat.below-needed"), "warn");
  EXPECT_EQ(run.exit_code, 0);
  schedule_of(plan).preheat_C = needed - 4.9;
  EXPECT_EQ(severity_of(evaluated(plan), "preheat.below-needed"), "note");
  schedule_of(plan).preheat_C = needed - 5.1;
  EXPECT_EQ(severity_of(evaluated(plan), "preheat.below-needed"), "warn");
  schedule_of(plan).preheat_C = needed;
  EXPECT_EQ(severity_of(evaluated(plan), "preheat.below-needed"), "");
}

TEST_F(Judgement, ARicherWeldMetalDecidesThePreheatAsCalcSaysIt) {
  Plan plan = tee();
  seam_of(plan).thickness_mm = {20, 20};
  set_metals(plan, {{"C", 0.10}, {"Mn", 1.5}});  // CET 0.25
  const double of_plates = first_pass(evaluated(plan)).find("preheat_needed_C")->number;
  plan.wires.front().weld_metal_composition_pct = {{"C", 0.15}, {"Mn", 1.8}};  // CET 0.33
  const JsonNode document = evaluated(plan);
  const double needed = first_pass(document).find("preheat_needed_C")->number;
  // EN 1011-2, C.8 with 0.36 = 0.33 + 0.03, 20 mm, 5 ml/100 g, worked by hand.
  const double Q = first_pass(document).find("heat_input_kJ_mm")->number;
  const double by_hand =
      697 * 0.36 + 160 * std::tanh(20 / 35.0) + 62 * std::pow(5, 0.35) + (53 * 0.36 - 32) * Q - 328;
  EXPECT_NEAR(needed, by_hand, 1e-9);
  EXPECT_NEAR(needed, 102, 1);
  EXPECT_GT(needed, of_plates + 70);
  EXPECT_EQ(severity_of(document, "preheat.below-needed"), "warn");
  const JsonNode calc =
      parse_json(run_program({"calc", "preheat", "--cet", "0.25", "--weld-metal-cet", "0.33", "--thickness",
                              "20", "--hydrogen", "5", "--heat-input", std::to_string(Q), "--json"})
                     .output,
                 "calc");
  EXPECT_NEAR(calc.find("preheat_C")->number, needed, 1e-3);
  // The plates' CET stays what it is; the explanation shows both.
  EXPECT_NEAR(first_pass(document).find("CET")->number, 0.25, 1e-12);
  const ProgramRun explained =
      run_program({"evaluate", saved(plan), "--explain", "X/S1/pass 1.preheat_needed_C"});
  EXPECT_NE(explained.output.find("CETd = max(CET, CETw + 0.03)"), std::string::npos) << explained.output;
  // A leaner weld metal changes nothing.
  plan.wires.front().weld_metal_composition_pct = {{"C", 0.05}, {"Mn", 1.2}};
  EXPECT_NEAR(first_pass(evaluated(plan)).find("preheat_needed_C")->number, of_plates, 1e-12);
}

TEST_F(Judgement, OutsideTheRangeOnTheSafeSideTheEdgeIsJudgedAndSaid) {
  Plan plan = tee();
  seam_of(plan).thickness_mm = {6, 6};
  set_metals(plan, {{"C", 0.15}, {"Mn", 1.5}});  // CET 0.30
  JsonNode document = evaluated(plan);
  const double Q = first_pass(document).find("heat_input_kJ_mm")->number;
  // d is taken as 10 mm: at 1 kJ/mm that is 18 C, none needed.
  const double at_edge =
      697 * 0.30 + 160 * std::tanh(10 / 35.0) + 62 * std::pow(5, 0.35) + (53 * 0.30 - 32) * Q - 328;
  EXPECT_NEAR(first_pass(document).find("preheat_needed_C")->number, at_edge, 1e-9);
  EXPECT_EQ(severity_of(document, "preheat.below-needed"), "");
  ASSERT_EQ(found(document, "preheat.at-range-edge").size(), 1u);
  EXPECT_NE(found(document, "preheat.at-range-edge")[0].find("text")->string.find("plate thickness 10 mm"),
            std::string::npos);
  EXPECT_NE(run_program({"evaluate", saved(plan), "--explain", "X/S1/pass 1.preheat_needed_C"})
                .output.find("taken at the edge of the method's range"),
            std::string::npos);
  // With more hydrogen the same thin plate is short, and judged.
  plan.wires.front().hydrogen_ml_100g = 12;
  document = evaluated(plan);
  EXPECT_EQ(severity_of(document, "preheat.below-needed"), "warn");
  EXPECT_NE(found(document, "preheat.below-needed")[0].find("text")->string.find("at the edge of its range"),
            std::string::npos);
  // A lean steel on thin plate: never a temperature that makes no sense.
  set_metals(plan, {{"C", 0.06}, {"Mn", 0.6}});
  plan.wires.front().hydrogen_ml_100g = 0.5;
  document = evaluated(plan);
  EXPECT_EQ(first_pass(document).find("preheat_needed_C")->number, 5);
  const ProgramRun table = run_program({"evaluate", saved(plan)});
  EXPECT_NE(table.output.find("none"), std::string::npos);
  EXPECT_NE(run_program({"evaluate", saved(plan), "--explain", "X/S1/pass 1.preheat_needed_C"})
                .output.find("Tn = max(Tp, Tmin)"),
            std::string::npos);
}

TEST_F(Judgement, BeyondTheRangeOnTheOtherSidePreheatIsNotJudgedAndSaysWhy) {
  struct Beyond {
    const char* name;
    void (*make)(Plan&);
    double value;
  };
  const Beyond cases[] = {
      {"hydrogen", [](Plan& plan) { plan.wires.front().hydrogen_ml_100g = 25; }, 25},
      {"thickness",
       [](Plan& plan) {
         seam_of(plan).thickness_mm = {100, 20};
       },
       100},
      {"CET",
       [](Plan& plan) {
         set_metals(plan, {{"C", 0.32}, {"Mn", 1.9}});
       },
       0.51},
      {"heat input", [](Plan& plan) { schedule_of(plan).travel_speed_mm_s = 14.5; }, 0.4818},
  };
  for (const Beyond& each : cases) {
    Plan plan = tee();
    seam_of(plan).leg_mm = 3;
    each.make(plan);
    const JsonNode document = evaluated(plan);
    EXPECT_TRUE(is_null(first_pass(document), "preheat_needed_C")) << each.name;
    EXPECT_EQ(severity_of(document, "preheat.below-needed"), "") << each.name;
    ASSERT_EQ(found(document, "preheat.not-judged").size(), 1u) << each.name;
    const JsonNode finding = found(document, "preheat.not-judged")[0];
    EXPECT_NE(finding.find("text")->string.find(each.name), std::string::npos)
        << finding.find("text")->string;
    EXPECT_NEAR(finding.find("value")->number, each.value, 1e-4) << each.name;
  }
}

TEST_F(Judgement, FitDoesNotSlipBelowTheRangeOfMethodBToBeUnjudged) {
  Plan plan = tee();
  find_by_id(plan.schedules, "C")->process = "138";  // none that could replace it
  const ProgramRun fit = run_program({"fit", saved(plan), "--seam", "X/S1", "--json"});
  EXPECT_EQ(fit.exit_code, 0) << fit.errors;
  const JsonNode seams = parse_json(fit.output, "fit");
  const JsonNode& seam = seams.find("seams")->elements[0];
  ASSERT_TRUE(seam.find("fitted")->boolean);
  EXPECT_GE(seam.find("new")->find("heat_input_kJ_mm")->number, 0.5);
  EXPECT_LE(seam.find("new")->find("leg_mm")->number, 7.5 * (1 + 1e-9));
  EXPECT_EQ(found(seams, "fit.preheat-short").size(), 1u);
}

TEST_F(Judgement, FitOffersAScheduleThatIsPreheatedBeforeItLooksForHeat) {
  // The other schedule has 120 C, and lays 7.48 of the 7.5 mm that a leg of 6 may become.
  const ProgramRun fit = run_program({"fit", saved(tee()), "--seam", "X/S1", "--json"});
  const JsonNode seams = parse_json(fit.output, "fit");
  const JsonNode& seam = seams.find("seams")->elements[0];
  EXPECT_TRUE(seam.find("existing_schedule")->boolean) << fit.output;
  EXPECT_EQ(seam.find("new")->find("schedule")->string, "C");
  EXPECT_TRUE(found(seams, "fit.preheat-short").empty());
}
