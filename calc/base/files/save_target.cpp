#include "base/files/save_target.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <climits>
#include <system_error>

#include "base/error.hpp"

namespace seamtakt {

namespace {

[[noreturn]] void fail(int error, const std::string& path) {
  if (error == ENAMETOOLONG)
    throw InputError(printable(path), "a name that is too long"_word, "a shorter one"_word);
  throw std::system_error(error, std::generic_category(), "can't save " + printable(path));
}

std::string link_target(const std::string& path) {
  char text[PATH_MAX];
  const ssize_t size = ::readlink(path.c_str(), text, sizeof text);
  if (size < 0) fail(errno, path);
  const std::string target(text, static_cast<std::size_t>(size));
  return target.starts_with('/') ? target : folder_of(path) + "/" + target;
}

/// Follows symbolic links of the last name, also one that leads to a file that isn't there yet.
std::string without_links(std::string path, std::optional<struct stat>& status) {
  constexpr int most_links = 40;
  for (int i = 0; i < most_links; ++i) {
    struct stat found {};
    if (::lstat(path.c_str(), &found) != 0) {
      if (errno != ENOENT && errno != ENOTDIR) fail(errno, path);
      return path;
    }
    if (!S_ISLNK(found.st_mode)) {
      status = found;
      return path;
    }
    path = link_target(path);
  }
  fail(ELOOP, path);
}

}  // namespace

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

std::string name_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  return slash == std::string::npos ? path : path.substr(slash + 1);
}

SaveTarget save_target(const std::string& path) {
  if (path.empty() || path.find('\0') != std::string::npos || path.back() == '/') {
    throw InputError(printable(path), "a name that no file can have"_word, "a file's name"_word);
  }
  SaveTarget target;
  target.path = without_links(path, target.status);
  target.folder = folder_of(target.path);
  if (!target.status) return target;
  if (!S_ISREG(target.status->st_mode)) {
    const Word found = S_ISDIR(target.status->st_mode) ? "a directory"_word : "no regular file"_word;
    throw InputError(printable(path), found, "a regular file or a new name"_word);
  }
  // The rename would replace a file that its owner has made read-only.
  if (::faccessat(AT_FDCWD, target.path.c_str(), W_OK, AT_EACCESS) != 0) fail(errno, target.path);
  return target;
}

Descriptor open_folder(const SaveTarget& target) {
  constexpr int flags = O_RDONLY | O_DIRECTORY | O_CLOEXEC;
  Descriptor folder(retried([&] { return ::open(target.folder.c_str(), flags); }));
  if (folder.is_open()) return folder;
  if (errno == ENOENT || errno == ENOTDIR) {
    throw InputError(printable(target.path),
                     Sentence("file.no-folder"_key, {{"folder", printable(target.folder)}}),
                     "a folder that exists"_word);
  }
  fail(errno, target.path);
}

}  // namespace seamtakt
