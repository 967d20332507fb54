// Looking for a day: the same as by reading all records, also where programs before that wrote no days, and
// without reading the other days.
#include "records/keep/day_search.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "ledger/store/day_lookup.hpp"
#include "ledger/store/sqlite.hpp"
#include "records/keep/record_browse.hpp"
#include "store_fixture.hpp"
#include "wrapped_backend.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

using Numbers = std::vector<std::uint64_t>;

/// Counts the records that it hands out.
class ReadRecords : public WrappedBackend {
 public:
  ReadRecords(std::unique_ptr<LedgerBackend> inner, std::size_t& read)
      : WrappedBackend(std::move(inner)), read_(read) {}
  void each_record(std::uint64_t first, std::size_t limit, const RecordVisitor& visit) override {
    WrappedBackend::each_record(first, limit, counted(visit));
  }
  void each_record_of(std::span<const std::uint64_t> numbers, const RecordVisitor& visit) override {
    WrappedBackend::each_record_of(numbers, counted(visit));
  }

 private:
  RecordVisitor counted(const RecordVisitor& visit) {
    return [this, &visit](const LedgerRowView& row) {
      ++read_;
      visit(row);
    };
  }
  std::size_t& read_;
};

std::string day(int number) {
  return minute(number * 24 * 60).substr(0, 10);
}

class DaySearch : public testing::Test {
 protected:
  void write(const std::function<void(LedgerBatch&)>& fill) {
    ledger_.write(keys_.provider(), stamp(at_++), fill);
  }
  std::uint64_t add(const LedgerEntry& entry) {
    std::uint64_t seq = 0;
    write([&](LedgerBatch& batch) { seq = batch.add(entry); });
    return seq;
  }
  static LedgerEntry weld(const char* kind, const std::string& seam, const std::string& time) {
    const std::string key = kind == std::string(record_kind::pass) ? "started" : "date";
    return {kind,
            {},
            {{"results", "{\"unit_serial\":\"U\",\"weldment\":\"BD\",\"seam\":\"" + seam +
                             "\",\"pass\":1,\"" + key + "\":\"" + time + "\"}"}},
            {{"unit", "U"}}};
  }
  /// Passes of so many days, from the first one on, in one commit.
  void weld_days(int first, int days, int a_day) {
    write([&](LedgerBatch& batch) {
      for (int i = 0; i < days * a_day; ++i)
        batch.add(weld(record_kind::pass, "S" + std::to_string(i % 7),
                       minute((first + i / a_day) * 24 * 60 + i % a_day)));
    });
  }
  /// As a program wrote them that knew no days.
  void forget_days(std::uint64_t first, std::uint64_t last) const {
    Sqlite store(uri_.substr(7), Sqlite::Mode::read_write);
    const std::string trigger = store.text("SELECT sql FROM sqlite_schema WHERE name = 'rec_stays'");
    store.run("DROP TRIGGER rec_stays");
    const std::string between = " BETWEEN " + std::to_string(first) + " AND " + std::to_string(last);
    store.run(
        ("UPDATE rec SET body = CAST(replace(body, substr(CAST(body AS TEXT), instr(CAST(body AS TEXT), "
         "',\"day:'), 17), '') AS BLOB) WHERE instr(CAST(body AS TEXT), ',\"day:') > 0 AND seq" +
         between)
            .c_str());
    store.run(("DELETE FROM lookup WHERE topic = 'day' AND seq" + between).c_str());
    store.run(trigger.c_str());
  }
  static RecordRange range_of(const std::string& from, const std::string& to, const std::string& seam = "") {
    RecordRange range;
    range.set_times(from, to);
    if (!seam.empty()) range.set_seam(seam);
    return range;
  }
  /// By reading all of them.
  Numbers all_that_meet(const RecordRange& range) const {
    Numbers numbers;
    RecordHistory history(ledger_);
    for (const LedgerRow& row : ledger_.backend().records(1, 100'000)) {
      if (row.kind != record_kind::pass && row.kind != record_kind::manual) continue;
      const JsonNode body = history.corrected_body(row.seq);
      if (range.has(listed_time(body, RecordTime::welded).text) &&
          (range.seam.empty() || body_text(body, "results.seam") == range.seam))
        numbers.push_back(row.seq);
    }
    return numbers;
  }
  void expect_all_are_found(const RecordRange& range) const {
    const Numbers expected = all_that_meet(range);
    RecordHistory history(ledger_);
    Numbers found, browsed;
    for (const FoundRecord& record : find_records(history, range)) found.push_back(record.seq);
    std::sort(found.begin(), found.end());
    EXPECT_EQ(found, expected);
    RecordFilter filter;
    filter.range = range;
    for (std::uint64_t from = 1; from != 0;) {
      const BrowsedPage page = browse_records(ledger_, filter, from, 5);
      for (const BrowsedRecord& record : page.records) browsed.push_back(record.seq);
      from = page.next;
    }
    EXPECT_EQ(browsed, expected);
  }
  void expect_each_day_is_found(int days) const {
    for (const int i : {-1, 0, 3, 7, days - 1, days}) {
      SCOPED_TRACE(day(i));
      expect_all_are_found(range_of(day(i), day(i)));
      expect_all_are_found(range_of(minute(i * 24 * 60 + 3), minute(i * 24 * 60 + 12), "BD/S2"));
      expect_all_are_found(range_of(day(i), ""));
      expect_all_are_found(range_of("", day(i)));
    }
  }
  std::size_t marks() const { return ledger_.backend().find(days_begin_topic, "").size(); }

  ScratchFolder folder_{ScratchFolder::On::memory};
  std::string uri_ = "sqlite:" + (folder_ / "store.sqlite");
  Ledger ledger_ = Ledger::open(uri_, {StoreOpening::For::writing, true, false});
  KeyRing keys_;
  int at_ = 0;
};

}  // namespace

