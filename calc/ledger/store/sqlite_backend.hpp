#pragma once

#include <memory>
#include <string>

#include "ledger/store/ledger_backend.hpp"

namespace seamtakt {

/// A ledger in an SQLite file, see open_ledger_backend. Rollback journal with synchronous EXTRA, so that
/// commits survive a power cut; a write-ahead log only where sqlite_wal_is_safe.
std::unique_ptr<LedgerBackend> open_sqlite_backend(const std::string& path, const StoreOpening& opening);

}  // namespace seamtakt
