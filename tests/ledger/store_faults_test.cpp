// Several writers at once, kills at any time, flipped bits; and planted faults that these tests must see.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <random>
#include <system_error>

#include "base/error.hpp"
#include "base/json_node.hpp"
#include "records/ledger/bundle.hpp"
#include "records/ledger/sqlite_schema.hpp"
#include "writers.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

std::string bundle_of(const std::string& uri) {
  std::string text;
  export_bundle(Ledger::open(uri, {}), {}, [&](std::string_view piece) { text += piece; });
  return text;
}

/// Kills two writers again and again; acknowledged anchors that the store doesn't hold any more, by the kill.
struct Kills {
  int broken = 0, lost = 0, acknowledged = 0, idle = 0;
};
Kills kill_writers(int kills, int window_ms, WriterProcesses::Acknowledges when, std::uint64_t seed) {
  const ScratchFolder folder;
  const std::string uri = "sqlite:" + (folder / "store.sqlite");
  KeyRing keys;
  begin_store(uri, keys);
  std::mt19937_64 random(seed);
  std::vector<std::string> anchors;
  Kills result;
  for (int i = 0; i < kills; ++i) {
    WriterProcesses writers(uri, keys.current(), 2, when);
    const auto said = writers.kill_after_ms(static_cast<int>(random() % static_cast<unsigned>(window_ms)));
    result.acknowledged += static_cast<int>(said.size());
    result.idle += said.size() < 2;
    anchors.insert(anchors.end(), said.begin(), said.end());
    if (!verified(uri).trusted) ++result.broken;
    if (!anchors.empty() && !verified(uri, anchors).trusted) {
      ++result.lost;
      anchors.clear();
    }
  }
  return result;
}

}  // namespace

TEST(StoreFaults, eight_writers_at_once_leave_no_gap_and_lose_nothing) {
  const ScratchFolder folder;
  const std::string uri = "sqlite:" + (folder / "store.sqlite");
  KeyRing keys;
  begin_store(uri, keys);
  const int batches = long_tests() ? 500 : 15;
  EXPECT_EQ(write_at_once(uri, keys.current(), 8, batches, 3), std::vector<std::string>());
  const VerifyReport report = verified(uri);
  EXPECT_TRUE(report.trusted) << problems_text(report);
  EXPECT_EQ(report.records, 2u + 8u * 3u * static_cast<unsigned>(batches));
  EXPECT_EQ(report.heads, 1u + 8u * static_cast<unsigned>(batches));
}

TEST(StoreFaults, planted_a_state_read_before_the_lock_is_seen) {
  const ScratchFolder folder;
  const std::string uri = "sqlite:" + (folder / "store.sqlite");
  KeyRing keys;
  begin_store(uri, keys);
  const auto wrap = [](std::unique_ptr<LedgerBackend> inner) -> std::unique_ptr<LedgerBackend> {
    return std::make_unique<ReadsBeforeLock>(std::move(inner));
  };
  const auto errors = write_at_once(uri, keys.current(), 8, 10, 1, wrap);
  EXPECT_TRUE(!errors.empty() || !verified(uri).trusted);
}

TEST(StoreFaults, a_writer_that_waits_too_long_ends_with_a_clean_busy) {
  const ScratchFolder folder;
  const std::string uri = "sqlite:" + (folder / "store.sqlite");
  KeyRing keys;
  begin_store(uri, keys);
  if (!long_tests()) GTEST_SKIP() << "waits 10 s: SEAMTAKT_TEST_LENGTH=long runs it";
  const auto blocker = open_ledger_backend(uri, {StoreOpening::For::writing, false, false});
  blocker->begin();
  Ledger ledger = Ledger::open(uri, {StoreOpening::For::writing, false, false});
  try {
    ledger.write(keys.provider(), stamp(1), [](LedgerBatch& batch) { batch.add(some_pass(1)); });
    FAIL() << "two writers at once";
  } catch (const std::system_error& error) {
    EXPECT_EQ(error.code(), std::errc::device_or_resource_busy);
  }
  blocker->rollback();
}

TEST(StoreFaults, a_kill_of_two_writers_at_any_time_loses_nothing_acknowledged) {
  const std::uint64_t seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  const int kills = long_tests() ? 500 : 12;
  const Kills result = kill_writers(kills, 300, WriterProcesses::Acknowledges::after_commit, seed);
  EXPECT_EQ(result.broken, 0);
  EXPECT_EQ(result.lost, 0);
  EXPECT_GT(result.acknowledged, 4 * kills);
  EXPECT_LE(result.idle, kills / 4 + 1) << "kills that fell on nothing show nothing";
}

