#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "ledger/body/canonical_json.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

/// What a bundle holds beside its signed records: names of persons, pieces of raw logs. They aren't signed,
/// so only those that the records refer to are accepted: one more line would make a good store untrusted.
class BundleSides {
 public:
  // InputError at `place`: not what its own digest says.
  void take_person(const JsonNode& person, const std::string& place);
  void take_raw(const JsonNode& raw, const std::string& place);
  /// Digests of persons and logs that a record refers to.
  void note_references(const LedgerRow& row, const std::vector<CanonicalMember>& members);
  /// Whether one of those records refers to the person.
  bool names(const PersonRow& person) const;
  /// Once all lines are taken. InputError at the line of one that no record refers to.
  void check() const;

  const std::vector<PersonRow>& persons() const { return persons_; }
  const std::vector<RawChunksRow>& chunks() const { return chunks_; }

 private:
  void note_digests(std::string_view body);

  std::vector<PersonRow> persons_;
  std::vector<RawChunksRow> chunks_;
  std::vector<std::string> person_places_, chunk_places_;
  std::set<std::string, std::less<>> persons_named_;
  std::map<std::string, std::string> logs_named_;  ///< root of its pieces, by SHA-256
};

}  // namespace seamtakt
