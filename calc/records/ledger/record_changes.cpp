#include "records/ledger/record_changes.hpp"

#include "base/error.hpp"
#include "base/json_writer.hpp"
#include "records/ledger/canonical_json.hpp"
#include "records/ledger/record_history.hpp"

namespace seamtakt {

namespace {

std::string number_name(const LedgerRow& row) {
  return "record " + std::to_string(row.seq);
}

bool holds_key(const std::string& kind) {
  return kind == record_kind::genesis || kind == record_kind::key || kind == record_kind::key_revoke;
}

}  // namespace

RecordChanges changes_of(const Ledger& ledger, std::uint64_t seq) {
  return RecordHistory(ledger).changes_of(seq);
}

CorrectedValue parse_corrected_value(const std::string& text) {
  const auto equals = text.find('=');
  if (equals == 0 || equals == std::string::npos)
    throw InputError("--set", "\"" + printable(text, 60) + "\"", "MEMBER=VALUE, such as results.seam=S04");
  const std::string value = text.substr(equals + 1);
  try {
    return {text.substr(0, equals), canonical_json(parse_json(value, "--set"))};
  } catch (const InputError&) {
    return {text.substr(0, equals), json_string(value)};
  }
}

LedgerEntry correction_entry(const LedgerRow& old, const std::vector<CorrectedValue>& values) {
  if (holds_key(old.kind))
    throw InputError(number_name(old), "a record of kind " + old.kind, "one that may be corrected");
  if (values.empty()) throw InputError("--set", "nothing", "MEMBER=VALUE, such as results.seam=S04");
  const JsonNode body = body_of(old);
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact).key("changes").begin_array();
  for (const auto& [path, text] : values) {
    const JsonNode* before = body_member(body, path);
    if (before == nullptr || !path.starts_with("results."))
      throw InputError("--set", "\"" + printable(path, 60) + "\"",
                       "a member of results of " + number_name(old));
    if (canonical_json(*before) == text)
      throw InputError("--set", printable(path, 60) + " unchanged", "another value than the record has");
    json.begin_object()
        .member("member", path)
        .key("old")
        .raw(canonical_json(*before))
        .key("new")
        .raw(text)
        .end_object();
  }
  json.end_array().end_object();
  LedgerEntry entry{record_kind::correction, old.seq, {{"results", json.take()}}, {}};
  if (const std::string unit = body_text(body, "results.unit_serial"); !unit.empty())
    entry.lookups.emplace_back("unit", unit);
  return entry;
}

LedgerEntry void_entry(const Ledger& ledger, const LedgerRow& old) {
  if (holds_key(old.kind) || old.kind == record_kind::void_record)
    throw InputError(number_name(old), "a record of kind " + old.kind, "one that may be made void");
  if (changes_of(ledger, old.seq).is_void())
    throw InputError(number_name(old), "a void record", "one that still counts");
  LedgerEntry entry{record_kind::void_record, old.seq, {}, {}};
  if (const std::string unit = body_text(body_of(old), "results.unit_serial"); !unit.empty())
    entry.lookups.emplace_back("unit", unit);
  return entry;
}

JsonNode corrected_body(const Ledger& ledger, const LedgerRow& row) {
  return RecordHistory(ledger).corrected_body(row.seq);
}

}  // namespace seamtakt
