#include "exchange/picture/solid.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

#include "exchange/picture/space.hpp"

namespace seamtakt {

namespace {

constexpr int round_corners = 24, chords_a_corner = 3;
constexpr double upright_cosine = 0.999;  ///< cosine to the vertical above which a tube is upright

double outline_area_mm2(const std::vector<NumberPair>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const NumberPair& a = outline[i];
    const NumberPair& b = outline[(i + 1) % outline.size()];
    twice += a[0] * b[1] - a[1] * b[0];
  }
  return twice / 2;
}

/// Without corners that repeat the one before, which would make sides without length.
std::vector<NumberPair> anticlockwise(std::vector<NumberPair> outline) {
  outline.erase(std::unique(outline.begin(), outline.end()), outline.end());
  while (outline.size() > 1 && outline.front() == outline.back()) outline.pop_back();
  if (outline_area_mm2(outline) < 0) std::reverse(outline.begin(), outline.end());
  return outline;
}

std::vector<NumberPair> circle_outline(double diameter_mm) {
  std::vector<NumberPair> outline;
  for (int i = 0; i < round_corners; ++i) {
    const double angle = 2 * std::numbers::pi * i / round_corners;
    outline.push_back({diameter_mm / 2 * std::cos(angle), diameter_mm / 2 * std::sin(angle)});
  }
  return outline;
}

std::vector<NumberPair> rounded_rectangle(double b_mm, double h_mm, double radius_mm) {
  const double r = std::clamp(radius_mm, 0.0, std::min(b_mm, h_mm) / 2);
  if (r <= 0)
    return {{-b_mm / 2, -h_mm / 2}, {b_mm / 2, -h_mm / 2}, {b_mm / 2, h_mm / 2}, {-b_mm / 2, h_mm / 2}};
  std::vector<NumberPair> outline;
  for (int corner = 0; corner < 4; ++corner) {
    const double x = (corner == 1 || corner == 2 ? -1 : 1) * (b_mm / 2 - r);
    const double y = (corner >= 2 ? -1 : 1) * (h_mm / 2 - r);
    for (int i = 0; i <= chords_a_corner; ++i) {
      const double angle = std::numbers::pi / 2 * (corner + static_cast<double>(i) / chords_a_corner);
      outline.push_back({x + r * std::cos(angle), y + r * std::sin(angle)});
    }
  }
  return outline;
}

/// Outline and bore of a tube's section; an empty outline where a size is missing.
std::pair<std::vector<NumberPair>, std::vector<NumberPair>> tube_outlines(const TubeSection& section) {
  const double wall_mm = section.t_mm.value_or(0);
  if (section.kind == "round" && section.d_mm) {
    const double bore_mm = *section.d_mm - 2 * wall_mm;
    return {circle_outline(*section.d_mm),
            wall_mm > 0 && bore_mm > 0 ? circle_outline(bore_mm) : std::vector<NumberPair>()};
  }
  if (section.kind == "rect" && section.b_mm && section.h_mm) {
    const double b_mm = *section.b_mm - 2 * wall_mm, h_mm = *section.h_mm - 2 * wall_mm;
    const double radius_mm = section.r_mm.value_or(0);
    return {rounded_rectangle(*section.b_mm, *section.h_mm, radius_mm),
            wall_mm > 0 && b_mm > 0 && h_mm > 0 ? rounded_rectangle(b_mm, h_mm, radius_mm - wall_mm)
                                                : std::vector<NumberPair>()};
  }
  return {};
}

std::vector<Prism> solids_of_tube(const Tube& tube) {
  if (tube.axis_mm.size() != 2 || !tube.section) return {};
  auto [outline, bore] = tube_outlines(*tube.section);
  const Point_mm way = space::minus(tube.axis_mm[1], tube.axis_mm[0]);
  Prism solid;
  solid.height_mm = space::length(way);
  if (outline.empty() || !(solid.height_mm > 0)) return {};
  const Point_mm along = space::unit(way);
  solid.id = tube.id;
  solid.origin_mm = tube.axis_mm[0];
  solid.u =
      std::abs(along[2]) > upright_cosine ? Point_mm{1, 0, 0} : space::unit(space::cross({0, 0, 1}, along));
  // At right angles to the axis also where that is nearly upright.
  solid.u = space::unit(space::minus(solid.u, space::times(space::dot(solid.u, along), along)));
  solid.v = space::cross(along, solid.u);
  solid.outline_mm = std::move(outline);
  if (!bore.empty()) solid.holes_mm.push_back(std::move(bore));
  return {std::move(solid)};
}

}  // namespace

std::vector<Prism> plan_solids(const Weldment& weldment) {
  std::vector<Prism> solids;
  for (const Plate& plate : weldment.plates) {
    if (plate.outline_mm.size() < 3 || outline_area_mm2(plate.outline_mm) == 0 || !(plate.thickness_mm > 0))
      continue;
    Prism solid{plate.id, plate.origin_mm,   plate.u, plate.v, anticlockwise(plate.outline_mm),
                {},       plate.thickness_mm};
    for (const Hole& hole : plate.holes)
      if (hole.outline_mm.size() >= 3 && outline_area_mm2(hole.outline_mm) != 0)
        solid.holes_mm.push_back(anticlockwise(hole.outline_mm));
    solids.push_back(std::move(solid));
  }
  for (const Tube& tube : weldment.tubes)
    for (Prism& solid : solids_of_tube(tube)) solids.push_back(std::move(solid));
  return solids;
}

std::vector<Prism> weldment_solids(const Weldment& weldment) {
  std::vector<Prism> solids = plan_solids(weldment);
  return solids.empty() ? guessed_solids(weldment) : solids;
}

}  // namespace seamtakt
