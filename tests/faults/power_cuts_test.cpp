// Loss of power while a plan is saved or a record is appended: the disk keeps everything flushed, and any
// part of the later writes. Everything acknowledged before must be there and complete once the disk is
// mounted again. The disk and its cuts: driver/cutdisk.cpp, cut_log.hpp.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <random>
#include <sstream>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "cut_cluster.hpp"
#include "cut_disk.hpp"
#include "driver/versions.hpp"
#include "fault_run.hpp"
#include "ledger/store/ledger.hpp"
#include "ledger/verify/verify.hpp"
#include "support/program_paths.hpp"

using namespace seamtakt;

namespace {

constexpr int states_a_recording = 100, states_of_a_planted_fault = 50;

/// What the power cuts of some recordings showed.
struct CutCount {
  int states = 0, acknowledged = 0;
  std::vector<std::string> bad;
};

/// Plays what a test fixture prepares, runs and checks.
class PowerCutsTest : public testing::Test {
 protected:
  void SetUp() override {
    static const std::string why = why_no_power_cuts();
    if (!why.empty()) GTEST_SKIP() << "no power cuts here: " << why;
  }

  virtual void prepare(const std::string& folder) = 0;
  virtual std::string command(const std::string& how, const std::string& folder) = 0;
  virtual std::string problem(const std::string& folder, const std::string& acknowledged) = 0;
  virtual int disk_megabytes() const { return 10; }

  CutCount cut(const std::string& how, int states) {
    const unsigned seed = std::random_device()();
    CutCount count;
    for (unsigned round = 0; count.states < states; ++round) {
      CutRecording recording([&](const std::string& folder) { prepare(folder); }, disk_megabytes());
      recording.run([&](const std::string& folder) { return command(how, folder); });
      const int cuts = std::min(states_a_recording, states - count.states);
      const auto bad = recording.bad_states(cuts, seed + round,
                                            [&](const std::string& folder, const std::string& acknowledged) {
                                              count.acknowledged += !acknowledged.empty();
                                              return problem(folder, acknowledged);
                                            });
      count.bad.insert(count.bad.end(), bad.begin(), bad.end());
      count.states += cuts;
    }
    std::cout << how << ": " << count.bad.size() << " of " << count.states << " states bad, seed " << seed
              << (count.bad.empty() ? "" : "; the first " + count.bad.front()) << std::endl;
    return count;
  }

  /// Nothing acknowledged may be lost, and enough must have been acknowledged to be lost.
  void expect_stands(const std::string& how, int states) {
    const CutCount count = cut(how, states);
    EXPECT_EQ(count.bad, std::vector<std::string>{});
    EXPECT_GT(count.acknowledged, count.states / 2) << "cuts before any acknowledgement show little";
  }
  void expect_found_out(const std::string& how, int states = states_of_a_planted_fault) {
    // Where a state in four shows it, twenty show nothing once in three hundred runs.
    for (int tries = 0; tries < 3; ++tries)
      if (!cut(how, states).bad.empty()) return;
    ADD_FAILURE() << how << " isn't seen";
  }
};

class SavePowerCutsTest : public PowerCutsTest {
 protected:
  void prepare(const std::string& folder) override {
    ASSERT_EQ(run_save_driver("honest", folder + "/f", 1, 1, {}).exit_code, 0);
  }
  std::string command(const std::string& how, const std::string& folder) override {
    return std::string(save_driver()) + " " + how + " " + folder + "/f " + std::to_string(version_size) +
           " 2 40";
  }
  std::string problem(const std::string& folder, const std::string& acknowledged) override {
    std::istringstream numbers(acknowledged);
    unsigned last = 1;
    while (numbers >> last) {
    }
    const unsigned found = whole_version(read_file(folder + "/f", std::size_t{1} << 30), version_size);
    if (found == 0) return "the file isn't whole";
    if (found >= last) return {};
    return "version " + std::to_string(found) + ", " + std::to_string(last) + " was acknowledged";
  }
};

/// What the anchors that were acknowledged say of a store.
std::string store_problem(const std::string& uri, const std::string& anchors) {
  VerifyOptions options;
  options.anchors = parse_anchors(anchors, "acknowledged");
  const VerifyReport report = verify_store(uri, {}, options);
  if (!report.trusted)
    return report.summary() + (report.problems.empty() ? "" : ", " + report.problems[0].text());
  if (report.records >= options.anchors.back().n) return {};
  return std::to_string(report.records) + " records";
}

class StorePowerCutsTest : public PowerCutsTest {
 protected:
  void prepare(const std::string& folder) override {
    if (!std::filesystem::exists(key_)) save_signing_key(key_, SigningKey::generate());
    ASSERT_EQ(std::system((append("honest", folder, 1) + " >" + (outside_ / "anchor")).c_str()), 0);
    first_anchor_ = read_file(outside_ / "anchor", 65536);
  }
  std::string command(const std::string& how, const std::string& folder) override {
    return append(how, folder, 30);
  }
  std::string problem(const std::string& folder, const std::string& acknowledged) override {
    return store_problem("sqlite:" + folder + "/records.sqlite", first_anchor_ + acknowledged);
  }

