// Later records about records: loaded together give the same as loaded one by one; search by time and seam.
#include "records/keep/record_history.hpp"

#include <gtest/gtest.h>

#include "base/error.hpp"
#include "ledger/body/canonical_json.hpp"
#include "records/keep/nonconformance.hpp"
#include "records/keep/record_search.hpp"
#include "store_fixture.hpp"
#include "wrapped_backend.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// Counts questions that would go over the network.
class CountingBackend : public WrappedBackend {
 public:
  CountingBackend(std::unique_ptr<LedgerBackend> inner, int& questions)
      : WrappedBackend(std::move(inner)), questions_(questions) {}
  void each_record(std::uint64_t first, std::size_t limit, const RecordVisitor& visit) override {
    ++questions_;
    WrappedBackend::each_record(first, limit, visit);
  }
  void each_record_of(std::span<const std::uint64_t> numbers, const RecordVisitor& visit) override {
    if (!numbers.empty()) ++questions_;
    WrappedBackend::each_record_of(numbers, visit);
  }
  std::vector<std::pair<std::uint64_t, std::uint64_t>> references_to(
      std::span<const std::uint64_t> numbers) override {
    if (!numbers.empty()) ++questions_;
    return WrappedBackend::references_to(numbers);
  }
  std::vector<std::uint64_t> find(std::string_view topic, std::string_view key) override {
    ++questions_;
    return WrappedBackend::find(topic, key);
  }

 private:
  int& questions_;
};

/// A pass welded at a minute.
LedgerEntry welded(const std::string& unit, const std::string& seam, int at_minute,
                   const std::string& verdict = "pass") {
  return {record_kind::pass,
          {},
          {{"results", "{\"unit_serial\":\"" + unit + "\",\"weldment\":\"BD\",\"seam\":\"" + seam +
                           "\",\"pass\":1,\"started\":\"" + minute(at_minute) + "\",\"verdict\":\"" +
                           verdict + "\"}"}},
          {{"unit", unit}}};
}

class HistoryTest : public testing::Test {
 protected:
  std::uint64_t add(const LedgerEntry& entry) {
    std::uint64_t seq = 0;
    ledger_.write(keys_.provider(), stamp(at_++), [&](LedgerBatch& batch) { seq = batch.add(entry); });
    return seq;
  }
  /// A unit of so many passes; each third is corrected, each fifth void, each seventh a nonconformance.
  void add_unit(const std::string& unit, int passes) {
    ledger_.write(keys_.provider(), stamp(at_++), [&](LedgerBatch& batch) {
      for (int i = 0; i < passes; ++i) batch.add(welded(unit, "S" + std::to_string(i), i));
    });
    const auto numbers = ledger_.backend().find("unit", unit);
    for (std::size_t i = 0; i < numbers.size(); ++i) {
      if (i % 3 == 0) add(correction_of(ledger_, numbers[i], "results.pass", "2"));
      if (i % 5 == 0) add(void_entry(ledger_, ledger_.record(numbers[i])));
      if (i % 7 == 0) add(raised_nonconformance_entry(ledger_, numbers[i]));
    }
  }
  std::vector<std::uint64_t> found(const std::string& from, const std::string& to,
                                   const std::string& seam = "") {
    RecordRange range;
    range.set_times(from, to);
    if (!seam.empty()) range.set_seam(seam);
    RecordHistory history(ledger_);
    std::vector<std::uint64_t> numbers;
    for (const FoundRecord& record : find_records(history, range)) numbers.push_back(record.seq);
    return numbers;
  }

  ScratchFolder folder_;
  std::string uri_ = "sqlite:" + (folder_ / "store.sqlite");
  Ledger ledger_ = Ledger::open(uri_, {StoreOpening::For::writing, true, false});
  KeyRing keys_;
  int at_ = 0;
};

}  // namespace

TEST_F(HistoryTest, a_unit_takes_as_few_questions_with_many_passes_as_with_few) {
  add_unit("few", 10);
  add_unit("many", 120);
  int questions = 0;
  const Ledger counted(std::make_unique<CountingBackend>(open_ledger_backend(uri_, {}), questions));
  const UnitStatus few = unit_status(counted, "few");
  const int for_few = questions;
  questions = 0;
  const UnitStatus many = unit_status(counted, "many");
  EXPECT_EQ(questions, for_few);
  EXPECT_LE(questions, 20);
  EXPECT_EQ(few.passes.size(), 8u);
  EXPECT_EQ(many.passes.size(), 96u);
  EXPECT_EQ(many.nonconformances.size(), 18u);
  for (const Nonconformance& each : many.nonconformances)
    EXPECT_EQ(each.open, !changes_of(ledger_, each.about).is_void()) << each.seq;
}

