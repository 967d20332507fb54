// Hardness, positions, tacks, transfer, lapse of use and editions, through the command line.
#include <gtest/gtest.h>

#include "cli/plan/judgement_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class JudgementRules : public Judgement {
 protected:
  static Plan limited(double upper_HV) {
    Plan plan = tee();
    schedule_of(plan).limits = ScheduleLimits{};
    schedule_of(plan).limits->hardness_HV = Interval{{}, upper_HV};
    return plan;
  }
  static Qualification& qualified(Plan& plan, const char* basis) {
    plan.qualifications.resize(1);
    Qualification& qualification = plan.qualifications.front();
    qualification.id = "Q";
    qualification.basis = basis;
    qualification.tested = TestedWeld{};
    qualification.tested->process = schedule_of(plan).process;
    schedule_of(plan).qualification = "Q";
    return qualification;
  }
  /// The estimate of the tee's pass.
  double estimate() { return first_pass(evaluated(tee())).find("haz_hardness_HV")->number; }
};

TEST_F(JudgementRules, AnEstimatedHardnessIsANoteWithinItsScatterAndAWarningBeyondAndNeverFails) {
  const double hardness_HV = estimate();
  const auto said = [&](double limit_HV, const char* rule) {
    const std::string severity = severity_of(evaluated(limited(limit_HV)), rule);
    EXPECT_EQ(run.exit_code, 0);
    return severity;
  };
  EXPECT_EQ(said(hardness_HV - 56.1, "limit.hardness.high"), "warn");
  EXPECT_EQ(said(hardness_HV - 55.9, "limit.hardness.high"), "note");
  EXPECT_EQ(said(hardness_HV - 55.9, "limit.hardness.near"), "");
  EXPECT_EQ(said(hardness_HV + 55.9, "limit.hardness.near"), "note");
  EXPECT_EQ(said(hardness_HV + 55.9, "limit.hardness.high"), "");
  EXPECT_EQ(said(hardness_HV + 56.1, "limit.hardness.near"), "");
  // Near the limit: once a schedule, with its passes counted.
  Plan plan = limited(hardness_HV + 20);
  plan.weldments.front().seams.push_back(seam_of(plan));
  plan.weldments.front().seams.back().id = "S2";
  const auto near = found(evaluated(plan), "limit.hardness.near");
  ASSERT_EQ(near.size(), 1u);
  EXPECT_EQ(near[0].find("where")->string, "F");
  EXPECT_NE(near[0].find("text")->string.find("2 passes"), std::string::npos) << near[0].find("text")->string;
}

TEST_F(JudgementRules, AMeasuredHardnessDecidesWhereThePassIsNoColder) {
  const double limit_HV = estimate() - 60;  // 0.931 kJ/mm; the estimate alone is a warning
  const auto said = [&](const auto& change) {
    Plan plan = limited(limit_HV);
    TestedWeld& tested = *qualified(plan, "ISO 15614-1").tested;
    tested.hardness_HV = limit_HV - 5;
    tested.heat_input_kJ_mm = 0.8;
    change(tested);
    return severity_of(evaluated(plan), "limit.hardness.high");
  };
  EXPECT_EQ(said([](TestedWeld&) {}), "");
  EXPECT_EQ(said([](TestedWeld& tested) { tested.heat_input_kJ_mm = 1.0; }), "warn");
  EXPECT_EQ(said([](TestedWeld& tested) { tested.heat_input_kJ_mm.reset(); }), "warn");
  EXPECT_EQ(said([](TestedWeld& tested) { tested.thickness_mm = 10; }), "");
  EXPECT_EQ(said([](TestedWeld& tested) { tested.thickness_mm = 9; }), "warn");
  EXPECT_EQ(said([&](TestedWeld& tested) { tested.hardness_HV = limit_HV + 5; }), "fail");
  EXPECT_EQ(run.exit_code, 1);
}

