#include "base/files/temporary_file.hpp"
#include "base/files/digest.hpp"

#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/file.h>
#include <time.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <memory>
#include <random>
#include <system_error>
#include <vector>

#include "base/error.hpp"
#include "base/files/atomic_save.hpp"
#include "base/files/save_target.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t random_digits = 16;
constexpr std::string_view ending = ".tmp";

/// ".NAME." : what the names of all temporaries of `target` begin with.
std::string temporary_prefix(const std::string& target) {
  constexpr std::size_t longest_name = 255 - 2 - random_digits - ending.size();
  std::string name = name_of(target);
  if (name.size() > longest_name)
    name = name.substr(0, longest_name - 17) + "-" + sha256_hex(name).substr(0, 16);
  return "." + name + ".";
}

std::string random_hex() {
  std::random_device device;
  std::string text;
  while (text.size() < random_digits) text += "0123456789abcdef"[device() & 15];
  return text;
}

/// SIGXFSZ would end the program where a limit on file sizes is set. Held back, write() reports EFBIG
/// instead.
class FileSizeSignalHeld {
 public:
  FileSizeSignalHeld() {
    sigemptyset(&signal_);
    sigaddset(&signal_, SIGXFSZ);
    pthread_sigmask(SIG_BLOCK, &signal_, &before_);
  }
  ~FileSizeSignalHeld() {
    const timespec no_wait{};
    if (!sigismember(&before_, SIGXFSZ)) {
      sigtimedwait(&signal_, nullptr, &no_wait);
      pthread_sigmask(SIG_SETMASK, &before_, nullptr);
    }
  }
  FileSizeSignalHeld(const FileSizeSignalHeld&) = delete;
  FileSizeSignalHeld& operator=(const FileSizeSignalHeld&) = delete;

 private:
  sigset_t signal_, before_;
};

void remove_if_unlocked(const std::string& path) {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC));
  struct stat status {};
  if (!file.is_open() || ::fstat(file.get(), &status) != 0 || !S_ISREG(status.st_mode)) return;
  if (::flock(file.get(), LOCK_EX | LOCK_NB) == 0) ::unlink(path.c_str());
}

bool is_temporary_name(std::string_view name, std::string_view prefix) {
  if (name.size() != prefix.size() + random_digits + ending.size()) return false;
  if (!name.starts_with(prefix) || !name.ends_with(ending)) return false;
  const std::string_view digits = name.substr(prefix.size(), random_digits);
  return digits.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

}  // namespace

std::string new_temporary_path(const std::string& target) {
  return folder_of(target) + "/" + temporary_prefix(target) + random_hex() + std::string(ending);
}

void remove_stale_temporaries(const std::string& target) {
  const std::string folder = folder_of(target), prefix = temporary_prefix(target);
  const std::unique_ptr<DIR, int (*)(DIR*)> entries(::opendir(folder.c_str()), &::closedir);
  if (!entries) return;
  std::vector<std::string> stale;
  while (const dirent* entry = ::readdir(entries.get())) {
    if (is_temporary_name(entry->d_name, prefix)) stale.push_back(folder + "/" + entry->d_name);
  }
  for (const std::string& path : stale) remove_if_unlocked(path);
}

TemporaryFile::TemporaryFile(TemporaryFile&& other) noexcept
    : path_(std::exchange(other.path_, {})),
      target_(std::move(other.target_)),
      file_(std::move(other.file_)),
      lock_(std::move(other.lock_)),
      status_(other.status_) {}

TemporaryFile::~TemporaryFile() {
  if (!path_.empty()) retried([this] { return ::unlink(path_.c_str()); });
}

void TemporaryFile::fail(int error) const {
  throw std::system_error(error, std::generic_category(), "can't save " + printable(target_));
}

bool TemporaryFile::is_named(const std::string& path) const {
  struct stat now {};
  return ::stat(path.c_str(), &now) == 0 && now.st_dev == status_.st_dev && now.st_ino == status_.st_ino;
}

void TemporaryFile::rename_over(const std::string& path) {
  if (retried([&] { return ::rename(path_.c_str(), path.c_str()); }) != 0) {
    const int error = errno;
    // It may have been done although it was reported as failed (NFS, a signal).
    if (!is_named(path)) fail(error);
  }
  // One that was only said to be done leaves the temporary's name. Where both names have gone elsewhere,
  // another program has saved right after us.
  if (!is_named(path) && is_named(path_)) fail(EIO);
}

