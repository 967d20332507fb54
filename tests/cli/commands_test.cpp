#include <gtest/gtest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Folder : public FolderTest {};

/// The sample with one place changed.
std::string changed_sample(const std::string& from, const std::string& to) {
  std::ifstream file(two_schedules_plan);
  std::string text((std::istreambuf_iterator<char>(file)), {});
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return text.replace(at, from.size(), to);
}

}  // namespace

TEST(Program, HelpCarriesTheWordsOfCaution) {
  const ProgramRun run = run_program({"--help"});
  EXPECT_EQ(run.exit_code, 0);
  EXPECT_NE(run.output.find("Estimates only"), std::string::npos);
  EXPECT_NE(run.output.find("ISO 10218"), std::string::npos);
}

TEST(Calc, HeatInputOfTheHandExample) {
  // 24.8 V, 205 A, 5 mm/s: E = 1.0168, Q(135) = 0.8134 kJ/mm (ISO/TR 18491 and EN 1011-1, worked by hand).
  const ProgramRun run = run_program({"calc", "heat-input", "--voltage", "24.8", "--current", "205A",
                                      "--travel-speed", "30cm/min", "--process", "135", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = json_of(run);
  EXPECT_NEAR(number(result, "arc_energy_kJ_mm"), 1.0168, 1e-12);
  EXPECT_NEAR(number(result, "heat_input_kJ_mm"), 0.81344, 1e-12);
}

TEST(Calc, RelativeUncertaintyReachesTheResult) {
  const ProgramRun run =
      run_program({"calc", "heat-input", "--voltage", "25", "--u-voltage", "1%", "--current", "200",
                   "--travel-speed", "5", "--process", "135", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = json_of(run);
  EXPECT_NEAR(number(result, "u_heat_input_kJ_mm"), 0.008, 1e-12);
  EXPECT_NEAR(number(result, "U_heat_input_kJ_mm"), 0.016, 1e-12);
}

TEST(Calc, UnknownUnitNamesTheUnitsThatFitAndPrintsNothingElse) {
  const ProgramRun run =
      run_program({"calc", "heat-input", "--voltage", "24V", "--current", "205mm", "--travel-speed", "5"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(run.output, "");
  EXPECT_NE(run.errors.find("kA"), std::string::npos) << run.errors;
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1);
}

TEST(Calc, ImperfectionLimitsStandInOneObject) {
  const ProgramRun run =
      run_program({"calc", "imperfection", "--level", "C", "--throat", "4", "--thickness", "8", "--json"});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const JsonNode result = json_of(run);
  ASSERT_TRUE(result.find("limits_mm"));
  EXPECT_NEAR(number(*result.find("limits_mm"), "excess_throat"), 1.8, 1e-12);  // ISO 5817: 1 + 0.2a
}

TEST(Calc, AloneListsTheQuantities) {
  const ProgramRun run = run_program({"calc"});
  EXPECT_EQ(run.exit_code, 0);
  EXPECT_NE(run.output.find("cooling-time"), std::string::npos);
}

TEST(EvaluateCommand, JsonHasTheContractsKeys) {
  const ProgramRun run = run_program({"evaluate", two_schedules_plan, "--json"});
  ASSERT_LE(run.exit_code, 1) << run.errors;
  const JsonNode result = json_of(run);
  ASSERT_TRUE(result.find("passes") && result.find("seams") && result.find("weldments") &&
              result.find("findings"));
  const JsonNode& pass = result.find("passes")->elements.at(0);
  for (const char* key : {"weldment",
                          "seam",
                          "pass",
                          "schedule",
                          "process",
                          "length_mm",
                          "current_A",
                          "voltage_V",
                          "arc_power_kW",
                          "arc_energy_kJ_mm",
                          "heat_input_kJ_mm",
                          "melting_rate_kg_h",
                          "deposition_rate_kg_h",
                          "deposit_area_mm2",
                          "penetration_mm",
                          "transfer_mode",
                          "cooling_time_s",
                          "cooling_regime",
                          "cooling_time_span_s",
                          "cooling_time_plate_s",
                          "cooling_time_hot_s",
                          "preheat_needed_C",
                          "CE_IIW",
                          "CET",
                          "Pcm",
                          "CEN",
                          "haz_hardness_HV",
                          "arc_time_s",
                          "wire_g",
                          "gas_l",
                          "energy_kWh"})
    EXPECT_TRUE(pass.find(key)) << key;
  EXPECT_EQ(result.find("provenance")->find("catalogue_sha256")->string.size(), 64u);
}

TEST(EvaluateCommand, ExplainPrintsFormulaNumbersAndSource) {
  const ProgramRun run =
      run_program({"evaluate", two_schedules_plan, "--explain", "X/S1/pass 1.heat_input_kJ_mm"});
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_NE(run.output.find("Q = k*E"), std::string::npos) << run.output;
  EXPECT_NE(run.output.find("0.8*1.16"), std::string::npos) << run.output;
}

TEST(CycleCommand, DemoHasOneWeldmentThatMissesTakt) {
  const ProgramRun run = run_program({"cycle", demo_plan, "--json"});
  EXPECT_EQ(run.exit_code, 1) << run.errors;
  const JsonNode result = json_of(run);
  int missed = 0;
  for (const JsonNode& weldment : result.find("weldments")->elements)
    missed += number(weldment, "takt_margin_s") < 0;
  EXPECT_EQ(missed, 1);
}

TEST(EvaluateCommand, DemoHasOneSeamThatFailsItsLeg) {
  const ProgramRun run = run_program({"evaluate", demo_plan, "--json"});
  EXPECT_EQ(run.exit_code, 1) << run.errors;
  int undersized = 0;
  const JsonNode result = json_of(run);
  for (const JsonNode& finding : result.find("findings")->elements)
    undersized += finding.find("rule")->string == "fillet.leg.undersize";
  EXPECT_EQ(undersized, 1);
}

TEST_F(Folder, ReportIsWrittenWithCautionAndProvenance) {
  const std::string report = folder / "report.html";
  const ProgramRun run = run_program({"report", two_schedules_plan, "--output", report});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const std::string text = read_file(report, 1u << 24);
  for (const char* part : {"Estimates only", "ISO 15609-1", "Plan SHA-256", "Cycle sheets"})
    EXPECT_NE(text.find(part), std::string::npos) << part;
}

TEST_F(Folder, HostileNamesStayTextInTheReport) {
  const std::string plan =
      write("p.weldplan.json", changed_sample("\"title\": \"", "\"title\": \"<script>alert(1)</script> "));
  const std::string report = folder / "report.html";
  ASSERT_EQ(run_program({"report", plan, "--output", report}).exit_code, 0);
  EXPECT_EQ(read_file(report, 1u << 24).find("<script"), std::string::npos);
}

struct BadPlan {
  const char *what, *from, *to, *part;
};
/// Names the case in ctest's list; the pointers' bytes would differ from run to run.
void PrintTo(const BadPlan& bad, std::ostream* out) {
  *out << bad.what;
}

class BadPlans : public Folder, public testing::WithParamInterface<BadPlan> {};

TEST_P(BadPlans, AreRefusedInOneLineWithPlaceAndExpectation) {
  const std::string plan = write("bad.weldplan.json", changed_sample(GetParam().from, GetParam().to));
  const ProgramRun run = run_program({"evaluate", plan});
  EXPECT_EQ(run.exit_code, 2) << run.output;
  EXPECT_EQ(run.output, "");
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  EXPECT_EQ(run.errors.rfind(plan + ":", 0), 0u) << run.errors;
  EXPECT_NE(run.errors.find("expected"), std::string::npos) << run.errors;
  EXPECT_NE(run.errors.find(GetParam().part), std::string::npos) << run.errors;
}

INSTANTIATE_TEST_SUITE_P(
    Kinds, BadPlans,
    testing::Values(
        BadPlan{"UnknownKey", "\"leg_mm\": 6", "\"lge_mm\": 6", "leg_mm"},
        BadPlan{"WrongType", "\"leg_mm\": 6", "\"leg_mm\": \"6\"", "number"},
        BadPlan{"MissingReference", "\"wire\": \"W\"", "\"wire\": \"V\"", "a wire"},
        BadPlan{"DuplicateId", "\"id\": \"S2\"", "\"id\": \"S1\"", "S1"},
        BadPlan{"NegativeThickness", "\"thickness_mm\": [10, 8]", "\"thickness_mm\": [-10, 8]", "-10"},
        BadPlan{"NotANumber", "\"leg_mm\": 6", "\"leg_mm\": NaN", ""},
        BadPlan{"ZeroTravelSpeed", "\"travel_speed_mm_s\": 7.5", "\"travel_speed_mm_s\": 0", "0"},
        BadPlan{"NewerVersion", "\"version\": 1", "\"version\": 2", "newer"},
        BadPlan{"OnePathPoint", "[[600, 0, 0], [600, 300, 0]]", "[[600, 0, 0]]", ""},
        BadPlan{"UnknownProcess", "\"process\": \"135\"", "\"process\": \"999\"", "999"},
        BadPlan{"LimitsCrossed", "[100, 220]", "[220, 100]", ""},
        BadPlan{"NoExtension", "\"contact_tip_distance_mm\": 18", "\"contact_tip_distance_mm\": 2", ""},
        BadPlan{"RunLongerThanSeam", "\"length_mm\": 60", "\"length_mm\": 600", ""},
        BadPlan{"CompositionAboveHundred", "\"C\": 0.16", "\"C\": 101", ""},
        BadPlan{"CircularAfter", "\"leg_mm\": 6", "\"after\": [\"S1\"], \"leg_mm\": 6", "S1"},
        BadPlan{"TruncatedJson", "\"u_travel_speed_pct\": 1.5 } }", "", ""}),
    [](const auto& tested) { return tested.param.what; });

TEST_F(Folder, EmptyFileDirectoryAndAbsentFileAreBadInput) {
  for (const std::string& path :
       {write("empty.json", ""), folder.string(), (folder / "absent.json").string()}) {
    const ProgramRun run = run_program({"evaluate", path});
    EXPECT_EQ(run.exit_code, 2) << path;
    EXPECT_EQ(run.output, "") << path;
    EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  }
}

TEST_F(Folder, NothingIsWrittenWhenTheReportsPlanIsBad) {
  const std::string report = folder / "report.html";
  EXPECT_EQ(run_program({"report", write("bad.json", "{"), "--output", report}).exit_code, 2);
  EXPECT_FALSE(std::filesystem::exists(report));
}
