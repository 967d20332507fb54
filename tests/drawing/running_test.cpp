// The program while it runs: what it says, and how it ends when it is asked to.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <fstream>
#include <iterator>

#include "drawing/found_seams.hpp"
#include "drawing/sample_assemblies.hpp"

namespace seamtakt::drawing::tests {
namespace {

/// The program, started; its complaints come through a pipe, its output goes to a file.
struct Started {
  pid_t id = -1;
  int complaints = -1;
  std::filesystem::path output = scratch_folder() / "started.json";

  explicit Started(const std::string& file) {
    int ends[2];
    if (pipe(ends) != 0) return;
    id = fork();
    if (id == 0) {
      const int out = open(output.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0600);
      dup2(out, STDOUT_FILENO);
      dup2(ends[1], STDERR_FILENO);
      close(ends[0]);
      execl(SEAMTAKT_DRAWING_PROGRAM, SEAMTAKT_DRAWING_PROGRAM, file.c_str(), "--json", "--progress",
            nullptr);
      _exit(127);
    }
    close(ends[1]);
    complaints = ends[0];
  }
  Started(const Started&) = delete;
  Started& operator=(const Started&) = delete;
  ~Started() { close(complaints); }

  /// Empty at the end.
  std::string line() const {
    std::string text;
    char c = 0;
    while (read(complaints, &c, 1) == 1 && c != '\n') text += c;
    return text;
  }
  int exit_code() const {
    int status = 0;
    waitpid(id, &status, 0);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  }
  std::string printed() const {
    std::ifstream stream(output, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), {}};
  }
};

class EachSignal : public ::testing::TestWithParam<int> {};

TEST_P(EachSignal, EndsTheProgramWithoutOutput) {
  const std::string file = many_plates(10).write("cancelled.step").string();
  const Started program(file);
  ASSERT_EQ(program.line(), "progress: reading");
  kill(program.id, GetParam());
  EXPECT_EQ(program.line(), "seamtakt-drawing: cancelled");
  EXPECT_EQ(program.exit_code(), 130);
  EXPECT_EQ(program.printed(), "");
}
INSTANTIATE_TEST_SUITE_P(Running, EachSignal, ::testing::Values(SIGINT, SIGTERM));

TEST(Running, ProgressCountsThePairsToTheLast) {
  const Started program(many_plates(2).write("progress.step").string());
  EXPECT_EQ(program.line(), "progress: reading");
  std::string last;
  for (std::string line = program.line(); !line.empty(); line = program.line()) last = line;
  EXPECT_EQ(last, "progress: 18 of 18 pairs of parts");
  EXPECT_EQ(program.exit_code(), 0);
  EXPECT_GT(program.printed().size(), 1000u);
}

}  // namespace
}  // namespace seamtakt::drawing::tests
