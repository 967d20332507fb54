// A shift without a robot that is better off than with it: the line says so, and why.
#include <gtest/gtest.h>

#include <map>

#include "base/json/json_node.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class FewerIsFaster : public FolderTest {};

}  // namespace

TEST_F(FewerIsFaster, ALineThatMakesMoreWithoutARobotSaysWhy) {
  // R2 is the first of the seam's list, and its home is far away.
  const std::string plan = write("far.weldplan.json", R"({"format": "weldplan", "version": 1,
    "base_metals": [{"id": "S", "composition_pct": {"C": 0.15, "Mn": 1.2}}],
    "wires": [{"id": "W", "diameter_mm": 1.2, "density_g_cm3": 7.85, "alpha_mm_s_A": 0.28,
               "beta_per_s_A2": 6e-5, "deposition_efficiency": 0.97}],
    "schedules": [{"id": "A", "process": "135", "wire": "W", "wire_feed_speed_m_min": 9,
                   "arc_voltage_V": 28, "travel_speed_mm_s": 8, "contact_tip_distance_mm": 18}],
    "weldments": [{"id": "F", "seams": [{"id": "S1", "joint": "tee", "thickness_mm": [8, 8],
                   "base_metals": ["S", "S"], "leg_mm": 5, "schedules": ["A"], "robots": ["R2", "R1"],
                   "path_mm": [[0, 0, 0], [400, 0, 0]]}]}],
    "cell": {"robots": [
      {"id": "R1", "home_mm": [0, -500, 500], "air_speed_mm_s": 1000, "air_acceleration_mm_s2": 4000},
      {"id": "R2", "home_mm": [9000, 0, 500], "air_speed_mm_s": 1000, "air_acceleration_mm_s2": 4000}]},
    "line": {"stages": [{"id": "cell", "servers": 1, "time": "cell"}]}})");
  const std::string orders = write("far.csv", "unit_serial,weldment\nU1,F\nU2,F\nU3,F\n");
  const ProgramRun run = run_program({"line", plan, "--orders", orders, "--without-robot", "R2", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors << run.output;
  const double whole =
      number(json_of(run_program({"line", plan, "--orders", orders, "--json"})), "throughput_per_h");
  const JsonNode result = json_of(run);
  std::map<std::string, std::string> said;
  for (const JsonNode& finding : result.find("findings")->elements)
    if (text_of(finding, "rule") == "cell.fewer-is-faster") {
      said[text_of(finding, "where")] = text_of(finding, "text");
      if (text_of(finding, "where") == "line") {
        EXPECT_EQ(number(finding, "limit"), whole);
        EXPECT_EQ(number(finding, "value"), number(result, "throughput_per_h"));
        EXPECT_GT(number(finding, "value"), whole);
      }
    }
  ASSERT_EQ(said.size(), 2u);
  EXPECT_NE(said["F"].find("the order given suits fewer robots better"), std::string::npos) << said["F"];
  EXPECT_NE(said["line"].find("the cell's cycles of F are shorter without it"), std::string::npos)
      << said["line"];
  // The robot that the line does better without is no gain when the near one is out.
  const ProgramRun near = run_program({"line", plan, "--orders", orders, "--without-robot", "R1", "--json"});
  EXPECT_EQ(near.output.find("cell.fewer-is-faster"), std::string::npos);
}
