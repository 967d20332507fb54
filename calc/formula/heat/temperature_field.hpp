#pragma once

#include <cmath>
#include <numbers>

#include "formula/heat/handbook_steel.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"
#include "formula/uncertainty/special_functions.hpp"

namespace seamtakt {

/// Steady temperature around a point source that moves at constant speed, conduction only, constant
/// properties, no melting, no loss at the surfaces. Source: rosenthal-1946, rykalin-1957 (thick and thin
/// plate); grong-1997, chapter 1 (images for a finite plate). All are singular at the source and say nothing
/// inside the weld pool. Accuracy: not stated by the sources; the properties, taken constant, decide.

/// Heat of the arc and the metal it moves over.
template <class Real>
struct MovingSource {
  Real net_power_W;           ///< with thermal efficiency, > 0
  Real travel_speed_mm_s;     ///< > 0
  Real conductivity_W_mmK;    ///< > 0
  Real heat_capacity_J_mm3K;  ///< density times specific heat, > 0
  Real preheat_C;
};

/// Where, seen from the source.
template <class Real>
struct FieldPoint {
  Real ahead_mm;  ///< along travel, positive ahead
  Real aside_mm;  ///< across the seam on the surface, either sign
  Real depth_mm;  ///< below the surface, >= 0
};

/// Melting temperature of plain carbon steel (degC), recalled.
inline constexpr double steel_melting_C = 1510;

namespace detail {

/// v/(2a), a = lambda/(rho c): the inverse length over which the source outruns conduction (1/mm).
template <class Real>
Real outrun_per_mm(const MovingSource<Real>& source) {
  return Real(source.travel_speed_mm_s * source.heat_capacity_J_mm3K / (source.conductivity_W_mmK * 2.0));
}

/// x + R with R = sqrt(x^2 + s) and s >= 0, without cancellation behind the source; both sides are computed,
/// so that a row of a map has no branch.
template <class Real>
Real ahead_plus_distance(const Real& ahead, const Real& distance, const Real& across_squared) {
  const Real sum = distance + select<Real>(value_of(ahead) >= 0, ahead, Real(-ahead));
  return select<Real>(value_of(ahead) >= 0, sum, Real(across_squared / sum));
}

/// exp(-v(x+R)/2a)/R of one source of the image series.
template <class Real>
Real image_term(const Real& outrun, const Real& ahead, const Real& across_squared) {
  using std::exp;
  using std::sqrt;
  const Real distance = sqrt(Real(ahead * ahead + across_squared));
  const Real exponent = outrun * ahead_plus_distance(ahead, distance, across_squared);
  return Real(exp(Real(-exponent)) / distance);
}

}  // namespace detail

/// degC; semi-infinite body: T = T0 + q/(2 pi lambda R) exp(-v(x+R)/2a). R > 0.
template <class Real>
Real thick_plate_temperature_C(const MovingSource<Real>& source, const FieldPoint<Real>& point) {
  const Real across_squared = point.aside_mm * point.aside_mm + point.depth_mm * point.depth_mm;
  const Real term = detail::image_term(detail::outrun_per_mm(source), point.ahead_mm, across_squared);
  const Real strength = source.net_power_W / (source.conductivity_W_mmK * (2 * std::numbers::pi));
  return Real(source.preheat_C + strength * term);
}

/// degC; a line source through a sheet: T = T0 + q/(2 pi lambda d) exp(-v x/2a) K0(v r/2a). r > 0, thickness
/// > 0. The two exponentials are joined before they are evaluated, so neither overflows far behind the
/// source.
template <class Real>
Real thin_plate_temperature_C(const MovingSource<Real>& source, const FieldPoint<Real>& point,
                              const Real& thickness_mm) {
  using std::exp;
  using std::sqrt;
  const Real outrun = detail::outrun_per_mm(source);
  const Real across_squared = point.aside_mm * point.aside_mm;
  const Real distance = sqrt(Real(point.ahead_mm * point.ahead_mm + across_squared));
  const Real exponent = outrun * detail::ahead_plus_distance(point.ahead_mm, distance, across_squared);
  const Real decay = exp(Real(-exponent)) * scaled_bessel_k0(Real(outrun * distance));
  const Real strength =
      source.net_power_W / (source.conductivity_W_mmK * thickness_mm * (2 * std::numbers::pi));
  return Real(source.preheat_C + strength * decay);
}

namespace detail {

/// Terms of a series after which the point is inside the pool anyway, where no temperature is reported.
inline constexpr double most_terms = 20000;

}  // namespace detail

/// degC; the same plate by the cosine series that equals the sum of images (derived: Poisson's summation
/// formula): T = T0 + q/(2 pi lambda d) exp(-v x/2a) (K0(v r/2a) + 2 sum cos(m pi z/d) K0(r sqrt((v/2a)^2 +
/// (m pi/d)^2))). For a source that hardly moves, where the images don't die out. r > 0.
template <class Real>
Real plate_temperature_by_cosines_C(const MovingSource<Real>& source, const FieldPoint<Real>& point,
                                    const Real& thickness_mm) {
  using std::cos;
  using std::exp;
  using std::sqrt;
  constexpr double negligible_exponent = 40;
  const Real outrun = detail::outrun_per_mm(source);
  const Real distance = sqrt(Real(point.ahead_mm * point.ahead_mm + point.aside_mm * point.aside_mm));
  const Real wave = std::numbers::pi / thickness_mm;
  Real sum = exp(Real(-outrun * (point.ahead_mm + distance))) * scaled_bessel_k0(Real(outrun * distance));
  for (double m = 1; m <= detail::most_terms; ++m) {
    const Real rate = sqrt(Real(outrun * outrun + wave * wave * (m * m)));
    const Real exponent = outrun * point.ahead_mm + rate * distance;
    if (!(value_of(exponent) <= negligible_exponent)) break;
    sum += 2.0 * cos(Real(wave * point.depth_mm * m)) * exp(Real(-exponent)) *
           scaled_bessel_k0(Real(rate * distance));
  }
  const Real strength =
      source.net_power_W / (source.conductivity_W_mmK * thickness_mm * (2 * std::numbers::pi));
  return Real(source.preheat_C + strength * sum);
}

/// degC; plate of finite thickness with adiabatic faces: the thick plate's source and its images at depths 2
/// i d. Depth from 0 to thickness, R > 0. Where the temperature no longer varies through the thickness (first
/// term of the equivalent cosine series below 1e-17 of the mean) it is the thin plate's, so that the sum
/// stays short.
template <class Real>
Real plate_temperature_C(const MovingSource<Real>& source, const FieldPoint<Real>& point,
                         const Real& thickness_mm) {
  constexpr double negligible_exponent = 40;
  const Real outrun = detail::outrun_per_mm(source);
  const double wave = std::numbers::pi / value_of(thickness_mm);
  const double distance = std::hypot(value_of(point.ahead_mm), value_of(point.aside_mm));
  const double decay = std::hypot(value_of(outrun), wave) - value_of(outrun);
  if (distance * decay > negligible_exponent) return thin_plate_temperature_C(source, point, thickness_mm);

  // Images die out as exp(-outrun R)/R: with a source that hardly moves there would be no end to them.
  const double images_needed = negligible_exponent / (2 * value_of(thickness_mm) * value_of(outrun));
  if (!(images_needed <= detail::most_terms))
    return plate_temperature_by_cosines_C(source, point, thickness_mm);

  const Real aside_squared = point.aside_mm * point.aside_mm;
  const auto term_at = [&](double images) {
    const Real depth = point.depth_mm - thickness_mm * (2 * images);
    return detail::image_term(outrun, point.ahead_mm, Real(aside_squared + depth * depth));
  };
  Real sum = term_at(0);
  for (double images = 1;; ++images) {
    const Real pair = term_at(images) + term_at(-images);
    sum += pair;
    if (!(value_of(pair) > 1e-17 * value_of(sum))) break;
  }
  const Real strength = source.net_power_W / (source.conductivity_W_mmK * (2 * std::numbers::pi));
  return Real(source.preheat_C + strength * sum);
}

/// Relative thickness d sqrt(rho c (T - T0)/(q/v)): above 0.9 a plate cools as a thick one, below 0.6 as a
/// thin one. Source: adams. energy_J_mm: net power over travel speed (J/mm).
inline double relative_thickness(double thickness_mm, double heat_capacity_J_mm3K, double temperature_C,
                                 double preheat_C, double energy_J_mm) {
  return thickness_mm * std::sqrt(heat_capacity_J_mm3K * (temperature_C - preheat_C) / energy_J_mm);
}
inline constexpr double thick_from_relative_thickness = 0.9;
inline constexpr double thin_to_relative_thickness = 0.6;
/// The temperature (degC) at which cooling rates and relative thickness of steel are usually stated.
inline constexpr double relative_thickness_at_C = 550;

/// Rate (K/s, positive while cooling) on the centre line at temperature_C, thick plate:
/// 2 pi lambda (T-T0)^2/(q/v). Source: adams.
template <class Real>
Real thick_cooling_rate_K_s(const MovingSource<Real>& source, const Real& temperature_C) {
  const Real rise = temperature_C - source.preheat_C;
  const Real energy = source.net_power_W / source.travel_speed_mm_s;
  return Real(source.conductivity_W_mmK * rise * rise * (2 * std::numbers::pi) / energy);
}

/// The same for a thin plate: 2 pi lambda rho_c (d/(q/v))^2 (T-T0)^3. Source: adams.
template <class Real>
Real thin_cooling_rate_K_s(const MovingSource<Real>& source, const Real& temperature_C,
                           const Real& thickness_mm) {
  const Real rise = temperature_C - source.preheat_C;
  const Real per_energy = thickness_mm * source.travel_speed_mm_s / source.net_power_W;
  const Real properties = source.conductivity_W_mmK * source.heat_capacity_J_mm3K * (2 * std::numbers::pi);
  return Real(properties * per_energy * per_energy * rise * rise * rise);
}

inline constexpr const char* field_accuracy =
    "not stated by the source; constant properties, conduction only";

inline constexpr FormulaNote thick_plate_note{
    "temperature.thick",
    "temperature_C",
    "T = T0 + q/(2*pi*lambda*R)*exp(-v*(x + R)/(2*a))",
    "rosenthal-1946",
    "thick plate",
    "outside the weld pool; R = sqrt(x^2 + y^2 + z^2), a = lambda/rho_c",
    field_accuracy,
    SourceBasis::part_read};

inline constexpr FormulaNote thin_plate_note{
    "temperature.thin",
    "temperature_C",
    "T = T0 + q/(2*pi*lambda*d)*exp(-v*x/(2*a))*K0(v*r/(2*a))",
    "rykalin-1957",
    "thin plate",
    "outside the weld pool; r = sqrt(x^2 + y^2), a = lambda/rho_c; no heat lost at the faces",
    field_accuracy,
    SourceBasis::recalled};

inline constexpr FormulaNote plate_note{
    "temperature.plate",
    "temperature_C",
    "T = T0 + q/(2*pi*lambda)*sum_i(exp(-v*(x + R_i)/(2*a))/R_i)",
    "grong-1997",
    "chapter 1, medium thick plate",
    "outside the weld pool; R_i = sqrt(x^2 + y^2 + (z - 2*i*d)^2), all whole i; no heat lost at the faces",
    field_accuracy,
    SourceBasis::part_read};

}  // namespace seamtakt
