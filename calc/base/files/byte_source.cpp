#include "base/files/byte_source.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <stdexcept>
#include <system_error>
#include <utility>

#include "base/error.hpp"
#include "base/files/descriptor.hpp"

namespace seamtakt {

namespace {

[[noreturn]] void fail(const std::string& name, int error) {
  const bool absent = error == ENOENT || error == ENOTDIR || error == ENAMETOOLONG || error == ELOOP;
  if (absent) throw InputError(printable(name), "no such file"_word, "a log that can be read"_word);
  throw std::system_error(error, std::generic_category(), "can't read " + printable(name));
}

std::size_t read_some(int descriptor, char* to, std::size_t capacity, const std::string& name) {
  const ssize_t count = retried([&] { return ::read(descriptor, to, capacity); });
  if (count < 0) fail(name, errno);
  return static_cast<std::size_t>(count);
}

void require_regular(const std::string& path, const struct stat& status) {
  if (S_ISREG(status.st_mode)) return;
  throw InputError(printable(path), S_ISDIR(status.st_mode) ? "a directory"_word : "no regular file"_word,
                   "a regular file, or - for standard input"_word);
}

class FileBytes : public ByteSource {
 public:
  explicit FileBytes(const std::string& path) : path_(path) {
    struct stat status {};
    if (path.find('\0') != std::string::npos) fail(path, ENOENT);
    // Looked at before it is opened, since opening a FIFO or a device may wait or do something.
    if (::stat(path.c_str(), &status) != 0) fail(path, errno);
    require_regular(path, status);
    file_ = Descriptor(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));
    if (!file_.is_open()) fail(path, errno);
    if (::fstat(file_.get(), &status) != 0) fail(path, errno);
    require_regular(path, status);
    size_ = static_cast<std::uint64_t>(status.st_size);
    ::posix_fadvise(file_.get(), 0, 0, POSIX_FADV_SEQUENTIAL);
  }

  std::size_t read(char* to, std::size_t capacity) override {
    const std::size_t count = read_some(file_.get(), to, capacity, path_);
    taken_ += count;
    require_same_size(count, taken_);
    return count;
  }
  bool can_read_at() const override { return true; }
  std::size_t read_at(std::uint64_t offset, char* to, std::size_t capacity) override {
    const ssize_t count =
        retried([&] { return ::pread(file_.get(), to, capacity, static_cast<off_t>(offset)); });
    if (count < 0) fail(path_, errno);
    require_same_size(static_cast<std::size_t>(count), offset + static_cast<std::uint64_t>(count));
    return static_cast<std::size_t>(count);
  }
  std::uint64_t bytes_taken() const override { return taken_; }
  std::uint64_t bytes_total() const override { return size_; }

 private:
  /// Half a log would be judged as if it were the whole, so a file that changes under the reader is refused.
  void require_same_size(std::size_t count, std::uint64_t read_to) const {
    if (count == 0 ? read_to == size_ : read_to <= size_) return;
    throw InputError(printable(path_), "a file that changed while it was read"_word,
                     Sentence("file.size.as-opened"_key, {{"bytes", size_}}));
  }

  std::string path_;
  Descriptor file_;
  std::uint64_t size_ = 0, taken_ = 0;
};

class StandardInput : public ByteSource {
 public:
  std::size_t read(char* to, std::size_t capacity) override {
    const std::size_t count = read_some(STDIN_FILENO, to, capacity, "standard input");
    taken_ += count;
    return count;
  }
  std::uint64_t bytes_taken() const override { return taken_; }

 private:
  std::uint64_t taken_ = 0;
};

class MemoryBytes : public ByteSource {
 public:
  MemoryBytes(std::string bytes, std::size_t chunk) : bytes_(std::move(bytes)), chunk_(chunk) {}

  std::size_t read(char* to, std::size_t capacity) override {
    const std::size_t count = read_at(at_, to, chunk_ > 0 ? std::min(capacity, chunk_) : capacity);
    at_ += count;
    return count;
  }
  bool can_read_at() const override { return chunk_ == 0; }
  std::size_t read_at(std::uint64_t offset, char* to, std::size_t capacity) override {
    const std::size_t at = std::min<std::size_t>(offset, bytes_.size());
    const std::size_t count = std::min(capacity, bytes_.size() - at);
    std::memcpy(to, bytes_.data() + at, count);
    return count;
  }
  std::uint64_t bytes_taken() const override { return at_; }
  std::uint64_t bytes_total() const override { return bytes_.size(); }

 private:
  std::string bytes_;
  std::size_t chunk_, at_ = 0;
};

/// Gives back what was read ahead to look at, then the rest.
class WithHead : public ByteSource {
 public:
  WithHead(std::string head, std::unique_ptr<ByteSource> rest)
      : head_(std::move(head)), rest_(std::move(rest)) {}

  std::size_t read(char* to, std::size_t capacity) override {
    if (at_ == head_.size()) return rest_->read(to, capacity);
    const std::size_t count = std::min(capacity, head_.size() - at_);
    std::memcpy(to, head_.data() + at_, count);
    at_ += count;
    return count;
  }
  std::uint64_t bytes_taken() const override { return rest_->bytes_taken(); }
  std::uint64_t bytes_total() const override { return rest_->bytes_total(); }
  bool can_read_at() const override { return rest_->can_read_at(); }
  std::size_t read_at(std::uint64_t offset, char* to, std::size_t capacity) override {
    return rest_->read_at(offset, to, capacity);
  }

 private:
  std::string head_;
  std::size_t at_ = 0;
  std::unique_ptr<ByteSource> rest_;
};

std::string first_two_bytes(ByteSource& bytes) {
  std::string head;
  char next[2];
  while (head.size() < 2) {
    const std::size_t count = bytes.read(next, 2 - head.size());
    if (count == 0) break;
    head.append(next, count);
  }
  return head;
}

bool ends_in_gz(const std::string& path) {
  if (path.size() < 3) return false;
  const std::string end = path.substr(path.size() - 3);
  return end == ".gz" || end == ".GZ";
}

}  // namespace

std::size_t ByteSource::read_at(std::uint64_t, char*, std::size_t) {
  throw std::logic_error("bytes that come one after the other are read at a place");
}

std::unique_ptr<ByteSource> open_log_bytes(const std::string& path) {
  const bool standard_input = path == "-";
  std::unique_ptr<ByteSource> bytes;
  if (standard_input) {
    bytes = std::make_unique<StandardInput>();
  } else {
    bytes = std::make_unique<FileBytes>(path);
  }
  const std::string name = standard_input ? "standard input" : path;
  const std::string head = first_two_bytes(*bytes);
  bytes = std::make_unique<WithHead>(head, std::move(bytes));
  const bool is_gzip = head == "\x1f\x8b";
  if (standard_input ? is_gzip : ends_in_gz(path)) {
    if (!is_gzip)
      throw InputError(printable(name), "no gzip data"_word, "a gzip file, as its name says"_word);
    return gzip_bytes(std::move(bytes), name);
  }
  if (is_gzip)
    throw InputError(printable(name), "gzip data"_word, "CSV text, or a name that ends in .gz"_word);
  return bytes;
}

std::unique_ptr<ByteSource> memory_bytes(std::string bytes, std::size_t chunk) {
  return std::make_unique<MemoryBytes>(std::move(bytes), chunk);
}

}  // namespace seamtakt
