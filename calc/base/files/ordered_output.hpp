#pragma once

#include <condition_variable>
#include <cstddef>
#include <functional>
#include <limits>
#include <memory>
#include <mutex>
#include <string_view>
#include <vector>

namespace seamtakt {

/// Receives a text piece by piece, in order, from one thread at a time. The piece is valid during the call.
using TextSink = std::function<void(std::string_view)>;

/// Puts the pieces made by several threads in order: each waits until those before it are written. The
/// threads must begin the pieces in ascending order from 0 (as those of a ThreadPool do), else a piece would
/// wait for one that no thread makes.
class OrderedOutput {
 public:
  explicit OrderedOutput(const TextSink& sink) : sink_(sink) {}

  /// Makes piece `index` and passes it on in its turn. If making or receiving a piece throws, this rethrows,
  /// and the pieces after it are dropped.
  void put(std::size_t index, const std::function<std::string_view()>& make);

 private:
  const TextSink& sink_;
  std::mutex mutex_;
  std::condition_variable moved_on_;
  std::size_t next_ = 0;
  std::size_t end_ = std::numeric_limits<std::size_t>::max();  ///< the first piece that failed
};

/// Objects that threads borrow and give back, so that their memory is reused.
template <class T>
class ObjectPool {
 public:
  std::unique_ptr<T> take() {
    const std::lock_guard guard(mutex_);
    if (spares_.empty()) return std::make_unique<T>();
    std::unique_ptr<T> spare = std::move(spares_.back());
    spares_.pop_back();
    return spare;
  }
  void give_back(std::unique_ptr<T> spare) {
    const std::lock_guard guard(mutex_);
    spares_.push_back(std::move(spare));
  }

 private:
  std::mutex mutex_;
  std::vector<std::unique_ptr<T>> spares_;
};

}  // namespace seamtakt
