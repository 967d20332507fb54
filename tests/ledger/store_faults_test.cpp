// Several writers at once, kills at any time, flipped bits; and planted faults that these tests must see.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <memory>
#include <random>
#include <sstream>
#include <system_error>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/store/sqlite_schema.hpp"
#include "support/scratch_places.hpp"
#include "writers.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// Kills of two writers, again and again; what the store lost of what they had acknowledged, by the kill.
struct Kills {
  int counted = 0;  ///< kills that fell on at least two acknowledgements: others show nothing
  int broken = 0, lost = 0;
};

class KilledWriters {
 public:
  KilledWriters(WriterProcesses::Acknowledges when, ScratchFolder::On place, std::uint64_t seed)
      : when_(when), place_(place), random_(seed), window_ms_(shortest_window_ms()) {}

  Kills run(int kills) {
    // The window grows where the machine is slow, so that most kills count.
    for (int tries = 0; result_.counted < kills && tries < 4 * kills; ++tries) {
      if (tries % kills_a_store == 0) begin();
      strike();
    }
    return result_;
  }

 private:
  static constexpr int kills_a_store = 25;  // a store that grows without end would take most of the time

  int shortest_window_ms() const { return place_ == ScratchFolder::On::memory ? 8 : 40; }
  void begin() {
    folder_ = std::make_unique<ScratchFolder>(place_);
    uri_ = "sqlite:" + (*folder_ / "store.sqlite");
    keys_ = KeyRing();
    anchors_.clear();
    begin_store(uri_, keys_);
  }
  void strike() {
    WriterProcesses writers(uri_, keys_.current(), 2, when_);
    const auto said = writers.kill_after_ms(static_cast<int>(random_() % static_cast<unsigned>(window_ms_)));
    // Wider where too few were acknowledged, narrower again where enough were: each commit makes all later
    // checks longer.
    if (said.size() >= 2) {
      ++result_.counted;
      window_ms_ = std::max(window_ms_ - window_ms_ / 8, shortest_window_ms());
    } else {
      window_ms_ = std::min(2 * window_ms_, 300);
    }
    // All of this kill's and the newest of each one before: a head vouches for all records below it.
    std::vector<std::string> anchors = anchors_;
    anchors.insert(anchors.end(), said.begin(), said.end());
    if (anchors.empty() ? verified(uri_).trusted : verified(uri_, anchors).trusted) {
      if (!said.empty()) anchors_.push_back(said.back());
      return;
    }
    ++(verified(uri_).trusted ? result_.lost : result_.broken);
    begin();
  }

  WriterProcesses::Acknowledges when_;
  ScratchFolder::On place_;
  std::mt19937_64 random_;
  int window_ms_;
  Kills result_;
  std::unique_ptr<ScratchFolder> folder_;
  std::string uri_;
  KeyRing keys_;
  std::vector<std::string> anchors_;
};

}  // namespace

class StoreFaultsOn : public testing::TestWithParam<ScratchFolder::On> {
 protected:
  static bool in_memory() { return GetParam() == ScratchFolder::On::memory; }
};

INSTANTIATE_TEST_SUITE_P(Places, StoreFaultsOn, scratch_places(), place_name);

