#include "base/files/atomic_save.hpp"
#include "base/files/digest.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <limits>
#include <optional>
#include <system_error>

#include "base/error.hpp"
#include "base/files/save_target.hpp"
#include "base/files/temporary_file.hpp"
#include "base/json/json_node.hpp"

namespace seamtakt {

namespace {

void check_expected(const SaveTarget& target, const std::string& expected_sha256) {
  if (expected_sha256.empty()) return;
  if (!target.status) throw ChangedOnDisk(target.path, "no such file any more");
  const std::string bytes = read_file(target.path, std::numeric_limits<std::size_t>::max() / 2);
  if (sha256_hex(bytes) != expected_sha256)
    throw ChangedOnDisk(target.path, "a file that has been changed since it was loaded");
}

/// Makes the old file known as NAME~ as well, by a link where the file system has links, else by a copy.
void keep_previous_as_backup(const SaveTarget& target) {
  const std::string backup = target.path + "~";
  const std::string link = new_temporary_path(backup);
  if (retried([&] { return ::link(target.path.c_str(), link.c_str()); }) == 0) {
    // Not released: where NAME~ was already a link to this very file, rename leaves both names.
    TemporaryFile::adopt(link).rename_over(backup);
    return;
  }
  TemporaryFile copy = TemporaryFile::create(backup, target.status);
  copy.write(read_file(target.path, std::numeric_limits<std::size_t>::max() / 2));
  copy.make_durable();
  copy.rename_over(backup);
  copy.release();
}

void sync_folder(const Descriptor& folder, const std::string& path) {
  // EINVAL: the file system knows no syncing of folders.
  const int error = retried([&] { return ::fsync(folder.get()); }) == 0 ? 0 : errno;
  if (error == 0 || error == EINVAL) return;
  throw std::system_error(error, std::generic_category(),
                          printable(path) + " is saved, but not known to be on disk");
}

}  // namespace

void save_atomically(const std::string& path, std::string_view bytes, const SaveOptions& options) {
  const SaveTarget target = save_target(path);
  check_expected(target, options.expected_sha256);
  remove_stale_temporaries(target.path);
  if (options.keep_previous) remove_stale_temporaries(target.path + "~");
  const Descriptor folder = open_folder(target);
  TemporaryFile temporary = TemporaryFile::create(target.path, target.status);
  temporary.write(bytes);
  temporary.make_durable();
  temporary.compare(bytes);
  temporary.close();
  if (options.keep_previous && target.status) keep_previous_as_backup(target);
  temporary.rename_over(target.path);
  temporary.release();
  sync_folder(folder, target.path);
}

}  // namespace seamtakt
