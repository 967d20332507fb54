#pragma once

#include <string>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// A plate or a tube as the picture has it: an outline with holes in the plane of u and v, drawn out along
/// u x v by `height_mm`.
struct Prism {
  std::string id;
  Point_mm origin_mm{0, 0, 0}, u{1, 0, 0}, v{0, 1, 0};
  std::vector<NumberPair> outline_mm;  ///< anticlockwise as seen against u x v
  std::vector<std::vector<NumberPair>> holes_mm;
  double height_mm = 0;
  bool is_guess = false;  ///< proposed from seams, not from the plan
};

/// The weldment's plates and tubes, in this order. A round tube is a polygon of 24 corners that lie on its
/// outer circle, corners of a rectangular one are rounded by three chords each; a tube with a wall is open.
/// Where the width of a rectangular tube points isn't said by the plan: it lies level, or along x where the
/// tube is upright. What has no area or no length is left out.
std::vector<Prism> plan_solids(const Weldment& weldment);

/// Rectangles through the seams that share a plate, by geometry alone: a guess, for a weldment without
/// plates. A plane counts where at least two pieces of seams that aren't parallel lie in it (1 mm) and less
/// than 60 mm apart; the rectangle is the box round such a group along its longest piece. Its thickness is
/// the least that its seams name; it goes from the plane away from the weldment's middle, or, between two
/// planes that are as far apart as a plate is thick, from one to the other. Nothing where the seams have more
/// than 1500 straight pieces. Common practice, no source.
std::vector<Prism> guessed_solids(const Weldment& weldment);

/// The plan's, or where it has none, those guessed.
std::vector<Prism> weldment_solids(const Weldment& weldment);

}  // namespace seamtakt
