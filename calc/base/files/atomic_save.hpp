#pragma once

#include <string>
#include <string_view>
#include <utility>

#include "base/error.hpp"

namespace seamtakt {

struct SaveOptions {
  /// SHA-256 (hex) that the file on disk must still have, as it was at load; empty: not compared.
  std::string expected_sha256;
  /// Keep the old file as NAME~ (one generation).
  bool keep_previous = false;
};

/// The file on disk isn't the one that was loaded.
class ChangedOnDisk : public InputError {
 public:
  ChangedOnDisk(const std::string& path, std::string found)
      : InputError(printable(path), std::move(found), "the file as it was when it was loaded") {}
};

/// The one way in which a file is written: temporary beside it, all bytes, fsync, read back, compared,
/// renamed over the old one, directory synced. A symlink's target is replaced. Whatever fails, the old file
/// stays whole and no temporary is left.
/// Errors: InputError where the target is a directory or no regular file; ChangedOnDisk;
/// std::system_error for the machine's failures.
void save_atomically(const std::string& path, std::string_view bytes, const SaveOptions& options = {});

}  // namespace seamtakt
