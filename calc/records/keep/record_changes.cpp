#include "records/keep/record_changes.hpp"

#include <set>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "ledger/body/canonical_json.hpp"
#include "records/keep/correctable.hpp"
#include "records/keep/record_history.hpp"
#include "records/keep/stored_parts.hpp"

namespace seamtakt {

namespace {

std::string number_name(const LedgerRow& row) {
  return "record " + std::to_string(row.seq);
}

bool holds_key(const std::string& kind) {
  return kind == record_kind::genesis || kind == record_kind::key || kind == record_kind::key_revoke ||
         kind == record_kind::person;
}

}  // namespace

Sentence kind_sentence(const LedgerRow& row) {
  return Sentence("ledger.record.kind"_key, {{"kind", row.kind}});
}

RecordChanges changes_of(const Ledger& ledger, std::uint64_t seq) {
  return RecordHistory(ledger).changes_of(seq);
}

CorrectedValue parse_corrected_value(const std::string& text) {
  const auto equals = text.find('=');
  if (equals == 0 || equals == std::string::npos)
    throw InputError("--set", "\"" + printable(text, 60) + "\"",
                     "MEMBER=VALUE, such as results.seam=S04"_word);
  return {text.substr(0, equals), text.substr(equals + 1)};
}

namespace {

/// The value's JSON text, checked against the member's type and range.
std::string checked_value(const LedgerRow& old, const std::string& path, const std::string& text,
                          const PersonDigest& person) {
  for (const CorrectableMember& member : correctable_members(old.kind)) {
    if (path != member.path) continue;
    const std::string value = correctable_value(member, text);
    return member.type == CorrectableMember::Type::person
               ? json_string(person(parse_json(value, "--set").string))
               : value;
  }
  refuse_member(old.kind, path);
}

/// A calibration that is due before it was made says nothing.
void check_dates(const JsonNode& body) {
  const std::string date = body_text(body, "results.date"), due = body_text(body, "results.due");
  if (due < date)
    throw InputError("--set",
                     Sentence("ledger.set.due"_key, {{"due", printable(due)}, {"date", printable(date)}}),
                     "a date after it"_word);
}

}  // namespace

LedgerEntry correction_entry(const Ledger& ledger, const LedgerRow& old,
                             const std::vector<CorrectedValue>& values, const PersonDigest& person) {
  if (correctable_members(old.kind).empty())
    throw InputError(number_name(old), kind_sentence(old),
                     "a pass, a manual seam or a calibration (make others void and write them anew)"_word);
  if (values.empty())
    throw InputError("--set", "nothing"_word, "MEMBER=VALUE, such as results.seam=S04"_word);
  const JsonNode body = corrected_body(ledger, old);
  JsonNode now = body;
  std::set<std::string> seen;
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).key("changes").begin_array();
  for (const auto& [path, text] : values) {
    const std::string value = checked_value(old, path, text, person);
    const JsonNode* before = body_member(body, path);
    if (before == nullptr)
      throw InputError("--set", "\"" + printable(path, 60) + "\"",
                       Sentence("ledger.set.member-of"_key, {{"record", old.seq}}));
    if (!seen.insert(path).second)
      throw InputError("--set", Sentence("ledger.set.twice"_key, {{"member", printable(path, 60)}}),
                       "each member once"_word);
    if (canonical_json(*before) == value)
      throw InputError("--set", Sentence("ledger.set.unchanged"_key, {{"member", printable(path, 60)}}),
                       "another value than the record has"_word);
    *const_cast<JsonNode*>(body_member(now, path)) = parse_json(value, "--set");
    json.begin_object()
        .member("member", path)
        .key("old")
        .raw(canonical_json(*before))
        .key("new")
        .raw(value)
        .end_object();
  }
  json.end_array().end_object();
  if (old.kind == record_kind::calibration) check_dates(now);
  LedgerEntry entry{record_kind::correction, old.seq, {{"results", json.take()}}, {}};
  for (const JsonNode* each : {&body, static_cast<const JsonNode*>(&now)})
    if (const std::string unit = body_text(*each, "results.unit_serial");
        !unit.empty() && (entry.lookups.empty() || entry.lookups[0].second != unit))
      entry.lookups.emplace_back("unit", unit);
  // Found by the pass that it is now (records_of_pass).
  const bool is_weld = old.kind == record_kind::pass || old.kind == record_kind::manual;
  if (is_weld && !entry.lookups.empty() && lookup_key_of(now) != lookup_key_of(body))
    entry.lookups.emplace_back("pass", lookup_key_of(now));
  return entry;
}

LedgerEntry void_entry(const Ledger& ledger, const LedgerRow& old) {
  if (holds_key(old.kind) || old.kind == record_kind::void_record)
    throw InputError(number_name(old), kind_sentence(old), "one that may be made void"_word);
  if (changes_of(ledger, old.seq).is_void())
    throw InputError(number_name(old), "a void record"_word, "one that still counts"_word);
  LedgerEntry entry{record_kind::void_record, old.seq, {}, {}};
  if (const std::string unit = body_text(body_of(old), "results.unit_serial"); !unit.empty())
    entry.lookups.emplace_back("unit", unit);
  return entry;
}

JsonNode corrected_body(const Ledger& ledger, const LedgerRow& row) {
  return RecordHistory(ledger).corrected_body(row.seq);
}

}  // namespace seamtakt
