// What a verdict means, seen as a user sees it: logs through `audit`, the store, and the unit's report.
#include <algorithm>
#include <cmath>

#include "cli/ledger/verdict_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

constexpr const char* header = weld_header;

class Verdicts : public VerdictFixture {};

}  // namespace

TEST_F(Verdicts, FortyThreeOfFourHundredAndFiftyFiveMillimetresAreNoPassAndTheUnitIsOpen) {
  const std::string log = write("a.csv", header + weld("U1", 0, 0, 43.4));
  const JsonNode result = audited(log);
  EXPECT_EQ(first_pass(result).find("verdict")->string, "undecided");
  EXPECT_FALSE(first_unit(result).find("complete")->boolean);
  const JsonNode& item = first_unit(result).find("open_items")->elements.at(0);
  EXPECT_EQ(item.find("cause")->string, "record.length.part");
  EXPECT_NE(item.find("text")->string.find("43.4 mm where the seam needs 455 mm"), std::string::npos);
  const JsonNode closed = audited(log, {"--close-unit"});
  EXPECT_EQ(first_pass(closed).find("verdict")->string, "fail");
  EXPECT_NE(first_text(closed, "record.length.short"), "");
  EXPECT_EQ(audit(log, {"--close-unit"}).exit_code, 1);
  const ProgramRun text = audit(log, {"--summary"});
  EXPECT_NE(text.output.find("Open items"), std::string::npos);
  EXPECT_NE(text.output.find("record.length.part"), std::string::npos);
  EXPECT_EQ(first_pass(audited(log, {"--close-unit", "--length-short", "420mm"})).find("verdict")->string,
            "pass");
  EXPECT_EQ(audit(log, {"--length-short", "-1mm"}).exit_code, 2);
}

TEST_F(Verdicts, PartsInTwoLogsAreOnePassInTheStoreAndInTheReport) {
  const std::string first = write("a.csv", header + weld("U1", 0, 0, 231)),
                    second = write("b.csv", header + weld("U1", 10, 224, 455));
  EXPECT_EQ(first_pass(stored(first)).find("verdict")->string, "undecided");
  EXPECT_FALSE(shown_unit("U1").find("complete")->boolean);
  EXPECT_NE(report("U1", "open-items").find("record.length.part"), std::string::npos);
  const JsonNode whole = stored(second);
  EXPECT_EQ(first_pass(whole).find("verdict")->string, "pass");
  EXPECT_EQ(first_pass(whole).find("coverage")->find("with_records")->elements.size(), 1u);
  EXPECT_TRUE(shown_unit("U1").find("complete")->boolean);
  EXPECT_EQ(report("U1", "open-items").find("record.length.part"), std::string::npos);
}

TEST_F(Verdicts, APartWhoseRobotWentOnIsANonconformance) {
  stored(write("a.csv", header + weld("U1", 0, 0, 43.4)));
  stored(write("b.csv", header + weld("U2", 10, 0, 455)));
  const JsonNode unit = shown_unit("U1");
  ASSERT_EQ(unit.find("nonconformances")->elements.size(), 1u);
  EXPECT_FALSE(unit.find("complete")->boolean);
  EXPECT_EQ(run_program({"ledger", "verify", "--store", store_}).exit_code, 0);
}

TEST_F(Verdicts, UndecidedPassesAreOpenItemsByCause) {
  plan_ = write("p2.weldplan.json", [] {
    std::string text = plan_text();
    return text.replace(text.find("2026-11-30"), 10, "2026-01-31");
  }());
  const JsonNode result = stored(write("a.csv", header + weld("U1", 0, 0, 455)));
  EXPECT_FALSE(first_unit(result).find("complete")->boolean);
  EXPECT_EQ(first_unit(result).find("open_items")->elements.at(0).find("cause")->string,
            "record.instrument.overdue");
  const JsonNode unit = shown_unit("U1");
  EXPECT_FALSE(unit.find("complete")->boolean);
  ASSERT_EQ(unit.find("undecided")->elements.size(), 1u);
  const std::string status = report("U1", "unit");
  EXPECT_NE(status.find("Complete,no"), std::string::npos) << status;
  EXPECT_NE(status.find("Open items,1"), std::string::npos) << status;
  EXPECT_NE(report("U1", "open-items").find("1 undecided pass: S1/pass 1"), std::string::npos);
}

