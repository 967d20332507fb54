#include "exchange/picture/solid_faces.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "exchange/picture/convex_pieces.hpp"
#include "exchange/picture/space.hpp"

namespace seamtakt {

namespace {

constexpr double least_outer_area = 0.03, most_in_front = 0.15, in_front_mm = 1;
/// Sides of a prism that turn by less than 35 degrees are of something round.
const double round_cosine = std::cos(35 * std::numbers::pi / 180);

class FaceMaker {
 public:
  FaceMaker(SolidFaces& made, const Prism& solid, std::size_t index)
      : made_(made),
        solid_(solid),
        index_(static_cast<std::uint32_t>(index)),
        w_(space::cross(solid.u, solid.v)) {}

  void make() {
    for (const ConvexPiece& piece : convex_pieces(solid_.outline_mm, solid_.holes_mm)) {
      cover(piece, Wall::top);
      cover(piece, Wall::bottom);
    }
    walls_along(solid_.outline_mm);
    for (std::vector<NumberPair> hole : solid_.holes_mm) {
      std::reverse(hole.begin(), hole.end());  // material is on the left of its sides too
      walls_along(hole);
    }
  }

 private:
  Point_mm point(const NumberPair& at, double height_mm) const {
    return space::plus(space::plus(solid_.origin_mm, space::times(height_mm, w_)),
                       space::plus(space::times(at[0], solid_.u), space::times(at[1], solid_.v)));
  }

  void begin(const Point_mm& normal, Wall wall) {
    SolidFace& face = made_.faces.emplace_back();
    face.normal = normal;
    face.first = static_cast<std::uint32_t>(made_.corners_mm.size());
    face.solid = index_;
    face.wall = wall;
  }

  void corner(const Point_mm& at, int side) {
    made_.corners_mm.push_back(at);
    made_.sides.push_back(side);
    SolidFace& face = made_.faces.back();
    if (face.count++ == 0) face.offset_mm = space::dot(face.normal, at);
  }

  void cover(const ConvexPiece& piece, Wall wall) {
    const std::size_t n = piece.corners_mm.size();
    begin(wall == Wall::top ? w_ : space::times(-1, w_), wall);
    for (std::size_t i = 0; i < n; ++i) {
      const std::size_t at = wall == Wall::top ? i : n - 1 - i;
      const std::size_t side = wall == Wall::top ? at : (at + n - 1) % n;
      corner(point(piece.corners_mm[at], wall == Wall::top ? solid_.height_mm : 0),
             piece.is_edge[side] ? sharp_side : inner_side);
    }
  }

  Point_mm way_of(const NumberPair& a, const NumberPair& b) const {
    return space::unit(space::plus(space::times(b[0] - a[0], solid_.u), space::times(b[1] - a[1], solid_.v)));
  }

  void walls_along(const std::vector<NumberPair>& loop) {
    const std::size_t n = loop.size();
    const int first = static_cast<int>(made_.faces.size());
    const auto way = [&](std::size_t i) { return way_of(loop[i % n], loop[(i + 1) % n]); };
    for (std::size_t i = 0; i < n; ++i) {
      const NumberPair &a = loop[i], &b = loop[(i + 1) % n];
      const auto side_to = [&](std::size_t neighbour) {
        return space::dot(way(i), way(neighbour)) > round_cosine ? first + static_cast<int>(neighbour % n)
                                                                 : sharp_side;
      };
      begin(space::cross(way(i), w_), Wall::edge);
      corner(point(a, 0), sharp_side);
      corner(point(b, 0), side_to(i + 1));
      corner(point(b, solid_.height_mm), sharp_side);
      corner(point(a, solid_.height_mm), side_to(i + n - 1));
    }
  }

  SolidFaces& made_;
  const Prism& solid_;
  std::uint32_t index_;
  Point_mm w_;
};

double area_mm2(const SolidFaces& faces, const SolidFace& face) {
  Point_mm twice{0, 0, 0};
  const auto corners = faces.corners_of(face);
  for (std::size_t i = 2; i < corners.size(); ++i)
    twice = space::plus(
        twice, space::cross(space::minus(corners[i - 1], corners[0]), space::minus(corners[i], corners[0])));
  return space::length(twice) / 2;
}

/// The box of each solid's corners along a direction is all that is needed to see what reaches in front.
bool reaches_in_front(const Prism& solid, const SolidFace& face) {
  const Point_mm w = space::cross(solid.u, solid.v);
  const double up = std::max(0.0, solid.height_mm * space::dot(w, face.normal));
  return std::any_of(solid.outline_mm.begin(), solid.outline_mm.end(), [&](const NumberPair& at) {
    const Point_mm p =
        space::plus(solid.origin_mm, space::plus(space::times(at[0], solid.u), space::times(at[1], solid.v)));
    return space::dot(p, face.normal) + up > face.offset_mm + in_front_mm;
  });
}

void find_outer_walls(SolidFaces& made, const std::vector<Prism>& solids) {
  // A wall is top or bottom of one solid; its area is that of all its faces.
  std::vector<double> area(solids.size(), 0);
  for (const SolidFace& face : made.faces)
    if (face.wall == Wall::top) area[face.solid] += area_mm2(made, face);
  const double largest = area.empty() ? 0 : *std::max_element(area.begin(), area.end());
  for (std::size_t i = 0; i < made.faces.size(); ++i) {
    SolidFace& face = made.faces[i];
    if (face.wall == Wall::edge || area[face.solid] < least_outer_area * largest) continue;
    if (i > 0 && made.faces[i - 1].solid == face.solid && i > 1 && made.faces[i - 2].solid == face.solid &&
        made.faces[i - 2].wall == face.wall) {
      face.is_outer = made.faces[i - 2].is_outer;  // another part of the same wall: covers come by turns
      continue;
    }
    std::size_t others = 0, in_front = 0;
    for (std::size_t k = 0; k < solids.size(); ++k) {
      if (k == face.solid) continue;
      ++others;
      in_front += reaches_in_front(solids[k], face);
    }
    face.is_outer =
        others > 0 && static_cast<double>(in_front) <= most_in_front * static_cast<double>(others);
  }
}

bool is_near(const SolidFaces& faces, const SolidFace& face, const Point_mm& point, double near_mm) {
  if (std::abs(space::dot(face.normal, point) - face.offset_mm) > near_mm) return false;
  const auto corners = faces.corners_of(face);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Point_mm way = space::unit(space::minus(corners[(i + 1) % corners.size()], corners[i]));
    if (space::dot(space::cross(face.normal, way), space::minus(point, corners[i])) < -near_mm) return false;
  }
  return true;
}

}  // namespace

SolidFaces faces_of(const std::vector<Prism>& solids) {
  SolidFaces made;
  for (std::size_t i = 0; i < solids.size(); ++i) FaceMaker(made, solids[i], i).make();
  find_outer_walls(made, solids);
  return made;
}

std::vector<std::uint32_t> solids_at(const SolidFaces& faces, const Point_mm& point, double near_mm) {
  std::vector<std::uint32_t> found;
  for (const SolidFace& face : faces.faces)
    if ((found.empty() || found.back() != face.solid) && is_near(faces, face, point, near_mm))
      found.push_back(face.solid);
  return found;
}

}  // namespace seamtakt
