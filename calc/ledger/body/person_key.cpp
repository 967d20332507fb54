#include "ledger/body/person_key.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"

namespace seamtakt {

namespace {

bool is_void(LedgerBackend& backend, std::uint64_t seq) {
  const auto later = backend.find("ref", std::to_string(seq));
  bool found = false;
  backend.each_record_of(
      later, [&](const LedgerRowView& row) { found = found || row.kind == record_kind::void_record; });
  return found;
}

}  // namespace

std::string person_key_text(const std::string& store_id, const std::string& key_id,
                            const std::string& person) {
  return "seamtakt-person/1\n" + store_id + "\n" + key_id + "\n" + person + "\n";
}

std::vector<std::pair<std::string, std::string>> person_key_members(const SigningKey& key,
                                                                    const std::string& store_id,
                                                                    const std::string& person) {
  const std::string id = key.public_key().id();
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("key_id", id).member("public_key", key.public_key().pem());
  json.member("proof", hex(key.sign(person_key_text(store_id, id, person))));
  json.end_object();
  return {{"results", json.take()}};
}

bool person_key_holds(const JsonNode& body, const std::string& store_id) {
  try {
    const PublicKey key = PublicKey::from_pem(body_text(body, "results.public_key"), "person");
    const auto proof = bytes_from_hex(body_text(body, "results.proof"));
    return proof && key.id() == body_text(body, "results.key_id") &&
           key.verifies(person_key_text(store_id, key.id(), body_text(body, "who")), *proof);
  } catch (const InputError&) {
    return false;
  }
}

std::string owner_of_key(LedgerBackend& backend, const std::string& key_id) {
  const auto numbers = backend.find(person_key_topic, key_id);
  std::string bound, first;
  backend.each_record_of(numbers, [&](const LedgerRowView& row) {
    if (row.kind == record_kind::person && bound.empty()) bound = body_text(body_of(row), "who");
  });
  if (!bound.empty()) return bound;
  for (const std::uint64_t seq : numbers) {
    if (is_void(backend, seq)) continue;
    const auto rows = backend.records(seq, 1);
    if (!rows.empty() && rows[0].kind == record_kind::signoff) return body_text(body_of(rows[0]), "who");
  }
  return {};
}

void check_key_owner(const Ledger& ledger, const std::string& key_id, const std::string& person) {
  const std::string owner = owner_of_key(ledger.backend(), key_id);
  if (owner.empty() || owner == person) return;
  throw InputError("--who", "another name than the key's"_word,
                   Sentence("ledger.person.key-of"_key, {{"who", printable(ledger.person_name(owner), 60)}}));
}

}  // namespace seamtakt
