// The program killed in the middle of an import, and run again.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>

#include "base/error.hpp"
#include "fault_run.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/verify/verify.hpp"
#include "support/program_paths.hpp"
#include "support/scratch_places.hpp"

using namespace seamtakt;

namespace {

void write_log(const std::string& path, int first_unit, int passes) {
  std::ofstream log(path);
  log << "time_s,current_A,voltage_V,unit_serial,seam,pass\n";
  for (int pass = 0; pass < passes; ++pass)
    for (int i = 0; i < 120; ++i)
      log << pass * 100 + i / 10.0 << "," << (i < 5 || i > 110 ? 0 : 250 + i % 7) << "," << 25 + i % 3 << ",U"
          << first_unit + pass / 8 << ",S" << pass % 8 << ",1\n";
}

/// A store into which one log was imported whole; the second one is what gets killed.
class Import {
 public:
  explicit Import(ScratchFolder::On place) : folder_(place) {
    setenv("XDG_DATA_HOME", (folder_ / "data").c_str(), 1);
    std::filesystem::create_directory(folder_ / "store");
    write_log(folder_ / "first.csv", 0, 16);
    write_log(folder_ / "second.csv", 2, 40);
    EXPECT_EQ(run("first.csv").exit_code, 0);
    std::filesystem::copy_file(file(), folder_ / "base");
  }
  std::string file() const { return folder_ / "store/records.sqlite"; }
  void restore() const {
    std::filesystem::remove_all(folder_ / "store");
    std::filesystem::create_directory(folder_ / "store");
    std::filesystem::copy_file(folder_ / "base", file());
  }
  FaultOutcome run(const std::string& log, const FaultPoint& point = {}, long kill_after_us = -1) const {
    return run_with_fault({seamtakt_program(), "audit", folder_ / log, "--process", "135", "--store",
                           "sqlite:" + file(), "--who", "anna", "--why", "test", "--summary"},
                          folder_ / "store", point, kill_after_us);
  }
  /// Bodies of all records without what differs between two runs: number, time, store, the writer's salted
  /// digest. Empty where the store can't be trusted.
  std::vector<std::string> bodies() const {
    const Ledger ledger = Ledger::open("sqlite:" + file(), {});
    std::vector<std::string> bodies;
    if (!verify_ledger(ledger, {}).trusted) return bodies;
    ledger.each_record(1, [&](const LedgerRow& row) {
      JsonNode body = body_of(row);
      std::erase_if(body.members, [](const JsonMember& member) {
        return member.key == "seq" || member.key == "t" || member.key == "store" || member.key == "who";
      });
      bodies.push_back(canonical_json(body));
      return true;
    });
    return bodies;
  }

 private:
  ScratchFolder folder_;
};

class ImportKillsTest : public testing::TestWithParam<ScratchFolder::On> {
 protected:
  void SetUp() override {
    before_ = import_.bodies();
    const auto begin = std::chrono::steady_clock::now();
    whole_ = import_.run("second.csv");
    took_us_ = std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - begin)
                   .count();
    ASSERT_EQ(whole_.exit_code, 0) << whole_.error;
    wanted_ = import_.bodies();
    ASSERT_EQ(before_.size(), 18u) << "genesis, import, 16 passes";
    ASSERT_EQ(wanted_.size(), before_.size() + 41u);
  }
  /// Kills an import, checks what remains, then imports twice again.
  void expect_whole_after(const FaultPoint& point, long kill_after_us) {
    import_.restore();
    const FaultOutcome killed = import_.run("second.csv", point, kill_after_us);
    killed_ += killed.exit_code == -1;
    const auto left = import_.bodies();
    const bool all = left == wanted_;
    EXPECT_TRUE(all || left == before_) << left.size() << " records are left";
    // What it had said to be stored must be there.
    if (killed.output.find("Stored ") != std::string::npos) {
      EXPECT_TRUE(all);
    }
    all_left_ += all;
    ASSERT_EQ(import_.run("second.csv").exit_code, 0) << "it can't be run again";
    EXPECT_EQ(import_.bodies(), wanted_);
    ASSERT_EQ(import_.run("second.csv").exit_code, 0);
    EXPECT_EQ(import_.bodies(), wanted_) << "a third import added something";
  }

  static bool in_memory() { return GetParam() == ScratchFolder::On::memory; }

  Import import_{GetParam()};
  std::vector<std::string> before_, wanted_;
  FaultOutcome whole_;
  long took_us_ = 0;
  int killed_ = 0, all_left_ = 0;
};

INSTANTIATE_TEST_SUITE_P(Places, ImportKillsTest, scratch_places(), place_name);

}  // namespace

TEST_P(ImportKillsTest, killed_at_any_call_it_leaves_all_or_nothing_and_run_again_gives_the_same_bodies) {
  const long calls = static_cast<long>(whole_.calls.size());
  ASSERT_GT(calls, 20);
  const long step = long_tests() ? 1 : std::max(1l, calls / (in_memory() ? 50 : 12));
  int runs = 0;
  for (long call = 1; call <= calls; call += step, ++runs) {
    SCOPED_TRACE("call " + std::to_string(call) + ": " + whole_.calls[static_cast<std::size_t>(call - 1)]);
    expect_whole_after({call % 2 ? "kill" : "kill-after", call, false}, -1);
  }
  // Each of these calls is made, so each of these kills takes effect.
  EXPECT_GE(killed_, runs - 2);
}

TEST_P(ImportKillsTest, killed_at_any_time_it_leaves_all_or_nothing_and_run_again_gives_the_same_bodies) {
  const unsigned seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937 random(seed);
  const int kills = in_memory() ? (long_tests() ? 4500 : 250) : (long_tests() ? 500 : 15);
  for (int i = 0; i < kills; ++i) expect_whole_after({}, static_cast<long>(random() % 1000) * took_us_ / 900);
  EXPECT_GT(killed_, kills / 5);
}