TEST_F(JudgementRules, TheWindowShowsTheEstimatedHardnessWithoutCuttingByIt) {
  const double hardness_HV = estimate();
  const auto row = [&](const Plan& plan, JsonNode& map) -> const JsonNode* {
    run = run_program({"window", saved(plan), "--schedule", "F", "--seam", "X/S1", "--json"});
    map = parse_json(run.output, "window");
    for (const JsonNode& limit : map.find("limits")->elements)
      if (limit.find("rule")->string == "limit.hardness.high") return &limit;
    return nullptr;
  };
  JsonNode map;
  const JsonNode* limit = row(limited(hardness_HV - 60), map);
  ASSERT_TRUE(limit);
  EXPECT_FALSE(limit->find("cuts")->boolean);
  EXPECT_NEAR(limit->find("bound")->number, hardness_HV - 4, 1e-9);
  EXPECT_GT(limit->find("broken_pct")->number, 0);
  EXPECT_TRUE(map.find("working_point")->find("feasible")->boolean);
  EXPECT_EQ(run.exit_code, 0);
  // From a test's heat input its measured hardness holds: fewer points warn.
  const double broken_pct = limit->find("broken_pct")->number;
  Plan plan = limited(hardness_HV - 60);
  TestedWeld& tested = *qualified(plan, "ISO 15614-1").tested;
  tested.hardness_HV = hardness_HV - 70;
  tested.heat_input_kJ_mm = 0.8;
  const JsonNode* covered = row(plan, map);
  ASSERT_TRUE(covered);
  EXPECT_LT(covered->find("broken_pct")->number, broken_pct);
  // One that is too high fails at any speeds.
  plan.qualifications.front().tested->hardness_HV = hardness_HV;
  const JsonNode* too_hard = row(plan, map);
  ASSERT_TRUE(too_hard);
  EXPECT_EQ(too_hard->find("bound")->kind, JsonNode::Kind::null);
  EXPECT_EQ(map.find("feasible_pct")->number, 0);
}

TEST_F(JudgementRules, ALargeFilletInOnePassIsSaidByPosition) {
  const auto said = [&](const char* position, double leg_mm, const char* code = "", const char* basis = "") {
    Plan plan = tee();
    plan.code = code;
    seam_of(plan).position = position;
    seam_of(plan).leg_mm = leg_mm;
    if (*basis) qualified(plan, basis);
    return severity_of(evaluated(plan), "fillet.leg.single-pass");
  };
  for (const auto& [position, most_mm] :
       {std::pair("PA", 12.0), {"PB", 10.0}, {"PF", 12.0}, {"PD", 8.0}, {"PE", 8.0}}) {
    EXPECT_EQ(said(position, most_mm), "") << position;
    EXPECT_EQ(said(position, most_mm + 0.1), "note") << position;
  }
  EXPECT_EQ(said("", 20), "");
  EXPECT_EQ(said("PB", 11, "AWS D1.1", "D1.1 prequalified"), "warn");
  EXPECT_EQ(said("PB", 11, "AWS D1.1", "AWS D1.1"), "note");
  EXPECT_EQ(said("PB", 11, "EN 1090-2", "D1.1 prequalified"), "note");
  Plan plan = tee();
  seam_of(plan).position = "PB";
  seam_of(plan).leg_mm = 11;
  seam_of(plan).schedules = {"F", "F"};
  EXPECT_EQ(severity_of(evaluated(plan), "fillet.leg.single-pass"), "");
}

TEST_F(JudgementRules, AnAngleBetweenThePlatesThatIsTooSharpOrTooFlatIsSaid) {
  const auto said = [&](double angle_deg) {
    Plan plan = tee();
    seam_of(plan).dihedral_deg = angle_deg;
    return severity_of(evaluated(plan), "fillet.dihedral.outside");
  };
  EXPECT_EQ(said(59), "warn");
  EXPECT_EQ(said(60), "");
  EXPECT_EQ(said(120), "");
  EXPECT_EQ(said(121), "warn");
}

TEST_F(JudgementRules, GasShieldedAndCoredWireWeldingIsLowHydrogenWhateverTheWire) {
  const auto least_mm = [&](const char* process) {
    Plan plan = tee();
    for (Wire& wire : plan.wires) wire.hydrogen_ml_100g = 15;
    schedule_of(plan).process = process;
    seam_of(plan).thickness_mm = {25, 8};
    seam_of(plan).leg_mm = 2;
    const auto all = found(evaluated(plan), "fillet.leg.below-minimum");
    return all.size() == 1 ? all[0].find("limit")->number : 0;
  };
  // The thinner plate's 5 mm; for others the thicker plate's 8 mm.
  for (const char* process : {"135", "136", "138", "114", "121"}) EXPECT_EQ(least_mm(process), 5) << process;
  EXPECT_EQ(least_mm("111"), 8);
}