TEST_F(Verdicts, TheCertificateInForceOnTheWeldsDayIsNamedEverywhere) {
  const std::string log = write("a.csv", header + weld("U1", 0, 0, 455));
  stored(write("early.csv", header + weld("U0", 0, 0, 455)));
  ASSERT_EQ(
      run_program({"ledger", "calibrate", "--instrument", "R1-current", "--certificate", "C-STORE", "--date",
                   "2026-02-01", "--due", "2026-02-20", "--store", store_, "--who", "b", "--why", "c"})
          .exit_code,
      0);
  const JsonNode result = stored(log);
  EXPECT_EQ(first_pass(result).find("verdict")->string, "undecided");
  EXPECT_NE(first_text(result, "record.instrument.overdue").find("certificate C-STORE"), std::string::npos);
  const std::string instruments = report("U1", "instruments");
  EXPECT_NE(instruments.find("C-STORE,2026-02-20"), std::string::npos) << instruments;
  EXPECT_EQ(instruments.find("C-PLAN"), std::string::npos) << instruments;
  EXPECT_NE(report("U0", "instruments").find("C-PLAN,2026-11-30"), std::string::npos);
}

// Source of the values: en-1011-2, Annex D, 3D form (part read), worked by hand beside the test:
// t = (6700 - 5*T0)*Q*(1/(500-T0) - 1/(800-T0))*F3 with F3 = 0.67 for a tee.
TEST_F(Verdicts, CoolingTimeStartsFromTheLoggedTemperature) {
  const auto t85 = [](double Q, double T0, double d) {
    const double three = (6700 - 5 * T0) * Q * (1 / (500 - T0) - 1 / (800 - T0)) * 0.67;
    const double two = (4300 - 4.3 * T0) * 1e5 * Q * Q / d / d *
                       (1 / std::pow(500 - T0, 2) - 1 / std::pow(800 - T0, 2)) * 0.67;
    return std::max(three, two);
  };
  const JsonNode cold = audited(write("a.csv", header + weld("U1", 0, 0, 455)));
  const JsonNode hot = audited(write("b.csv", header + weld("U1", 0, 0, 455, "180.0")));
  const JsonNode none = audited(write("c.csv", header + weld("U1", 0, 0, 455, "")));
  const double Q = first_pass(cold).find("heat_input_kJ_mm")->number;
  EXPECT_NEAR(first_pass(cold).find("cooling_time_s")->number, t85(Q, 20, 10), 1e-9);
  EXPECT_NEAR(first_pass(hot).find("cooling_time_s")->number, t85(Q, 180, 10), 1e-9);
  EXPECT_GT(first_pass(hot).find("cooling_time_s")->number,
            2 * first_pass(cold).find("cooling_time_s")->number);
  EXPECT_EQ(first_pass(hot).find("cooling_from_C")->number, 180);
  EXPECT_EQ(first_pass(hot).find("cooling_from_source")->string, "log");
  EXPECT_EQ(first_pass(none).find("cooling_from_source")->string, "schedule");
  EXPECT_LT(first_pass(hot).find("haz_hardness_HV")->number,
            first_pass(cold).find("haz_hardness_HV")->number);
  // The limit follows: 5 s are not reached from 20 C, and are from 180 C.
  plan_ = write("limits.weldplan.json", plan_text(R"(,"limits":{"cooling_time_s":[5,null]})"));
  const JsonNode low = audited(folder / "a.csv"), fine = audited(folder / "b.csv");
  EXPECT_EQ(first_pass(low).find("verdict")->string, "fail");
  EXPECT_EQ(first_pass(fine).find("verdict")->string, "pass");
  EXPECT_NE(first_text(low, "record.cooling-time.low").find("logged temperature"), std::string::npos);
  for (const JsonNode& finding : low.find("findings")->elements)
    if (finding.find("rule")->string == "record.cooling-time.low") {
      EXPECT_EQ(finding.find("source")->string, "en-1011-2, Annex D (part read); plan limit");
    }
}

TEST_F(Verdicts, WhenEveryRowIsRejectedOneLineSaysSoAndNoCurrentIsNamed) {
  const std::string log = write("bad.csv", "time_s,current_A,voltage_V\n0,x,25\n1,y,25\n");
  const ProgramRun run = run_program({"audit", log});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  EXPECT_NE(run.errors.find("bad.csv:2: found 2 of 2 rows that can't be read"), std::string::npos)
      << run.errors;
  EXPECT_EQ(run.output.find("highest current"), std::string::npos) << run.output;
}
