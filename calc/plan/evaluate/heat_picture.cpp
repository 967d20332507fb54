#include "plan/evaluate/heat_picture.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt {

namespace {

constexpr double farthest_mm = 5000;
constexpr int halvings = 60;

double surface_C(const MovingSource<double>& source, double thickness_mm, double ahead_mm, double aside_mm) {
  // At the arc itself the formula has no value: a hundredth of a millimetre is inside the pool anyway.
  if (std::hypot(ahead_mm, aside_mm) < 0.01) return steel_melting_C;
  const double at = plate_temperature_C(source, FieldPoint<double>{ahead_mm, aside_mm, 0.0}, thickness_mm);
  return std::min(at, steel_melting_C);
}

/// Distance behind the arc at which a line beside the seam has cooled to `to_C`, beyond `from_mm`.
double behind_mm(const MovingSource<double>& source, double thickness_mm, double aside_mm, double to_C,
                 double from_mm) {
  double near = from_mm, far = std::max(1.0, 2 * from_mm);
  while (far < farthest_mm && surface_C(source, thickness_mm, -far, aside_mm) > to_C) {
    near = far;
    far *= 2;
  }
  for (int i = 0; i < halvings; ++i) {
    const double middle = (near + far) / 2;
    (surface_C(source, thickness_mm, -middle, aside_mm) > to_C ? near : far) = middle;
  }
  return far;
}

/// Distance behind the arc at which a line beside the seam is hottest: the temperature rises to one peak and
/// falls.
double peak_behind_mm(const MovingSource<double>& source, double thickness_mm, double aside_mm) {
  double low = -2 * aside_mm - 1, high = farthest_mm;
  // One rise and one fall along the line: thirds close in on the peak.
  for (int i = 0; i < 2 * halvings; ++i) {
    const double a = low + (high - low) / 3, b = high - (high - low) / 3;
    const double at_a =
        plate_temperature_C(source, FieldPoint<double>{-a, std::max(aside_mm, 0.01), 0.0}, thickness_mm);
    const double at_b =
        plate_temperature_C(source, FieldPoint<double>{-b, std::max(aside_mm, 0.01), 0.0}, thickness_mm);
    (at_a < at_b ? low : high) = at_a < at_b ? a : b;
  }
  return (low + high) / 2;
}

std::vector<double> evenly(double from, double to, std::size_t count) {
  std::vector<double> values(count);
  for (std::size_t i = 0; i < count; ++i)
    values[i] = from + (to - from) * static_cast<double>(i) / static_cast<double>(count - 1);
  return values;
}

}  // namespace

MovingSource<double> source_of_pass(const PassEvaluation& pass, double travel_speed_mm_s, double preheat_C) {
  return {pass.arc_power_kW * 1000 * pass.thermal_efficiency, travel_speed_mm_s, handbook_conductivity_W_mmK,
          handbook_heat_capacity_J_mm3K, preheat_C};
}

SurfaceField surface_field(const MovingSource<double>& source, double thickness_mm, double coldest_C,
                           std::size_t along, std::size_t across) {
  const double behind = behind_mm(source, thickness_mm, 0, coldest_C, 0);
  const double aside = std::max(behind / 12, 3 * molten_half_width_mm(source, thickness_mm));
  SurfaceField field;
  field.ahead_mm = evenly(-behind, behind / 8, std::max<std::size_t>(along, 2));
  field.aside_mm = evenly(-aside, aside, std::max<std::size_t>(across, 2));
  field.temperature_C.reserve(field.ahead_mm.size() * field.aside_mm.size());
  for (const double y : field.aside_mm)
    for (const double x : field.ahead_mm)
      field.temperature_C.push_back(surface_C(source, thickness_mm, x, y));
  return field;
}

ThermalCycle thermal_cycle(const MovingSource<double>& source, double thickness_mm, double aside_mm,
                           double coldest_C, std::size_t points) {
  ThermalCycle cycle;
  cycle.aside_mm = aside_mm;
  const double peak_mm = peak_behind_mm(source, thickness_mm, aside_mm);
  cycle.peak_C = surface_C(source, thickness_mm, -peak_mm, aside_mm);
  const auto cooled_s = [&](double to_C) -> std::optional<double> {
    if (!(cycle.peak_C > to_C)) return std::nullopt;
    return behind_mm(source, thickness_mm, aside_mm, to_C, std::max(peak_mm, 0.0)) / source.travel_speed_mm_s;
  };
  cycle.at_800_s = cooled_s(800);
  cycle.at_500_s = cooled_s(500);
  const double end_mm = behind_mm(source, thickness_mm, 0, coldest_C, 0);
  for (const double behind : evenly(-end_mm / 10, end_mm, std::max<std::size_t>(points, 2))) {
    cycle.time_s.push_back(behind / source.travel_speed_mm_s);
    cycle.temperature_C.push_back(surface_C(source, thickness_mm, -behind, aside_mm));
  }
  return cycle;
}

double molten_half_width_mm(const MovingSource<double>& source, double thickness_mm) {
  const auto melts = [&](double aside) {
    return surface_C(source, thickness_mm, -peak_behind_mm(source, thickness_mm, aside), aside) >=
           steel_melting_C;
  };
  double inside = 0, outside = 0.5;
  if (!melts(0.02)) return 0;
  while (outside < farthest_mm && melts(outside)) {
    inside = outside;
    outside *= 2;
  }
  for (int i = 0; i < 30; ++i) {
    const double middle = (inside + outside) / 2;
    (melts(middle) ? inside : outside) = middle;
  }
  return (inside + outside) / 2;
}

}  // namespace seamtakt
