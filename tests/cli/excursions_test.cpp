// Stretches outside a limit, as a user sees them: through `audit`, its options, and the store.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>

#include "base/json/json_node.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// One seam of 455 mm, current limited to 271 to 331 A.
constexpr const char* plan_with_limits = R"({"format":"weldplan","version":1,"title":"t",
"base_metals":[{"id":"steel","composition_pct":{"C":0.16,"Mn":1.45,"Si":0.3}}],
"wires":[{"id":"w","diameter_mm":1.2,"density_g_cm3":7.85,"alpha_mm_s_A":0.3,"beta_per_s_A2":5e-5,"deposition_efficiency":0.95}],
"schedules":[{"id":"F6","revision":2,"status":"approved","process":"135","wire":"w","wire_feed_speed_m_min":9,
"arc_voltage_V":28,"travel_speed_mm_s":7,"contact_tip_distance_mm":18,"preheat_C":20,
"limits":{"current_A":[271,331]}}],
"weldments":[{"id":"BD","seams":[{"id":"S1","joint":"tee","thickness_mm":[10,12],"base_metals":["steel","steel"],
"leg_mm":6,"schedules":["F6"],"path_mm":[[0,0,0],[455,0,0]]}]}]})";

/// 65 s at 7 mm/s by positions: `amperes` from `from_s` to `to_s`, else 301 A.
std::string log_text(int amperes, int from_s, int to_s, int else_amperes = 301) {
  std::string text = "timestamp,unit_serial,weldment,seam,pass,robot,current_A,voltage_V,x_mm,y_mm,z_mm\n";
  for (int i = 0; i <= 650; ++i) {
    char line[200];
    const bool there = i >= 10 * from_s && i < 10 * to_s;
    const int current = i == 650 ? 0 : (there ? amperes : else_amperes) + i % 2;
    std::snprintf(line, sizeof line, "2026-03-02T06:%02d:%02d.%dZ,U1,BD,S1,1,R1,%d,28.0,%.1f,0,0\n", i / 600,
                  i / 10 % 60, i % 10, current, 0.7 * i);
    text += line;
  }
  return text;
}

class ExcursionCommands : public FolderTest {
 protected:
  void SetUp() override {
    setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
    plan_ = write("p.weldplan.json", plan_with_limits);
  }
  ProgramRun audit(const std::string& log, std::vector<std::string> more = {}) {
    std::vector<std::string> words = {"audit", log, "--plan", plan_};
    words.insert(words.end(), more.begin(), more.end());
    return run_program(words);
  }
  std::string verdict(const std::string& log, std::vector<std::string> more = {}) {
    more.push_back("--json");
    const ProgramRun run = audit(log, more);
    EXPECT_LE(run.exit_code, 1) << run.errors;
    return parse_json(run.output, "output").find("passes")->elements.at(0).find("verdict")->string;
  }

  std::string plan_;
};

}  // namespace

TEST_F(ExcursionCommands, HalfAPassAt361AndHalfAt231AmperesFails) {
  const std::string log = write("a.csv", log_text(361, 0, 32, 231));
  EXPECT_EQ(verdict(log), "fail");
  const ProgramRun run = audit(log, {"--summary"});
  EXPECT_EQ(run.exit_code, 1);
  EXPECT_NE(run.output.find("record.current.excursion"), std::string::npos) << run.output;
  EXPECT_NE(run.output.find("231.5 A"), std::string::npos) << run.output;
}

TEST_F(ExcursionCommands, FiveSecondsAt102AmperesFail) {
  EXPECT_EQ(verdict(write("a.csv", log_text(102, 20, 25))), "fail");
}

TEST_F(ExcursionCommands, AStretchIsAnOpenItemWithItsPlace) {
  const std::string log = write("a.csv", log_text(361, 20, 22));
  EXPECT_EQ(verdict(log), "undecided");
  const ProgramRun run = audit(log, {"--json"});
  EXPECT_EQ(run.exit_code, 0);
  const JsonNode result = parse_json(run.output, "output");
  const JsonNode& item = result.find("units")->elements.at(0).find("open_items")->elements.at(0);
  EXPECT_EQ(item.find("cause")->string, "record.current.excursion");
  EXPECT_NE(item.find("text")->string.find("from 20 s to 22 s"), std::string::npos)
      << item.find("text")->string;
  const JsonNode& found = result.find("passes")->elements.at(0).find("excursions")->elements.at(0);
  EXPECT_EQ(found.find("quantity")->string, "current_A");
  EXPECT_NEAR(found.find("length_mm")->number, 14, 0.11) << "positions have a tenth of a millimetre";
}

TEST_F(ExcursionCommands, TheRuleIsSetByOptions) {
  const std::string log = write("a.csv", log_text(361, 20, 22));
  EXPECT_EQ(verdict(log, {"--limits-window", "20s"}), "pass");
  EXPECT_EQ(verdict(log, {"--excursion-note", "15mm"}), "pass");
  EXPECT_EQ(verdict(log, {"--excursion-note", "15mm", "--excursion-share", "2%"}), "undecided");
  EXPECT_EQ(verdict(log, {"--excursion-fail", "13mm"}), "fail");
  EXPECT_EQ(verdict(log, {"--excursion-fail", "13mm", "--excursion-within", "200mm"}), "fail");
  EXPECT_EQ(verdict(log, {"--gas-window", "1s"}), "undecided");
  for (const std::vector<std::string>& bad :
       std::vector<std::vector<std::string>>{{"--limits-window", "0s"},
                                             {"--limits-window", "soon"},
                                             {"--gas-window", "-1s"},
                                             {"--excursion-note", "-1mm"},
                                             {"--excursion-share", "101%"},
                                             {"--excursion-fail", "1A"},
                                             {"--excursion-within", "0mm"}}) {
    const ProgramRun run = audit(log, bad);
    EXPECT_EQ(run.exit_code, 2) << bad[0] << ' ' << bad[1];
    EXPECT_NE(run.errors.find(bad[0]), std::string::npos) << run.errors;
  }
}

TEST_F(ExcursionCommands, TheStoreKeepsThem) {
  const std::string log = write("a.csv", log_text(361, 20, 22));
  const std::string store = "sqlite:" + (folder / "records.sqlite").string();
  const ProgramRun stored = audit(log, {"--store", store, "--who", "anna", "--why", "shift"});
  EXPECT_EQ(stored.exit_code, 0) << stored.errors;
  std::string bodies;
  for (int seq = 1; seq <= 8; ++seq)
    bodies += run_program({"ledger", "show", std::to_string(seq), "--store", store, "--json"}).output;
  EXPECT_NE(bodies.find("\"excursions\""), std::string::npos);
  EXPECT_EQ(run_program({"ledger", "verify", "--store", store}).exit_code, 0);
}
