#pragma once

#include <poll.h>
#include <sys/inotify.h>
#include <unistd.h>

#include <array>
#include <string>

namespace seamtakt::test {

/// Tells when some program has read a file.
class ReadWatch {
 public:
  explicit ReadWatch(const std::string& path) : events_(inotify_init1(IN_NONBLOCK | IN_CLOEXEC)) {
    inotify_add_watch(events_, path.c_str(), IN_ACCESS);
  }
  ~ReadWatch() { close(events_); }
  ReadWatch(const ReadWatch&) = delete;
  ReadWatch& operator=(const ReadWatch&) = delete;

  /// Waits until bytes of it have been read since the last call; false where none are within `most_ms`.
  bool wait(int most_ms = 20000) {
    pollfd asked{events_, POLLIN, 0};
    if (poll(&asked, 1, most_ms) != 1) return false;
    std::array<char, 4096> seen;
    while (read(events_, seen.data(), seen.size()) > 0) {
    }
    return true;
  }

 private:
  int events_;
};

}  // namespace seamtakt::test
