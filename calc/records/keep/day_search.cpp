#include "records/keep/day_search.hpp"

#include <algorithm>
#include <limits>
#include <map>

#include "base/time/log_time.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/store/day_lookup.hpp"
#include "records/keep/time_span.hpp"

namespace seamtakt {

namespace {

using Numbers = std::vector<std::uint64_t>;

constexpr std::size_t most_begins = 1000;        // programs take turns a few times; each is read back from
constexpr std::uint64_t worth_of_the_store = 8;  // an eighth of it is read as fast as all in order

void sort_once(Numbers& numbers) {
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
}

/// The text between the quotes, where a member is a text without escapes.
std::string_view text_without_escapes(const std::vector<CanonicalMember>& members, std::string_view key) {
  const std::string_view text = member_text(members, key);
  return text.size() >= 2 && text.front() == '"' ? text.substr(1, text.size() - 2) : std::string_view();
}

/// Looks at a body without making a tree of it. False only where it is certainly outside the range.
class RangeLook {
 public:
  explicit RangeLook(const RecordRange& range) : range_(range) {}

  bool may_meet(std::string_view body) {
    if (!scan_canonical_object(body, members_)) return true;
    const std::string_view stored = text_without_escapes(members_, "t");
    if (!scan_canonical_object(member_text(members_, "results"), members_)) return true;
    for (const auto& [wanted, key] :
         {std::pair(&range_.weldment, "weldment"), std::pair(&range_.seam, "seam")})
      if (const auto text = text_without_escapes(members_, key);
          !wanted->empty() && text.find('\\') == std::string_view::npos && text != *wanted)
        return false;
    for (const std::string_view text :
         {text_without_escapes(members_, "started"), text_without_escapes(members_, "date"), stored})
      if (span_of(text)) return range_.has(text);
    return true;
  }

 private:
  const RecordRange& range_;
  std::vector<CanonicalMember> members_;
};

/// What is judged by its time, and what a correction is about: collected as records are seen.
class Candidates {
 public:
  explicit Candidates(const RecordRange& range) : look_(range) {}

  void see(const LedgerRowView& row) {
    if (row.kind == record_kind::correction) {
      const JsonNode body = body_of(row);
      if (const JsonNode* ref = body.find("ref"); ref != nullptr && ref->is_integer && ref->number >= 1)
        numbers_.push_back(static_cast<std::uint64_t>(ref->number));
    } else if (has_day(row.kind) && look_.may_meet(row.body)) {
      numbers_.push_back(row.seq);
    }
  }
  Numbers take() {
    sort_once(numbers_);
    return std::move(numbers_);
  }

 private:
  RangeLook look_;
  Numbers numbers_;
};

std::string day_text(std::int64_t ns) {
  return utc_text_of_ns(std::max<std::int64_t>(ns, 0)).substr(0, 10);
}

/// By the lookups alone; empty where they are more than `most`.
std::optional<Numbers> numbers_of_days(LedgerBackend& backend, const RecordRange& range, std::uint64_t most) {
  const std::string last_day = range.to_ns ? day_text(*range.to_ns) : "~";
  LookupRow last{day_topic, range.from_ns ? day_text(*range.from_ns) : "", 0};
  Numbers numbers;
  for (bool goes_on = true; goes_on;) {
    std::size_t rows = 0;
    const LookupRow after = last;
    backend.each_lookup(after, page_rows,
                        [&](std::string_view topic, std::string_view key, std::uint64_t seq) {
                          ++rows;
                          goes_on = goes_on && topic == day_topic && key <= last_day;
                          if (!goes_on) return;
                          numbers.push_back(seq);
                          last.key = key;
                          last.seq = seq;
                        });
    goes_on = goes_on && rows == page_rows;
    if (numbers.size() > most) return std::nullopt;
  }
  sort_once(numbers);
  return numbers;
}

/// Those before `end` that should tell their day and don't, back to the last one that does.
void see_without_days(LedgerBackend& backend, std::uint64_t end, Candidates& candidates) {
  each_record_back(backend, end, [&](const LedgerRow& row) {
    if (!has_day(row.kind)) return true;
    if (tells_day(row.body)) return false;
    candidates.see(row);
    return true;
  });
}

/// When a record was recorded, asked for a few of them.
class RecordedTimes {
 public:
  explicit RecordedTimes(LedgerBackend& backend) : backend_(backend) {}