TEST_F(JudgementRules, ShortTacksAreOneNoteAWeldmentUnlessATrialShowsThatTheyHold) {
  Plan plan = tee();
  plan.weldments.front().seams.push_back(seam_of(plan));
  plan.weldments.front().seams.back().id = "S2";
  plan.weldments.front().seams.back().thickness_mm = {12, 8};
  const auto tack = [&](double first_mm, double second_mm) {
    Tacks tacks;
    tacks.count = 3;
    tacks.length_mm = first_mm;
    plan.weldments.front().seams[0].tacks = tacks;
    tacks.length_mm = second_mm;
    plan.weldments.front().seams[1].tacks = tacks;
  };
  tack(40, 50);  // 4t of 10 mm, and 50 mm from 12 mm
  EXPECT_EQ(severity_of(evaluated(plan), "tack.length.below-recommended"), "");
  tack(39, 45);
  const auto notes = found(evaluated(plan), "tack.length.below-recommended");
  ASSERT_EQ(notes.size(), 1u);
  EXPECT_EQ(notes[0].find("severity")->string, "note");
  EXPECT_EQ(notes[0].find("where")->string, "X");
  EXPECT_EQ(notes[0].find("value")->number, 45);
  EXPECT_EQ(notes[0].find("limit")->number, 50);
  EXPECT_NE(notes[0].find("text")->string.find("2 seams"), std::string::npos);
  for (Seam& seam : plan.weldments.front().seams) seam.tacks->tested = "trial 4";
  EXPECT_EQ(severity_of(evaluated(plan), "tack.length.below-recommended"), "");
}

TEST_F(JudgementRules, LongGapsBetweenRunsAreOneNoteAWeldment) {
  const auto said = [&](double gap_mm, const char* code = "") {
    Plan plan = tee();
    plan.code = code;
    seam_of(plan).path_mm = {{0, 0, 0}, {800, 0, 0}};
    seam_of(plan).intermittent = Intermittent{60, gap_mm, {}};
    return severity_of(evaluated(plan), "fillet.runs.far-apart");
  };
  EXPECT_EQ(said(96), "");  // 12 times 8 mm
  EXPECT_EQ(said(97), "note");
  EXPECT_EQ(said(97, "EN 1090-2"), "note");
  EXPECT_EQ(said(97, "AWS D1.1"), "");
}

TEST_F(JudgementRules, AScheduleWithoutAnArcLengthIsSaidOnce) {
  Plan plan = tee();
  EXPECT_EQ(severity_of(evaluated(plan), "schedule.arc-length.absent"), "");
  schedule_of(plan).arc_length_mm = 0;
  seam_of(plan).schedules = {"F", "F"};
  const auto notes = found(evaluated(plan), "schedule.arc-length.absent");
  ASSERT_EQ(notes.size(), 1u);
  EXPECT_EQ(notes[0].find("severity")->string, "note");
  schedule_of(plan).current_A = 300;
  EXPECT_EQ(severity_of(evaluated(plan), "schedule.arc-length.absent"), "");
}

TEST_F(JudgementRules, SteadySprayOrGlobularTransferOutOfPositionWarns) {
  const auto said = [&](const char* process, const char* transfer, const char* position) {
    Plan plan = tee();
    schedule_of(plan).process = process;
    schedule_of(plan).transfer = transfer;
    seam_of(plan).position = position;
    return severity_of(evaluated(plan), "transfer.position");
  };
  for (const char* position : {"PF", "PD", "PE"})
    for (const char* process : {"135", "138"})
      for (const char* transfer : {"spray", "globular"})
        EXPECT_EQ(said(process, transfer, position), "warn") << position << process << transfer;
  EXPECT_EQ(said("136", "spray", "PF"), "");
  EXPECT_EQ(said("135", "spray", "PC"), "");
  EXPECT_EQ(said("135", "pulsed", "PF"), "");
  EXPECT_EQ(said("135", "dip", "PE"), "");
}

