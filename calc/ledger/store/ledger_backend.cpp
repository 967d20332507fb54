#include "ledger/store/ledger_backend.hpp"

#include "base/error.hpp"
#include "ledger/store/postgres_backend.hpp"
#include "ledger/store/sqlite_backend.hpp"
#include "ledger/store/sqlite_place.hpp"
#include "ledger/store/uri_password.hpp"

namespace seamtakt {

namespace {

constexpr std::string_view sqlite_scheme = "sqlite:";

bool is_postgres(std::string_view uri) {
  return uri.starts_with("postgresql://") || uri.starts_with("postgres://");
}

[[noreturn]] void refuse_scheme(const std::string& uri) {
  throw InputError("--store", '"' + printable(without_passwords(uri)) + '"',
                   "sqlite:FILE or postgresql://..."_word);
}

}  // namespace

std::vector<LedgerRow> LedgerBackend::records(std::uint64_t first, std::size_t limit) {
  std::vector<LedgerRow> rows;
  each_record(first, limit, [&](const LedgerRowView& row) {
    rows.push_back(
        {row.seq, std::string(row.kind), std::string(row.body), std::string(row.leaf), row.well_typed});
  });
  return rows;
}

std::unique_ptr<LedgerBackend> open_ledger_backend(const std::string& uri, const StoreOpening& opening) {
  if (uri.starts_with(sqlite_scheme)) return open_sqlite_backend(uri.substr(sqlite_scheme.size()), opening);
  if (is_postgres(uri)) return open_postgres_backend(uri, opening);
  refuse_scheme(uri);
}

void refuse_version(const std::string& where, std::int64_t version, std::int64_t own) {
  const SentenceKey expected = version > own ? "store.version.newer"_key : "store.version"_key;
  throw InputError(where, Sentence("store.of-version"_key, {{"version", version}}),
                   Sentence(expected, {{"version", own}}));
}

bool store_exists(const std::string& uri) {
  if (uri.starts_with(sqlite_scheme)) return check_sqlite_place(uri.substr(sqlite_scheme.size()), true);
  if (is_postgres(uri)) return postgres_store_exists(uri);
  refuse_scheme(uri);
}

}  // namespace seamtakt
