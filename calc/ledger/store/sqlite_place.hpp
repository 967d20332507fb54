#pragma once

#include <string>

namespace seamtakt {

/// Whether a file exists at `path`. InputError: an empty name, a missing folder, not a regular file, a
/// network drive or one in user space (unless `force`: locks and flushes can't be relied on there).
/// std::system_error: the place can't be examined.
bool check_sqlite_place(const std::string& path, bool force);

}  // namespace seamtakt
