#include <algorithm>
#include <cmath>

#include "formula/strength/distortion.hpp"
#include "plan/seam_geometry.hpp"
#include "records/measure/measure.hpp"

namespace seamtakt {

namespace {

using Vector = std::array<double, 3>;

Vector between(const Point_mm& from, const Point_mm& to) {
  return {to[0] - from[0], to[1] - from[1], to[2] - from[2]};
}
double dot(const Vector& a, const Vector& b) {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/// A length between two points, as the seams beside it see it.
struct Gauge {
  Point_mm from;
  Vector along;  ///< unit vector
  double length_mm;
};

/// Length of the seam's path that runs along the gauge, between its two points.
double run_along_mm(const Seam& seam, const Gauge& gauge) {
  double run = 0;
  for (std::size_t i = 1; i < seam.path_mm.size(); ++i) {
    const double a = dot(between(gauge.from, seam.path_mm[i - 1]), gauge.along);
    const double b = dot(between(gauge.from, seam.path_mm[i]), gauge.along);
    const double low = std::clamp(std::min(a, b), 0.0, gauge.length_mm);
    const double high = std::clamp(std::max(a, b), 0.0, gauge.length_mm);
    const double piece = distance_mm(seam.path_mm[i - 1], seam.path_mm[i]);
    // Steep pieces pull across the gauge rather than along it.
    if (piece > 0 && std::fabs(b - a) > 0.7 * piece) run += high - low;
  }
  return run;
}

/// Whether the seam is across the gauge, between its points.
bool lies_across(const Seam& seam, const Gauge& gauge) {
  const Vector way = between(seam.path_mm.front(), seam.path_mm.back());
  const double size = std::sqrt(dot(way, way));
  if (!(size > 0) || std::fabs(dot(way, gauge.along)) > 0.7 * size) return false;
  const double a = dot(between(gauge.from, seam.path_mm.front()), gauge.along);
  const double b = dot(between(gauge.from, seam.path_mm.back()), gauge.along);
  const double middle = (a + b) / 2;
  return middle > 0 && middle < gauge.length_mm;
}

}  // namespace

std::map<std::string, double> predicted_shortening_mm(const Weldment& weldment, const Evaluation& evaluation,
                                                      const Point_mm& from, const Point_mm& to) {
  std::map<std::string, double> by_seam;
  const Vector way = between(from, to);
  const double length = std::sqrt(dot(way, way));
  if (!(length > 0)) return by_seam;
  const Gauge gauge{from, {way[0] / length, way[1] / length, way[2] / length}, length};
  const auto section = weldment.section ? weldment.section->area_mm2 : std::nullopt;
  for (const Seam& seam : weldment.seams) {
    double heat = 0, area = 0;
    for (const PassEvaluation& pass : evaluation.passes)
      if (pass.weldment == weldment.id && pass.seam == seam.id) {
        heat = std::max(heat, pass.heat_input_kJ_mm);
        area += pass.deposit_area_mm2;
      }
    double change = 0;
    const double run = run_along_mm(seam, gauge);
    if (section && *section > 0 && run > 0 && heat > 0)
      change -= tendon_shortening_mm(tendon_force_kN(heat), run, steel_modulus_MPa, *section);
    const double thinner = *std::min_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
    if (seam.joint == "butt" && area > 0 && lies_across(seam, gauge))
      change -= butt_transverse_shrinkage_mm(area, thinner);
    if (change != 0) by_seam[seam.id] = change;
  }
  return by_seam;
}

}  // namespace seamtakt
