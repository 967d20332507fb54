// Values that a second program has computed from the sources' formulas, against the function that the program
// calls; and the second program itself.
#include <sys/wait.h>

#include <cstdio>
#include <fstream>
#include <sstream>

#include "published/row_checks.hpp"
#include "support/scratch_folder.hpp"

namespace seamtakt::published {
namespace {

class SecondRouteTable : public testing::TestWithParam<std::filesystem::path> {};

TEST_P(SecondRouteTable, is_reproduced) {
  expect_reproduced(GetParam());
}

INSTANTIATE_TEST_SUITE_P(Tables, SecondRouteTable, testing::ValuesIn(files_in(second_route_folder())),
                         table_name);

TEST(SecondRouteRows, name_a_listed_source) {
  expect_listed_sources(rows_in(second_route_folder()));
}

TEST(SecondRouteRows, give_a_reason_for_a_tolerance) {
  expect_reasons_for_tolerances(rows_in(second_route_folder()));
}

TEST(SecondRouteRows, ask_for_keys_that_the_quantity_has) {
  expect_known_keys(rows_in(second_route_folder()));
}

TEST(SecondRouteRows, all_have_a_value) {
  for (const Row& row : rows_in(second_route_folder())) EXPECT_NE(row.expected, no_value) << row.place;
}

struct PythonRun {
  int exit_code = -1;
  std::string output;
};

/// Runs second_route.py with these arguments.
PythonRun run_second_route(const std::string& arguments) {
  const std::string command =
      "python3 '" + (second_route_folder() / "second_route.py").string() + "' " + arguments + " 2>&1";
  PythonRun run;
  FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) return run;
  char text[4096];
  while (std::size_t count = std::fread(text, 1, sizeof text, pipe)) run.output.append(text, count);
  const int status = pclose(pipe);
  if (WIFEXITED(status)) run.exit_code = WEXITSTATUS(status);
  return run;
}

std::string text_of(const std::filesystem::path& file) {
  std::ostringstream text;
  text << std::ifstream(file, std::ios::binary).rdbuf();
  return text.str();
}

class SecondRouteProgram : public testing::Test {
 protected:
  void SetUp() override {
    if (std::system("python3 -c pass >/dev/null 2>&1") != 0)
      GTEST_SKIP() << "no python3: the second program wasn't run";
  }

  /// The rows of one table in a folder of their own, one text in them replaced.
  std::filesystem::path altered(const std::string& table, const std::string& from, const std::string& to) {
    std::string text = text_of(second_route_folder() / table);
    const std::size_t at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    text.replace(at, from.size(), to);
    const std::filesystem::path file = scratch_ / table;
    std::ofstream(file, std::ios::binary) << text;
    return file;
  }

  std::string rows() const { return " --rows '" + scratch_.path() + "'"; }

  ScratchFolder scratch_;
};

TEST_F(SecondRouteProgram, computes_every_row) {
  const PythonRun run = run_second_route("--check");
  EXPECT_EQ(run.exit_code, 0) << run.output;
  const std::size_t count = rows_in(second_route_folder()).size();
  EXPECT_EQ(run.output, std::to_string(count) + " rows, 0 differ\n");
}

TEST_F(SecondRouteProgram, names_a_row_that_differs_in_the_last_digit) {
  altered("cooling_time.csv", "preheat=20,cooling_time_s,5.288,", "preheat=20,cooling_time_s,5.289,");
  const PythonRun run = run_second_route("--check" + rows());
  EXPECT_EQ(run.exit_code, 1);
  EXPECT_TRUE(run.output.starts_with("cooling_time.csv:2: ")) << run.output;
  EXPECT_NE(run.output.find("cooling_time_s 5.289, computed 5.288"), std::string::npos) << run.output;
}

TEST_F(SecondRouteProgram, writes_only_what_differs) {
  const auto file = altered("haz_hardness.csv", "cooling-time=2\",hardness_HV,405.3,",
                            "cooling-time=2\",hardness_HV,400.0,");
  EXPECT_EQ(run_second_route("--write" + rows()).exit_code, 0);
  EXPECT_EQ(text_of(file), text_of(second_route_folder() / "haz_hardness.csv"));
}

TEST_F(SecondRouteProgram, refuses_a_row_that_it_cannot_compute) {
  altered("penetration.csv", "current=400", "amperage=400");
  const PythonRun run = run_second_route("--check" + rows());
  EXPECT_EQ(run.exit_code, 2) << run.output;
  EXPECT_NE(run.output.find("penetration.csv:2: "), std::string::npos) << run.output;
}

}  // namespace
}  // namespace seamtakt::published
