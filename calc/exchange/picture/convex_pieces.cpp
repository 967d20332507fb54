#include "exchange/picture/convex_pieces.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <utility>

namespace seamtakt {

namespace {

struct LoopCorner {
  NumberPair at;
  char is_edge;  ///< of the side to the next corner
};
using CornerLoop = std::vector<LoopCorner>;

/// Twice the area of a triangle; positive where it is anticlockwise.
double twice_area(const NumberPair& a, const NumberPair& b, const NumberPair& c) {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/// Sides that turn by less count as straight: relative to the sides' lengths.
double turn_allowance(const NumberPair& a, const NumberPair& b, const NumberPair& c) {
  return 1e-12 * (std::hypot(b[0] - a[0], b[1] - a[1]) * std::hypot(c[0] - b[0], c[1] - b[1]));
}

bool is_convex_at(const NumberPair& a, const NumberPair& b, const NumberPair& c) {
  return twice_area(a, b, c) >= -turn_allowance(a, b, c);
}

template <class Loop, class At>
bool is_convex_loop(const Loop& loop, At at) {
  const std::size_t n = loop.size();
  for (std::size_t i = 0; i < n; ++i)
    if (!is_convex_at(at(loop[i]), at(loop[(i + 1) % n]), at(loop[(i + 2) % n]))) return false;
  // A star turns the same way at each corner too, but more than once round.
  double turned = 0;
  for (std::size_t i = 0; i < n; ++i) {
    const NumberPair &a = at(loop[i]), &b = at(loop[(i + 1) % n]), &c = at(loop[(i + 2) % n]);
    turned += std::atan2(twice_area(a, b, c), (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]));
  }
  return turned < 6.5;
}

/// Whether two sides cross at a point inside both.
bool sides_cross(const NumberPair& a, const NumberPair& b, const NumberPair& c, const NumberPair& d) {
  return twice_area(a, b, c) * twice_area(a, b, d) < 0 && twice_area(c, d, a) * twice_area(c, d, b) < 0;
}

bool crosses_loop(const NumberPair& a, const NumberPair& b, const CornerLoop& loop) {
  for (std::size_t i = 0; i < loop.size(); ++i)
    if (sides_cross(a, b, loop[i].at, loop[(i + 1) % loop.size()].at)) return true;
  return false;
}

/// Whether a cut from corner `i` towards `to` begins inside the loop.
bool begins_inside(const CornerLoop& loop, std::size_t i, const NumberPair& to) {
  const std::size_t n = loop.size();
  const NumberPair &before = loop[(i + n - 1) % n].at, &here = loop[i].at, &after = loop[(i + 1) % n].at;
  const bool left_of_first = twice_area(before, here, to) > 0,
             left_of_second = twice_area(here, after, to) > 0;
  return is_convex_at(before, here, after) ? left_of_first && left_of_second
                                           : left_of_first || left_of_second;
}

/// The loop with a clockwise hole in it, joined by a cut there and back.
void join_hole(CornerLoop& loop, const CornerLoop& hole, const std::vector<CornerLoop>& others) {
  std::size_t best_outer = 0, best_inner = 0;
  double nearest = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i < loop.size(); ++i)
    for (std::size_t k = 0; k < hole.size(); ++k) {
      const NumberPair &a = loop[i].at, &b = hole[k].at;
      const double apart = std::hypot(a[0] - b[0], a[1] - b[1]);
      if (apart >= nearest || !begins_inside(loop, i, b) || crosses_loop(a, b, loop) ||
          crosses_loop(a, b, hole))
        continue;
      if (std::any_of(others.begin(), others.end(),
                      [&](const CornerLoop& other) { return crosses_loop(a, b, other); }))
        continue;
      nearest = apart;
      best_outer = i;
      best_inner = k;
    }
  CornerLoop cut;
  cut.reserve(hole.size() + 2);
  for (std::size_t k = 0; k < hole.size(); ++k) cut.push_back(hole[(best_inner + k) % hole.size()]);
  cut.push_back({hole[best_inner].at, 0});
  cut.push_back(loop[best_outer]);
  loop[best_outer].is_edge = 0;
  loop.insert(loop.begin() + static_cast<std::ptrdiff_t>(best_outer) + 1, cut.begin(), cut.end());
}

bool is_in_triangle(const NumberPair& p, const NumberPair& a, const NumberPair& b, const NumberPair& c) {
  if (p == a || p == b || p == c) return false;
  return twice_area(a, b, p) >= 0 && twice_area(b, c, p) >= 0 && twice_area(c, a, p) >= 0;
}

bool is_ear(const CornerLoop& loop, std::size_t i) {
  const std::size_t n = loop.size();
  const NumberPair &a = loop[(i + n - 1) % n].at, &b = loop[i].at, &c = loop[(i + 1) % n].at;
  if (twice_area(a, b, c) <= turn_allowance(a, b, c)) return false;
  return std::none_of(loop.begin(), loop.end(),
                      [&](const LoopCorner& corner) { return is_in_triangle(corner.at, a, b, c); });
}

/// The corner to cut off: an ear, else the flattest one.
std::size_t next_ear(const CornerLoop& loop) {
  std::size_t flattest = 0;
  double least = std::numeric_limits<double>::max();
  for (std::size_t i = 0; i < loop.size(); ++i) {
    if (is_ear(loop, i)) return i;
    const std::size_t n = loop.size();
    const double area = std::abs(twice_area(loop[(i + n - 1) % n].at, loop[i].at, loop[(i + 1) % n].at));
    if (area < least) {
      least = area;
      flattest = i;
    }
  }
  return flattest;
}

std::vector<CornerLoop> triangles_of(CornerLoop loop) {
  std::vector<CornerLoop> triangles;
  while (loop.size() >= 3) {
    const std::size_t n = loop.size(), i = next_ear(loop);
    const std::size_t before = (i + n - 1) % n, after = (i + 1) % n;
    CornerLoop triangle{loop[before], loop[i], {loop[after].at, n == 3 ? loop[after].is_edge : char{0}}};
    if (twice_area(triangle[0].at, triangle[1].at, triangle[2].at) > 0)
      triangles.push_back(std::move(triangle));
    if (n == 3) break;
    loop[before].is_edge = 0;
    loop.erase(loop.begin() + static_cast<std::ptrdiff_t>(i));
  }
  return triangles;
}

/// The two loops as one over a side that both have and that isn't the polygon's own; nothing where the
/// result isn't convex.
std::optional<CornerLoop> joined_loop(const CornerLoop& a, const CornerLoop& b) {
  for (std::size_t i = 0; i < a.size(); ++i)
    for (std::size_t k = 0; k < b.size(); ++k) {
      if (a[i].is_edge || b[k].is_edge || a[i].at != b[(k + 1) % b.size()].at ||
          a[(i + 1) % a.size()].at != b[k].at)
        continue;
      CornerLoop whole;
      for (std::size_t step = 1; step < a.size(); ++step) whole.push_back(a[(i + step) % a.size()]);
      for (std::size_t step = 1; step < b.size(); ++step) whole.push_back(b[(k + step) % b.size()]);
      if (is_convex_loop(whole, [](const LoopCorner& corner) -> const NumberPair& { return corner.at; }))
        return whole;
    }
  return std::nullopt;
}

void join_where_convex(std::vector<CornerLoop>& loops) {
  for (std::size_t i = 0; i < loops.size(); ++i)
    for (std::size_t k = i + 1; k < loops.size();) {
      auto whole = joined_loop(loops[i], loops[k]);
      if (!whole) {
        ++k;
        continue;
      }
      loops[i] = std::move(*whole);
      loops.erase(loops.begin() + static_cast<std::ptrdiff_t>(k));
      k = i + 1;
    }
}

CornerLoop loop_of(const std::vector<NumberPair>& outline) {
  CornerLoop loop;
  for (const NumberPair& corner : outline)
    if (loop.empty() || loop.back().at != corner) loop.push_back({corner, 1});
  while (loop.size() > 1 && loop.front().at == loop.back().at) loop.pop_back();
  return loop;
}

}  // namespace

