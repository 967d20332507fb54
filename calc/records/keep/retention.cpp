#include "records/keep/retention.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "ledger/body/record_text.hpp"
#include "records/keep/unit_records.hpp"

namespace seamtakt {

namespace {

constexpr const char *topic = "retention", *unit_topic = "retention_unit";
constexpr const char* action_path = "results.action";
constexpr std::string_view retain = "retain", hold = "hold", unhold = "unhold";

LedgerEntry statement(const Ledger& ledger, const RetentionScope& scope, std::string_view action,
                      const std::string& until = {}) {
  LedgerEntry entry{record_kind::retention, {}, {}, {{topic, ""}}};
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).member("action", action);
  if (scope.seq != 0) {
    entry.ref = ledger.record(scope.seq).seq;
  } else {
    check_record_text("--unit", scope.unit_serial, longest_id);
    if (ledger.backend().find("unit", scope.unit_serial).empty())
      throw InputError("--unit", "\"" + printable(scope.unit_serial, 60) + "\"",
                       "a unit that the store has records of"_word);
    json.member("unit_serial", scope.unit_serial);
    entry.lookups.emplace_back(unit_topic, scope.unit_serial);
  }
  if (!until.empty()) json.member("until", until);
  json.end_object();
  entry.members.emplace_back("results", json.take());
  return entry;
}

/// The statement that lifts a hold; 0: none that counts.
std::uint64_t lifted_by(RecordHistory& history, std::uint64_t hold_seq) {
  const std::vector<std::uint64_t> later = history.changes_of(hold_seq).others;
  for (const std::uint64_t seq : later)
    if (history.record(seq).kind == record_kind::retention && !history.is_void(seq) &&
        body_text(body_of(history.record(seq)), action_path) == unhold)
      return seq;
  return 0;
}

void merge(const Retention& from, Retention& into) {
  into.until = std::max(into.until, from.until);
  for (const std::uint64_t seq : from.holds)
    if (std::find(into.holds.begin(), into.holds.end(), seq) == into.holds.end()) into.holds.push_back(seq);
}

}  // namespace

LedgerEntry retain_entry(const Ledger& ledger, const RetentionScope& scope, const std::string& until) {
  check_date(until, "--until");
  return statement(ledger, scope, retain, until);
}

LedgerEntry hold_entry(const Ledger& ledger, const RetentionScope& scope) {
  return statement(ledger, scope, hold);
}

LedgerEntry unhold_entry(const Ledger& ledger, std::uint64_t hold_seq) {
  RecordHistory history(ledger);
  const LedgerRow& row = history.record(hold_seq);
  const std::string where = "record " + std::to_string(hold_seq);
  if (row.kind != record_kind::retention || body_text(body_of(row), action_path) != hold)
    throw InputError(where, kind_sentence(row), "a legal hold (ledger hold)"_word);
  if (history.is_void(hold_seq))
    throw InputError(where, "a void record"_word, "a legal hold that stands"_word);
  if (const std::uint64_t lifted = lifted_by(history, hold_seq); lifted != 0)
    throw InputError(where, Sentence("ledger.hold.lifted"_key, {{"record", lifted}}),
                     "a legal hold that stands"_word);
  return statement(ledger, {hold_seq, {}}, unhold);
}

void Retentions::add_statement(std::uint64_t seq, Retention& retention) {
  if (history_.record(seq).kind != record_kind::retention || history_.is_void(seq)) return;
  const JsonNode body = body_of(history_.record(seq));
  const std::string action = body_text(body, action_path);
  if (action == retain) retention.until = body_text(body, "results.until");  // in order: the newest counts
  if (action == hold && lifted_by(history_, seq) == 0) retention.holds.push_back(seq);
}

const Retention& Retentions::of_unit(const std::string& unit_serial) {
  const auto [at, is_new] = units_.try_emplace(unit_serial);
  if (!is_new) return at->second;
  const auto numbers = history_.ledger().backend().find(unit_topic, unit_serial);
  history_.load(numbers);
  for (const std::uint64_t seq : numbers) add_statement(seq, at->second);
  return at->second;
}

Retention Retentions::of(std::uint64_t seq) {
  if (!has_any_) has_any_ = !history_.ledger().backend().find(topic, "").empty();
  Retention retention;
  if (!*has_any_) return retention;
  const std::vector<std::uint64_t> later = history_.changes_of(seq).others;
  for (const std::uint64_t number : later) add_statement(number, retention);
  if (const std::string unit = unit_of_record(history_, seq); !unit.empty()) merge(of_unit(unit), retention);
  const JsonNode body = body_of(history_.record(seq));
  const JsonNode* ref = body.find("ref");
  if (ref != nullptr && ref->is_integer && ref->number >= 1 && ref->number < static_cast<double>(seq))
    merge(of(static_cast<std::uint64_t>(ref->number)), retention);
  return retention;
}

}  // namespace seamtakt
