#include "ledger/bundle/bundle_sides.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "ledger/store/raw_chunks.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t digest_digits = 2 * sizeof(Digest);

bool is_lower_hex_digit(char c) {
  return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'f');
}

}  // namespace

void BundleSides::take_person(const JsonNode& person, const std::string& place) {
  PersonRow row{body_text(person, "sha256"), body_text(person, "salt"), body_text(person, "name")};
  const auto salt = bytes_from_hex(row.salt);
  if (!salt || salt->size() != salt_bytes || hex(Sha256().add(*salt).add(row.name).take()) != row.sha256)
    throw InputError(place, "a name that isn't the one of its digest"_word, "a name as it was exported"_word);
  persons_.push_back(std::move(row));
  person_places_.push_back(place);
}

void BundleSides::take_raw(const JsonNode& raw, const std::string& place) {
  const auto digests = bytes_from_hex(body_text(raw, "digests"));
  if (!digests || digests->size() % sizeof(Digest) != 0)
    throw InputError(place, "pieces of a raw log that aren't digests"_word,
                     "pieces as they were exported"_word);
  chunks_.push_back({body_text(raw, "sha256"), *digests});
  chunk_places_.push_back(place);
}

void BundleSides::note_references(const LedgerRow& row, const std::vector<CanonicalMember>& members) {
  if (const std::string_view who = member_text(members, "who"); who.size() > 2)
    if (const auto name = who.substr(1, who.size() - 2); !persons_named_.contains(name))
      persons_named_.emplace(name);
  // Passes are nearly all records, and name nobody else.
  if (row.kind != record_kind::pass) note_digests(row.body);
  if (row.kind == record_kind::ingest) {
    const JsonNode body = body_of(row);
    if (const JsonNode* raw = body.find("raw"))
      for (const JsonNode& log : raw->elements)
        logs_named_.try_emplace(body_text(log, "sha256"), body_text(log, "chunk_root"));
  }
}

/// Any text that is a digest, whichever member it is: welders, corrected values, owners of keys.
void BundleSides::note_digests(std::string_view body) {
  for (std::size_t at = body.find('"'); at != std::string_view::npos; at = body.find('"', at + 1)) {
    const std::string_view text = body.substr(at + 1, digest_digits);
    if (text.size() == digest_digits && body.substr(at + 1 + digest_digits).starts_with('"') &&
        std::all_of(text.begin(), text.end(), is_lower_hex_digit))
      persons_named_.emplace(text);
  }
}

bool BundleSides::names(const PersonRow& person) const {
  return persons_named_.contains(person.sha256);
}

void BundleSides::check() const {
  for (std::size_t i = 0; i < persons_.size(); ++i)
    if (!names(persons_[i]))
      throw InputError(person_places_[i], "a name that no record refers to"_word,
                       "names of the records' persons"_word);
  for (std::size_t i = 0; i < chunks_.size(); ++i) {
    const auto log = logs_named_.find(chunks_[i].sha256);
    if (log == logs_named_.end())
      throw InputError(chunk_places_[i], "pieces of a raw log that no record names"_word,
                       "pieces of the records' logs"_word);
    if (chunk_root(chunks_[i].digests) != log->second)
      throw InputError(chunk_places_[i], "pieces of a raw log that aren't those that were read"_word,
                       "pieces as they were exported"_word);
  }
}

}  // namespace seamtakt