TEST_F(DaySearch, a_day_is_found_without_reading_the_others) {
  weld_days(0, 30, 100);
  std::size_t read = 0;
  const Ledger counted(std::make_unique<ReadRecords>(open_ledger_backend(uri_, {}), read));
  RecordHistory history(counted);
  EXPECT_EQ(find_records(history, range_of(day(7), day(7))).size(), 100u);
  EXPECT_LT(read, 400u) << "of 3001 records";
  read = 0;
  EXPECT_EQ(stretch_recorded(counted, range_of(day(-5), day(-4)))->end, 1u);
  EXPECT_LT(read, 40u);
}

TEST_F(DaySearch, each_record_is_found_as_it_was_corrected) {
  weld_days(0, 12, 20);
  const std::uint64_t manual = add(weld(record_kind::manual, "M1", day(3))), other = manual - 100;
  add(correction_of(ledger_, manual, "results.date", day(9)));
  add(correction_of(ledger_, other, "results.seam", "S2"));
  const std::uint64_t back = add(correction_of(ledger_, manual, "results.date", day(5)));
  expect_each_day_is_found(12);
  add(void_entry(ledger_, ledger_.record(back)));
  expect_each_day_is_found(12);
  EXPECT_EQ(marks(), 0u);
  EXPECT_TRUE(verified(uri_).trusted);
  EXPECT_LE(second_verdict(uri_.substr(7), {}, folder_), 0);
}

TEST_F(DaySearch, stretches_that_older_programs_wrote_are_read) {
  weld_days(0, 12, 20);  // records 2 to 241
  forget_days(2, 241);
  expect_each_day_is_found(12);
  EXPECT_EQ(marks(), 0u);
  weld_days(4, 8, 20);  // to 401
  EXPECT_EQ(marks(), 1u);
  expect_each_day_is_found(12);
  add(correction_of(ledger_, 300, "results.seam", "S7"));
  weld_days(3, 8, 20);  // 403 to 562
  EXPECT_EQ(marks(), 1u) << "days are known";
  forget_days(450, 562);
  const std::uint64_t manual = add(weld(record_kind::manual, "M1", day(3)));
  forget_days(manual, manual);
  expect_each_day_is_found(12);
  add(correction_of(ledger_, manual, "results.date", day(7)));
  EXPECT_EQ(marks(), 3u) << "the manual seam's and, since its day was forgotten, its correction's";
  expect_each_day_is_found(12);
}

TEST_F(DaySearch, a_text_in_a_key_is_not_taken_for_a_day) {
  EXPECT_TRUE(tells_day(R"({"keys":["day:2026-03-02"]})"));
  EXPECT_TRUE(tells_day(R"({"keys":["unit:U","day:2026-03-02"]})"));
  EXPECT_FALSE(tells_day(R"({"keys":["unit:,\"day:2026-03-02"]})"));
  EXPECT_FALSE(tells_day(R"({"keys":["unit:U"],"why":"day:2026-03-02"})"));
  EXPECT_FALSE(tells_day("no record"));
}

TEST_F(DaySearch, where_times_are_not_in_order_all_records_are_read) {
  // No head is more than 5 min before the one before it, and yet the clock goes back.
  at_ = 4 * 24 * 60;
  for (int i = 0; i < 1200; ++i, at_ -= 5) add({record_kind::note, {}, {}, {}});
  EXPECT_FALSE(stretch_recorded(ledger_, range_of(day(1), day(1))));
}
