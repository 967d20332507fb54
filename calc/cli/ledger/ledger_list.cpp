#include <algorithm>
#include <span>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/text/text_table.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/record_out.hpp"
#include "cli/records/shown_record.hpp"
#include "ledger/store/day_lookup.hpp"
#include "records/keep/day_search.hpp"
#include "records/keep/record_history.hpp"
#include "records/keep/record_search.hpp"
#include "records/keep/retention.hpp"
#include "records/keep/unit_records.hpp"

namespace seamtakt::cli {

namespace {

/// A record as it is listed: by what holds now.
struct Listed {
  const LedgerRow& row;
  const JsonNode& body;
  const ListedTime& time;
  const Retention& retention;
};

/// Which records are asked for.
class Wanted {
 public:
  explicit Wanted(const LedgerOptions& given)
      : given_(given), time_(given.list_time == recorded_time ? RecordTime::recorded : RecordTime::welded) {
    times_.set_times(given.from_date, given.to_date);
    for (const auto& [option, date] :
         {std::pair("--retain-from", &given.retain_from), std::pair("--retain-to", &given.retain_to)})
      if (!date->empty()) check_date(*date, option);
  }

  bool may_be(const LedgerRow& row) const { return given_.kind.empty() || row.kind == given_.kind; }

  /// Those that may be wanted by their time, rising; empty: all of the store is to be looked at.
  std::optional<std::vector<std::uint64_t>> numbers(const Ledger& ledger) const {
    std::vector<std::uint64_t> found;
    if (time_ == RecordTime::welded) {
      auto of_days = records_of_days(ledger, times_);
      if (!of_days) return std::nullopt;
      found = std::move(*of_days);
      if (has_day(given_.kind) && given_.kind != record_kind::correction) return found;
    }
    const auto recorded = stretch_recorded(ledger, times_);
    if (!recorded) return std::nullopt;
    for (std::uint64_t seq = recorded->first; seq < recorded->end; ++seq) found.push_back(seq);
    std::sort(found.begin(), found.end());
    found.erase(std::unique(found.begin(), found.end()), found.end());
    return found;
  }

  /// Calls `each` where the record is wanted; tells whether it was.
  bool take(RecordHistory& history, Retentions& retentions, const LedgerRow& row,
            const std::function<void(const Listed&)>& each) const {
    const JsonNode body = history.corrected_body(row.seq);
    const ListedTime time = listed_time(body, time_);
    if (!is("results.seam", given_.seam, body) || !is("results.verdict", given_.verdict, body) ||
        !times_.has(time.text))
      return false;
    const Retention retention = retentions.of(row.seq);
    if (!is_wanted(retention)) return false;
    each({row, body, time, retention});
    return true;
  }

 private:
  static bool is(const char* path, const std::string& wanted, const JsonNode& body) {
    return wanted.empty() || body_text(body, path) == wanted;
  }
  bool is_wanted(const Retention& retention) const {
    if (given_.held && retention.holds.empty()) return false;
    const bool by_date = !given_.retain_from.empty() || !given_.retain_to.empty();
    return !by_date || (!retention.until.empty() && retention.until >= given_.retain_from &&
                        (given_.retain_to.empty() || retention.until <= given_.retain_to));
  }

