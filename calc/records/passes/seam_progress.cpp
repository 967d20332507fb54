#include "records/passes/seam_progress.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt {

namespace {

/// Two spans nearer than this follow on each other: the way between two projected positions.
constexpr double joint_mm = 0.5;
/// Spans kept apart; more of them are joined where they are nearest.
constexpr std::size_t most_spans = 1024;

}  // namespace

SeamTracker::SeamTracker(const Seam& seam)
    : seam_(seam), closed_(is_closed(seam)), length_mm_(path_length_mm(seam)) {}

double SeamTracker::move_to(const Point_mm& torch, bool now) {
  sprang_ = false;
  if (along_ && !now && distance_mm(at_, torch) < least_move_mm) return *along_;
  const Projection projection = project(seam_, torch);
  off_sum_mm_ += projection.off_mm;
  ++count_;
  double along = projection.along_mm;
  if (along_) {
    if (closed_ && length_mm_ > 0) along += length_mm_ * std::round((*along_ - along) / length_mm_);
    // The foot of the torch can't move much further than the torch, except round a corner's outside.
    sprang_ = std::fabs(along - *along_) > 3 * distance_mm(at_, torch) + 2 * projection.off_mm + 1;
  }
  along_ = along;
  at_ = torch;
  return along;
}

void SeamCoverage::pass(double low_mm, double high_mm) {
  if (piece_ && (low_mm > piece_->to_mm + joint_mm || high_mm < piece_->from_mm - joint_mm)) finish_piece();
  if (!piece_) {
    piece_ = WeldedSpan{low_mm, high_mm};
  } else {
    piece_->from_mm = std::min(piece_->from_mm, low_mm);
    piece_->to_mm = std::max(piece_->to_mm, high_mm);
  }
}

void SeamCoverage::finish_piece() {
  if (!piece_) return;
  WeldedSpan span = *piece_;
  piece_.reset();
  const double whole = span.to_mm - span.from_mm;
  double added = 0;
  if (!closed_ || length_mm_ <= 0) {
    added = add(span);
  } else if (whole >= length_mm_) {
    added = add({0, length_mm_});
  } else {
    const double turns = std::floor(span.from_mm / length_mm_) * length_mm_;
    span = {span.from_mm - turns, span.to_mm - turns};
    added = add({span.from_mm, std::min(span.to_mm, length_mm_)});
    if (span.to_mm > length_mm_) added += add({0, span.to_mm - length_mm_});
  }
  overlap_mm_ += whole - added;
}

/// Joins the span to those kept; returns what it adds to their length.
double SeamCoverage::add(WeldedSpan span) {
  const double before = covered_mm();
  auto first = std::find_if(spans_.begin(), spans_.end(),
                            [&](const WeldedSpan& s) { return s.to_mm >= span.from_mm; });
  auto last = first;
  while (last != spans_.end() && last->from_mm <= span.to_mm) {
    span.from_mm = std::min(span.from_mm, last->from_mm);
    span.to_mm = std::max(span.to_mm, last->to_mm);
    ++last;
  }
  first = spans_.erase(first, last);
  spans_.insert(first, span);
  if (spans_.size() > most_spans) {
    std::size_t nearest = 1;
    for (std::size_t i = 2; i < spans_.size(); ++i)
      if (spans_[i].from_mm - spans_[i - 1].to_mm < spans_[nearest].from_mm - spans_[nearest - 1].to_mm)
        nearest = i;
    spans_[nearest - 1].to_mm = spans_[nearest].to_mm;
    spans_.erase(spans_.begin() + static_cast<std::ptrdiff_t>(nearest));
  }
  return covered_mm() - before;
}

double SeamCoverage::covered_mm() const {
  double sum = 0;
  for (const WeldedSpan& span : spans_) sum += span.to_mm - span.from_mm;
  return sum;
}

}  // namespace seamtakt
