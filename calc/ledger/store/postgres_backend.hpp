#pragma once

#include <memory>
#include <string>

#include "ledger/store/ledger_backend.hpp"

namespace seamtakt {

/// A ledger in a PostgreSQL database, see open_ledger_backend. The server must flush what it reports as
/// committed: fsync and full_page_writes on (else InputError).
std::unique_ptr<LedgerBackend> open_postgres_backend(const std::string& uri, const StoreOpening& opening);

bool postgres_store_exists(const std::string& uri);

}  // namespace seamtakt
