#pragma once

#include <unistd.h>

#include <cerrno>
#include <utility>

namespace seamtakt {

/// The result of a system call, repeated while it fails with EINTR.
template <class Call>
auto retried(Call call) {
  for (;;) {
    const auto result = call();
    if (result != -1 || errno != EINTR) return result;
  }
}

/// An open file descriptor that is closed when its owner is destroyed.
class Descriptor {
 public:
  explicit Descriptor(int number = -1) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }

  bool is_open() const { return number_ >= 0; }
  int get() const { return number_; }
  /// Closes now; what close() returned.
  int close() { return ::close(std::exchange(number_, -1)); }

 private:
  int number_;
};

}  // namespace seamtakt
