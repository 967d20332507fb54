#pragma once

#include <optional>

#include "plan/plan.hpp"

namespace seamtakt {

/// A torch that travels a straight line at constant speed.
struct TorchPiece {
  Point_mm from{}, to{};
  double start_s = 0, end_s = 0;
};

/// The least distance of two torches while both travel (mm); infinity where they never do at once.
/// Source: derived; exact: the distance between two points in straight uniform motion is least at an end of
/// the common time or where the relative velocity is at right angles to the line between them.
double least_distance_mm(const TorchPiece& a, const TorchPiece& b);

/// An open range of delays.
struct Delays {
  double from_s = 0, to_s = 0;
};

/// By how much `a` may not be delayed (s; below 0: be ahead) because the two torches would come nearer than
/// distance_mm while both travel; nullopt where they never do. Source: derived; exact to rounding. The points
/// in time (one of each torch) that are too near are a convex set, an ellipse or a strip cut by a rectangle,
/// so that the delays are one range, and its ends are at a corner, on an edge, or where the ellipse's tangent
/// is a line of equal delay.
std::optional<Delays> delays_too_near(const TorchPiece& a, const TorchPiece& b, double distance_mm);

}  // namespace seamtakt
