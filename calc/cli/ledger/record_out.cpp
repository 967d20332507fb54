#include "cli/ledger/record_out.hpp"

#include "ledger/body/canonical_json.hpp"
#include "records/keep/record_changes.hpp"

namespace seamtakt::cli {

void write_numbers(JsonWriter& json, const char* key, const std::vector<std::uint64_t>& numbers) {
  json.key(key).begin_array(JsonWriter::Layout::compact);
  for (const std::uint64_t number : numbers) json.value(number);
  json.end_array();
}

void write_record_members(const Ledger& ledger, const LedgerRow& row, const JsonNode& body,
                          JsonWriter& json) {
  json.member("seq", row.seq).member("kind", row.kind).member("leaf", hex(row.leaf));
  json.member("who", ledger.person_name(body_text(body, "who"))).member("who_sha256", body_text(body, "who"));
  for (const auto& [key, value] : body.members)
    if (key != "seq" && key != "kind" && key != "who" && key != "leaf" && key != "who_sha256")
      json.key(key).raw(canonical_json(value));
  const RecordChanges changes = changes_of(ledger, row.seq);
  write_numbers(json, "corrected_by", changes.corrections);
  write_numbers(json, "voided_by", changes.voids);
  write_numbers(json, "signed_off_by", changes.signoffs);
  write_numbers(json, "nonconformances", changes.nonconformances);
  write_numbers(json, "dispositions", changes.dispositions);
  write_numbers(json, "judged_again_by", changes.judgements);
}

void write_retention(const Retention& retention, JsonWriter& json) {
  json.key("retain_until");
  retention.until.empty() ? json.null() : json.value(retention.until);
  write_numbers(json, "holds", retention.holds);
}

}  // namespace seamtakt::cli
