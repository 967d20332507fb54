#pragma once

#include <string>

namespace seamtakt {

/// Whether a file stands at `path`. InputError: an empty name, a folder that isn't there, no regular file, a
/// drive over a network or in user space (unless `force`: locks and flushes can't be relied on there).
/// std::system_error: the place can't be looked at.
bool check_sqlite_place(const std::string& path, bool force);

}  // namespace seamtakt
