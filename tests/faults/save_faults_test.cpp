#include <gtest/gtest.h>

#include "fault_run.hpp"
#include "save_check.hpp"

using namespace seamtakt;

TEST(SaveFaultsTest, every_call_may_fail_and_the_promises_hold) {
  int runs = 0;
  const auto problems = broken_promises("honest", &runs);
  EXPECT_EQ(all_lines(problems), "");
  EXPECT_GT(runs, 100);
}

TEST(SaveFaultsTest, every_call_may_fail_while_a_backup_is_kept) {
  int runs = 0;
  const auto problems = broken_promises("keep", &runs);
  EXPECT_EQ(all_lines(problems), "");
  EXPECT_GT(runs, 120);
}

/// The checks themselves are checked: each faulty way of saving must be detected by its own fault.
class WrongSaveTest : public testing::TestWithParam<std::pair<const char*, const char*>> {};

TEST_P(WrongSaveTest, is_found_out) {
  const auto [how, problem] = GetParam();
  const std::string problems = all_lines(broken_promises(how));
  EXPECT_NE(problems.find(problem), std::string::npos) << how << " was found to be:\n" << problems;
}

INSTANTIATE_TEST_SUITE_P(
    Saves, WrongSaveTest,
    testing::Values(std::pair("in-place", "neither the old nor the new one"),
                    std::pair("in-place", "the file itself is written to"),
                    std::pair("no-fsync", "no fsync after writing"),
                    std::pair("no-folder-sync", "the folder isn't synced after the rename"),
                    std::pair("fsync-unchecked", "the failure was passed over"),
                    std::pair("write-unchecked", "neither the old nor the new one"),
                    std::pair("close-unchecked", "the failure was passed over"),
                    std::pair("no-read-back", "acknowledged, but the file isn't the new one"),
                    std::pair("temporary-left", "a temporary is left"),
                    std::pair("early", "acknowledged, but the file isn't the new one")),
    [](const auto& info) {
      std::string name = info.param.first;
      for (char& c : name) c = c == '-' ? '_' : c;
      return name.append("_").append(std::to_string(info.index));
    });
