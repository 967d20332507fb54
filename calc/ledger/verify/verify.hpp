#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "ledger/store/ledger.hpp"

namespace seamtakt {

struct VerifyOptions {
  /// Key id (hex) of the public key that the store's newest head must be vouched for by; empty: none is held.
  std::string pinned_key_id;
  std::vector<Anchor> anchors;
  /// Folder of the raw logs, by SHA-256 or by name; empty: they aren't looked at.
  std::string raw_folder;
  /// Certificates (PEM) of the time stamping authorities that the verifier trusts; empty: those count that a
  /// record keeps beside its time stamp. At least one (check_certificates).
  std::string trusted_time_pem;
  /// Records before this one are taken by their stored leaves, without a look into their bodies; where
  /// anchors are given, their bodies' digests are compared. InputError of the run: beyond the last record.
  std::uint64_t from = 1;
  /// Called now and then with the records done and in all. May throw to stop.
  std::function<void(std::uint64_t, std::uint64_t)> progress;
};

/// Something that isn't as it was written.
struct LedgerProblem {
  std::uint64_t seq = 0;       ///< first record that it touches; 0: none in particular
  std::uint64_t last_seq = 0;  ///< where only a span is known, its end; else seq
  Sentence sentence;

  /// The sentence in plain English.
  std::string text() const { return sentence.english(); }
};

struct VerifyReport {
  bool trusted = false;
  bool pinned = false;            ///< the newest head is vouched for by the pinned key
  std::uint64_t anchored_to = 0;  ///< records that the newest agreeing anchor covers; 0: no anchor was given
  std::uint64_t records = 0, heads = 0;
  std::uint64_t looked_from = 1;        ///< the bodies before this one weren't read
  bool hashed_before = false;           ///< but their digests were compared
  std::vector<LedgerProblem> problems;  ///< the first ones of each sort, those with a record first
  std::vector<Sentence> warnings;
  std::optional<SignedHead> newest_head;

  /// Records of which the first bad one is: from..to, the same number where it is known. Both 0 where no
  /// record is known to be bad.
  struct Span {
    std::uint64_t from = 0, to = 0;
  };
  Span first_bad() const;
  std::uint64_t first_bad_seq() const { return first_bad().from; }
  /// "OK", "OK but unanchored", "NOT TRUSTED", with what a person needs to know.
  Sentence summary_sentence() const;
  /// The same in plain English.
  std::string summary() const { return summary_sentence().english(); }
};

/// Checks all that a store says of itself from the bytes of its bodies: form, numbers, leaves, roots,
/// signatures, keys, references, times, what helps to find records, anchors and raw logs. A damaged database
/// can't be trusted, which is a problem too; std::system_error: a disk, a connection, a right that fails,
/// which says nothing of the records. Changes nothing.
VerifyReport verify_ledger(const Ledger& ledger, const VerifyOptions& options);

/// The same of the store at a place. A file that can't even be opened as a store is not trusted, which isn't
/// an error. InputError: nothing there, a server's refusal; std::system_error: it can't be read (no
/// permission, in use, no connection, a disk that fails).
VerifyReport verify_store(const std::string& uri, const StoreOpening& opening, const VerifyOptions& options);

}  // namespace seamtakt
