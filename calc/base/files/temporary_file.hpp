#pragma once

#include <sys/stat.h>

#include <optional>
#include <string>
#include <string_view>

#include "base/files/descriptor.hpp"

namespace seamtakt {

/// A new file beside the one that it is to replace, ".NAME.<random>.tmp". It is removed when its owner is
/// destroyed, unless released. While it lives it is locked (flock), so that others can tell it from one that
/// a killed program left. Errors of all functions: std::system_error.
class TemporaryFile {
 public:
  /// Mode, and where permitted owner, of `old`; else what the umask leaves.
  static TemporaryFile create(const std::string& target, const std::optional<struct stat>& old);
  /// Takes ownership of an existing file.
  static TemporaryFile adopt(const std::string& path);

  TemporaryFile(TemporaryFile&& other) noexcept;
  TemporaryFile& operator=(TemporaryFile&&) = delete;
  ~TemporaryFile();

  void write(std::string_view bytes);
  /// fsync: all bytes are on the disk.
  void make_durable();
  /// Reads the file back, past the cache where the system allows, and compares.
  void compare(std::string_view bytes);
  /// Closes; the lock is kept until the end.
  void close();
  /// Renames it to `path`, replacing the file there, and checks the result.
  void rename_over(const std::string& path);
  /// It has been renamed: there is nothing to remove.
  void release() { path_.clear(); }

 private:
  explicit TemporaryFile(std::string path) : path_(std::move(path)) {}
  void lock();
  bool is_named(const std::string& path) const;
  void take_rights(const struct stat& old);
  [[noreturn]] void fail(int error) const;

  std::string path_;
  std::string target_;
  Descriptor file_, lock_;
  struct stat status_ {};
};

/// A fresh name for a temporary of `target`. Names near the file system's limit are cut, with a hash for the
/// rest.
std::string new_temporary_path(const std::string& target);

/// Removes temporaries of `target` that no living program holds: a kill leaves one behind. Failures are
/// ignored, because they don't affect the save.
void remove_stale_temporaries(const std::string& target);

}  // namespace seamtakt
