#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/json/json_node.hpp"
#include "ledger/store/ledger_backend.hpp"

namespace seamtakt {

/// Version of the bodies; raised when a member changes its meaning or new ones are added. Older ones verify
/// for ever. 3: findings have "sentence" and "arguments" beside their text.
inline constexpr int ledger_body_version = 3, oldest_body_version = 2;

/// The kinds of records, in one place.
namespace record_kind {
inline constexpr const char* genesis = "genesis";    ///< the store begins; its public key
inline constexpr const char* schedule = "schedule";  ///< a revision of a schedule, in full
inline constexpr const char* calibration = "calibration";
inline constexpr const char* ingest = "ingest";
inline constexpr const char* pass = "pass";
inline constexpr const char* manual = "manual";  ///< a manual seam
inline constexpr const char* correction = "correction";
inline constexpr const char* void_record = "void";
inline constexpr const char* signoff = "signoff";
inline constexpr const char* key = "key";  ///< the store's next key, signed by the one before
inline constexpr const char* key_revoke = "key_revoke";
inline constexpr const char* migrate = "migrate";
inline constexpr const char* anchor = "anchor";
inline constexpr const char* note = "note";
inline constexpr const char* nonconformance = "nonconformance";
inline constexpr const char* disposition = "disposition";
inline constexpr const char* retention = "retention";  ///< how long records are kept; a legal hold
inline constexpr const char* timestamp = "timestamp";  ///< an outside authority's time over a head
inline constexpr const char* person = "person";        ///< a person's own key belongs to the name of `who`
inline constexpr const char* judgement = "judgement";  ///< a pass judged again by a later calibration
}  // namespace record_kind

bool is_record_kind(std::string_view kind);

/// Who writes, when and why. The program's clock stays outside the library.
struct WriteStamp {
  std::string utc;  ///< "2026-11-25T14:21:02Z"
  std::string who, why;
  std::string program;  ///< version, with the build's digest where it is known
};

/// What a new record says beside its stamp.
struct LedgerEntry {
  std::string kind;
  std::optional<std::uint64_t> ref;                          ///< the record that it is about
  std::vector<std::pair<std::string, std::string>> members;  ///< key and JSON text
  std::vector<std::pair<std::string, std::string>> lookups;  ///< topic and key by which it is found
};

/// Lookups in the form that a body has: ["topic:key", ...].
inline constexpr const char* lookups_member = "keys";

/// What one writer adds in one transaction.
class LedgerBatch {
 public:
  std::uint64_t next_seq() const { return frontier_.size() + 1; }
  const std::string& store_id() const { return store_id_; }
  /// Its number.
  std::uint64_t add(const LedgerEntry& entry);
  /// Numbers of the records with that lookup, those of this batch included.
  std::vector<std::uint64_t> find(const std::string& topic, const std::string& key) const;
  /// The digest that replaces a name in bodies; the name itself goes to a table that may be erased.
  std::string person(const std::string& name);
  void keep_raw_chunks(const RawChunksRow& chunks);
  const LedgerBackend& backend() const { return backend_; }

 private:
  friend class Ledger;
  LedgerBatch(LedgerBackend& backend, const WriteStamp& stamp) : backend_(backend), stamp_(stamp) {}
  void flush();

  LedgerBackend& backend_;
  const WriteStamp& stamp_;
  std::string store_id_;
  MerkleFrontier frontier_;
  std::vector<LedgerRow> rows_;
  std::vector<LookupRow> lookups_;
  std::map<std::pair<std::string, std::string>, std::vector<std::uint64_t>> added_;
  std::map<std::string, std::string> persons_;
};

/// Gives the private key of a store: the one whose id is `key_id`, or, where that is empty because the store
/// begins, a new one that it has stored there.
using KeyProvider = std::function<SigningKey(const std::string& store_id, const std::string& key_id)>;

/// Permanent records: appended, never changed, each commit signed. Numbers run from 1 without a gap.
class Ledger {
 public:
  Ledger(std::unique_ptr<LedgerBackend> backend) : backend_(std::move(backend)) {}
  /// Over a backend that another object owns.
  static Ledger over(LedgerBackend& backend) {
    Ledger ledger{std::unique_ptr<LedgerBackend>()};
    ledger.backend_ = std::shared_ptr<LedgerBackend>(&backend, [](LedgerBackend*) {});
    return ledger;
  }
  static Ledger open(const std::string& uri, const StoreOpening& opening);

  LedgerBackend& backend() const { return *backend_; }
  std::uint64_t count() const { return backend_->snapshot().state.n; }
  /// Empty where nothing was written yet.
  std::string store_id() const;
  /// Name where it is kept; else "person " and the digest's beginning.
  std::string person_name(const std::string& sha256) const;

  /// Runs `fill` in a transaction and commits what it added under a new signed head; nothing is committed if
  /// it throws or adds nothing. Begins the store with its genesis record where it is empty. Returns the
  /// newest head. InputError: another store's key, a clock more than 5 min before the newest head.
  SignedHead write(const KeyProvider& key, const WriteStamp& stamp,
                   const std::function<void(LedgerBatch&)>& fill);

  /// The same where the key in force is lost: signed by the new key, which `fill` must put into force.
  SignedHead write_with_lost_key(const SigningKey& next, const WriteStamp& stamp,
                                 const std::function<void(LedgerBatch&)>& fill);

  /// The record; InputError where there is none of that number.
  LedgerRow record(std::uint64_t seq) const;
  /// Calls `each` with the records from `first` on, in short transactions, until it returns false.
  void each_record(std::uint64_t first, const std::function<bool(const LedgerRow&)>& each) const;
  /// Digests of the first `n` records.
  std::vector<Digest> leaves(std::uint64_t n) const;

 private:
  SignedHead write_signed(const KeyProvider& key, bool any_key, const WriteStamp& stamp,
                          const std::function<void(LedgerBatch&)>& fill);

  std::shared_ptr<LedgerBackend> backend_;
  mutable std::map<std::string, std::string> names_;
  mutable bool names_read_ = false;
};

/// A record's body as a tree; std::runtime_error where it is no JSON (a damaged store).
JsonNode body_of(const LedgerRowView& row);
/// Text of a member, or of a member of a member ("results.seam"); empty where there is none.
std::string body_text(const JsonNode& body, std::string_view path);
/// A number likewise; empty where there is none.
std::optional<double> body_number(const JsonNode& body, std::string_view path);
const JsonNode* body_member(const JsonNode& body, std::string_view path);

/// The public key in force at a record: that of the newest genesis, key or key_revoke record.
struct KeyInForce {
  std::uint64_t seq = 0;
  std::string id, pem;
};
KeyInForce key_in_force(LedgerBackend& backend);

/// Members of a record that puts a key into force.
std::vector<std::pair<std::string, std::string>> key_members(const SigningKey& key,
                                                             const std::string& store_id);
/// What a new key signs to show that its owner has it.
std::string key_proof_text(const std::string& store_id, const std::string& key_id);

/// Seconds since 1970 of "2026-11-25T14:21:02Z"; empty where it is no such time.
std::optional<std::int64_t> utc_seconds(std::string_view utc);

/// How much earlier than its predecessor a head may be: clocks of several machines differ.
inline constexpr std::int64_t clock_tolerance_s = 300;

}  // namespace seamtakt