  /// The first record of 1..last at or after the time; last + 1: none.
  std::uint64_t first_from(std::int64_t second, std::uint64_t last) {
    std::uint64_t low = 1, high = last + 1;
    while (low < high) {
      const std::uint64_t middle = low + (high - low) / 2;
      if (at(middle) >= second)
        high = middle;
      else
        low = middle + 1;
    }
    return low;
  }
  /// Whether those asked for are in order, within a tolerance.
  bool are_in_order(std::int64_t tolerance_s) const {
    if (!are_times_) return false;
    std::int64_t latest = std::numeric_limits<std::int64_t>::min() + tolerance_s;
    for (const auto& [seq, time] : seen_) {
      latest = std::max(latest, time);
      if (time < latest - tolerance_s) return false;
    }
    return true;
  }

 private:
  std::int64_t at(std::uint64_t seq) {
    const auto [found, is_new] = seen_.try_emplace(seq, 0);
    if (!is_new) return found->second;
    const auto rows = backend_.records(seq, 1);
    const auto time = rows.empty() ? std::nullopt : utc_seconds(body_text(body_of(rows[0]), "t"));
    are_times_ = are_times_ && time.has_value();
    return found->second = time.value_or(0);
  }

  LedgerBackend& backend_;
  std::map<std::uint64_t, std::int64_t> seen_;
  bool are_times_ = true;
};

}  // namespace

std::optional<std::vector<std::uint64_t>> records_of_days(const Ledger& ledger, const RecordRange& range) {
  if (!range.from_ns && !range.to_ns) return std::nullopt;
  LedgerBackend& backend = ledger.backend();
  const std::uint64_t last = backend.snapshot().last_seq;
  const auto of_days = numbers_of_days(backend, range, last / worth_of_the_store);
  const auto begins = backend.find(days_begin_topic, "");
  if (!of_days || begins.size() > most_begins) return std::nullopt;
  // A correction of another day may have moved a pass to the seam that is meant.
  RecordRange any_place = range;
  any_place.weldment = any_place.seam = "";
  Candidates candidates(any_place);
  backend.each_record_of(*of_days, [&](const LedgerRowView& row) { candidates.see(row); });
  for (const std::uint64_t begin : begins) see_without_days(backend, begin, candidates);
  see_without_days(backend, last + 1, candidates);
  return candidates.take();
}

std::vector<std::uint64_t> records_that_may_meet(const Ledger& ledger, const RecordRange& range) {
  if (auto of_days = records_of_days(ledger, range)) return std::move(*of_days);
  Candidates candidates(range);
  for (std::uint64_t next = 1, rows = page_rows; rows == page_rows;) {
    rows = 0;
    ledger.backend().each_record(next, page_rows, [&](const LedgerRowView& row) {
      ++rows;
      next = row.seq + 1;
      candidates.see(row);
    });
  }
  return candidates.take();
}

std::optional<RecordStretch> stretch_recorded(const Ledger& ledger, const RecordRange& range) {
  if (!range.from_ns && !range.to_ns) return std::nullopt;
  constexpr std::int64_t second_ns = 1'000'000'000, guard_s = 86'400;
  const std::uint64_t last = ledger.backend().snapshot().last_seq;
  RecordedTimes times(ledger.backend());
  RecordStretch stretch{1, last + 1};
  if (range.from_ns) stretch.first = times.first_from(*range.from_ns / second_ns - guard_s, last);
  if (range.to_ns) stretch.end = times.first_from(*range.to_ns / second_ns + guard_s, last);
  const bool is_much = stretch.end > stretch.first + last / worth_of_the_store;
  if (is_much || !times.are_in_order(guard_s)) return std::nullopt;
  stretch.end = std::max(stretch.end, stretch.first);
  return stretch;
}

}  // namespace seamtakt
