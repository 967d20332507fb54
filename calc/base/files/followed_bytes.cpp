#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <system_error>
#include <utility>

#include "base/error.hpp"
#include "base/files/byte_source.hpp"
#include "base/files/descriptor.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t step_bytes = 1u << 16;

/// A file that grows: given out in whole lines, since its last one may be half written.
class FollowedFile : public ByteSource {
 public:
  FollowedFile(const std::string& path, std::function<bool()> wait) : path_(path), wait_(std::move(wait)) {
    struct stat status {};
    file_ = Descriptor(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    if (!file_.is_open() && errno == ENOENT)
      throw InputError(printable(path), "no such file"_word, "a log to follow"_word);
    if (!file_.is_open() || ::fstat(file_.get(), &status) != 0)
      throw std::system_error(errno, std::generic_category(), "can't read " + printable(path));
    if (!S_ISREG(status.st_mode))
      throw InputError(printable(path), "no regular file"_word, "a regular file to follow"_word);
  }

  std::size_t read(char* to, std::size_t capacity) override {
    while (whole_ == 0) {
      if (read_on()) continue;
      require_not_shorter();
      if (ended_ || !wait_()) {
        // What was written while the last wait ended is taken too.
        if (std::exchange(ended_, true)) return 0;
      }
    }
    const std::size_t count = std::min(capacity, whole_);
    std::memcpy(to, held_.data(), count);
    held_.erase(0, count);
    whole_ -= count;
    return count;
  }
  std::uint64_t bytes_taken() const override { return taken_; }

 private:
  /// Whether the file has more bytes.
  bool read_on() {
    const std::size_t before = held_.size();
    held_.resize(before + step_bytes);
    ssize_t count = 0;
    do {
      count = ::read(file_.get(), held_.data() + before, step_bytes);
    } while (count < 0 && errno == EINTR);
    held_.resize(before + static_cast<std::size_t>(std::max<ssize_t>(count, 0)));
    if (count < 0) throw std::system_error(errno, std::generic_category(), "can't read " + printable(path_));
    taken_ += static_cast<std::uint64_t>(count);
    const std::size_t line_end = held_.rfind('\n');
    // A line that never ends is passed on for the reader to refuse.
    whole_ = held_.size() > 4 * step_bytes ? held_.size() : line_end == std::string::npos ? 0 : line_end + 1;
    return count > 0;
  }

  void require_not_shorter() const {
    struct stat status {};
    if (::fstat(file_.get(), &status) == 0 && static_cast<std::uint64_t>(status.st_size) >= taken_) return;
    throw InputError(printable(path_), "a file that became shorter"_word,
                     "a log that is only written on"_word);
  }

  std::string path_;
  std::function<bool()> wait_;
  Descriptor file_;
  std::string held_;
  std::size_t whole_ = 0;
  std::uint64_t taken_ = 0;
  bool ended_ = false;
};

}  // namespace

std::unique_ptr<ByteSource> followed_bytes(const std::string& path, std::function<bool()> wait) {
  return std::make_unique<FollowedFile>(path, std::move(wait));
}

}  // namespace seamtakt
