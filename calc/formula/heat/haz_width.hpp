#pragma once

#include <cmath>
#include <numbers>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Peak temperature against distance from the fusion line, both ways, on a fast-moving source.
/// Thin plate (adams): 1/(Tp-T0) = sqrt(2 pi e) rho_c d Y/(q/v) + 1/(Tm-T0).
/// Thick plate (textbook): Tp-T0 = 2/(pi e) (q/v)/(rho_c r^2), r from the weld's centre line; here Y = r(Tp)
/// - r(Tm). Hold for T0 < Tp <= Tm, conduction only, travel fast against conduction. Accuracy: not stated by
/// the source.

/// The weld's heat, and the plate that receives it.
template <class Real>
struct PeakTemperatureCase {
  Real heat_input_kJ_mm;  ///< net (kJ/mm, > 0)
  Real preheat_C;         ///< below the melting temperature
  Real melting_C;
  Real heat_capacity_J_mm3K;  ///< > 0
};

/// Where the steel begins to transform on heating (degC), recalled: the outer edge of the heat-affected zone.
inline constexpr double ac1_C = 730;

namespace detail {

/// K mm: rise times distance of the thin plate, (q/v)/(sqrt(2 pi e) rho_c d).
template <class Real>
Real thin_rise_distance(const PeakTemperatureCase<Real>& weld, const Real& thickness_mm) {
  static const double constant = std::sqrt(2 * std::numbers::pi * std::numbers::e);
  return Real(weld.heat_input_kJ_mm * 1000.0 / (weld.heat_capacity_J_mm3K * thickness_mm * constant));
}

/// mm from the centre line of a thick plate at which the peak temperature is reached.
template <class Real>
Real thick_isotherm_radius_mm(const PeakTemperatureCase<Real>& weld, const Real& peak_C) {
  using std::sqrt;
  const double constant = 2000 / (std::numbers::pi * std::numbers::e);
  const Real rise = weld.heat_capacity_J_mm3K * (peak_C - weld.preheat_C);
  return Real(sqrt(Real(weld.heat_input_kJ_mm * constant / rise)));
}

}  // namespace detail

/// mm from the fusion line at which the peak temperature is peak_C (preheat < peak_C <= melting).
template <class Real>
Real thin_plate_haz_distance_mm(const PeakTemperatureCase<Real>& weld, const Real& thickness_mm,
                                const Real& peak_C) {
  const Real inverse_rises = 1.0 / (peak_C - weld.preheat_C) - 1.0 / (weld.melting_C - weld.preheat_C);
  return Real(detail::thin_rise_distance(weld, thickness_mm) * inverse_rises);
}

/// degC reached at distance_mm (>= 0) from the fusion line.
template <class Real>
Real thin_plate_peak_temperature_C(const PeakTemperatureCase<Real>& weld, const Real& thickness_mm,
                                   const Real& distance_mm) {
  const Real inverse_rise =
      distance_mm / detail::thin_rise_distance(weld, thickness_mm) + 1.0 / (weld.melting_C - weld.preheat_C);
  return Real(weld.preheat_C + 1.0 / inverse_rise);
}

/// mm; the same on a thick plate.
template <class Real>
Real thick_plate_haz_distance_mm(const PeakTemperatureCase<Real>& weld, const Real& peak_C) {
  const Real radius = detail::thick_isotherm_radius_mm(weld, peak_C);
  return Real(radius - detail::thick_isotherm_radius_mm(weld, weld.melting_C));
}

/// degC; the same on a thick plate.
template <class Real>
Real thick_plate_peak_temperature_C(const PeakTemperatureCase<Real>& weld, const Real& distance_mm) {
  const double constant = 2000 / (std::numbers::pi * std::numbers::e);
  const Real radius = detail::thick_isotherm_radius_mm(weld, weld.melting_C) + distance_mm;
  return Real(weld.preheat_C +
              weld.heat_input_kJ_mm * constant / (weld.heat_capacity_J_mm3K * radius * radius));
}

inline constexpr FormulaNote thin_haz_distance_note{
    "haz-width.thin-distance",
    "distance_mm",
    "Y = Q*1000/(sqrt(2*pi*e)*rho_c*d)*(1/(Tp - T0) - 1/(Tm - T0))",
    "adams",
    "peak temperature, thin plate",
    "thin plate, T0 < Tp <= Tm, fast travel; Y from the fusion line",
    "not stated by the source",
    SourceBasis::read};

inline constexpr FormulaNote thin_peak_note{"haz-width.thin-peak",
                                            "peak_temperature_C",
                                            "Tp = T0 + 1/(sqrt(2*pi*e)*rho_c*d*Y/(Q*1000) + 1/(Tm - T0))",
                                            "adams",
                                            "peak temperature, thin plate",
                                            "thin plate, fast travel; Y from the fusion line",
                                            "not stated by the source",
                                            SourceBasis::read};

inline constexpr FormulaNote thick_haz_distance_note{
    "haz-width.thick-distance",
    "distance_mm",
    "Y = sqrt(2*Q*1000/(pi*e*rho_c*(Tp - T0))) - sqrt(2*Q*1000/(pi*e*rho_c*(Tm - T0)))",
    "rykalin-1957",
    "peak temperature, fast source on a thick plate",
    "thick plate, T0 < Tp <= Tm, fast travel; Y from the fusion line",
    "not stated by the source",
    SourceBasis::recalled};

inline constexpr FormulaNote thick_peak_note{
    "haz-width.thick-peak",
    "peak_temperature_C",
    "Tp = T0 + 2*Q*1000/(pi*e*rho_c*(r_m + Y)^2)",
    "rykalin-1957",
    "peak temperature, fast source on a thick plate",
    "thick plate, fast travel; r_m = sqrt(2*Q*1000/(pi*e*rho_c*(Tm - T0))), Y from the fusion line",
    "not stated by the source",
    SourceBasis::recalled};

}  // namespace seamtakt
