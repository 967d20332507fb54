#pragma once

#include <memory>
#include <string>

#include "records/record_store.hpp"

namespace seamtakt {

/// A store in an SQLite file, see open_record_store.
std::unique_ptr<RecordStore> open_sqlite_store(const std::string& path);

}  // namespace seamtakt