 private:
  std::string append(const std::string& how, const std::string& folder, int times) const {
    return std::string(store_driver()) + " " + how + " " + folder + "/records.sqlite " + key_ + " " +
           std::to_string(times);
  }
  const ScratchFolder outside_;
  const std::string key_ = outside_ / "key.pem";
  std::string first_anchor_;
};

class PostgresPowerCutsTest : public PowerCutsTest {
 protected:
  void SetUp() override {
    PowerCutsTest::SetUp();
    if (!IsSkipped() && !CutCluster::is_there()) GTEST_SKIP() << "no PostgreSQL server is installed";
  }
  int disk_megabytes() const override { return 128; }
  void prepare(const std::string& folder) override {
    if (!std::filesystem::exists(key_)) save_signing_key(key_, SigningKey::generate());
    const CutCluster cluster(folder);
    ASSERT_EQ(cluster.make(append("honest", cluster, 1) + " >" + (outside_ / "anchor")), "");
    first_anchor_ = read_file(outside_ / "anchor", 65536);
  }
  std::string command(const std::string& how, const std::string& folder) override {
    const CutCluster cluster(folder);
    return cluster.while_it_runs(append(how, cluster, 15));
  }
  std::string problem(const std::string& folder, const std::string& acknowledged) override {
    const CutCluster cluster(folder);
    // A server whose power went while it was starting leaves an empty one, and asks that it be removed.
    std::filesystem::remove(folder + "/data/postmaster.pid");
    if (!cluster.start()) return "the server doesn't start";
    const std::string found = store_problem(cluster.uri(), first_anchor_ + acknowledged);
    cluster.stop();
    return found;
  }

 private:
  std::string append(const std::string& how, const CutCluster& cluster, int times) const {
    return std::string(store_driver()) + " " + how + " " + cluster.uri() + " " + key_ + " " +
           std::to_string(times);
  }
  const ScratchFolder outside_;
  const std::string key_ = outside_ / "key.pem";
  std::string first_anchor_;
};

}  // namespace

TEST_F(PostgresPowerCutsTest, a_power_cut_loses_no_acknowledged_record_and_the_store_is_trusted) {
  expect_stands("honest", long_tests() ? 200 : 20);
}

TEST_F(PostgresPowerCutsTest, planted_an_acknowledgement_before_the_commit_is_found_out) {
  expect_found_out("early", 20);
}

TEST_F(SavePowerCutsTest, a_power_cut_leaves_the_last_acknowledged_version_or_a_newer_one_whole) {
  expect_stands("honest", long_tests() ? 5000 : 300);
}

TEST_F(SavePowerCutsTest, planted_no_flush_of_the_file_is_found_out) {
  expect_found_out("no-fsync");
}

TEST_F(SavePowerCutsTest, planted_no_flush_of_the_folder_is_found_out) {
  expect_found_out("no-folder-sync");
}

TEST_F(StorePowerCutsTest, a_power_cut_loses_no_acknowledged_record_and_the_store_is_trusted) {
  expect_stands("honest", long_tests() ? 5000 : 400);
}

TEST_F(StorePowerCutsTest, planted_a_commit_less_synchronous_than_it_must_be_is_found_out) {
  expect_found_out("synchronous=NORMAL");
}

TEST_F(StorePowerCutsTest, planted_an_acknowledgement_before_the_commit_is_found_out) {
  expect_found_out("early");
}
