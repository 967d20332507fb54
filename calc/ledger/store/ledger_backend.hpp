#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "ledger/tree/merkle_tree.hpp"
#include "ledger/tree/signed_head.hpp"

namespace seamtakt {

/// Rows that are read at a time: a longer read would hold up writers.
inline constexpr std::size_t page_rows = 5000;

/// A record as it is kept. `body` is canonical JSON, `leaf` its digest in the tree.
struct LedgerRow {
  std::uint64_t seq = 0;
  std::string kind, body, leaf;
  bool well_typed = true;  ///< the database holds each value in the storage class that it was written in
};

/// The same in the database's memory: valid during a call.
struct LedgerRowView {
  std::uint64_t seq = 0;
  std::string_view kind, body, leaf;
  bool well_typed = true;

  LedgerRowView() = default;
  LedgerRowView(const LedgerRow& row)
      : seq(row.seq), kind(row.kind), body(row.body), leaf(row.leaf), well_typed(row.well_typed) {}
};
using RecordVisitor = std::function<void(const LedgerRowView&)>;

/// Where to find records: derived from their bodies, so that it may be made again, and isn't trusted.
struct LookupRow {
  std::string topic, key;
  std::uint64_t seq = 0;
  auto operator<=>(const LookupRow&) const = default;
};

using LookupVisitor = std::function<void(std::string_view topic, std::string_view key, std::uint64_t seq)>;

/// A person's name beside the digest that records hold: SHA-256(salt || name). May be erased.
struct PersonRow {
  std::string sha256, salt, name;  ///< salt: hex; the digest is made from its bytes
};
inline constexpr std::size_t salt_bytes = 16;

/// Digests of a raw log's pieces of 1 MiB, 32 bytes each; the ingest record holds their root.
struct RawChunksRow {
  std::string sha256;  ///< of the whole log
  std::string digests;
};

/// How far a store has grown.
struct LedgerState {
  std::uint64_t n = 0;
  std::string frontier;  ///< MerkleFrontier::bytes
};

/// The database contains something that this program never writes: a question of trust, unlike a failed disk
/// or connection.
class StoreDamaged : public std::system_error {
 public:
  explicit StoreDamaged(const std::string& what)
      : std::system_error(std::make_error_code(std::errc::io_error), what) {}
};

/// Whoever reads a store doesn't want its answer any more (StoreOpening::stopped).
class StoreReadingStopped : public std::runtime_error {
 public:
  StoreReadingStopped() : std::runtime_error("reading the store was stopped") {}
};

/// All of it as of one moment.
struct LedgerSnapshot {
  LedgerState state;
  std::optional<SignedHead> newest_head;
  std::uint64_t last_seq = 0;
};

/// The database below a ledger. It knows tables and transactions; their meaning is known to the ledger only.
/// Failures: std::system_error for the machine's, EBUSY where others kept it locked for 10 s; StoreDamaged.
class LedgerBackend {
 public:
  virtual ~LedgerBackend() = default;

  /// Fit to print: no password.
  virtual std::string name() const = 0;

  // Writing: between begin and commit or rollback, by one writer at a time, on all machines together.
  virtual void begin() = 0;
  virtual void commit() = 0;
  virtual void rollback() noexcept = 0;
  virtual void insert_records(std::span<const LedgerRow> rows) = 0;
  virtual void insert_lookups(std::span<const LookupRow> rows) = 0;
  virtual void insert_head(const SignedHead& head) = 0;
  virtual void insert_person(const PersonRow& person) = 0;
  virtual void insert_raw_chunks(const RawChunksRow& chunks) = 0;
  virtual void set_state(const LedgerState& state) = 0;

  // Reading: short transactions of their own, or a part of the one that writes.
  virtual LedgerSnapshot snapshot() = 0;
  /// From `first` on, in order, at most `limit`; fewer at the end only.
  virtual void each_record(std::uint64_t first, std::size_t limit, const RecordVisitor& visit) = 0;
  std::vector<LedgerRow> records(std::uint64_t first, std::size_t limit);
  /// Heads of more than `after` records, in order.
  virtual std::vector<SignedHead> heads(std::uint64_t after, std::size_t limit) = 0;
  virtual std::vector<std::uint64_t> find(std::string_view topic, std::string_view key) = 0;
  /// Those records of these numbers that exist, in order.
  virtual void each_record_of(std::span<const std::uint64_t> numbers, const RecordVisitor& visit) = 0;
  /// Records that point at any of these: pairs of the one pointed at and the later one, in no order.
  virtual std::vector<std::pair<std::uint64_t, std::uint64_t>> references_to(
      std::span<const std::uint64_t> numbers) = 0;
  /// All lookups after `after`, in order of topic, key, seq by bytes.
  virtual void each_lookup(const LookupRow& after, std::size_t limit, const LookupVisitor& visit) = 0;
  virtual std::vector<PersonRow> persons() = 0;
  virtual std::vector<RawChunksRow> raw_chunks(const std::string& after_sha256, std::size_t limit) = 0;

  /// Differences from what the program created: schema, pages, indexes, settings. Empty: none.
  virtual std::vector<Sentence> structure_problems() = 0;
  /// What a person should know: checksums off, ...
  virtual std::vector<Sentence> warnings() { return {}; }
};

/// How a store is opened.
struct StoreOpening {
  enum class For { reading, writing };
  For use = For::reading;
  bool create = false;  ///< make it where it is absent (for writing)
  bool force = false;   ///< even on a network drive
  /// Asked now and then while a file is read; true ends it with StoreReadingStopped. Empty: nobody stops it.
  std::function<bool()> stopped = {};
};

/// "sqlite:FILE" or "postgresql://...". InputError: another scheme, no store there, another program's
/// database, a newer version's.
std::unique_ptr<LedgerBackend> open_ledger_backend(const std::string& uri, const StoreOpening& opening);

/// InputError: a store of another version than this program's.
[[noreturn]] void refuse_version(const std::string& where, std::int64_t version, std::int64_t own);

/// Whether there is something at that place; nothing is made.
bool store_exists(const std::string& uri);

}  // namespace seamtakt
