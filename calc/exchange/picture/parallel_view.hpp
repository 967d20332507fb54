#pragma once

#include <array>
#include <span>

#include "plan/plan.hpp"

namespace seamtakt {

/// From where one looks. Yaw turns round z: 0 from the front (against +y), 90 from the right (against -x).
/// Pitch rises: 90 is from above.
struct ViewAngles {
  double yaw_deg = 0, pitch_deg = 0;
  bool operator==(const ViewAngles&) const = default;
};

/// From the front, a little from the left and from above.
inline constexpr ViewAngles first_view{-32, 30};

enum class SnapView { front, rear, left, right, above, below };
inline constexpr std::array<SnapView, 6> snap_views = {SnapView::front, SnapView::rear,  SnapView::left,
                                                       SnapView::right, SnapView::above, SnapView::below};
ViewAngles angles_of(SnapView view);

/// A point of the picture: mm to the right and up, and towards the viewer.
struct ViewPoint {
  double x = 0, y = 0, depth = 0;
};

/// A parallel projection: lengths across the direction of view stay as they are.
struct ParallelView {
  explicit ParallelView(ViewAngles angles = first_view);

  ViewPoint at(const Point_mm& point) const;

  Point_mm right, up, to_viewer;  ///< unit vectors at right angles
};

/// How the picture's millimetres become units of a rectangle whose y goes down.
struct ViewFit {
  double scale = 1, x = 0, y = 0;  ///< at (x0, y0): x + scale * x0, y - scale * y0
};

struct FitRectangle {
  double x = 0, y = 0, width = 0, height = 0;
};

/// The largest scale at which all points lie in the rectangle, with their middle in its middle. `zoom`
/// enlarges from there. Points that all are one get a scale of 1.
class FitBox {
 public:
  void add(const ViewPoint& point);
  void add(const ParallelView& view, std::span<const Point_mm> points);
  ViewFit fit(const FitRectangle& rectangle, double zoom = 1) const;
  double width_mm() const { return right_ - left_; }
  double height_mm() const { return high_ - low_; }

 private:
  double left_ = 0, right_ = 0, low_ = 0, high_ = 0;
  bool is_empty_ = true;
};

}  // namespace seamtakt