TEST_F(JudgementRules, ATransitionThatNobodyPublishedIsNotCalledBelowSpray) {
  const auto mode = [&](const char* gas) {
    Plan plan = tee();
    for (Gas& each : plan.gases) each.designation = gas;
    return first_pass(evaluated(plan)).find("transfer_mode")->string;
  };
  EXPECT_EQ(mode("82Ar 18CO2"), "not published");
  EXPECT_EQ(mode("M21"), "not published");
  EXPECT_EQ(mode("74Ar 26CO2"), "below-spray");
  EXPECT_EQ(mode("C1"), "below-spray");
}

TEST_F(JudgementRules, ALongUnusedProcedureAsksForATestByTheSteel) {
  // Dates far enough from today for this test to hold for as long as the calendar has four digits.
  const auto said = [&](const char* standard, const char* last_used, const char* code, const char* basis) {
    Plan plan = tee();
    plan.code = code;
    for (BaseMetal& metal : plan.base_metals) metal.standard = standard;
    Qualification& qualification = qualified(plan, basis);
    qualification.last_used = last_used;
    return severity_of(evaluated(plan), "qualification.lapsed");
  };
  EXPECT_EQ(said("EN 10025-2 S355J2", "2020-01-01", "EN 1090-2", "ISO 15614-1"), "warn");
  EXPECT_EQ(said("EN 10025-3 S460NL", "2020-01-01", "EN 1090-2", "ISO 15614-1"), "fail");
  EXPECT_EQ(said("EN 10025-3 S460NL", "2020-01-01", "", "ISO 15614-1"), "note");
  EXPECT_EQ(said("EN 10025-3 S460NL", "2020-01-01", "AWS D1.1", "ISO 15614-1"), "");
  EXPECT_EQ(said("EN 10025-3 S460NL", "2020-01-01", "", "AWS D1.1"), "");
  EXPECT_EQ(said("EN 10025-3 S460NL", "", "EN 1090-2", "ISO 15614-1"), "");
}

TEST_F(JudgementRules, AGapThatTheQualityLevelDoesNotAllowWarns) {
  const auto said = [&](const char* level, double gap_max_mm, double thickness_mm) {
    Plan plan = tee();
    seam_of(plan).quality = level;
    seam_of(plan).leg_mm = 6;  // throat 4.243
    seam_of(plan).gap_max_mm = gap_max_mm;
    seam_of(plan).thickness_mm = {thickness_mm, thickness_mm};
    return severity_of(evaluated(plan), "fillet.gap.quality");
  };
  // C: 0.5 + 0.2a = 1.349 mm; B: 0.924 mm; up to 3 mm of plate C: 0.3 + 0.1a = 0.724 mm.
  EXPECT_EQ(said("C", 1.34, 8), "");
  EXPECT_EQ(said("C", 1.36, 8), "warn");
  EXPECT_EQ(said("B", 0.93, 8), "warn");
  EXPECT_EQ(said("B", 0.92, 8), "");
  EXPECT_EQ(said("C", 0.73, 3), "warn");
  EXPECT_EQ(said("C", 0.72, 3), "");
  EXPECT_EQ(said("", 5, 8), "");
}

TEST_F(JudgementRules, TheEditionOfTheTestDecidesItsRanges) {
  const auto said = [&](const char* basis) {
    Plan plan = tee();  // plates of 10 and 8 mm
    TestedWeld& tested = *qualified(plan, basis).tested;
    tested.joint = "fillet";
    tested.thickness_mm = 7;
    return severity_of(evaluated(plan), "qualification.thickness");
  };
  // 2004: up to 1.2 t = 8.4 mm; 2017: up to 2 t.
  EXPECT_EQ(said("ISO 15614-1:2004"), "fail");
  EXPECT_EQ(said("EN ISO 15614-1:2004+A2:2012"), "fail");
  EXPECT_EQ(said("ISO 15614-1:2017"), "");
  EXPECT_EQ(said("ISO 15614-1"), "");
  const auto range = [&](const char* edition) {
    const ProgramRun calc = run_program({"calc", "qualification", "--joint", "fillet", "--tested-thickness",
                                         "10", "--edition", edition, "--json"});
    EXPECT_EQ(calc.exit_code, 0) << calc.errors;
    return parse_json(calc.output, "calc").find("thickness_mm")->elements[1].number;
  };
  EXPECT_EQ(range("2004"), 12);
  EXPECT_EQ(range("2017"), 20);
}

}  // namespace
