// Memory that a stranger's file can make a command take: within a bound, or refused by a limit that is said.
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// What a command said, and the most memory that it had.
struct Measured {
  ProgramRun run;
  double peak_MiB = 0;
};

class StrangerMemory : public FolderTest {
 protected:
  void SetUp() override {
#ifdef SEAMTAKT_SANITIZED
    GTEST_SKIP() << "the sanitizers keep freed memory for a while";
#endif
  }
  /// In a process of its own, whose only child the program is: its peak is the program's.
  Measured measured(const std::vector<std::string>& words) const {
    Measured result;
    int ends[2];
    EXPECT_EQ(::pipe(ends), 0);
    const pid_t child = ::fork();
    if (child == 0) {
      const ProgramRun run = run_program(words);
      rusage usage{};
      ::getrusage(RUSAGE_CHILDREN, &usage);
      const std::string said = std::to_string(usage.ru_maxrss) + "\n" + run.errors;
      const bool whole = ::write(ends[1], said.data(), said.size()) == static_cast<ssize_t>(said.size());
      ::_exit(whole ? run.exit_code : 99);
    }
    ::close(ends[1]);
    std::string said;
    char block[4096];
    for (ssize_t n; (n = ::read(ends[0], block, sizeof block)) > 0;)
      said.append(block, static_cast<std::size_t>(n));
    ::close(ends[0]);
    int status = 0;
    ::waitpid(child, &status, 0);
    result.run.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    result.run.errors = said.substr(said.find('\n') + 1);
    result.peak_MiB = std::stod(said) / 1024;
    return result;
  }
  void expect_refused(const std::vector<std::string>& words, const std::string& text, double most_MiB) const {
    const Measured result = measured(words);
    EXPECT_EQ(result.run.exit_code, 2) << result.run.errors;
    EXPECT_NE(result.run.errors.find(text), std::string::npos) << result.run.errors;
    EXPECT_EQ(std::count(result.run.errors.begin(), result.run.errors.end(), '\n'), 1) << result.run.errors;
    expect_peak(result, most_MiB);
  }
  /// A child's peak includes what this process had when it was forked, which is much after many tests.
  void expect_peak(const Measured& result, double most_MiB) const {
    static const double idle_MiB = measured({"--version"}).peak_MiB;
    EXPECT_LT(result.peak_MiB, std::max(most_MiB, idle_MiB + 1));
  }
  /// A log that names so many units, a row each.
  std::string log_of(int units) const {
    std::ofstream log(folder / "log.csv");
    log << "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n";
    for (int i = 0; i < units; ++i) log << i << ",U" << i << ",W,S1,1," << 200 + i % 2 << ",25\n";
    return folder / "log.csv";
  }
  /// The demo whose first seam has so many passes.
  std::string plan_of(std::size_t passes) const {
    std::string text = read_file(demo_folder + "ground-equipment.weldplan.json", 1u << 24);
    const std::string key = "\"schedules\": [\"";
    const std::size_t at = text.find(key, text.find("\"seams\"")) + key.size() - 1;
    const std::string id = text.substr(at, text.find('"', at + 1) + 1 - at);
    std::string more;
    for (std::size_t i = 1; i < passes; ++i) more += id + ",";
    text.insert(at, more);
    return write("p.weldplan.json", text);
  }
};

}  // namespace

TEST_F(StrangerMemory, AHundredThousandIdentitiesInALogAreRefusedByALimitThatIsSaid) {
  expect_refused({"audit", log_of(100'000), "--summary"}, "more than 10000 different identities", 64);
  expect_refused({"audit", path("log.csv"), "--json"}, "--max-passes N", 64);
  expect_refused({"learn", path("log.csv"), "--plan", demo_folder + "ground-equipment.weldplan.json"},
                 "more than 10000 different identities", 64);
}

TEST_F(StrangerMemory, AsManyIdentitiesAsTheLimitAllowsFit) {
  const Measured result = measured({"audit", log_of(10'000), "--summary"});
  EXPECT_EQ(result.run.exit_code, 0) << result.run.errors;
  expect_peak(result, 64);
  expect_refused({"audit", log_of(11), "--max-passes", "10"}, "more than 10 different identities", 64);
  EXPECT_EQ(run_program({"audit", path("log.csv"), "--max-passes", "11"}).exit_code, 0);
}

TEST_F(StrangerMemory, PassesWithoutEndOnOneSeamFitOrAreRefused) {
  const char* length = std::getenv("SEAMTAKT_TEST_LENGTH");
  const bool is_long = length != nullptr && std::string(length) == "long";
  const std::size_t passes = is_long ? 1'000'000 : 110'000;
  const std::string plan = plan_of(passes);
  const double most_MiB = is_long ? 2000 : 300;
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"evaluate", plan}, {"evaluate", plan, "--json"}}) {
    const Measured result = measured(words);
    EXPECT_LE(result.run.exit_code, 1) << result.run.errors;
    EXPECT_LT(result.peak_MiB, most_MiB) << words.back();
  }
  expect_refused({"cycle", plan}, "welds in one weldment", most_MiB);
  expect_refused({"line", plan, "--orders", demo_folder + "orders-day.csv"}, "welds in one weldment",
                 most_MiB);
  expect_refused({"report", plan, "--output", path("r.html")}, "passes in a report", most_MiB);
  EXPECT_FALSE(std::filesystem::exists(path("r.html")));
}