  const LedgerOptions& given_;
  RecordTime time_;
  RecordRange times_;
};

/// Calls `each` with the records asked for, in order.
void each_wanted(const Ledger& ledger, const LedgerOptions& given,
                 const std::function<void(const Listed&)>& each) {
  const Wanted wanted(given);
  std::uint64_t count = 0;
  const auto goes_on = [&](RecordHistory& history, Retentions& retentions, const LedgerRow& row) {
    if (!wanted.may_be(row) || !wanted.take(history, retentions, row, each)) return true;
    return given.limit == 0 || ++count < given.limit;
  };
  if (!given.unit.empty()) {
    RecordHistory history(ledger);
    Retentions retentions(history);
    for (const std::uint64_t seq : records_of_unit(history, given.unit))
      if (!goes_on(history, retentions, history.record(seq))) return;
    return;
  }
  constexpr std::size_t rows_at_once = 1000;  // with what came after them
  if (const auto numbers = wanted.numbers(ledger)) {
    for (std::span left(*numbers); !left.empty(); left = left.subspan(std::min(rows_at_once, left.size()))) {
      RecordHistory history(ledger);
      Retentions retentions(history);
      const auto part = left.first(std::min(rows_at_once, left.size()));
      history.load(part);
      for (const std::uint64_t seq : part)
        if (!goes_on(history, retentions, history.record(seq))) return;
    }
    return;
  }
  for (std::uint64_t next = 1;;) {
    const auto page = ledger.backend().records(next, rows_at_once);
    RecordHistory history(ledger);
    Retentions retentions(history);
    std::vector<std::uint64_t> numbers;
    for (const LedgerRow& row : page)
      if (wanted.may_be(row)) numbers.push_back(row.seq);
    history.load(numbers);
    for (const LedgerRow& row : page)
      if (!goes_on(history, retentions, row)) return;
    if (page.size() < rows_at_once) return;
    next = page.back().seq + 1;
  }
}

std::string what_of(const JsonNode& body) {
  const std::string seam = body_text(body, "results.seam");
  if (seam.empty()) {
    for (const char* path : {"results.place", "results.instrument", "results.decision", "results.schedule.id",
                             "results.action", "results.authority"})
      if (const std::string text = body_text(body, path); !text.empty()) return text;
    const JsonNode* ref = body.find("ref");
    if (ref == nullptr || !ref->is_integer) return "-";
    return shown_text(Sentence("ledger.record"_key, {{"record", static_cast<std::uint64_t>(ref->number)}}));
  }
  const JsonNode* pass = body_member(body, "results.pass");
  return body_text(body, "results.weldment") + "/" + seam +
         (pass != nullptr && pass->is_integer ? "/" + std::to_string(static_cast<long>(pass->number)) : "");
}

std::string verdict_of(const JsonNode& body) {
  const std::string verdict = body_text(body, "results.verdict");
  return verdict.empty() ? body_text(body, "results.result") : shown_verdict(verdict);
}

std::string since_of(const Ledger& ledger, const Listed& listed) {
  const RecordChanges changes = changes_of(ledger, listed.row.seq);
  std::string text;
  const auto add = [&](const std::string& what) { text += (text.empty() ? "" : ", ") + what; };
  if (changes.is_void())
    add(shown_word("void"_word));
  else if (!changes.corrections.empty())
    add(shown_word("corrected"_word));
  if (!changes.judgements.empty()) add(shown_word("judged again"_word));
  if (!changes.signoffs.empty()) add(shown_word("signed off"_word));
  if (!listed.retention.until.empty())
    add(shown_text(Sentence("cli.list.retained"_key, {{"date", listed.retention.until}})));
  if (!listed.retention.holds.empty()) add(shown_word("legal hold"_word));
  return text;
}

void list_table(const Ledger& ledger, const LedgerOptions& given, Result& result) {
  const Word time =
      given.list_time == recorded_time ? "Recorded (UTC)"_word : "Welded, else recorded (UTC)"_word;
  TextTable table({{"Record"_word, "", false, 0},
                   {"Kind"_word, "", true, 0},
                   {time, "", true, 0},
                   {"Unit"_word, "", true, 0},
                   {"What"_word, "", true, 0},
                   {"Verdict"_word, "", true, 0},
                   {"Heat input"_word, "kJ/mm", false, 4},
                   {"Who"_word, "", true, 0},
                   {"Since"_word, "", true, 0}},
                  output_view());
  each_wanted(ledger, given, [&](const Listed& listed) {
    const JsonNode& body = listed.body;
    table.cell(listed.row.seq)
        .cell(listed.row.kind)
        .cell(listed.time.text)
        .cell(body_text(body, "results.unit_serial"));
    table.cell(what_of(body)).cell(verdict_of(body)).cell(body_number(body, "results.heat_input_kJ_mm"));
    table.cell(ledger.person_name(body_text(body, "who"))).cell(since_of(ledger, listed));
  });
  result.output = table.rows() == 0 ? shown_word("No records."_word) + "\n" : table.text();
}

void write_listed(const Ledger& ledger, const Listed& listed, JsonWriter& json) {
  json.begin_object(JsonWriter::Layout::compact);
  write_record_members(ledger, listed.row, listed.body, json);
  json.member("time", listed.time.text)
      .member("time_of", listed.time.is_welded ? welded_time : recorded_time);
  write_retention(listed.retention, json);
  json.end_object();
}

}  // namespace

void ledger_list(const LedgerOptions& given, Result& result) {
  if (!given.kind.empty() && !is_record_kind(given.kind))
    throw InputError("--kind", "\"" + printable(given.kind, 40) + "\"",
                     "a kind of record, such as pass, manual, ingest or nonconformance"_word);
  const Ledger ledger = open_for_reading(given);
  if (!given.json) return list_table(ledger, given, result);
  JsonWriter json;
  json.begin_object().key("records").begin_array();
  each_wanted(ledger, given, [&](const Listed& listed) { write_listed(ledger, listed, json); });
  json.end_array().end_object();
  result.output = json.take();
}

}  // namespace seamtakt::cli
