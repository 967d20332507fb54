#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/finding.hpp"
#include "plan/evaluate/evaluation.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Temperature to which lengths are brought (degC).
inline constexpr double measured_at_C = 20;

struct MeasuredPoint {
  std::string id;
  Point_mm at_mm{};    ///< as measured, in any frame
  double part_C = 20;  ///< of the part when it was measured
};

/// Reads points: `point, x_mm, y_mm, z_mm` and optionally `part_C`. InputError: a point twice, no number, a
/// part temperature outside -40 to 200 C.
std::vector<MeasuredPoint> load_measured_points(const std::string& path);
std::vector<MeasuredPoint> parse_measured_points(std::string_view csv, const std::string& file);

/// How much a seam's shrinkage explains of a deviation, were the seam to shrink `factor` times as predicted.
struct SeamShare {
  std::string seam;
  double factor = 0, share = 0;  ///< share: in the feature's unit
};

struct MeasuredFeature {
  std::string id, kind, unit;  ///< mm, or deg for an angle
  std::optional<double> nominal;
  double measured = 0;  ///< at 20 C
  std::optional<double> deviation, tolerance;
  std::optional<bool> within;
  std::optional<double> predicted;  ///< change of a length by the seams' shrinkage
  std::vector<SeamShare> hints;     ///< the greatest first, at most three
  std::optional<double> unexplained;
};

struct MeasureResult {
  std::vector<MeasuredFeature> features;
  Findings findings;
};

/// The points in the drawing's frame, as far as a plan tells it: turned so that the first two points of the
/// features (the first that differ) give the x direction and the third, off their line, the x-y plane;
/// moved so that the middle of their box is that of the seams'. Fewer than three such points: as they are.
std::vector<MeasuredPoint> aligned_with_seams(const std::vector<MeasuredPoint>& points,
                                              const Weldment& weldment);

/// Length, angle (at the second of three points) and straightness (greatest distance from the line between
/// first and last) of a weldment's features from measured points, at 20 C, against the tolerance class of the
/// drawing (ISO 13920: the letter of the kind in a class such as "BF"). Such features don't depend on how
/// part and drawing are aligned. Lengths are converted to 20 C with 12e-6 per kelvin, carbon steel (common
/// practice, no source). Predicted: shortening along a length by the seams beside it (tendon force over the
/// weldment's section) and by butt seams across it, the points aligned with the seams for that. Seams whose
/// shrinkage would explain the lengths' deviations are found by damped least squares over these responses, no
/// factor below 0: a hint, with the unexplained rest. A feature with a point that wasn't measured is a warn
/// finding.
MeasureResult measure(const Weldment& weldment, const Evaluation& evaluation,
                      const std::vector<MeasuredPoint>& points);

/// Change of each length feature's measure (mm, negative: shorter) by each seam, as predicted; seam by seam.
std::map<std::string, double> predicted_shortening_mm(const Weldment& weldment, const Evaluation& evaluation,
                                                      const Point_mm& from, const Point_mm& to);

}  // namespace seamtakt
