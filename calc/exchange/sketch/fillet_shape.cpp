#include <algorithm>
#include <cmath>

#include "exchange/sketch/joint_shape.hpp"
#include "formula/size/fillet.hpp"

namespace seamtakt {

namespace {

constexpr double least_angle_deg = 20, most_angle_deg = 160, right_angle_deg = 90;

/// A direction and a place in it: `along` times (cos, sin) of an angle.
SketchPoint polar(double along_mm, double angle_deg) {
  if (angle_deg == right_angle_deg) return {0, along_mm};
  return {along_mm * std::cos(radians(angle_deg)), along_mm * std::sin(radians(angle_deg))};
}

SketchPoint sum(const SketchPoint& a, const SketchPoint& b) {
  return {a.x_mm + b.x_mm, a.y_mm + b.y_mm};
}

class Fillet {
 public:
  explicit Fillet(const Seam& seam)
      : seam_(seam),
        is_lap_(seam.joint == "lap"),
        angle_deg_(is_lap_ ? right_angle_deg : seam.dihedral_deg),
        lower_mm_(seam.thickness_mm[0]),
        upper_mm_(seam.thickness_mm[1]) {
    leg_mm_ = seam.leg_mm ? *seam.leg_mm : fillet_leg_of_throat_mm(*seam.throat_mm, angle_deg_);
    throat_mm_ = seam.throat_mm ? *seam.throat_mm : fillet_throat_of_leg_mm(leg_mm_, angle_deg_);
    reach_mm_ = leg_mm_ + 0.8 * std::max(lower_mm_, upper_mm_);
  }

  SketchedJoint shape() {
    is_lap_ ? add_plates_of_lap() : add_plates_of_tee();
    shape_.weld = {{0, 0}, {leg_mm_, 0}, polar(leg_mm_, angle_deg_)};
    add_size();
    add_runs();
    return std::move(shape_);
  }

 private:
  void add_plate(double left_mm, double right_mm, double bottom_mm, double top_mm) {
    shape_.plates.push_back(
        {{left_mm, bottom_mm}, {right_mm, bottom_mm}, {right_mm, top_mm}, {left_mm, top_mm}});
  }

  void add_thickness(const SketchPoint& from, const SketchPoint& to, const SketchPoint& away, Word pattern,
                     double thickness_mm) {
    shape_.dimensions.push_back({from, to, away, 0, PatternCell{pattern, {Measure{thickness_mm, "mm"}}}});
  }

  void add_plates_of_lap() {
    const double right_mm = leg_mm_ + reach_mm_, left_mm = -leg_mm_ - reach_mm_, bottom_mm = seam_.gap_mm;
    add_plate(left_mm, right_mm, -lower_mm_, 0);
    add_plate(left_mm, 0, bottom_mm, bottom_mm + upper_mm_);
    add_thickness({right_mm, -lower_mm_}, {right_mm, 0}, {1, 0}, "t1 {1}"_word, lower_mm_);
    add_thickness({left_mm, bottom_mm}, {left_mm, bottom_mm + upper_mm_}, {-1, 0}, "t2 {1}"_word, upper_mm_);
    add_gap({left_mm, bottom_mm / 2}, {-0.8, -0.6});
  }

  /// The second plate ends parallel to the first, the gap above it.
  void add_plates_of_tee() {
    const double sine = polar(1, angle_deg_).y_mm, cosine = polar(1, angle_deg_).x_mm;
    const SketchPoint across{-upper_mm_ * sine, upper_mm_ * cosine};
    const double front_mm = seam_.gap_mm / sine, back_mm = (seam_.gap_mm - upper_mm_ * cosine) / sine;
    const double top_mm = std::max({leg_mm_, front_mm, back_mm}) + reach_mm_;
    const SketchPoint back = sum(polar(back_mm, angle_deg_), across), top = polar(top_mm, angle_deg_);
    const double heel_mm = std::min(back.x_mm, polar(front_mm, angle_deg_).x_mm);
    const double left_mm = seam_.joint == "corner" ? heel_mm : heel_mm - reach_mm_;
    const double right_mm = leg_mm_ + reach_mm_;
    add_plate(left_mm, right_mm, -lower_mm_, 0);
    shape_.plates.push_back({polar(front_mm, angle_deg_), top, sum(top, across), back});
    add_thickness({right_mm, -lower_mm_}, {right_mm, 0}, {1, 0}, "t1 {1}"_word, lower_mm_);
    add_thickness(sum(top, across), top, polar(1, angle_deg_), "t2 {1}"_word, upper_mm_);
    add_gap({back.x_mm, seam_.gap_mm / 2}, {-0.8, 0.6});
    if (angle_deg_ != right_angle_deg)
      shape_.notes.push_back({polar(leg_mm_ + 0.6 * reach_mm_, angle_deg_),
                              {1, 0},
                              PatternCell{"angle {1}"_word, {Measure{angle_deg_, "deg"}}}});
  }

