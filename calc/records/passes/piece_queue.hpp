#pragma once

#include <cstddef>
#include <cstdint>
#include <utility>
#include <vector>

namespace seamtakt {

/// Pieces that wait for what follows them. Time is divided into cells, and pieces that begin in the same cell
/// are joined: memory is bounded whatever the logging rate, and the joining doesn't depend on when a piece
/// arrived. At ordinary rates each interval has a cell of its own.
template <class Piece>
class PieceQueue {
 public:
  /// `join(earlier, later)` adds the later piece to the earlier one.
  template <class Join>
  void push(std::int64_t cell, const Piece& piece, const Join& join) {
    if (!empty() && waiting_.back().first == cell) return join(waiting_.back().second, piece);
    if (empty()) clear();
    if (first_ >= 1024 && 2 * first_ >= waiting_.size()) {
      waiting_.erase(waiting_.begin(), waiting_.begin() + static_cast<std::ptrdiff_t>(first_));
      first_ = 0;
    }
    waiting_.emplace_back(cell, piece);
  }
  bool empty() const { return first_ == waiting_.size(); }
  const Piece& front() const { return waiting_[first_].second; }
  void pop() { ++first_; }
  void clear() {
    waiting_.clear();
    first_ = 0;
  }
  /// Gives the memory back.
  void release() {
    waiting_ = {};
    first_ = 0;
  }

 private:
  std::vector<std::pair<std::int64_t, Piece>> waiting_;
  std::size_t first_ = 0;
};

}  // namespace seamtakt