TemporaryFile TemporaryFile::adopt(const std::string& path) {
  TemporaryFile temporary(path);
  temporary.target_ = path;
  if (::stat(path.c_str(), &temporary.status_) != 0) temporary.fail(errno);
  return temporary;
}

TemporaryFile TemporaryFile::create(const std::string& target, const std::optional<struct stat>& old) {
  for (;;) {
    // Only the owner may read the new file while it is being written, until it has the old file's rights.
    const mode_t mode = old ? 0600 : 0666;
    const std::string path = new_temporary_path(target);
    constexpr int flags = O_RDWR | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC;
    const int file = retried([&] { return ::open(path.c_str(), flags, mode); });
    const int error = file < 0 ? errno : 0;
    if (error == EEXIST) continue;
    // Without a file there is no path to remove.
    TemporaryFile temporary(error != 0 ? std::string() : path);
    temporary.target_ = target;
    if (error != 0) temporary.fail(error);
    temporary.file_ = Descriptor(file);
    temporary.lock();
    if (::fstat(file, &temporary.status_) != 0) temporary.fail(errno);
    // Another program took it for a stale one before it was locked.
    if (temporary.status_.st_nlink == 0) continue;
    if (old) temporary.take_rights(*old);
    return temporary;
  }
}

void TemporaryFile::lock() {
  // The lock belongs to the open file, so it outlives the descriptor that close() ends.
  lock_ = Descriptor(::fcntl(file_.get(), F_DUPFD_CLOEXEC, 0));
  if (!lock_.is_open()) fail(errno);
  // File systems without locks answer with an error: then this temporary isn't mistaken for a stale one
  // either.
  retried([this] { return ::flock(file_.get(), LOCK_EX); });
}

void TemporaryFile::take_rights(const struct stat& old) {
  mode_t mode = old.st_mode & 07777;
  if (old.st_uid != status_.st_uid || old.st_gid != status_.st_gid) {
    const bool given = ::fchown(file_.get(), old.st_uid, old.st_gid) == 0 ||
                       ::fchown(file_.get(), static_cast<uid_t>(-1), old.st_gid) == 0;
    // Rights of the old group mustn't pass to another one, nor set-id bits to another owner.
    if (!given) mode &= static_cast<mode_t>(~(S_IRWXG | S_ISUID | S_ISGID));
  }
  if (retried([&] { return ::fchmod(file_.get(), mode); }) != 0) fail(errno);
}

void TemporaryFile::write(std::string_view bytes) {
  const FileSizeSignalHeld held;
  constexpr std::size_t largest_block = 1u << 30;
  while (!bytes.empty()) {
    const std::size_t block = std::min(bytes.size(), largest_block);
    const ssize_t count = retried([&] { return ::write(file_.get(), bytes.data(), block); });
    if (count < 0) fail(errno);
    if (count == 0) fail(EIO);
    bytes.remove_prefix(static_cast<std::size_t>(count));
  }
}

void TemporaryFile::make_durable() {
  if (retried([this] { return ::fsync(file_.get()); }) != 0) fail(errno);
}

void TemporaryFile::compare(std::string_view bytes) {
  ::posix_fadvise(file_.get(), 0, 0, POSIX_FADV_DONTNEED);
  std::vector<char> block(1u << 18);
  std::size_t at = 0;
  for (;;) {
    const ssize_t count =
        retried([&] { return ::pread(file_.get(), block.data(), block.size(), static_cast<off_t>(at)); });
    if (count < 0) fail(errno);
    if (count == 0) break;
    const auto size = static_cast<std::size_t>(count);
    if (size > bytes.size() - at || std::memcmp(block.data(), bytes.data() + at, size) != 0) fail(EIO);
    at += size;
  }
  if (at != bytes.size()) fail(EIO);
}

void TemporaryFile::close() {
  // After EINTR Linux has closed the file; its bytes are on the disk since make_durable().
  if (file_.close() != 0 && errno != EINTR) fail(errno);
}

}  // namespace seamtakt
