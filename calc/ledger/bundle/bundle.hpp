#pragma once

#include <cstdint>
#include <functional>
#include <istream>
#include <string>
#include <string_view>

#include "ledger/store/ledger.hpp"

namespace seamtakt {

/// A ledger as JSON Lines that any SHA-256 tool can check in twenty years: bodies word for word, heads,
/// names, pieces of raw logs; public keys are in the bodies. The same ledger gives the same bytes from any
/// store.
struct BundleOptions {
  bool with_names = true;  ///< of persons; without them a bundle shows digests only
};
void export_bundle(const Ledger& ledger, const BundleOptions& options,
                   const std::function<void(std::string_view)>& write);

struct BundleOutcome {
  std::uint64_t records_before = 0, records_added = 0, heads_added = 0;
  Sentence sentence;  ///< what happened, for a person

  /// The sentence in plain English.
  std::string text() const { return sentence.english(); }
};

/// Puts a bundle's records into a store: one that is empty, or that holds the first of them already. All or
/// nothing, in one commit: before it, each head is checked (root, chain, signature, key), names and pieces of
/// raw logs against what the signed records refer to, and what was added is verified as it is in the store.
/// InputError, mostly at FILE:LINE: no bundle, another store's, one that is altered or cut.
BundleOutcome import_bundle(LedgerBackend& backend, std::istream& in, const std::string& file);

/// InputError where the first line isn't a bundle's; back at the beginning afterwards. Asked before a store
/// is made for it.
void check_bundle_header(std::istream& in, const std::string& file);

/// Lookups that a body in canonical form names.
std::vector<LookupRow> lookups_in_body(std::string_view body, std::uint64_t seq);

}  // namespace seamtakt
