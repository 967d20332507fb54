#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "base/json/json_node.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"

namespace seamtakt::test {

/// One seam of 455 mm, 10 and 12 mm plates, one instrument due on 30 November.
inline std::string plan_text(const std::string& limits = "") {
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
inline std::string weld(const std::string& unit, int at_min, double from_mm, double to_mm,
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

inline constexpr const char* weld_header =
    "timestamp,unit_serial,weldment,seam,pass,robot,current_A,voltage_V,x_mm,y_mm,z_mm,interpass_C\n";

/// Logs through `audit`, the store and the unit's report, each test in a folder of its own.
class VerdictFixture : public FolderTest {
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

inline const JsonNode& first_unit(const JsonNode& result) {
  return result.find("units")->elements.at(0);
}
inline std::string first_text(const JsonNode& result, const std::string& rule) {
  for (const JsonNode& finding : result.find("findings")->elements)
    if (finding.find("rule")->string == rule) return finding.find("text")->string;
  return "";
}

}  // namespace seamtakt::test
