#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "exchange/picture/solid.hpp"

namespace seamtakt {

/// Sides of faces that aren't a solid's own, and those that always are drawn. A side from 0 on is drawn only
/// where the face of that index is turned away: the outline of something round.
inline constexpr int inner_side = -1, sharp_side = -2;

/// Of which part of a prism a face is.
enum class Wall : std::uint8_t { bottom, top, edge };

/// A flat convex part of a solid's surface.
struct SolidFace {
  Point_mm normal{0, 0, 0};            ///< unit vector, out of the solid
  double offset_mm = 0;                ///< normal . p of its points
  std::uint32_t first = 0, count = 0;  ///< its corners, anticlockwise as seen from outside
  std::uint32_t solid = 0;
  Wall wall = Wall::edge;
  bool is_outer = false;  ///< a large wall behind which all else lies: it is drawn translucent
};

/// Surfaces of solids as flat convex faces, kept in few lists so that a frame needs no memory of its own.
struct SolidFaces {
  std::vector<SolidFace> faces;
  std::vector<Point_mm> corners_mm;
  std::vector<int> sides;  ///< of the side from each corner to the next: see inner_side

  std::span<const Point_mm> corners_of(const SolidFace& face) const {
    return std::span(corners_mm).subspan(face.first, face.count);
  }
};

/// The faces of all solids. A wall is `is_outer` where at most 15 % of the other solids reach in front of it
/// (1 mm) and it has at least 3 % of the largest wall's area.
SolidFaces faces_of(const std::vector<Prism>& solids);

/// Solids that have a face within `near_mm` of the point, in no order of weight.
std::vector<std::uint32_t> solids_at(const SolidFaces& faces, const Point_mm& point, double near_mm);

}  // namespace seamtakt