TEST_F(HistoryTest, many_at_once_are_what_each_one_is) {
  add_unit("U", 30);
  RecordHistory history(ledger_);
  std::vector<std::uint64_t> all;
  for (std::uint64_t seq = 1; seq <= ledger_.count(); ++seq) all.push_back(seq);
  history.load(all);
  for (const std::uint64_t seq : all) {
    const RecordChanges one = changes_of(ledger_, seq), &many = history.changes_of(seq);
    EXPECT_EQ(one.corrections, many.corrections) << seq;
    EXPECT_EQ(one.voids, many.voids) << seq;
    EXPECT_EQ(one.nonconformances, many.nonconformances) << seq;
    EXPECT_EQ(canonical_json(corrected_body(ledger_, ledger_.record(seq))),
              canonical_json(history.corrected_body(seq)));
  }
  EXPECT_THROW(history.record(10000), InputError);
}

TEST_F(HistoryTest, a_correction_that_is_void_itself_changes_nothing) {
  const std::uint64_t pass = add(welded("U", "S1", 0));
  const std::uint64_t correction = add(correction_of(ledger_, pass, "results.seam", "S2"));
  EXPECT_EQ(body_text(RecordHistory(ledger_).corrected_body(pass), "results.seam"), "S2");
  add(void_entry(ledger_, ledger_.record(correction)));
  EXPECT_EQ(body_text(RecordHistory(ledger_).corrected_body(pass), "results.seam"), "S1");
}

TEST_F(HistoryTest, records_are_found_by_when_they_were_welded_and_by_their_corrected_seam) {
  const std::uint64_t late = add(welded("U", "S1", 30)), early = add(welded("U", "S1", 10)),
                      other = add(welded("U", "S2", 20));
  const std::uint64_t manual = add({record_kind::manual,
                                    {},
                                    {{"results",
                                      "{\"unit_serial\":\"U\",\"weldment\":\"BD\",\"seam\":\"M1\",\"date\":"
                                      "\"2026-03-02\",\"result\":\"pass\"}"}},
                                    {}});
  using Numbers = std::vector<std::uint64_t>;
  // The manual seam has only a day: it overlaps each part of that day.
  EXPECT_EQ(found("2026-03-02", "2026-03-02"), (Numbers{manual, early, other, late}));
  EXPECT_EQ(found(minute(10), minute(30)), (Numbers{manual, early, other})) << "the end isn't within";
  EXPECT_EQ(found(minute(11), ""), (Numbers{manual, other, late}));
  EXPECT_EQ(found("2026-03-02T07:10:00+01:00", "2026-03-02T07:11:00+01:00"), (Numbers{manual, early}));
  EXPECT_EQ(found("2026-03-03", ""), Numbers{});
  EXPECT_EQ(found("", "2026-03-01"), Numbers{});
  EXPECT_EQ(found("", "", "BD/S1"), (Numbers{early, late}));
  EXPECT_EQ(found(minute(11), "", "BD/S1"), Numbers{late});
  EXPECT_EQ(found("", "", "XX/S1"), Numbers{});
  add(correction_of(ledger_, other, "results.seam", "S1"));
  EXPECT_EQ(found("", "", "BD/S1"), (Numbers{early, other, late})) << "as it was corrected";
  EXPECT_EQ(found("", "", "BD/S2"), Numbers{});
}

TEST_F(HistoryTest, a_range_that_can_not_be_is_refused) {
  RecordRange range;
  EXPECT_THROW(range.set_times("2026-13-01", ""), InputError);
  EXPECT_THROW(range.set_times("", "noon"), InputError);
  EXPECT_THROW(range.set_times("2026-03-02", "2026-03-01"), InputError);
  for (const char* seam : {"", "S1", "/S1", "BD/"}) EXPECT_THROW(range.set_seam(seam), InputError) << seam;
}
