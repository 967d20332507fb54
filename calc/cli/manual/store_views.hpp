#pragma once

#include <string>

namespace seamtakt::cli {

enum class SqlDialect { sqlite, postgresql };

/// An SQL script that makes a view a kind of record, for the session that runs it alone: the store isn't
/// changed, and needn't be writable. A pass's columns are those of its results.
std::string store_views(SqlDialect dialect);

}  // namespace seamtakt::cli
