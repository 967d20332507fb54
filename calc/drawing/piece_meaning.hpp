#pragma once

#include <optional>

#include "drawing/seam_side.hpp"

namespace seamtakt::drawing {

/// Across a part, where a piece of seam is: its thickness and the direction in which it is that thin.
struct LocalPlate {
  std::optional<double> thickness_mm;
  gp_Vec across;
};
LocalPlate own_plate(const Part& part, const SeamPiece& piece);
LocalPlate other_plate(const Part& part, const SeamPiece& piece);

/// How the two meet. standing: own's edge on the other's face; under: the other's edge on own's face.
enum class Meeting : char { standing, under, lap, butt, mitre };
Meeting meeting_of(const SeamPiece& piece, const LocalPlate& own, const LocalPlate& other);

/// Behind the standing part the other goes on by at least the standing one's thickness.
bool goes_on_behind(const std::vector<Part>& parts, const SeamPiece& piece, Meeting meeting,
                    const LocalPlate& own, const LocalPlate& other);

/// It runs across the end of a plate.
bool is_across_end(const std::vector<Part>& parts, const SeamPiece& piece, Meeting meeting);

/// ISO 6947, from where the weld's face looks and how the seam rises.
const char* position_of(const gp_Vec& up, const gp_Vec& along, const gp_Vec& outward, bool is_butt);

}  // namespace seamtakt::drawing
