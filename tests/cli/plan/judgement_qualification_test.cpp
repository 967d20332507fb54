// What a procedure test qualifies, variable by variable, through the command line.
#include <gtest/gtest.h>

#include "cli/plan/judgement_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class QualificationVariables : public Judgement {
 protected:
  /// A tee of leg 6 whose schedule F rests on a test; change(plan, tested) sets what is unlike.
  template <class Change>
  std::string severity_after(const char* rule, Change change) {
    Plan plan = tee();
    Qualification qualification;
    qualification.id = "Q";
    qualification.basis = "ISO 15614-1:2017";
    qualification.tested = TestedWeld{};
    qualification.tested->process = schedule_of(plan).process;
    schedule_of(plan).qualification = "Q";
    change(plan, *qualification.tested);
    plan.qualifications = {qualification};
    return severity_of(evaluated(plan), rule);
  }
};

TEST_F(QualificationVariables, DipQualifiesDipAloneAndTheOthersOneAnother) {
  const auto said = [&](const char* used, const char* tested) {
    return severity_after("qualification.transfer", [&](Plan& plan, TestedWeld& test) {
      schedule_of(plan).transfer = used;
      test.transfer = tested;
    });
  };
  EXPECT_EQ(said("dip", "spray"), "fail");
  EXPECT_EQ(said("spray", "dip"), "fail");
  EXPECT_EQ(said("dip", "dip"), "");
  EXPECT_EQ(said("spray", "globular"), "");
  EXPECT_EQ(said("pulsed", "spray"), "");
  EXPECT_EQ(said("pulsed", ""), "");
}

TEST_F(QualificationVariables, AnotherGasGroupFailsAndAnUnknownOneWarns) {
  const auto said = [&](const char* used, const char* tested) {
    return severity_after("qualification.gas", [&](Plan& plan, TestedWeld& test) {
      plan.gases.front().designation = used;
      schedule_of(plan).gas = plan.gases.front().id;
      test.gas = tested;
    });
  };
  EXPECT_EQ(said("ISO 14175-M21-ArC-18", "M21"), "");
  EXPECT_EQ(said("ISO 14175 M21-ArC-18", "ISO 14175 - M21 - ArC - 15"), "");
  EXPECT_EQ(said("ISO 14175 C1", "M21"), "fail");
  EXPECT_EQ(said("our own mixture", "M21"), "warn");
  EXPECT_EQ(said("our own mixture", "our own mixture"), "");
  EXPECT_EQ(said("ISO 14175 C1", ""), "");
}

TEST_F(QualificationVariables, AnotherFillerWarnsAndFailsWhereImpactWasTested) {
  const auto said = [&](const char* tested, bool impact) {
    return severity_after("qualification.filler", [&](Plan& plan, TestedWeld& test) {
      for (Wire& wire : plan.wires) wire.classification = "ISO 14341-A G 46 4 M21 4Si1";
      test.filler = tested;
      test.impact_tested = impact;
    });
  };
  EXPECT_EQ(said("G 46 4 M21 4Si1", true), "");
  EXPECT_EQ(said("G 42 3 M21 3Si1", false), "warn");
  EXPECT_EQ(said("G 42 3 M21 3Si1", true), "fail");
}

TEST_F(QualificationVariables, HandsAndRobotsAreQualifiedApart) {
  const auto said = [&](const char* by, const char* tested) {
    return severity_after("qualification.mechanisation", [&](Plan& plan, TestedWeld& test) {
      seam_of(plan).by = by;
      test.mechanisation = tested;
    });
  };
  EXPECT_EQ(said("robot", "automatic"), "");
  EXPECT_EQ(said("robot", "fully mechanised"), "");
  EXPECT_EQ(said("robot", "partly mechanised"), "fail");
  EXPECT_EQ(said("robot", "semi-automatic"), "fail");
  EXPECT_EQ(said("manual", "partly mechanised"), "");
  EXPECT_EQ(said("manual", "automatic"), "fail");
}

TEST_F(QualificationVariables, AGroupOfHigherStrengthIsNotCovered) {
  const auto said = [&](const char* standard, const char* tested) {
    return severity_after("qualification.material-group", [&](Plan& plan, TestedWeld& test) {
      for (BaseMetal& metal : plan.base_metals) metal.standard = standard;
      test.group = tested;
    });
  };
  EXPECT_EQ(said("EN 10025-2 S355J2", "1.2"), "");
  EXPECT_EQ(said("EN 10025-2 S235JR", "1.2"), "");
  EXPECT_EQ(said("EN 10025-2 S355J2", "1.1"), "fail");
  EXPECT_EQ(said("EN 10025-2 S355J2", "3.1"), "");
  EXPECT_EQ(said("EN 10025-2 S355J2", "8.1"), "fail");
  EXPECT_EQ(said("EN 10025-2 S355J2", "1.4"), "") << "any yield strength: not decided";
  EXPECT_EQ(said("a steel of our own", "1.1"), "") << "its group isn't known";
}

TEST_F(QualificationVariables, AFilletTestDoesNotCoverAGroove) {
  const auto said = [&](bool groove) {
    return severity_after("qualification.joint", [&](Plan& plan, TestedWeld& test) {
      test.joint = "fillet";
      if (!groove) return;
      seam_of(plan).joint = "butt";
      seam_of(plan).leg_mm.reset();
      seam_of(plan).groove = Groove{};
      seam_of(plan).groove->type = "square";
      seam_of(plan).groove->root_gap_mm = 1;
    });
  };
  EXPECT_EQ(said(true), "fail");
  EXPECT_EQ(said(false), "");
}

