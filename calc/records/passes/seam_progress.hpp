#pragma once

#include <optional>
#include <vector>

#include "plan/seam_geometry.hpp"
#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// The torch's position along a seam's path, tracked from sample to sample. On a closed path the distance
/// continues past the path's length, so that a weld over the joint has no jump.
class SeamTracker {
 public:
  /// Smaller moves are accumulated.
  static constexpr double least_move_mm = 0.2;

  explicit SeamTracker(const Seam& seam);

  /// Moves to a torch position. Small moves are accumulated (they are projected once they sum to
  /// least_move_mm) unless `now`. Returns the distance along the path.
  double move_to(const Point_mm& torch, bool now);
  /// The next position starts over: nothing is known of the way to it.
  void lift() { along_.reset(); }
  /// Whether the last move can't have been made along the path: the projection sprang to another part of it.
  bool sprang() const { return sprang_; }

  bool closed() const { return closed_; }
  double length_mm() const { return length_mm_; }
  /// Mean distance between torch and path of the positions projected; 0 where there were none.
  double mean_off_mm() const { return count_ > 0 ? off_sum_mm_ / static_cast<double>(count_) : 0; }

 private:
  const Seam& seam_;
  bool closed_;
  double length_mm_;
  std::optional<double> along_;
  Point_mm at_{};
  bool sprang_ = false;
  double off_sum_mm_ = 0;
  std::size_t count_ = 0;
};

/// The parts of a seam that have been passed with the arc on, each counted once.
class SeamCoverage {
 public:
  /// closed: the path is a ring of this length.
  SeamCoverage(double length_mm, bool closed) : length_mm_(length_mm), closed_(closed) {}

  /// A span passed (low <= high), following on the last one unless it is separate from it.
  void pass(double low_mm, double high_mm);
  /// The arc goes out, or the torch jumps.
  void finish_piece();

  double covered_mm() const;
  /// Apart from one another, rising.
  const std::vector<WeldedSpan>& spans() const { return spans_; }
  /// Welded again over what had been welded before.
  double overlap_mm() const { return overlap_mm_; }

 private:
  double add(WeldedSpan span);

  double length_mm_;
  bool closed_;
  std::optional<WeldedSpan> piece_;
  std::vector<WeldedSpan> spans_;
  double overlap_mm_ = 0;
};

}  // namespace seamtakt
