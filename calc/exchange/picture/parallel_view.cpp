#include "exchange/picture/parallel_view.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "exchange/picture/space.hpp"

namespace seamtakt {

ViewAngles angles_of(SnapView view) {
  switch (view) {
    case SnapView::front:
      return {0, 0};
    case SnapView::rear:
      return {180, 0};
    case SnapView::left:
      return {-90, 0};
    case SnapView::right:
      return {90, 0};
    case SnapView::above:
      return {0, 90};
    case SnapView::below:
      return {0, -90};
  }
  return {};
}

ParallelView::ParallelView(ViewAngles angles) {
  // Quarter turns are exact, so that a face that is edge-on stays so.
  const auto cosine = [](double deg) {
    const double turn = std::remainder(deg, 360);
    if (std::abs(turn) == 90) return 0.0;
    return std::cos(turn * std::numbers::pi / 180);
  };
  const auto sine = [&](double deg) { return cosine(deg - 90); };
  const double cy = cosine(angles.yaw_deg), sy = sine(angles.yaw_deg);
  const double cp = cosine(angles.pitch_deg), sp = sine(angles.pitch_deg);
  right = {cy, sy, 0};
  to_viewer = {cp * sy, -cp * cy, sp};
  up = {-sp * sy, sp * cy, cp};
}

ViewPoint ParallelView::at(const Point_mm& point) const {
  return {space::dot(right, point), space::dot(up, point), space::dot(to_viewer, point)};
}

void FitBox::add(const ViewPoint& point) {
  if (is_empty_) {
    left_ = right_ = point.x;
    low_ = high_ = point.y;
    is_empty_ = false;
  }
  left_ = std::min(left_, point.x);
  right_ = std::max(right_, point.x);
  low_ = std::min(low_, point.y);
  high_ = std::max(high_, point.y);
}

void FitBox::add(const ParallelView& view, std::span<const Point_mm> points) {
  for (const Point_mm& point : points) add(view.at(point));
}

ViewFit FitBox::fit(const FitRectangle& rectangle, double zoom) const {
  ViewFit fit;
  const double wide = right_ - left_, high = high_ - low_;
  if (wide > 0 || high > 0) {
    fit.scale = wide > 0 ? rectangle.width / wide : rectangle.height / high;
    if (high > 0) fit.scale = std::min(fit.scale, rectangle.height / high);
  }
  fit.scale = std::max(fit.scale, 1e-9) * zoom;
  fit.x = rectangle.x + rectangle.width / 2 - fit.scale * (left_ + right_) / 2;
  fit.y = rectangle.y + rectangle.height / 2 + fit.scale * (low_ + high_) / 2;
  return fit;
}

}  // namespace seamtakt
