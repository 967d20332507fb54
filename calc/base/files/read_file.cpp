#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "base/error.hpp"
#include "base/files/descriptor.hpp"
#include "base/files/large_pages.hpp"
#include "base/json/json_node.hpp"

namespace seamtakt {

namespace {

/// Errors that say that there is no such file, whatever the machine's state.
bool is_absent(int error) {
  return error == ENOENT || error == ENOTDIR || error == ENAMETOOLONG || error == ELOOP;
}

[[noreturn]] void fail(const std::string& path, int error) {
  if (is_absent(error))
    throw InputError(printable(path), "no such file"_word, "a file that can be read"_word);
  throw std::system_error(error, std::generic_category(), "can't read " + printable(path));
}

void require_regular(const std::string& path, const struct stat& status) {
  if (S_ISREG(status.st_mode)) return;
  throw InputError(printable(path), S_ISDIR(status.st_mode) ? "a directory"_word : "no regular file"_word,
                   "a regular file"_word);
}

}  // namespace

std::string read_file(const std::string& path, std::size_t limit) {
  struct stat status {};
  if (path.find('\0') != std::string::npos) fail(path, ENOENT);
  // Looked at before it is opened, since opening a FIFO or a device may wait or do something.
  if (::stat(path.c_str(), &status) != 0) fail(path, errno);
  require_regular(path, status);
  const Descriptor file(retried([&] { return ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK); }));
  if (!file.is_open()) fail(path, errno);
  if (::fstat(file.get(), &status) != 0) fail(path, errno);
  require_regular(path, status);

  std::string bytes;
  const auto size = static_cast<std::size_t>(status.st_size);
  if (size <= limit) bytes.reserve(size + 1);
  prefer_large_pages(bytes.data(), bytes.capacity());
  char block[1 << 16];
  for (;;) {
    const ssize_t count = retried([&] { return ::read(file.get(), block, sizeof block); });
    if (count < 0) fail(path, errno);
    if (count == 0) return bytes;
    bytes.append(block, static_cast<std::size_t>(count));
    if (bytes.size() > limit) {
      throw InputError(printable(path), Sentence("file.size.too-large"_key, {{"bytes", limit}}),
                       "a smaller file"_word);
    }
  }
}

}  // namespace seamtakt
