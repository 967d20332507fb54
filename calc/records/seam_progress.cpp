#include "records/seam_progress.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt {

namespace {

constexpr double least_move_mm = 0.2;
/// Two spans nearer than this follow on each other: the way between two projected positions.
constexpr double joint_mm = 0.5;
/// Spans kept apart; more of them are joined where they lie nearest.
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
  if (piece_ && (low_mm > piece_->high + joint_mm || high_mm < piece_->low - joint_mm)) finish_piece();
  if (!piece_) {
    piece_ = Span{low_mm, high_mm};
  } else {
    piece_->low = std::min(piece_->low, low_mm);
    piece_->high = std::max(piece_->high, high_mm);
  }
}

void SeamCoverage::finish_piece() {
  if (!piece_) return;
  Span span = *piece_;
  piece_.reset();
  const double whole = span.high - span.low;
  double added = 0;
  if (!closed_ || length_mm_ <= 0) {
    added = add(span);
  } else if (whole >= length_mm_) {
    added = add({0, length_mm_});
  } else {
    const double turns = std::floor(span.low / length_mm_) * length_mm_;
    span = {span.low - turns, span.high - turns};
    added = add({span.low, std::min(span.high, length_mm_)});
    if (span.high > length_mm_) added += add({0, span.high - length_mm_});
  }
  overlap_mm_ += whole - added;
}

/// Joins the span to those kept; returns what it adds to their length.
double SeamCoverage::add(Span span) {
  const double before = covered_mm();
  auto first = std::find_if(spans_.begin(), spans_.end(), [&](const Span& s) { return s.high >= span.low; });
  auto last = first;
  while (last != spans_.end() && last->low <= span.high) {
    span.low = std::min(span.low, last->low);
    span.high = std::max(span.high, last->high);
    ++last;
  }
  first = spans_.erase(first, last);
  spans_.insert(first, span);
  if (spans_.size() > most_spans) {
    std::size_t nearest = 1;
    for (std::size_t i = 2; i < spans_.size(); ++i)
      if (spans_[i].low - spans_[i - 1].high < spans_[nearest].low - spans_[nearest - 1].high) nearest = i;
    spans_[nearest - 1].high = spans_[nearest].high;
    spans_.erase(spans_.begin() + static_cast<std::ptrdiff_t>(nearest));
  }
  return covered_mm() - before;
}

double SeamCoverage::covered_mm() const {
  double sum = 0;
  for (const Span& span : spans_) sum += span.high - span.low;
  return sum;
}

}  // namespace seamtakt
