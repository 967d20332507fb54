#include "records/keep/record_browse.hpp"

#include <algorithm>
#include <span>

#include "base/text/comma_list.hpp"
#include "records/keep/day_search.hpp"
#include "records/keep/unit_records.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t rows_at_once = 1000;  // with what came after them

bool is_weld(std::string_view kind) {
  return kind == record_kind::pass || kind == record_kind::manual;
}

/// Values of the carried columns of which `is_meant` takes the name, joined.
template <class IsMeant>
std::string carried_text(const JsonNode& body, const IsMeant& is_meant) {
  std::string text;
  const auto add = [&](const JsonNode& value) {
    if (value.kind == JsonNode::Kind::string) text += (text.empty() ? "" : ", ") + value.string;
  };
  const JsonNode* carried = body_member(body, "results.carried");
  if (carried == nullptr) return text;
  for (const auto& [name, value] : carried->members) {
    if (!is_meant(name)) continue;
    add(value);
    for (const JsonNode& element : value.elements) add(element);
  }
  return text;
}

std::string welder_of(const Ledger& ledger, const JsonNode& body, bool is_manual) {
  if (!is_manual)
    return carried_text(body, [](std::string_view name) { return name == "welder" || name == "operator"; });
  const std::string digest = body_text(body, "results.welder");
  return digest.empty() ? digest : ledger.person_name(digest);
}

BrowsedRecord browsed(RecordHistory& history, std::uint64_t seq) {
  const JsonNode body = history.corrected_body(seq);
  BrowsedRecord record;
  record.seq = seq;
  record.kind = history.record(seq).kind;
  const bool is_manual = record.kind == record_kind::manual;
  record.unit_serial = body_text(body, "results.unit_serial");
  record.weldment = body_text(body, "results.weldment");
  record.seam = body_text(body, "results.seam");
  if (const auto pass = body_number(body, "results.pass")) record.pass = static_cast<int>(*pass);
  record.schedule = body_text(body, "results.schedule");
  record.robot = body_text(body, "results.robot");
  record.welder = welder_of(history.ledger(), body, is_manual);
  record.lot = carried_text(body, [](std::string_view name) { return name.ends_with("lot"); });
  record.time = listed_time(body, RecordTime::welded).text;
  record.heat_input_kJ_mm = body_number(body, "results.heat_input_kJ_mm");
  record.verdict = body_text(body, is_manual ? "results.result" : "results.verdict");
  if (const JsonNode* rules = body_member(body, "results.undecided_by"))
    for (const JsonNode& rule : rules->elements) record.undecided_by.push_back(rule.string);
  record.is_void = history.is_void(seq);
  return record;
}

/// Whether one of the names in a list is the one that is wanted.
bool names(const std::string& listed, const std::string& wanted) {
  bool is_there = false;
  each_of_comma_list(listed, [&](std::string_view name) { is_there = is_there || name == wanted; });
  return is_there;
}

bool meets(const RecordFilter& filter, const BrowsedRecord& record) {
  const auto is = [](const std::string& wanted, const std::string& found) {
    return wanted.empty() || found == wanted;
  };
  return is(filter.unit_serial, record.unit_serial) && is(filter.robot, record.robot) &&
         is(filter.schedule, record.schedule) && is(filter.range.weldment, record.weldment) &&
         is(filter.range.seam, record.seam) &&
         (filter.welder.empty() || names(record.welder, filter.welder)) &&
         (filter.lot.empty() || names(record.lot, filter.lot)) && filter.range.has(record.time);
}

/// A body as it was stored that can't be meant, unless a later record changed it: its text lacks a word.
class WordLook {
 public:
  explicit WordLook(const RecordFilter& filter) {
    for (const std::string* text :
         {&filter.robot, &filter.schedule, &filter.lot, &filter.range.weldment, &filter.range.seam})
      if (!text->empty() && text->find_first_of("\"\\") == std::string::npos) words_.push_back(*text);
  }
  bool may_meet(std::string_view body) const {
    return std::all_of(words_.begin(), words_.end(),
                       [&](const std::string& word) { return body.find(word) != std::string_view::npos; });
  }

 private:
  std::vector<std::string> words_;
};

/// Takes records until the page is full.
class Page {
 public:
  Page(const Ledger& ledger, const RecordFilter& filter, std::size_t rows)
      : ledger_(ledger), filter_(filter), rows_(rows) {}

  /// False: the page is full, and the next one begins with the first record that found no room.
  bool take(const std::vector<std::uint64_t>& numbers) {
    RecordHistory history(ledger_);
    history.load(numbers);
    for (const std::uint64_t seq : numbers) {
      if (!is_weld(history.record(seq).kind)) continue;
      BrowsedRecord record = browsed(history, seq);
      if (!meets(filter_, record)) continue;
      if (page_.records.size() == rows_) {
        page_.next = seq;
        return false;
      }
      page_.records.push_back(std::move(record));
    }
    return true;
  }
  BrowsedPage finish() { return std::move(page_); }

 private:
  const Ledger& ledger_;
  const RecordFilter& filter_;
  std::size_t rows_;
  BrowsedPage page_;
};

/// Of a stretch of the store those that may be meant: by their text, or as a later record is about them.
std::vector<std::uint64_t> candidates(LedgerBackend& backend, const WordLook& look, std::uint64_t& next,
                                      std::size_t& seen) {
  std::vector<std::uint64_t> numbers, others;
  seen = 0;
  backend.each_record(next, rows_at_once, [&](const LedgerRowView& row) {
    ++seen;
    next = row.seq + 1;
    if (is_weld(row.kind)) (look.may_meet(row.body) ? numbers : others).push_back(row.seq);
  });
  if (!others.empty())
    for (const auto& [about, later] : backend.references_to(others)) numbers.push_back(about);
  std::sort(numbers.begin(), numbers.end());
  numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
  return numbers;
}

}  // namespace

BrowsedPage browse_records(const Ledger& ledger, const RecordFilter& filter, std::uint64_t from,
                           std::size_t rows, const std::function<void()>& go_on) {
  Page page(ledger, filter, rows);
  if (!filter.unit_serial.empty()) {
    RecordHistory history(ledger);
    std::vector<std::uint64_t> numbers = records_of_unit(history, filter.unit_serial);
    std::erase_if(numbers, [&](std::uint64_t seq) { return seq < from; });
    page.take(numbers);
    return page.finish();
  }
  if (const auto of_days = records_of_days(ledger, filter.range)) {
    const auto at_from = std::lower_bound(of_days->begin(), of_days->end(), from);
    for (std::span left(at_from, of_days->end()); !left.empty();) {
      if (go_on) go_on();
      const auto part = left.first(std::min(rows_at_once, left.size()));
      if (!page.take({part.begin(), part.end()})) break;
      left = left.subspan(part.size());
    }
    return page.finish();
  }
  const WordLook look(filter);
  std::uint64_t next = std::max<std::uint64_t>(from, 1);
  for (std::size_t seen = rows_at_once; seen == rows_at_once;) {
    if (go_on) go_on();
    if (!page.take(candidates(ledger.backend(), look, next, seen))) break;
  }
  return page.finish();
}

}  // namespace seamtakt
