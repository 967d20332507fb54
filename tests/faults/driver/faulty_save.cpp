#include "faulty_save.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <system_error>
#include <utility>

namespace seamtakt {

namespace {

constexpr std::array<std::string_view, 8> ways = {"in-place",        "no-fsync",        "no-folder-sync",
                                                  "fsync-unchecked", "write-unchecked", "no-read-back",
                                                  "temporary-left",  "close-unchecked"};

/// An honest save in the fewest calls, from which each way leaves something out.
class FaultySave {
 public:
  FaultySave(std::string_view how, const std::string& path) : how_(how), path_(path) {
    temporary_ = in_place() ? path : path.substr(0, path.rfind('/')) + "/.faulty.tmp";
  }

  void run(std::string_view bytes) {
    file_ = ::open(temporary_.c_str(), O_RDWR | O_CREAT | O_TRUNC, 0644);
    if (file_ < 0) fail();
    write_all(bytes);
    if (how_ != "no-fsync" && ::fsync(file_) != 0 && how_ != "fsync-unchecked") fail();
    if (how_ != "no-read-back") compare(bytes);
    const int closed = ::close(std::exchange(file_, -1));
    if (closed != 0 && how_ != "close-unchecked") fail();
    if (!in_place() && ::rename(temporary_.c_str(), path_.c_str()) != 0) fail();
    if (how_ != "no-folder-sync") sync_folder();
  }

 private:
  bool in_place() const { return how_ == "in-place"; }

  void write_all(std::string_view bytes) {
    if (how_ == "write-unchecked") {
      const ssize_t ignored = ::write(file_, bytes.data(), bytes.size());
      static_cast<void>(ignored);
      return;
    }
    while (!bytes.empty()) {
      const ssize_t count = ::write(file_, bytes.data(), bytes.size());
      if (count < 0 && errno == EINTR) continue;
      if (count < 0) fail();
      bytes.remove_prefix(static_cast<std::size_t>(count));
    }
  }

  void compare(std::string_view bytes) {
    if (how_ == "write-unchecked") return;
    std::string block(bytes.size() + 1, '\0');
    std::size_t size = 0;
    while (size < block.size()) {
      const ssize_t count =
          ::pread(file_, block.data() + size, block.size() - size, static_cast<off_t>(size));
      if (count < 0 && errno == EINTR) continue;
      if (count < 0) fail();
      if (count == 0) break;
      size += static_cast<std::size_t>(count);
    }
    errno = EIO;
    if (std::string_view(block).substr(0, size) != bytes) fail();
  }

  void sync_folder() {
    const int folder = ::open(path_.substr(0, path_.rfind('/')).c_str(), O_RDONLY | O_DIRECTORY);
    if (folder < 0 || ::fsync(folder) != 0) fail();
    ::close(folder);
  }

  [[noreturn]] void fail() {
    const int error = errno;
    if (file_ >= 0) ::close(file_);
    if (!in_place() && how_ != "temporary-left") ::unlink(temporary_.c_str());
    throw std::system_error(error, std::generic_category(), "can't save");
  }

  std::string_view how_;
  const std::string& path_;
  std::string temporary_;
  int file_ = -1;
};

}  // namespace

bool save_faultily(std::string_view how, const std::string& path, std::string_view bytes) {
  if (std::find(ways.begin(), ways.end(), how) == ways.end()) return false;
  FaultySave(how, path).run(bytes);
  return true;
}

}  // namespace seamtakt
