#pragma once

#include <optional>
#include <vector>

#include "exchange/sheets/cell.hpp"
#include "plan/plan.hpp"

/// A joint's section with its weld, dimensions and runs, in mm: x to the right, y up, the root at the origin.
/// Source: the plan's own figures; the forms of grooves are those of formula/size/groove.hpp, the fillet's
/// triangle that of formula/size/fillet.hpp. How a run lies within the weld isn't in the plan: runs are
/// spread evenly, layer on layer from the root.
namespace seamtakt {

struct SketchPoint {
  double x_mm = 0, y_mm = 0;
};
using SketchOutline = std::vector<SketchPoint>;

/// A dimension line parallel to from-to, moved off along `away` by `off_mm` and room for itself.
struct SketchDimension {
  SketchPoint from, to;
  SketchPoint away;  ///< a direction of length 1
  double off_mm = 0;
  SheetCell text;
};

/// A text with a line that leads to it from `at`, along `towards`.
struct SketchNote {
  SketchPoint at;
  SketchPoint towards;  ///< a direction of length 1
  SheetCell text;
};

/// Where the number of a run is written.
struct SketchRun {
  SketchPoint at;
  int number = 1;
};

struct SketchedJoint {
  std::vector<SketchOutline> plates;
  SketchOutline weld;
  std::vector<SketchOutline> lines;  ///< arcs of angles
  std::vector<SketchDimension> dimensions;
  std::vector<SketchNote> notes;
  std::vector<SketchRun> runs;
};

/// More runs than these aren't numbered in a sketch.
inline constexpr std::size_t most_sketched_runs = 40;

/// The section of a seam with a fillet on a tee, corner or lap, or with a groove on a butt, tee or corner.
/// Nothing where the drawing has no such form: a fillet on a butt, a V groove on a tee, plates at less than
/// 20 or more than 160 deg to one another, or a size that is missing.
std::optional<SketchedJoint> joint_shape(const Seam& seam);

// A file each.
std::optional<SketchedJoint> fillet_shape(const Seam& seam);
std::optional<SketchedJoint> groove_shape(const Seam& seam);

/// How many runs are in each layer, from the root: 1, 2, 3, ...; one each where there are at most
/// `one_each_up_to` runs, as in a groove with steep walls.
std::vector<int> runs_in_layers(std::size_t count, std::size_t one_each_up_to);

}  // namespace seamtakt
