// Logs that tell their passes by job numbers: the demo's columns file, and a plan's own numbers.
#include <gtest/gtest.h>

#include <fstream>

#include "base/csv/csv.hpp"
#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class JobLog : public FolderTest {
 protected:
  std::vector<std::string> places(const std::vector<std::string>& words) {
    const ProgramRun run = run_program(words);
    EXPECT_LE(run.exit_code, 1) << run.errors;
    std::vector<std::string> found;
    const JsonNode result = parse_json(run.output, "output");
    for (const JsonNode& pass : result.find("passes")->elements)
      found.push_back(pass.find("unit_serial")->string + "/" + pass.find("weldment")->string + "/" +
                      pass.find("seam")->string + "/" +
                      std::to_string(static_cast<int>(pass.find("pass")->number)));
    return found;
  }
};

const std::vector<std::string> demo_places = {
    "AE-26-0101/BD/S05/1", "AE-26-0101/BD/S06/1", "AE-26-0101/BD/S09/1", "AE-26-0101/BD/S09/2",
    "AE-26-0101/BD/S09/3", "AE-26-0102/TT/S01/1", "AE-26-0102/TT/S02/1"};

TEST_F(JobLog, OfTheDemoIsReadWithItsColumnsFileAndTheUnitsTimes) {
  EXPECT_EQ(places({"audit", demo_folder + "job-log.csv.gz", "--plan",
                    demo_folder + "ground-equipment.weldplan.json", "--columns",
                    demo_folder + "job-log.columns.json", "--unit-times", demo_folder + "unit-times.csv",
                    "--json"}),
            demo_places);
}

TEST_F(JobLog, IsReadByThePlansJobNumbersWhereTheColumnsFileHasNone) {
  std::ifstream in(demo_folder + "ground-equipment.weldplan.json");
  std::string plan{std::istreambuf_iterator<char>(in), {}};
  // In each weldment the first seam of that name; the plan's file has a seam a line.
  const auto give = [&](const std::string& weldment, const std::string& seam, const std::string& jobs) {
    const std::size_t of_weldment = plan.find("\"id\": \"" + weldment + "\"");
    ASSERT_NE(of_weldment, std::string::npos);
    const std::string head = "\"id\": \"" + seam + "\"";
    const std::size_t at = plan.find(head, of_weldment);
    ASSERT_NE(at, std::string::npos);
    plan.insert(at + head.size(), ", \"jobs\": " + jobs);
  };
  give("BD", "S05", "[\"105\"]");
  give("BD", "S06", "[\"106\"]");
  give("BD", "S09", "[\"109\", \"110\", \"111\"]");
  give("TT", "S01", "[\"201\"]");
  give("TT", "S02", "[\"202\"]");
  std::ofstream(folder / "plan.weldplan.json") << plan;
  std::ifstream columns_in(demo_folder + "job-log.columns.json");
  std::string columns{std::istreambuf_iterator<char>(columns_in), {}};
  const std::size_t values = columns.find(", \"values\"");
  ASSERT_NE(values, std::string::npos);
  columns.replace(values, columns.rfind("}}}") + 2 - values, "");
  std::ofstream(folder / "columns.json") << columns;
  EXPECT_EQ(
      places({"audit", demo_folder + "job-log.csv.gz", "--plan", path("plan.weldplan.json"), "--columns",
              path("columns.json"), "--unit-times", demo_folder + "unit-times.csv", "--json"}),
      demo_places);
  const ProgramRun order =
      run_program({"report", path("plan.weldplan.json"), "--table", "order", "--output", path("order.csv")});
  ASSERT_EQ(order.exit_code, 0) << order.errors;
  const CsvTable table = read_csv(path("order.csv"));
  int found = 0;
  for (const CsvRow& row : table.rows)
    found += row.fields[table.require("weldment")] == "BD" && row.fields[table.require("seam")] == "S09" &&
             row.fields[table.require("pass")] == "2" && row.fields[table.require("job")] == "110";
  EXPECT_EQ(found, 1);
}

TEST_F(JobLog, AColumnWithoutAMeaningIsSaidInANote) {
  const ProgramRun run = run_program(
      {"audit", demo_folder + "job-log.csv.gz", "--plan", demo_folder + "ground-equipment.weldplan.json",
       "--columns", demo_folder + "job-log.columns.json", "--unit-times", demo_folder + "unit-times.csv"});
  EXPECT_NE(run.output.find("Columns of the log that aren't used: Shift."), std::string::npos) << run.output;
}

}  // namespace
