// The demo says of itself that it is invented, and is what its generator writes.
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>

#include "base/csv/csv.hpp"
#include "base/json/json_node.hpp"
#include "rules/source_tree.hpp"
#include "support/file_bytes.hpp"
#include "support/source_path.hpp"

namespace seamtakt::rules {
namespace {

const std::filesystem::path demo = root / "reference/demo";

/// Name below the folder -> bytes; the arc log is written by another program and compared elsewhere.
std::map<std::string, std::string> contents(const std::filesystem::path& folder) {
  std::map<std::string, std::string> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
    if (entry.is_regular_file() && entry.path().extension() != ".gz")
      files[std::filesystem::relative(entry.path(), folder).string()] = bytes_of(entry.path());
  return files;
}

JsonNode demo_plan() {
  const std::filesystem::path path = demo / "ground-equipment.weldplan.json";
  return parse_json(bytes_of(path), path.string());
}

TEST(Demo, IsWhatItsGeneratorWrites) {
  if (std::system("python3 -c 'import json' >/dev/null 2>&1") != 0) GTEST_SKIP() << "no python3";
  const std::filesystem::path folder =
      std::filesystem::path(testing::TempDir()) / "seamtakt-demo-regenerated";
  std::filesystem::remove_all(folder);
  const std::string command =
      "python3 '" + (root / "tests/bench/demo_plan.py").string() + "' '" + folder.string() + "'";
  const int status = std::system(command.c_str());
  ASSERT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
  const auto written = contents(folder), committed = contents(demo);
  std::filesystem::remove_all(folder);
  ASSERT_GE(written.size(), 5u);
  for (const auto& [name, bytes] : written) {
    ASSERT_TRUE(committed.contains(name)) << name;
    EXPECT_TRUE(committed.at(name) == bytes) << name << " isn't what demo_plan.py writes";
  }
  for (const auto& [name, bytes] : committed)
    EXPECT_TRUE(written.contains(name)) << name << " has no generator";
}

TEST(Demo, SaysThatItIsInvented) {
  const JsonNode plan = demo_plan();
  ASSERT_TRUE(plan.find("notes"));
  EXPECT_TRUE(plan.find("notes")->string.starts_with("Invented data"));
  EXPECT_NE(plan.find("title")->string.find("invented"), std::string::npos);
}

TEST(Demo, HasThreeWeldmentsOfRealSize) {
  const JsonNode plan = demo_plan();
  std::map<std::string, std::size_t> seams;
  for (const JsonNode& weldment : plan.find("weldments")->elements)
    seams[weldment.find("id")->string] = weldment.find("seams")->elements.size();
  EXPECT_EQ(seams, (std::map<std::string, std::size_t>{{"BD", 34}, {"TT", 72}, {"BL", 52}}));
  EXPECT_GE(plan.find("schedules")->elements.size(), 9u);
}

TEST(Demo, OrdersNameItsWeldmentsAndHaveACartEach) {
  const CsvTable orders = read_csv((demo / "orders.csv").string());
  EXPECT_EQ(orders.rows.size(), 24u);
  std::set<std::string> serials;
  for (const CsvRow& row : orders.rows) {
    const std::string& serial = row.fields[orders.require("unit_serial")];
    EXPECT_TRUE(serials.insert(serial).second) << serial;
    EXPECT_TRUE(std::filesystem::exists(demo / "carts" / (serial + ".csv"))) << serial;
    EXPECT_TRUE((std::set<std::string>{"BD", "TT", "BL"}.contains(row.fields[orders.require("weldment")])));
  }
}

TEST(Demo, NumbersItsUnitsAndDrawingsInOneSeries) {
  for (const char* file : {"orders.csv", "orders-day.csv", "manual-seams.csv"}) {
    const CsvTable table = read_csv((demo / file).string());
    ASSERT_FALSE(table.rows.empty());
    for (const CsvRow& row : table.rows)
      EXPECT_TRUE(row.fields[table.require("unit_serial")].starts_with("AE-")) << file << ":" << row.line;
  }
  for (const auto& entry : std::filesystem::directory_iterator(demo / "carts"))
    EXPECT_TRUE(entry.path().filename().string().starts_with("AE-")) << entry.path();
  const JsonNode plan = demo_plan();
  for (const JsonNode& weldment : plan.find("weldments")->elements)
    EXPECT_TRUE(weldment.find("drawing")->string.starts_with("AE-")) << weldment.find("id")->string;
}

TEST(Demo, ArcLogStaysSmall) {
  EXPECT_GT(std::filesystem::file_size(demo / "arc-log.csv.gz"), 10'000u);
  EXPECT_LT(std::filesystem::file_size(demo / "arc-log.csv.gz"), 1'000'000u);
}

}  // namespace
}  // namespace seamtakt::rules