std::vector<ConvexPiece> convex_pieces(const std::vector<NumberPair>& outline,
                                       const std::vector<std::vector<NumberPair>>& holes) {
  CornerLoop loop = loop_of(outline);
  std::vector<CornerLoop> parts;
  const auto place = [](const LoopCorner& corner) -> const NumberPair& { return corner.at; };
  if (loop.size() < 3) return {};
  if (holes.empty() && is_convex_loop(loop, place)) {
    parts.push_back(std::move(loop));
  } else {
    std::vector<CornerLoop> waiting;
    for (const auto& hole : holes) {
      waiting.push_back(loop_of(hole));
      std::reverse(waiting.back().begin(), waiting.back().end());
    }
    while (!waiting.empty()) {
      const CornerLoop hole = std::move(waiting.back());
      waiting.pop_back();
      if (hole.size() >= 3) join_hole(loop, hole, waiting);
    }
    parts = triangles_of(std::move(loop));
    join_where_convex(parts);
  }
  std::vector<ConvexPiece> pieces;
  for (const CornerLoop& part : parts) {
    ConvexPiece& piece = pieces.emplace_back();
    for (const LoopCorner& corner : part) {
      piece.corners_mm.push_back(corner.at);
      piece.is_edge.push_back(corner.is_edge);
    }
  }
  return pieces;
}

}  // namespace seamtakt
