#include "base/files/ordered_output.hpp"

#include <algorithm>

namespace seamtakt {

void OrderedOutput::put(std::size_t index, const std::function<std::string_view()>& make) {
  const auto fail = [&] {
    const std::lock_guard guard(mutex_);
    end_ = std::min(end_, index);
    moved_on_.notify_all();
  };
  try {
    const std::string_view text = make();
    {
      std::unique_lock lock(mutex_);
      moved_on_.wait(lock, [&] { return next_ == index || index > end_; });
      if (next_ != index) return;
    }
    sink_(text);
  } catch (...) {
    fail();
    throw;
  }
  const std::lock_guard guard(mutex_);
  ++next_;
  moved_on_.notify_all();
}

}  // namespace seamtakt
