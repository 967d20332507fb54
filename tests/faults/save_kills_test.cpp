#include <gtest/gtest.h>
#include <poll.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <random>
#include <thread>

#include "base/json/json_node.hpp"
#include "driver/versions.hpp"
#include "fault_run.hpp"
#include "support/scratch_places.hpp"

using namespace seamtakt;

namespace {

/// A driver that saves without end, and its acknowledgements.
class EndlessSaver {
 public:
  EndlessSaver(const std::string& how, const std::string& path, unsigned first) {
    int ends[2];
    if (pipe(ends) != 0) throw std::runtime_error("no pipe");
    child_ = fork();
    if (child_ == 0) {
      dup2(ends[1], STDOUT_FILENO);
      close(ends[0]);
      close(ends[1]);
      exec_save_driver(how, path, first, first + 1000000);
      _exit(98);
    }
    close(ends[1]);
    output_ = ends[0];
  }
  ~EndlessSaver() { close(output_); }
  EndlessSaver(const EndlessSaver&) = delete;
  EndlessSaver& operator=(const EndlessSaver&) = delete;

  /// Waits for the first acknowledgement, lets it work for a while, kills it; the last version acknowledged,
  /// 0: none.
  unsigned kill_after(std::chrono::microseconds time) {
    pollfd waiting{output_, POLLIN, 0};
    poll(&waiting, 1, 10000);
    std::this_thread::sleep_for(time);
    kill(child_, SIGKILL);
    int status = 0;
    waitpid(child_, &status, 0);
    killed_ = WIFSIGNALED(status);
    std::string text;
    char block[4096];
    for (ssize_t count = 0; (count = read(output_, block, sizeof block)) > 0;) {
      text.append(block, static_cast<std::size_t>(count));
    }
    // A number that the kill cut short wasn't acknowledged.
    text.erase(text.rfind('\n') + 1);
    if (text.empty()) return 0;
    const std::size_t begin = text.rfind('\n', text.size() - 2) + 1;
    return static_cast<unsigned>(std::atol(text.c_str() + begin));
  }
  bool was_killed() const { return killed_; }

 private:
  pid_t child_ = -1;
  int output_ = -1;
  bool killed_ = false;
};

struct KillCount {
  int broken = 0, lost = 0, left = 0, without_acknowledgement = 0;
};

KillCount kill_many(const std::string& how, ScratchFolder::On place, int kills, unsigned seed) {
  const ScratchFolder folder(place);
  // Time for several saves, which wait for the disk or don't.
  const unsigned longest_us = place == ScratchFolder::On::memory ? 4000 : 15000;
  const std::string path = folder / "f";
  std::mt19937 random(seed);
  KillCount count;
  unsigned next = 1;
  for (int i = 0; i < kills; ++i) {
    EndlessSaver saver(how, path, next);
    const unsigned acknowledged = saver.kill_after(std::chrono::microseconds(random() % longest_us));
    EXPECT_TRUE(saver.was_killed());
    count.without_acknowledgement += acknowledged == 0;
    const unsigned found = whole_version(read_file(path, std::size_t{1} << 30), version_size);
    count.broken += found == 0;
    count.lost += found != 0 && found < acknowledged;
    const auto names = folder.names();
    count.left += std::any_of(names.begin(), names.end(),
                              [](const std::string& name) { return name.ends_with(".tmp"); });
    next = std::max(found, acknowledged) + 1;
  }
  if (how == "honest") {
    run_save_driver(how, path, next, next, {});
    EXPECT_EQ(folder.names(), std::set<std::string>{"f"});
  }
  return count;
}

class SaveKillsTest : public testing::TestWithParam<ScratchFolder::On> {};

INSTANTIATE_TEST_SUITE_P(Places, SaveKillsTest, scratch_places(), place_name);

}  // namespace

TEST_P(SaveKillsTest, a_kill_at_any_time_leaves_the_last_acknowledged_version_or_a_newer_one_whole) {
  const unsigned seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  const bool in_memory = GetParam() == ScratchFolder::On::memory;
  const int kills = in_memory ? (long_tests() ? 9000 : 800) : (long_tests() ? 1000 : 200);
  const KillCount count = kill_many("honest", GetParam(), kills, seed);
  EXPECT_EQ(count.broken, 0);
  EXPECT_EQ(count.lost, 0);
  // A kill that comes before or after all the work shows nothing.
  EXPECT_LT(count.without_acknowledgement, kills / 10 + 1);
  EXPECT_GT(count.left, 0) << "no kill fell into a save";
  RecordProperty("kills_that_left_a_temporary", count.left);
}

TEST_P(SaveKillsTest, an_in_place_save_does_not_stand_the_kills) {
  EXPECT_GT(kill_many("in-place", GetParam(), 100, 1).broken, 0);
}