TEST(StoreFaults, planted_an_acknowledgement_before_the_commit_is_seen) {
  const Kills result = kill_writers(15, 40, WriterProcesses::Acknowledges::before_commit, 7);
  EXPECT_GT(result.lost, 0);
}

TEST(StoreFaults, a_flipped_bit_is_seen_or_changes_nothing) {
  const ScratchFolder folder;
  make_sample("sqlite:" + (folder / "good.sqlite"));
  const std::string good = read_file(folder / "good.sqlite", 64u << 20),
                    bundle = bundle_of("sqlite:" + (folder / "good.sqlite"));
  const std::uint64_t seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937_64 random(seed);
  const int flips = long_tests() ? 20000 : 300, second_looks = long_tests() ? 200 : 8;
  int seen = 0, harmless = 0;
  for (int i = 0; i < flips; ++i) {
    std::string bad = good;
    const std::size_t bit = random() % (8 * bad.size());
    bad[bit / 8] = static_cast<char>(bad[bit / 8] ^ (1 << bit % 8));
    std::ofstream(folder / "bad.sqlite", std::ios::binary) << bad;
    bool trusted = false;
    try {
      trusted = verified("sqlite:" + (folder / "bad.sqlite")).trusted;
    } catch (const InputError&) {  // it isn't even taken for a store
    } catch (const std::system_error&) {
    }
    if (trusted) {
      EXPECT_EQ(bundle_of("sqlite:" + (folder / "bad.sqlite")), bundle) << "silent: bit " << bit;
    }
    ++(trusted ? harmless : seen);
    if (i >= second_looks) continue;
    const int second = second_verdict(folder / "bad.sqlite", {}, folder);
    // A flip in the file's free space or in a counter of the library may be seen by one of them alone.
    if (second != 1 && !trusted) {
      EXPECT_LE(second, 0) << "the second verifier broke at bit " << bit;
      EXPECT_EQ(bundle_of("sqlite:" + (folder / "bad.sqlite")), bundle) << "bit " << bit;
    }
  }
  EXPECT_GT(seen, flips / 6) << "most of a small file is free space";
  EXPECT_GT(harmless, 0);
}

namespace {

/// Takes a database's error for the end of the records.
class TakesErrorsForTheEnd : public WrappedBackend {
 public:
  using WrappedBackend::WrappedBackend;
  std::vector<LedgerRow> records(std::uint64_t first, std::size_t limit) override {
    try {
      return WrappedBackend::records(first, limit);
    } catch (const std::system_error&) {
      return {};
    }
  }
  std::vector<std::string> structure_problems() override { return {}; }
};

}  // namespace

TEST(StoreFaults, planted_an_error_taken_for_the_end_is_still_seen_by_the_count) {
  const ScratchFolder folder;
  make_sample("sqlite:" + (folder / "good.sqlite"));
  std::string bytes = read_file(folder / "good.sqlite", 64u << 20);
  const auto at = bytes.rfind("\"kind\":\"pass\"");
  ASSERT_NE(at, std::string::npos);
  const std::size_t page = at / 4096 * 4096;
  bytes.replace(page, 8, std::string(8, '\xff'));
  std::ofstream(folder / "bad.sqlite", std::ios::binary) << bytes;
  const Ledger ledger(
      std::make_unique<TakesErrorsForTheEnd>(open_ledger_backend("sqlite:" + (folder / "bad.sqlite"), {})));
  EXPECT_FALSE(verify_ledger(ledger, {}).trusted);
}

TEST(StoreFaults, a_write_ahead_log_is_used_only_where_the_library_is_mended) {
  EXPECT_FALSE(sqlite_wal_is_safe(3040001));
  EXPECT_FALSE(sqlite_wal_is_safe(3044005));
  EXPECT_TRUE(sqlite_wal_is_safe(3044006));
  EXPECT_FALSE(sqlite_wal_is_safe(3045000));
  EXPECT_TRUE(sqlite_wal_is_safe(3050007));
  EXPECT_FALSE(sqlite_wal_is_safe(3051002));
  EXPECT_TRUE(sqlite_wal_is_safe(3051003));
  EXPECT_TRUE(sqlite_wal_is_safe(3052000));
}
