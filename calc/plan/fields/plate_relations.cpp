#include "plan/fields/plate_relations.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/units/units.hpp"

namespace seamtakt {

namespace {

constexpr double direction_tolerance = 1e-6;
constexpr std::size_t most_outline_corners = 2000;

double product_of(const Point_mm& a, const Point_mm& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

void check_unit_vector(const Point_mm& vector, const char* key, FieldPath& place) {
  const double length = std::sqrt(product_of(vector, vector));
  if (std::abs(length - 1) <= direction_tolerance) return;
  FieldPath::Step step(place, key);
  place.refuse(Sentence("relation.plate.length"_key, {{"length", UnitValue{length, "", 6}}}),
               "a vector of length 1 (within 1e-6)"_word);
}

void check_right_angle(const Plate& plate, FieldPath& place) {
  const double cosine = product_of(plate.u, plate.v);
  if (std::abs(cosine) <= direction_tolerance) return;
  FieldPath::Step step(place, "v");
  const double angle_deg = std::acos(std::clamp(cosine, -1.0, 1.0)) * 180 / std::numbers::pi;
  place.refuse(Sentence("relation.plate.angle"_key, {{"angle", UnitValue{angle_deg, "deg", 6}}}),
               "u and v at right angles (within 1e-6)"_word);
}

/// Twice the area of a triangle; its sign says on which side of a to b the point c is.
double side_of(const NumberPair& a, const NumberPair& b, const NumberPair& c) {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

bool is_in_box(const NumberPair& p, const NumberPair& a, const NumberPair& b) {
  return p[0] >= std::min(a[0], b[0]) && p[0] <= std::max(a[0], b[0]) && p[1] >= std::min(a[1], b[1]) &&
         p[1] <= std::max(a[1], b[1]);
}

/// Whether two sides have a point in common.
bool sides_meet(const NumberPair& a, const NumberPair& b, const NumberPair& c, const NumberPair& d) {
  const double c_side = side_of(a, b, c), d_side = side_of(a, b, d);
  const double a_side = side_of(c, d, a), b_side = side_of(c, d, b);
  if (((c_side > 0 && d_side < 0) || (c_side < 0 && d_side > 0)) &&
      ((a_side > 0 && b_side < 0) || (a_side < 0 && b_side > 0)))
    return true;
  return (c_side == 0 && is_in_box(c, a, b)) || (d_side == 0 && is_in_box(d, a, b)) ||
         (a_side == 0 && is_in_box(a, c, d)) || (b_side == 0 && is_in_box(b, c, d));
}

/// Whether the side that follows at b runs back over the one from a to b.
bool folds_back(const NumberPair& a, const NumberPair& b, const NumberPair& c) {
  return side_of(a, b, c) == 0 && (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) < 0;
}

struct OutlineCorner {
  NumberPair at;
  std::size_t index;  ///< in the file's list
};

std::vector<OutlineCorner> distinct_corners(const std::vector<NumberPair>& outline) {
  std::vector<OutlineCorner> corners;
  for (std::size_t i = 0; i < outline.size(); ++i)
    if (corners.empty() || corners.back().at != outline[i]) corners.push_back({outline[i], i});
  while (corners.size() > 1 && corners.front().at == corners.back().at) corners.pop_back();
  return corners;
}

void check_outline(const std::vector<NumberPair>& outline, FieldPath& place) {
  FieldPath::Step step(place, "outline_mm");
  if (outline.size() > most_outline_corners)
    place.refuse(
        Sentence("relation.plate.corners"_key, {{"count", static_cast<int>(outline.size())}}),
        Sentence("relation.plate.corners.at-most"_key, {{"most", static_cast<int>(most_outline_corners)}}));
  const std::vector<OutlineCorner> corners = distinct_corners(outline);
  const std::size_t n = corners.size();
  if (n < 3) place.refuse("an outline without area"_word, "three corners or more that lie apart"_word);
  const auto refuse = [&](std::size_t i, std::size_t k) {
    place.refuse(
        Sentence("relation.plate.crossing"_key, {{"first", static_cast<int>(corners[i].index + 1)},
                                                 {"second", static_cast<int>(corners[k].index + 1)}}),
        "an outline that neither crosses nor touches itself"_word);
  };
  for (std::size_t i = 0; i < n; ++i) {
    const NumberPair &a = corners[i].at, &b = corners[(i + 1) % n].at;
    if (folds_back(a, b, corners[(i + 2) % n].at)) refuse(i, (i + 1) % n);
    for (std::size_t k = i + 2; k < n; ++k)
      if ((k + 1) % n != i && sides_meet(a, b, corners[k].at, corners[(k + 1) % n].at)) refuse(i, k);
  }
}

}  // namespace

void check_plate_relations(const Weldment& weldment, FieldPath& place) {
  if (weldment.plates.empty()) return;
  FieldPath::Step key(place, "plates");
  for (std::size_t i = 0; i < weldment.plates.size(); ++i) {
    const Plate& plate = weldment.plates[i];
    FieldPath::Step element(place, i);
    check_unit_vector(plate.u, "u", place);
    check_unit_vector(plate.v, "v", place);
    check_right_angle(plate, place);
    check_outline(plate.outline_mm, place);
    FieldPath::Step holes(place, "holes");
    for (std::size_t k = 0; k < plate.holes.size(); ++k) {
      FieldPath::Step hole(place, k);
      check_outline(plate.holes[k].outline_mm, place);
    }
  }
}

}  // namespace seamtakt