TEST_P(StoreFaultsOn, eight_writers_at_once_leave_no_gap_and_lose_nothing) {
  const ScratchFolder folder(GetParam());
  const std::string uri = "sqlite:" + (folder / "store.sqlite");
  KeyRing keys;
  begin_store(uri, keys);
  const int batches = long_tests() || (in_memory() && !sanitized) ? 500 : 15;
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

TEST_P(StoreFaultsOn, a_kill_of_two_writers_at_any_time_loses_nothing_acknowledged) {
  const std::uint64_t seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  const int kills = in_memory() ? (long_tests() ? 9000
                                   : sanitized  ? 12
                                                : 440)
                                : (long_tests() ? 1000
                                   : sanitized  ? 12
                                                : 60);
  const Kills result =
      KilledWriters(WriterProcesses::Acknowledges::after_commit, GetParam(), seed).run(kills);
  EXPECT_EQ(result.broken, 0);
  EXPECT_EQ(result.lost, 0);
  EXPECT_EQ(result.counted, kills) << "too many kills fell on nothing";
}

TEST_P(StoreFaultsOn, planted_an_acknowledgement_before_the_commit_is_seen) {
  const Kills result = KilledWriters(WriterProcesses::Acknowledges::before_commit, GetParam(), 7).run(15);
  EXPECT_GT(result.lost, 0);
}

namespace {

/// A small store, and copies of it in which one bit is another one.
class FlippedBits : public testing::Test {
 protected:
  void SetUp() override {
    const SampleStore sample = make_sample("sqlite:" + (folder_ / "good.sqlite"));
    good_ = read_file(folder_ / "good.sqlite", 64u << 20);
    bundle_ = bundle_of("sqlite:" + (folder_ / "good.sqlite"));
  }
  /// Where the bytes of all bodies, leaves, roots and signatures are in the file.
  std::vector<std::size_t> places_of_content() const {
    const Ledger ledger = Ledger::open("sqlite:" + (folder_ / "good.sqlite"), {});
    std::vector<std::string> parts;
    for (const LedgerRow& row : ledger.backend().records(1, 1000)) {
      parts.push_back(row.body);
      parts.push_back(row.leaf);
    }
    for (const SignedHead& head : ledger.backend().heads(0, 1000)) {
      parts.push_back(std::string(bytes_of(head.root)));
      parts.push_back(head.signature);
    }
    std::vector<std::size_t> places;
    for (const std::string& part : parts)
      if (const std::size_t at = good_.find(part); at != std::string::npos)
        for (std::size_t i = 0; i < part.size(); ++i) places.push_back(at + i);
    return places;
  }
  std::string flipped_file(int number = 0) const {
    return folder_ / ("bad" + std::to_string(number) + ".sqlite");
  }
  /// Whether the verifier trusts the store with that bit flipped, which is put into flipped_file(number).
  bool trusts_with_flip(std::size_t bit, int number = 0) const {
    std::string bad = good_;
    bad[bit / 8] = static_cast<char>(bad[bit / 8] ^ (1 << bit % 8));
    std::ofstream(flipped_file(number), std::ios::binary) << bad;
    try {
      return verified("sqlite:" + flipped_file(number)).trusted;
    } catch (const InputError&) {  // it isn't even recognised as a store
    } catch (const std::system_error&) {
    }
    return false;
  }
  /// Every logical row as it was, to the byte.
  bool is_unchanged(int number = 0) const {
    try {
      return bundle_of("sqlite:" + flipped_file(number)) == bundle_;
    } catch (const std::exception&) {
      return false;
    }
  }

  ScratchFolder folder_{ScratchFolder::On::memory};
  std::string good_, bundle_;
};

}  // namespace

TEST_F(FlippedBits, are_seen_or_leave_every_row_as_it_was) {
  const std::uint64_t seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937_64 random(seed);
  const int flips = long_tests() ? 20000 : sanitized ? 120 : 2000;
  int seen = 0;
  for (int i = 0; i < flips; ++i) {
    const std::size_t bit = random() % (8 * good_.size());
    const bool trusted = trusts_with_flip(bit);
    seen += !trusted;
    if (trusted) {
      EXPECT_TRUE(is_unchanged()) << "silent: bit " << bit;
    }
  }
  // At least the flips in signed bytes must be detected; their number follows from the file, less five
  // standard deviations of the draw.
  const double share = static_cast<double>(places_of_content().size()) / static_cast<double>(good_.size());
  EXPECT_GT(seen, flips * share - 5 * std::sqrt(flips * share * (1 - share)));
}

TEST_F(FlippedBits, are_all_seen_within_what_is_signed) {
  const auto places = places_of_content();
  EXPECT_GT(places.size(), 8000u);
  std::mt19937_64 random(3);
  // Every place at full length; else some of them, so that each part of a body is struck in most runs.
  const std::size_t step = long_tests() ? 1 : sanitized ? 149 : 29;
  for (std::size_t i = random() % step; i < places.size(); i += step) {
    const std::size_t bit = 8 * places[i] + random() % 8;
    EXPECT_FALSE(trusts_with_flip(bit)) << "bit " << bit;
  }
}

TEST_F(FlippedBits, give_both_verifiers_one_verdict_wherever_a_row_changed) {
  if (sanitized) GTEST_SKIP() << "the sanitizers see nothing of the second verifier";
  if (second_verdict(folder_ / "good.sqlite", {}, folder_) < 0)
    GTEST_SKIP() << "no python3: the second verifier wasn't run";
  const std::uint64_t seed = std::random_device()();
  SCOPED_TRACE("seed " + std::to_string(seed));
  std::mt19937_64 random(seed);
  const auto places = places_of_content();
  constexpr int flips_a_run = 200;
  for (int run = 0; run < (long_tests() ? 100 : 1); ++run) {
    std::vector<std::size_t> bits;
    std::vector<std::string> files;
    std::vector<bool> trusted;
    for (int i = 0; i < flips_a_run; ++i) {
      // Half of them anywhere, half in signed bytes.
      bits.push_back(i % 2 ? random() % (8 * good_.size())
                           : 8 * places[random() % places.size()] + random() % 8);
      trusted.push_back(trusts_with_flip(bits.back(), i));
      files.push_back(flipped_file(i));
    }
    files.push_back(folder_ / "good.sqlite");
    const std::vector<int> second = second_verdicts(files, {}, folder_);
    EXPECT_EQ(second.back(), 0) << "an altered store before it mustn't be remembered";
    for (int i = 0; i < flips_a_run; ++i) {
      const auto at = static_cast<std::size_t>(i);
      EXPECT_TRUE(second[at] == 0 || second[at] == 1) << "the second verifier broke at bit " << bits[at];
      // A flip in the file's free space or in a counter of the library may be seen by one of them alone.
      if (trusted[at] != (second[at] == 0)) {
        EXPECT_TRUE(is_unchanged(i)) << "bit " << bits[at] << ": trusted by one alone";
      }
    }
    // Many at once are judged as one by one.
    EXPECT_EQ(second_verdict(files[0], {}, folder_), second[0]) << "bit " << bits[0];
  }
}

TEST(StoreFaults, a_restored_backup_agrees_with_the_anchors_made_before_it_and_not_with_later_ones) {
  const ScratchFolder folder;
  const std::string uri = "sqlite:" + (folder / "store.sqlite"),
                    restored = "sqlite:" + (folder / "restored.sqlite"),
                    copy = "sqlite:" + (folder / "copy.sqlite");
  SampleStore sample = make_sample(uri);
  // Both ways of keeping a backup: the bundle, and the file itself while nobody writes.
  const std::string bundle = bundle_of(uri);
  std::filesystem::copy_file(folder / "store.sqlite", folder / "copy.sqlite");
  {
    Ledger ledger = Ledger::open(uri, {StoreOpening::For::writing, false, false});
    ledger.write(sample.keys.provider(), stamp(30), [](LedgerBatch& batch) { batch.add(some_pass(30)); });
  }
  SignedHead newest = *Ledger::open(uri, {}).backend().snapshot().newest_head;
  newest.store = Ledger::open(uri, {}).store_id();
  std::filesystem::remove(folder / "store.sqlite");

  std::istringstream in(bundle);
  import_bundle(*open_ledger_backend(restored, {StoreOpening::For::writing, true, false}), in, "bundle");
  for (const std::string& each : {restored, copy}) {
    const VerifyReport report = verified(each, sample.anchors, sample.keys.current().public_key().id());
    EXPECT_TRUE(report.trusted) << each << "\n" << problems_text(report);
    EXPECT_EQ(report.anchored_to, 17u);
    EXPECT_EQ(bundle_of(each), bundle);
    EXPECT_LE(second_verdict(each.substr(7), sample.anchors, folder), 0);
    const VerifyReport behind = verified(each, {newest.anchor_line()});
    EXPECT_FALSE(behind.trusted) << "the anchor made after the backup shows what it lacks";
    EXPECT_EQ(behind.first_bad_seq(), 18u) << problems_text(behind);
    // Work continues where the backup ends.
    Ledger ledger = Ledger::open(each, {StoreOpening::For::writing, false, false});
    ledger.write(sample.keys.provider(), stamp(31), [](LedgerBatch& batch) { batch.add(some_pass(31)); });
    EXPECT_TRUE(verified(each, sample.anchors).trusted);
  }
}

namespace {

/// Takes a database's error for the end of the records.
class TakesErrorsForTheEnd : public WrappedBackend {
 public:
  using WrappedBackend::WrappedBackend;
  void each_record(std::uint64_t first, std::size_t limit, const RecordVisitor& visit) override {
    try {
      WrappedBackend::each_record(first, limit, visit);
    } catch (const std::system_error&) {
    }
  }
  std::vector<Sentence> structure_problems() override { return {}; }
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
