// What a verdict means, seen as a user sees it: logs through `audit`, the store, and the unit's report.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "base/json/json_node.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// One seam of 455 mm, 10 and 12 mm plates, one instrument due on 30 November.
std::string plan_text(const std::string& limits = "") {
  return R"({"format":"weldplan","version":1,"title":"t",
"base_metals":[{"id":"steel","composition_pct":{"C":0.16,"Mn":1.45,"Si":0.3}}],
"wires":[{"id":"w","diameter_mm":1.2,"density_g_cm3":7.85,"alpha_mm_s_A":0.3,"beta_per_s_A2":5e-5,"deposition_efficiency":0.95}],
"schedules":[{"id":"F6","revision":2,"status":"approved","process":"135","wire":"w","wire_feed_speed_m_min":9,
"arc_voltage_V":28,"travel_speed_mm_s":7,"contact_tip_distance_mm":18,"preheat_C":20)" +
         limits + R"(}],
"weldments":[{"id":"BD","seams":[{"id":"S1","joint":"tee","thickness_mm":[10,12],"base_metals":["steel","steel"],
"leg_mm":6,"schedules":["F6"],"path_mm":[[0,0,0],[455,0,0]]}]}],
"instruments":[{"id":"R1-current","quantity":"current","due":"2026-11-30","certificate":"C-PLAN"}]})";
}

/// Rows of a pass at 7 mm/s; `at_min` minutes after 06:00.
std::string weld(const std::string& unit, int at_min, double from_mm, double to_mm,
                 const std::string& temperature = "20.0") {
  std::string text;
  const int rows = static_cast<int>(std::lround((to_mm - from_mm) / 0.7));
  for (int i = 0; i <= rows; ++i) {
    char line[200];
    const int tenths = at_min * 600 + i;
    std::snprintf(line, sizeof line, "2026-03-02T%02d:%02d:%02d.%dZ,%s,BD,S1,1,R1,%d,%s,%.1f,0,0,%s\n",
                  6 + tenths / 36000, tenths / 600 % 60, tenths / 10 % 60, tenths % 10, unit.c_str(),
                  i < rows ? 300 + i % 2 : 0, i % 3 ? "28.0" : "28.1", from_mm + 0.7 * i,
                  temperature.c_str());
    text += line;
  }
  return text;
}

constexpr const char* header =
    "timestamp,unit_serial,weldment,seam,pass,robot,current_A,voltage_V,x_mm,y_mm,z_mm,interpass_C\n";

class Verdicts : public FolderTest {
 protected:
  void SetUp() override {
    store_ = "sqlite:" + (folder / "records.sqlite").string();
    setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
    plan_ = write("p.weldplan.json", plan_text());
  }
  ProgramRun audit(const std::string& log, std::vector<std::string> more = {}) {
    std::vector<std::string> words = {"audit", log, "--plan", plan_};
    words.insert(words.end(), more.begin(), more.end());
    return run_program(words);
  }
  JsonNode audited(const std::string& log, std::vector<std::string> more = {}) {
    more.push_back("--json");
    const ProgramRun run = audit(log, more);
    EXPECT_LE(run.exit_code, 1) << run.errors;
    return parse_json(run.output, "output");
  }
  JsonNode stored(const std::string& log, std::vector<std::string> more = {}) {
    more.insert(more.end(), {"--store", store_, "--who", "anna", "--why", "shift"});
    return audited(log, more);
  }
  JsonNode shown_unit(const std::string& serial) {
    const ProgramRun run = run_program({"ledger", "show", "--unit", serial, "--store", store_, "--json"});
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return *parse_json(run.output, "output").find("unit");
  }
  std::string report(const std::string& serial, const std::string& table) {
    const std::string file = folder / (table + serial + ".csv");
    const ProgramRun run =
        run_program({"report", "--store", store_, "--unit", serial, "--output", file, "--table", table});
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    std::ostringstream text;
    text << std::ifstream(file).rdbuf();
    return text.str();
  }

  std::string store_, plan_;
};

const JsonNode& first_pass(const JsonNode& result) {
  return result.find("passes")->elements.at(0);
}
const JsonNode& first_unit(const JsonNode& result) {
  return result.find("units")->elements.at(0);
}
std::string first_text(const JsonNode& result, const std::string& rule) {
  for (const JsonNode& finding : result.find("findings")->elements)
    if (finding.find("rule")->string == rule) return finding.find("text")->string;
  return "";
}

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
