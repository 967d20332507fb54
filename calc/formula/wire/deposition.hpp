#pragma once

#include <numbers>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Mass melted and deposited, and the cross-section of the bead.
///   m = pi/4*d^2*W*rho      deposited = eta*m      A = deposited mass per length / density of the weld metal
/// Source: derived (mass balance). Deviation from handbooks that leave out the efficiency or print rounded
/// factors: none is rounded here. Holds for one wire of circular section; a cored wire needs the density of
/// the wire as fed (mass per length over its section), not of steel. Accuracy: wire diameter and density;
/// real wire is slightly under its nominal size.

/// Diameter (mm, > 0) -> mm2.
template <class Real>
Real wire_area_mm2(const Real& wire_diameter_mm) {
  return Real(std::numbers::pi / 4 * wire_diameter_mm * wire_diameter_mm);
}

/// Wire area (mm2), wire feed speed (m/min, >= 0), density of the wire as fed (g/cm3, > 0) -> kg/h.
template <class Real>
Real melting_rate_kg_h(const Real& area_mm2, const Real& feed_m_min, const Real& wire_density_g_cm3) {
  return Real(area_mm2 * feed_m_min * wire_density_g_cm3 * 60.0 / 1000.0);
}

/// efficiency: 0 to 1, mass deposited over mass melted.
template <class Real>
Real deposition_rate_kg_h(const Real& melting_kg_h, const Real& efficiency) {
  return Real(melting_kg_h * efficiency);
}

/// Deposition rate (kg/h), travel speed (mm/s, > 0), density of the weld metal (g/cm3, > 0) -> mm2.
template <class Real>
Real deposit_area_mm2(const Real& deposited_kg_h, const Real& travel_speed_mm_s,
                      const Real& weld_metal_density_g_cm3) {
  // kg/h to mg/s, over mg/mm3; the speed last, so that a row of a map has one division a point.
  return Real(deposited_kg_h * 1e6 / 3600.0 / weld_metal_density_g_cm3 / travel_speed_mm_s);
}

inline constexpr FormulaNote melting_mass_note{"deposition.melting-rate",
                                               "melting_rate_kg_h",
                                               "m = pi/4*d^2*W*rho*0.06",
                                               "derived",
                                               "mass balance",
                                               "one wire of circular section; rho of the wire as fed",
                                               "that of diameter and density",
                                               SourceBasis::derived};

inline constexpr FormulaNote deposition_rate_note{
    "deposition.rate", "deposition_rate_kg_h",   "D = eta*m",         "derived", "mass balance",
    "eta from 0 to 1", "that of the efficiency", SourceBasis::derived};

inline constexpr FormulaNote deposit_area_note{"deposition.area",
                                               "deposit_area_mm2",
                                               "A = D*1000/(3.6*v*rhow)",
                                               "derived",
                                               "mass balance",
                                               "rhow of the weld metal: 7.85 g/cm3 for steel",
                                               "that of the deposition rate and the travel speed",
                                               SourceBasis::derived};

}  // namespace seamtakt
