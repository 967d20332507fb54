#include "drawing/piece_chain.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt::drawing {

namespace {

constexpr double same_place_mm = 0.02;
/// Paths that turn by less go on in line; chords of a curve turn a little.
constexpr double in_line = 0.94;  ///< 20 degrees
constexpr double same_thickness_mm = 0.05;

struct End {
  gp_Pnt at;
  gp_Vec leaving;  ///< out of the path
};

End begin_of(const std::vector<gp_Pnt>& path) {
  return {path.front(), gp_Vec(path[1], path[0]).Normalized()};
}
End end_of(const std::vector<gp_Pnt>& path) {
  const std::size_t last = path.size() - 1;
  return {path[last], gp_Vec(path[last - 1], path[last]).Normalized()};
}
bool meet(const End& one, const End& other) {
  return one.at.Distance(other.at) < same_place_mm && one.leaving.Dot(other.leaving) < -in_line;
}

bool are_alike(const ChainedPiece& one, const ChainedPiece& other) {
  const auto same = [](const std::optional<double>& a, const std::optional<double>& b) {
    return a.has_value() == b.has_value() && (!a || std::abs(*a - *b) < same_thickness_mm);
  };
  const SideFlags &a = one.piece.flags, &b = other.piece.flags;
  return a.inner == b.inner && a.flare == b.flare && a.end == b.end && a.overlap == b.overlap &&
         a.flush == b.flush && one.piece.has_dihedral == other.piece.has_dihedral &&
         same(one.thickness_mm[0], other.thickness_mm[0]) && same(one.thickness_mm[1], other.thickness_mm[1]);
}

void append(SeamSide& side, std::vector<gp_Pnt> path) {
  side.path.insert(side.path.end(), path.begin() + 1, path.end());
}

SeamSide side_of(const ChainedPiece& first) {
  SeamSide side;
  side.path = first.piece.path;
  side.length_mm = first.piece.length_mm;
  if (first.piece.has_dihedral) side.dihedral_deg = first.piece.dihedral_deg;
  side.thickness_mm = first.thickness_mm;
  side.gap_least_mm = first.piece.gap_least_mm;
  side.gap_largest_mm = first.piece.gap_largest_mm;
  side.outward = first.piece.outward;
  side.flags = first.piece.flags;
  return side;
}

void take_in(SeamSide& side, const SeamPiece& piece) {
  side.length_mm += piece.length_mm;
  if (side.dihedral_deg) {
    (*side.dihedral_deg)[0] = std::min((*side.dihedral_deg)[0], piece.dihedral_deg[0]);
    (*side.dihedral_deg)[2] = std::max((*side.dihedral_deg)[2], piece.dihedral_deg[2]);
  }
  side.gap_least_mm = std::min(side.gap_least_mm, piece.gap_least_mm);
  side.gap_largest_mm = std::max(side.gap_largest_mm, piece.gap_largest_mm);
}

bool closes(const std::vector<gp_Pnt>& path) {
  return path.size() > 2 && path.front().Distance(path.back()) < same_place_mm;
}

/// The pieces that go on at either end of the side, one after the other.
void grow(SeamSide& side, std::vector<ChainedPiece>& rest, const ChainedPiece& kind) {
  for (bool has_grown = true; has_grown && !closes(side.path);) {
    has_grown = false;
    for (std::size_t i = 0; i < rest.size() && !has_grown; ++i) {
      if (!are_alike(kind, rest[i])) continue;
      std::vector<gp_Pnt> path = rest[i].piece.path;
      if (closes(path)) continue;
      const End front = begin_of(side.path), back = end_of(side.path);
      if (meet(back, end_of(path)) || meet(front, begin_of(path))) std::reverse(path.begin(), path.end());
      if (meet(back, begin_of(path))) {
        append(side, std::move(path));
      } else if (meet(front, end_of(path))) {
        std::swap(side.path, path);
        append(side, std::move(path));
      } else {
        continue;
      }
      take_in(side, rest[i].piece);
      rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
      has_grown = true;
    }
  }
}

}  // namespace

bool go_on_in_line(const SeamPiece& one, const SeamPiece& other) {
  for (const End& a : {begin_of(one.path), end_of(one.path)})
    for (const End& b : {begin_of(other.path), end_of(other.path)})
      if (meet(a, b)) return true;
  return false;
}

std::vector<SeamSide> chain(std::vector<ChainedPiece> pieces) {
  std::vector<SeamSide> sides;
  while (!pieces.empty()) {
    const ChainedPiece first = std::move(pieces.front());
    pieces.erase(pieces.begin());
    SeamSide side = side_of(first);
    grow(side, pieces, first);
    side.is_closed = closes(side.path);
    sides.push_back(std::move(side));
  }
  return sides;
}

}  // namespace seamtakt::drawing
