#include <algorithm>
#include <cmath>
#include <numbers>

#include "exchange/sketch/joint_shape.hpp"
#include "formula/size/fillet.hpp"
#include "formula/size/groove.hpp"

namespace seamtakt {

namespace {

constexpr int steps_of_curve = 12;

/// A circle's arc around `centre`, its angles from the x axis; both ends are points of it.
SketchOutline arc(const SketchPoint& centre, double radius_mm, double from_deg, double to_deg) {
  SketchOutline points;
  for (int i = 0; i <= steps_of_curve; ++i) {
    const double angle = radians(from_deg + (to_deg - from_deg) * i / steps_of_curve);
    points.push_back({centre.x_mm + radius_mm * std::cos(angle), centre.y_mm + radius_mm * std::sin(angle)});
  }
  return points;
}

/// Where a wall is at a height: a line through points that go up.
double wall_at(const SketchOutline& wall, double y_mm) {
  for (std::size_t i = 1; i < wall.size(); ++i) {
    const SketchPoint &a = wall[i - 1], &b = wall[i];
    if (y_mm <= b.y_mm && b.y_mm > a.y_mm)
      return a.x_mm + (b.x_mm - a.x_mm) * std::max(0.0, y_mm - a.y_mm) / (b.y_mm - a.y_mm);
  }
  return wall.back().x_mm;
}

/// Drawn as a butt: the left plate's root is at the origin, the right plate's one gap to the right, the face
/// above. On a tee or corner the prepared right plate stands on the left one.
class GrooveSketch {
 public:
  GrooveSketch(const Seam& seam, GrooveType type)
      : seam_(seam),
        groove_(*seam.groove),
        type_(type),
        left_mm_(seam.thickness_mm[0]),
        right_mm_(seam.thickness_mm[1]),
        depth_mm_(std::min(left_mm_, right_mm_)),
        is_tee_(seam.joint != "butt") {}

  SketchedJoint shape() {
    const double slope = is_v() ? std::tan(radians(groove_.angle_deg / 2)) : tangent();
    right_wall_ = wall(slope);
    left_wall_ = is_symmetric() ? mirrored(right_wall_) : SketchOutline{{0, 0}, {0, depth_mm_}};
    reach_mm_ = 1.2 * std::max(left_mm_, right_mm_) + right_wall_.back().x_mm - groove_.root_gap_mm;
    add_plates();
    add_weld();
    add_dimensions();
    add_angle();
    add_runs();
    if (is_tee_) turn_to_tee();
    return std::move(shape_);
  }

 private:
  bool is_v() const { return type_ == GrooveType::single_v || type_ == GrooveType::double_v; }
  bool is_symmetric() const { return is_v() || type_ == GrooveType::single_u; }
  bool is_double() const { return welded_faces(type_) == 2; }
  double tangent() const { return std::tan(radians(groove_.angle_deg)); }
  double gap_mm() const { return groove_.root_gap_mm; }
  /// The upper edge of the root face.
  double root_top_mm() const {
    return is_double() ? (depth_mm_ + groove_.root_face_mm) / 2 : groove_.root_face_mm;
  }

  /// The right wall, from below.
  SketchOutline wall(double slope) const {
    const double face_mm = groove_.root_face_mm, top_mm = depth_mm_;
    switch (type_) {
      case GrooveType::square:
        return {{gap_mm(), 0}, {gap_mm(), top_mm}};
      case GrooveType::single_v:
      case GrooveType::single_bevel:
        return {{gap_mm(), 0}, {gap_mm(), face_mm}, {gap_mm() + (top_mm - face_mm) * slope, top_mm}};
      case GrooveType::double_v:
      case GrooveType::double_bevel: {
        const double half_mm = (top_mm - face_mm) / 2;
        return {{gap_mm() + half_mm * slope, 0},
                {gap_mm(), half_mm},
                {gap_mm(), half_mm + face_mm},
                {gap_mm() + half_mm * slope, top_mm}};
      }
      case GrooveType::single_u:
        break;
    }
    return wall_of_u();
  }

  /// A root face, an arc that begins level, a straight wall; the arc alone where the groove isn't deeper.
  SketchOutline wall_of_u() const {
    const double radius_mm = groove_.root_radius_mm, face_mm = groove_.root_face_mm;
    const double deep_mm = depth_mm_ - face_mm;
    const double arc_mm = std::min(deep_mm, radius_mm * (1 - std::sin(radians(groove_.angle_deg))));
    SketchOutline points = {{gap_mm(), 0}};
    if (radius_mm > 0) {
      const double turn_deg = std::acos(1 - arc_mm / radius_mm) * 180 / std::numbers::pi;
      const SketchOutline curve = arc({gap_mm(), face_mm + radius_mm}, radius_mm, -90, turn_deg - 90);
      points.insert(points.end(), curve.begin(), curve.end());
    } else {
      points.push_back({gap_mm(), face_mm});
    }
    points.push_back({points.back().x_mm + (deep_mm - arc_mm) * tangent(), depth_mm_});
    return points;
  }