  void add_gap(const SketchPoint& at, const SketchPoint& towards) {
    const double most_mm = seam_.gap_max_mm.value_or(seam_.gap_mm);
    if (most_mm <= 0) return;
    const SheetCell gap = most_mm > seam_.gap_mm ? SheetCell(MeasureRange{seam_.gap_mm, most_mm, "mm"})
                                                 : SheetCell(Measure{seam_.gap_mm, "mm"});
    shape_.notes.push_back({at, towards, PatternCell{"g {1}"_word, {gap}}});
  }

  /// What the drawing states is plain, what follows from it is in brackets.
  void add_size() {
    constexpr int derived_digits = 3;
    const SheetCell leg = seam_.leg_mm
                              ? PatternCell{"z {1}"_word, {Measure{leg_mm_, "mm"}}}
                              : PatternCell{"(z {1})"_word, {Measure{leg_mm_, "mm", derived_digits}}};
    const SheetCell throat = seam_.throat_mm
                                 ? PatternCell{"a {1}"_word, {Measure{throat_mm_, "mm"}}}
                                 : PatternCell{"(a {1})"_word, {Measure{throat_mm_, "mm", derived_digits}}};
    shape_.dimensions.push_back({{0, 0}, {leg_mm_, 0}, {0, -1}, lower_mm_, leg});
    // Across the face, from its middle.
    shape_.notes.push_back({polar(throat_mm_, angle_deg_ / 2), polar(1, angle_deg_ / 2), throat});
  }

  void add_runs() {
    const std::vector<int> layers = runs_in_layers(std::min(seam_.schedules.size(), most_sketched_runs), 1);
    const auto height = static_cast<double>(layers.size());
    int number = 0;
    for (std::size_t layer = 0; layer < layers.size(); ++layer) {
      const double along_mm =
          throat_mm_ * (static_cast<double>(layer) + centre_share(layers.size())) / height;
      const double half_width_mm = along_mm * std::tan(radians(angle_deg_ / 2));
      for (int i = 0; i < layers[layer]; ++i) {
        const double share = (2 * i + 1.0) / layers[layer] - 1;
        const SketchPoint off = polar(share * half_width_mm, angle_deg_ / 2 + right_angle_deg);
        shape_.runs.push_back({sum(polar(along_mm, angle_deg_ / 2), off), ++number});
      }
    }
  }

  /// A single run is numbered at the triangle's centre of area.
  static double centre_share(std::size_t layers) { return layers == 1 ? 2.0 / 3.0 : 0.6; }

  const Seam& seam_;
  bool is_lap_;
  double angle_deg_, lower_mm_, upper_mm_;
  double leg_mm_ = 0, throat_mm_ = 0, reach_mm_ = 0;
  SketchedJoint shape_;
};

}  // namespace

std::optional<SketchedJoint> fillet_shape(const Seam& seam) {
  const bool has_form = seam.joint == "tee" || seam.joint == "corner" || seam.joint == "lap";
  const bool is_open =
      seam.joint == "lap" || (seam.dihedral_deg >= least_angle_deg && seam.dihedral_deg <= most_angle_deg);
  if (!has_form || !is_open || (!seam.leg_mm && !seam.throat_mm)) return std::nullopt;
  return Fillet(seam).shape();
}

}  // namespace seamtakt
