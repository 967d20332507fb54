#pragma once

#include <sys/stat.h>

#include <optional>
#include <string>

#include "base/files/descriptor.hpp"

namespace seamtakt {

/// The file that a save replaces: symbolic links followed, looked at once before anything is written.
struct SaveTarget {
  std::string path;
  std::string folder;
  std::optional<struct stat> status;  ///< empty: there is no such file yet
};

/// Errors: InputError where the target is no regular file, its folder is missing or its name too long;
/// std::system_error where it may not be written.
SaveTarget save_target(const std::string& path);

/// The target's folder, opened so that it can be synced after the rename.
Descriptor open_folder(const SaveTarget& target);

/// Folder part of a path; "." where it has none.
std::string folder_of(const std::string& path);
/// Last part of a path.
std::string name_of(const std::string& path);

}  // namespace seamtakt