TEST_F(QualificationVariables, PositionsCountDownwardsAndWhereHardnessOrImpactWasTested) {
  const auto severity = [&](const char* rule, const char* used, const char* tested, bool hardness) {
    return severity_after(rule, [&](Plan& plan, TestedWeld& test) {
      seam_of(plan).position = used;
      test.position = tested;
      test.hardness_tested = hardness;
    });
  };
  const char *downwards = "qualification.position", *other = "qualification.position.other";
  EXPECT_EQ(severity(other, "PB", "PA", false), "");
  EXPECT_EQ(severity(other, "PB", "PA", true), "note");
  EXPECT_EQ(severity(other, "PB", "PB", true), "");
  EXPECT_EQ(severity(downwards, "PB", "PA", true), "");
  EXPECT_EQ(severity(downwards, "PG", "PB", false), "fail");
  EXPECT_EQ(severity(downwards, "PB", "PG", false), "fail");
}

TEST_F(QualificationVariables, RunsAndThroatAreThoseOfTheTest) {
  const auto throat = [&](double tested_mm, const char* runs) {
    return severity_after("qualification.throat", [&](Plan&, TestedWeld& test) {
      test.throat_mm = tested_mm;
      test.runs = runs;
    });
  };
  // Leg 6 has a throat of 4.243; a single run of a qualifies 0.75 a to 1.5 a.
  EXPECT_EQ(throat(4, "single"), "");
  EXPECT_EQ(throat(2.82, "single"), "fail");
  EXPECT_EQ(throat(2.83, "single"), "");
  EXPECT_EQ(throat(5.65, "single"), "");
  EXPECT_EQ(throat(5.66, "single"), "fail");
  EXPECT_EQ(throat(2, "multi"), "");
  const auto runs = [&](const char* tested) {
    return severity_after("qualification.runs", [&](Plan&, TestedWeld& test) { test.runs = tested; });
  };
  EXPECT_EQ(runs("single"), "");
  EXPECT_EQ(runs("multi"), "warn");
}

TEST_F(QualificationVariables, InterpassAboveTheTestsWarnsUpToFiftyKelvinAndFailsBeyond) {
  const auto said = [&](double highest_C) {
    return severity_after("qualification.interpass", [&](Plan& plan, TestedWeld& test) {
      if (!schedule_of(plan).limits) schedule_of(plan).limits = ScheduleLimits{};
      schedule_of(plan).limits->interpass_C = Interval{{}, highest_C};
      test.interpass_C = 180;
    });
  };
  EXPECT_EQ(said(180), "");
  EXPECT_EQ(said(181), "warn");
  EXPECT_EQ(said(230), "warn");
  EXPECT_EQ(said(231), "fail");
}

TEST_F(QualificationVariables, ATestByD11IsJudgedByItsEssentialChanges) {
  // D1.1's limits aren't asked of a test by ISO 15614-1.
  EXPECT_EQ(
      severity_after("qualification.d1-1.voltage_V", [](Plan&, TestedWeld& test) { test.voltage_V = 10; }),
      "");
  const auto d1_1 = [&](auto set) {
    Plan plan = tee();
    schedule_of(plan).arc_voltage_V = 28;
    schedule_of(plan).travel_speed_mm_s = 8;
    schedule_of(plan).wire_feed_speed_m_min = 9;
    schedule_of(plan).gas_flow_l_min = 16;
    schedule_of(plan).current_A = 280;
    schedule_of(plan).qualification = "Q";
    Qualification qualification;
    qualification.id = "Q";
    qualification.basis = "AWS D1.1:2020";
    qualification.tested = TestedWeld{};
    set(*qualification.tested);
    plan.qualifications = {qualification};
    return evaluated(plan);
  };
  EXPECT_EQ(
      severity_of(d1_1([](TestedWeld& test) { test.voltage_V = 28 / 1.07; }), "qualification.d1-1.voltage_V"),
      "");
  EXPECT_EQ(
      severity_of(d1_1([](TestedWeld& test) { test.voltage_V = 26.1; }), "qualification.d1-1.voltage_V"),
      "fail");
  EXPECT_EQ(severity_of(d1_1([](TestedWeld& test) { test.gas_flow_l_min = 20; }),
                        "qualification.d1-1.gas_flow_l_min"),
            "");
  EXPECT_EQ(severity_of(d1_1([](TestedWeld& test) { test.gas_flow_l_min = 20.1; }),
                        "qualification.d1-1.gas_flow_l_min"),
            "fail");
  EXPECT_EQ(severity_of(d1_1([](TestedWeld& test) { test.current_A = 311; }), "qualification.d1-1.current_A"),
            "");
  EXPECT_EQ(severity_of(d1_1([](TestedWeld& test) { test.current_A = 312; }), "qualification.d1-1.current_A"),
            "fail");
  EXPECT_EQ(severity_of(d1_1([](TestedWeld& test) { test.current_A = 280; }), "qualification.basis"), "");
  EXPECT_EQ(severity_of(d1_1([](TestedWeld&) {}), "qualification.basis"), "warn");
}

}  // namespace
