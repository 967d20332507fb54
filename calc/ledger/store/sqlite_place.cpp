#include "ledger/store/sqlite_place.hpp"

#include <sys/stat.h>
#include <sys/vfs.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

#include "base/error.hpp"

namespace seamtakt {

namespace {

constexpr Word expected_place = "a store, or a name that isn't taken"_word;

std::string folder_of(const std::string& path) {
  const auto slash = path.rfind('/');
  return slash == std::string::npos ? "." : path.substr(0, slash + 1);
}

/// statfs(2): NFS, SMB1, CIFS, SMB2, FUSE, AFS, CODA, 9P.
constexpr unsigned long network_drives[] = {0x6969,     0x517b,     0xff534d42, 0xfe534d42,
                                            0x65735546, 0x5346414f, 0x73757245, 0x01021997};

void check_drive(const std::string& folder) {
  struct statfs drive {};
  if (::statfs(folder.c_str(), &drive) != 0) return;
  const auto type = static_cast<unsigned long>(drive.f_type) & 0xffffffffUL;
  if (std::find(std::begin(network_drives), std::end(network_drives), type) != std::end(network_drives))
    throw InputError(printable(folder), "a drive over a network or in user space"_word,
                     "a local drive, or a postgresql:// store (--force takes the risk)"_word);
}

}  // namespace

bool check_sqlite_place(const std::string& path, bool force) {
  if (path.empty()) throw InputError("--store", "no file name"_word, "sqlite:FILE");
  if (path.find('\0') != std::string::npos)
    throw InputError("--store", "a NUL in the file name"_word, "sqlite:FILE");
  struct stat status {};
  const std::string folder = folder_of(path);
  const bool exists = ::stat(path.c_str(), &status) == 0;
  if (!exists && errno != ENOENT && errno != ENOTDIR)
    throw std::system_error(errno, std::generic_category(), "can't look at the store " + printable(path));
  if (exists && !S_ISREG(status.st_mode))
    throw InputError(printable(path), S_ISDIR(status.st_mode) ? "a directory"_word : "no regular file"_word,
                     expected_place);
  if (!exists && (::stat(folder.c_str(), &status) != 0 || !S_ISDIR(status.st_mode)))
    throw InputError(printable(path), Sentence("file.no-folder"_key, {{"folder", printable(folder)}}),
                     "a folder that is there"_word);
  if (!force) check_drive(folder);
  return exists;
}

}  // namespace seamtakt
