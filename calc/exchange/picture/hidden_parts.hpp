#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "exchange/picture/parallel_view.hpp"
#include "exchange/picture/solid_faces.hpp"

namespace seamtakt {

/// How much of a line is seen: all of it, through a translucent wall, or not.
enum class Sight : std::uint8_t { clear, veiled, hidden };

/// A part of a segment, as shares of its length.
struct SightPart {
  double from = 0, to = 1;
  Sight sight = Sight::clear;
};

/// A line that lies no deeper behind a face than this isn't hidden by it: a seam lies on its plates' faces.
inline constexpr double surface_mm = 1;
/// Nor one that is no further inside the face's picture; gaps of up to four times this between two faces that
/// hide it aren't seen.
inline constexpr double rim_mm = 0.05;

/// Finds where lines are hidden by faces, for one view after another. Exact for flat faces up to the two
/// allowances above: for each face a line's hidden part is one interval, bounded by the face's sides and its
/// plane. Lists keep their memory from view to view.
class HiddenParts {
 public:
  /// `faces` is only used here.
  void look(const SolidFaces& faces, const ParallelView& view);

  /// The segment's parts in order, each with another sight than the one before. Valid until the next call.
  std::span<const SightPart> of(const Point_mm& a, const Point_mm& b);

 private:
  struct Interval {
    double from, to;
  };
  struct Blocker {
    double left, right, low, high, nearest;  ///< box of its picture; depth of its nearest point
    Point_mm normal;
    double offset_mm;
    std::uint32_t first, count;
    bool is_outer;
  };
  /// A corner of a face, and the allowance at the side that follows.
  struct BlockerCorner {
    ViewPoint at;
    double rim_mm;
  };
  bool clip(const Blocker& blocker, const Point_mm& a, const Point_mm& b, const ViewPoint& at_a,
            const ViewPoint& at_b, Interval& hidden) const;
  static void merge(std::vector<Interval>& intervals, double least_gap);
  void add(double from, double to, Sight sight);

  ParallelView view_;
  std::vector<Blocker> blockers_;
  std::vector<BlockerCorner> corners_;
  std::vector<Interval> hidden_, veiled_;
  std::vector<SightPart> parts_;
};

}  // namespace seamtakt
