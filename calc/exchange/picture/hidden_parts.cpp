#include "exchange/picture/hidden_parts.hpp"

#include <algorithm>
#include <cmath>

#include "exchange/picture/space.hpp"

namespace seamtakt {

namespace {

constexpr double least_turned_to_viewer = 1e-6;
/// Shares of a line that are less are nothing.
constexpr double least_share = 1e-9;

/// The wall of a prism that meets the wall `at` along its side 1 (`is_next`) or 3; `at` where there is none.
/// Walls of a loop are in order, so it is beside this one, or at the loop's other end.
std::size_t wall_beside(const SolidFaces& faces, std::size_t at, bool is_next) {
  const auto meets = [&](std::size_t k) {
    const SolidFace &face = faces.faces[at], &other = faces.faces[k];
    return other.wall == Wall::edge && other.solid == face.solid &&
           faces.corners_mm[other.first + (is_next ? 0 : 1)] ==
               faces.corners_mm[face.first + (is_next ? 1 : 0)];
  };
  const std::size_t n = faces.faces.size();
  const auto before = [&] {
    for (std::size_t k = at; k-- > 0 && faces.faces[k].solid == faces.faces[at].solid;)
      if (meets(k)) return k;
    return at;
  };
  const auto after = [&] {
    for (std::size_t k = at + 1; k < n && faces.faces[k].solid == faces.faces[at].solid; ++k)
      if (meets(k)) return k;
    return at;
  };
  if (is_next) return at + 1 < n && meets(at + 1) ? at + 1 : before();
  return at > 0 && meets(at - 1) ? at - 1 : after();
}

/// Whether the solid goes on beyond a side in another face that is turned to the viewer: the side isn't on
/// the solid's outline then. Covers and walls of a prism are at right angles to each other.
bool goes_on(const SolidFaces& faces, std::size_t at, std::uint32_t side, const Point_mm& to_viewer) {
  const SolidFace& face = faces.faces[at];
  if (face.wall == Wall::edge && side % 2 == 1) {
    const std::size_t beside = wall_beside(faces, at, side == 1);
    return beside != at && space::dot(faces.faces[beside].normal, to_viewer) >= least_turned_to_viewer;
  }
  const auto corners = faces.corners_of(face);
  const Point_mm way = space::unit(space::minus(corners[(side + 1) % corners.size()], corners[side]));
  return space::dot(space::cross(way, face.normal), to_viewer) >= least_turned_to_viewer;
}

}  // namespace

void HiddenParts::look(const SolidFaces& faces, const ParallelView& view) {
  view_ = view;
  blockers_.clear();
  corners_.clear();
  for (std::size_t at_face = 0; at_face < faces.faces.size(); ++at_face) {
    const SolidFace& face = faces.faces[at_face];
    if (space::dot(face.normal, view.to_viewer) < least_turned_to_viewer) continue;
    Blocker blocker{1e300,      -1e300,       1e300,          -1e300,
                    -1e300,     face.normal,  face.offset_mm, static_cast<std::uint32_t>(corners_.size()),
                    face.count, face.is_outer};
    for (std::uint32_t i = face.first; i < face.first + face.count; ++i) {
      const ViewPoint at = view.at(faces.corners_mm[i]);
      blocker.left = std::min(blocker.left, at.x);
      blocker.right = std::max(blocker.right, at.x);
      blocker.low = std::min(blocker.low, at.y);
      blocker.high = std::max(blocker.high, at.y);
      blocker.nearest = std::max(blocker.nearest, at.depth);
      // Where one face goes on in another there is no rim.
      const bool is_rim =
          faces.sides[i] != inner_side && !goes_on(faces, at_face, i - face.first, view.to_viewer);
      corners_.push_back({at, is_rim ? rim_mm : 0});
    }
    blockers_.push_back(blocker);
  }
}

/// What of the segment is behind the face's plane and within each of its sides.
bool HiddenParts::clip(const Blocker& blocker, const Point_mm& a, const Point_mm& b, const ViewPoint& at_a,
                       const ViewPoint& at_b, Interval& hidden) const {
  double from = 0, to = 1;
  const auto keep_above_zero = [&](double value_a, double value_b) {
    if (value_a <= 0 && value_b <= 0) return false;
    if (value_a <= 0) from = std::max(from, value_a / (value_a - value_b));
    if (value_b <= 0) to = std::min(to, value_a / (value_a - value_b));
    return to - from > least_share;
  };
  if (!keep_above_zero(blocker.offset_mm - space::dot(blocker.normal, a) - surface_mm,
                       blocker.offset_mm - space::dot(blocker.normal, b) - surface_mm))
    return false;
  for (std::uint32_t i = 0; i < blocker.count; ++i) {
    const BlockerCorner& corner = corners_[blocker.first + i];
    const ViewPoint& c = corner.at;
    const ViewPoint& d = corners_[blocker.first + (i + 1 == blocker.count ? 0 : i + 1)].at;
    const double x = d.x - c.x, y = d.y - c.y, rim = corner.rim_mm * std::sqrt(x * x + y * y);
    if (!keep_above_zero(x * (at_a.y - c.y) - y * (at_a.x - c.x) - rim,
                         x * (at_b.y - c.y) - y * (at_b.x - c.x) - rim))
      return false;
  }
  hidden = {from, to};
  return true;
}

void HiddenParts::merge(std::vector<Interval>& intervals, double least_gap) {
  std::sort(intervals.begin(), intervals.end(),
            [](const Interval& a, const Interval& b) { return a.from < b.from; });
  std::size_t kept = 0;
  for (const Interval& next : intervals) {
    // Two faces that meet leave their rims between them.
    if (kept > 0 && next.from <= intervals[kept - 1].to + least_gap)
      intervals[kept - 1].to = std::max(intervals[kept - 1].to, next.to);
    else
      intervals[kept++] = next;
  }
  intervals.resize(kept);
}

void HiddenParts::add(double from, double to, Sight sight) {
  if (to - from <= least_share) return;
  if (!parts_.empty() && parts_.back().sight == sight)
    parts_.back().to = to;
  else
    parts_.push_back({from, to, sight});
}

std::span<const SightPart> HiddenParts::of(const Point_mm& a, const Point_mm& b) {
  const ViewPoint at_a = view_.at(a), at_b = view_.at(b);
  const double left = std::min(at_a.x, at_b.x), right = std::max(at_a.x, at_b.x);
  const double low = std::min(at_a.y, at_b.y), high = std::max(at_a.y, at_b.y);
  const double deepest = std::min(at_a.depth, at_b.depth);
  hidden_.clear();
  veiled_.clear();
  for (const Blocker& blocker : blockers_) {
    if (blocker.left > right || blocker.right < left || blocker.low > high || blocker.high < low ||
        blocker.nearest < deepest)
      continue;
    Interval interval{};
    if (clip(blocker, a, b, at_a, at_b, interval)) (blocker.is_outer ? veiled_ : hidden_).push_back(interval);
  }
  const double long_mm = std::hypot(at_b.x - at_a.x, at_b.y - at_a.y);
  const double least_gap = long_mm > 0 ? std::max(least_share, 4 * rim_mm / long_mm) : least_share;
  merge(hidden_, least_gap);
  merge(veiled_, least_gap);
  parts_.clear();
  const auto clear_and_veiled = [&](double from, double to) {
    double at = from;
    for (const Interval& veil : veiled_) {
      const double begin = std::clamp(veil.from, at, to), end = std::clamp(veil.to, at, to);
      add(at, begin, Sight::clear);
      add(begin, end, Sight::veiled);
      at = std::max(at, end);
    }
    add(at, to, Sight::clear);
  };
  double at = 0;
  for (const Interval& gone : hidden_) {
    clear_and_veiled(at, gone.from);
    add(gone.from, gone.to, Sight::hidden);
    at = gone.to;
  }
  clear_and_veiled(at, 1);
  return parts_;
}

}  // namespace seamtakt