  SketchOutline mirrored(SketchOutline outline) const {
    for (SketchPoint& point : outline) point.x_mm = gap_mm() - point.x_mm;
    return outline;
  }

  void add_plate(SketchOutline outline, double thickness_mm, double end_mm) {
    if (thickness_mm > depth_mm_) outline.push_back({outline.back().x_mm, thickness_mm});
    outline.push_back({end_mm, thickness_mm});
    outline.push_back({end_mm, 0});
    shape_.plates.push_back(std::move(outline));
  }

  void add_plates() {
    add_plate(left_wall_, left_mm_, -reach_mm_);
    add_plate(right_wall_, right_mm_, gap_mm() + reach_mm_);
  }

  /// A parabola over the face, or below it (`up` -1).
  void add_cap(const SketchPoint& from, const SketchPoint& to, double up) {
    if (groove_.cap_height_mm <= 0) return;
    for (int i = 1; i < steps_of_curve; ++i) {
      const double along = static_cast<double>(i) / steps_of_curve, off = 2 * along - 1;
      shape_.weld.push_back({from.x_mm + along * (to.x_mm - from.x_mm),
                             from.y_mm + up * groove_.cap_height_mm * (1 - off * off)});
    }
  }

  void add_weld() {
    shape_.weld = left_wall_;
    add_cap(left_wall_.back(), right_wall_.back(), 1);
    shape_.weld.insert(shape_.weld.end(), right_wall_.rbegin(), right_wall_.rend());
    if (is_double()) add_cap(right_wall_.front(), left_wall_.front(), -1);
  }

  void add_note(const SketchPoint& at, const SketchPoint& towards, Word pattern, double value_mm) {
    if (value_mm > 0) shape_.notes.push_back({at, towards, PatternCell{pattern, {Measure{value_mm, "mm"}}}});
  }

  void add_dimensions() {
    const double right_end_mm = gap_mm() + reach_mm_;
    shape_.dimensions.push_back({{-reach_mm_, 0},
                                 {-reach_mm_, left_mm_},
                                 {-1, 0},
                                 0,
                                 PatternCell{"t1 {1}"_word, {Measure{left_mm_, "mm"}}}});
    shape_.dimensions.push_back({{right_end_mm, 0},
                                 {right_end_mm, right_mm_},
                                 {1, 0},
                                 0,
                                 PatternCell{"t2 {1}"_word, {Measure{right_mm_, "mm"}}}});
    const double face_middle_mm = root_top_mm() - groove_.root_face_mm / 2;
    if (gap_mm() > 0)
      shape_.dimensions.push_back({{0, root_top_mm() - groove_.root_face_mm},
                                   {gap_mm(), root_top_mm() - groove_.root_face_mm},
                                   {0, -1},
                                   root_top_mm() - groove_.root_face_mm,
                                   PatternCell{"g {1}"_word, {Measure{gap_mm(), "mm"}}}});
    add_note({gap_mm(), face_middle_mm}, {0.8, -0.6}, "c {1}"_word, groove_.root_face_mm);
    const double top_middle_mm = (left_wall_.back().x_mm + right_wall_.back().x_mm) / 2;
    add_note({top_middle_mm, depth_mm_ + groove_.cap_height_mm}, {0.8, 0.6}, "h {1}"_word,
             groove_.cap_height_mm);
    if (type_ == GrooveType::single_u)
      add_note(left_wall_[left_wall_.size() / 2], {-0.8, -0.6}, "R {1}"_word, groove_.root_radius_mm);
  }

  /// An arc above the face between the walls, or between the upright and the bevelled wall.
  void add_angle() {
    if (groove_.angle_deg <= 0 || type_ == GrooveType::square) return;
    SketchPoint apex{gap_mm(), root_top_mm()};
    double from_deg = 90, to_deg = 90 - groove_.angle_deg;
    if (is_v()) {
      apex = {gap_mm() / 2, root_top_mm() - gap_mm() / 2 / std::tan(radians(groove_.angle_deg / 2))};
      from_deg = 90 + groove_.angle_deg / 2;
      to_deg = 90 - groove_.angle_deg / 2;
    } else if (type_ == GrooveType::single_u) {
      apex = right_wall_[right_wall_.size() - 2];
    }
    const SketchPoint corner = right_wall_.back();
    const double radius_mm = std::hypot(corner.x_mm - apex.x_mm, corner.y_mm - apex.y_mm) +
                             groove_.cap_height_mm + 0.2 * depth_mm_;
    const SketchOutline curve = arc(apex, radius_mm, from_deg, to_deg);
    shape_.lines.push_back(curve);
    shape_.lines.push_back({is_v() ? left_wall_.back() : SketchPoint{apex.x_mm, depth_mm_}, curve.front()});
    shape_.lines.push_back({corner, curve.back()});
    shape_.notes.push_back({curve[curve.size() / 2], {-0.6, 0.8}, Measure{groove_.angle_deg, "deg"}});
  }

