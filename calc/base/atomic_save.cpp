#include "base/atomic_save.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <limits>
#include <optional>
#include <system_error>

#include "base/error.hpp"
#include "base/json_node.hpp"
#include "base/save_target.hpp"
#include "base/temporary_file.hpp"

namespace seamtakt {

namespace {

/// True where `path` names the file that `status` describes.
bool names_file(const std::string& path, const struct stat& status) {
  struct stat now {};
  return ::stat(path.c_str(), &now) == 0 && now.st_dev == status.st_dev && now.st_ino == status.st_ino;
}

void rename_over(const TemporaryFile& temporary, const std::string& path) {
  for (;;) {
    if (::rename(temporary.path().c_str(), path.c_str()) == 0) return;
    const int error = errno;
    // A rename may have been done although it was reported as failed (NFS, a signal).
    if (names_file(path, temporary.status())) return;
    if (error != EINTR)
      throw std::system_error(error, std::generic_category(), "can't save " + printable(path));
  }
}

void check_expected(const SaveTarget& target, const std::string& expected_sha256) {
  if (expected_sha256.empty()) return;
  if (!target.status) {
    throw InputError(printable(target.path), "no such file any more",
                     "the file as it was when it was loaded");
  }
  const std::string bytes = read_file(target.path, std::numeric_limits<std::size_t>::max() / 2);
  if (sha256_hex(bytes) != expected_sha256) {
    throw InputError(printable(target.path), "a file that has been changed since it was loaded",
                     "the file as it was when it was loaded");
  }
}

/// Makes the old file known as NAME~ as well, by a link where the file system has links, else by a copy.
void keep_previous_as_backup(const SaveTarget& target) {
  const std::string backup = target.path + "~";
  const std::string link = new_temporary_path(backup);
  int result = 0;
  while ((result = ::link(target.path.c_str(), link.c_str())) != 0 && errno == EINTR) {
  }
  if (result == 0) {
    TemporaryFile linked = TemporaryFile::adopt(link);
    rename_over(linked, backup);
    // Where NAME~ was already a link to this very file, rename leaves both names: the guard removes its own.
    return;
  }
  TemporaryFile copy = TemporaryFile::create(backup, target.status);
  copy.write(read_file(target.path, std::numeric_limits<std::size_t>::max() / 2));
  copy.make_durable();
  rename_over(copy, backup);
  copy.release();
}

void sync_folder(const Descriptor& folder, const std::string& path) {
  int result = 0;
  while ((result = ::fsync(folder.get())) != 0 && errno == EINTR) {
  }
  // EINVAL: the file system knows no syncing of folders.
  if (result != 0 && errno != EINVAL) {
    throw std::system_error(errno, std::generic_category(),
                            printable(path) + " is saved, but not known to be on disk");
  }
}

}  // namespace

void save_atomically(const std::string& path, std::string_view bytes, const SaveOptions& options) {
  const SaveTarget target = save_target(path);
  check_expected(target, options.expected_sha256);
  remove_stale_temporaries(target.path);
  const Descriptor folder = open_folder(target);
  TemporaryFile temporary = TemporaryFile::create(target.path, target.status);
  temporary.write(bytes);
  temporary.make_durable();
  temporary.compare(bytes);
  temporary.close();
  if (options.keep_previous && target.status) keep_previous_as_backup(target);
  rename_over(temporary, target.path);
  if (!names_file(target.path, temporary.status())) {
    throw std::system_error(
        EIO, std::generic_category(),
        "can't save " + printable(target.path) + ": the name still leads to another file");
  }
  temporary.release();
  sync_folder(folder, target.path);
}

}  // namespace seamtakt