  void add_runs_between(double from_mm, double to_mm, std::size_t count, int& number) {
    constexpr std::size_t one_each_up_to = 4;
    const std::vector<int> layers = runs_in_layers(count, one_each_up_to);
    for (std::size_t layer = 0; layer < layers.size(); ++layer) {
      const double y_mm = from_mm + (to_mm - from_mm) * (static_cast<double>(layer) + 0.5) /
                                        static_cast<double>(layers.size());
      const double left = wall_at(left_wall_, y_mm), right = wall_at(right_wall_, y_mm);
      for (int i = 0; i < layers[layer]; ++i)
        shape_.runs.push_back({{left + (right - left) * (i + 0.5) / layers[layer], y_mm}, ++number});
    }
  }

  /// Of a groove with two faces, the first half of the runs is drawn above: the plan doesn't say.
  void add_runs() {
    const std::size_t count = std::min(seam_.schedules.size(), most_sketched_runs);
    const std::size_t above = is_double() ? (count + 1) / 2 : count;
    const double middle_mm = is_double() ? depth_mm_ / 2 : 0;
    int number = 0;
    add_runs_between(middle_mm, depth_mm_, above, number);
    add_runs_between(middle_mm, 0, count - above, number);
  }

  /// The face of the left plate becomes the ground on which the right one stands, the groove open to the
  /// right.
  void turn_to_tee() {
    const auto turned = [](const SketchPoint& point) { return SketchPoint{point.y_mm, point.x_mm}; };
    const auto placed = [&](const SketchPoint& point) {
      return SketchPoint{point.y_mm - depth_mm_, point.x_mm};
    };
    const auto place = [&](SketchOutline& outline) {
      std::transform(outline.begin(), outline.end(), outline.begin(), placed);
    };
    for (SketchOutline& outline : shape_.plates) place(outline);
    for (SketchOutline& outline : shape_.lines) place(outline);
    place(shape_.weld);
    for (SketchRun& run : shape_.runs) run.at = placed(run.at);
    for (SketchNote& note : shape_.notes) {
      note.at = placed(note.at);
      note.towards = turned(note.towards);
    }
    for (SketchDimension& dimension : shape_.dimensions) {
      dimension.from = placed(dimension.from);
      dimension.to = placed(dimension.to);
      dimension.away = turned(dimension.away);
    }
    lay_ground();
  }

  /// In place of the left plate, which would stand on its edge.
  void lay_ground() {
    const double left_mm = -depth_mm_ - (seam_.joint == "corner" ? 0 : reach_mm_);
    shape_.plates[0] = {{left_mm, -left_mm_}, {reach_mm_, -left_mm_}, {reach_mm_, 0}, {left_mm, 0}};
    shape_.dimensions[0].from = {reach_mm_, -left_mm_};
    shape_.dimensions[0].to = {reach_mm_, 0};
    shape_.dimensions[0].away = {1, 0};
  }

  const Seam& seam_;
  const Groove& groove_;
  GrooveType type_;
  double left_mm_, right_mm_, depth_mm_;
  bool is_tee_;
  double reach_mm_ = 0;
  SketchOutline left_wall_, right_wall_;
  SketchedJoint shape_;
};

}  // namespace

std::optional<SketchedJoint> groove_shape(const Seam& seam) {
  const auto type = groove_type_of(seam.groove->type);
  if (!type || seam.joint == "lap") return std::nullopt;
  const double thinner_mm = std::min(seam.thickness_mm[0], seam.thickness_mm[1]);
  if (seam.groove->root_face_mm > thinner_mm) return std::nullopt;
  if (seam.groove->angle_deg >= groove_angle_below_deg(*type)) return std::nullopt;
  const bool both_prepared =
      *type == GrooveType::single_v || *type == GrooveType::double_v || *type == GrooveType::single_u;
  if (seam.joint != "butt" && both_prepared) return std::nullopt;
  return GrooveSketch(seam, *type).shape();
}

}  // namespace seamtakt
