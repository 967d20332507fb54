#pragma once

#include <cmath>
#include <numbers>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Movement of a weldment by the shrinkage of its welds. All of these are handbook estimates: expect a factor
/// of 1.5 to 2 either way (common practice, no source), so that they rank alternatives and set allowances but
/// don't replace a trial weld.

/// Rise of the edges of a flange that carries fillets (mm).
/// D = 0.02 W w^1.3 / t^2 in inches; in mm the constant is 0.02 * 25.4^0.7 = 0.1925.
/// Source: blodgett, recalled. Deviation: none but the units.
/// flange_width_mm: whole width (mm), leg_mm: leg of the fillet (mm), thickness_mm: of the flange (mm), all >
/// 0.
template <class Real>
Real fillet_angular_movement_mm(const Real& flange_width_mm, const Real& leg_mm, const Real& thickness_mm) {
  using std::pow;
  static const double constant = 0.02 * std::pow(25.4, 0.7);
  const Real leg_term = pow(leg_mm, 1.3);
  return Real(flange_width_mm * leg_term * constant / (thickness_mm * thickness_mm));
}

/// Angle (deg) by which each half of the flange rises: the movement at the edge over half the width.
template <class Real>
Real fillet_angular_distortion_deg(const Real& flange_width_mm, const Real& leg_mm,
                                   const Real& thickness_mm) {
  const Real movement = fillet_angular_movement_mm(flange_width_mm, leg_mm, thickness_mm);
  const Real slope = movement * 2.0 / flange_width_mm;
  return Real(arc_tangent(slope) * (180.0 / std::numbers::pi));
}

/// Bow of a member at mid-length (mm): D = 0.005 Aw L^2 d / I, homogeneous in units.
/// Source: blodgett, recalled.
/// weld_area_mm2: weld metal with the plate melted in, all welds (mm2, >= 0); length_mm: of the member (mm, >
/// 0); eccentricity_mm: from the welds' centroid to the neutral axis (mm, either sign); second_moment_mm4:
/// (mm4, > 0).
template <class Real>
Real longitudinal_bow_mm(const Real& weld_area_mm2, const Real& length_mm, const Real& eccentricity_mm,
                         const Real& second_moment_mm4) {
  return Real(weld_area_mm2 * length_mm * length_mm * eccentricity_mm * 0.005 / second_moment_mm4);
}

/// Shrinkage across a butt weld (mm): 0.10 Aw / t, homogeneous in units.
/// Source: shrinkage-method-statement. Others state 0.2 Aw/t + 0.05 gap, twice as much.
/// weld_area_mm2 >= 0, thickness_mm > 0.
template <class Real>
Real butt_transverse_shrinkage_mm(const Real& weld_area_mm2, const Real& thickness_mm) {
  return Real(weld_area_mm2 * 0.10 / thickness_mm);
}

/// Force with which a weld pulls its member together (kN): 0.2 kN per J/mm of net heat input.
/// Source: white-leggatt-dwight-1980, recalled. okerblom's formula gives about 0.24 for steel.
/// Holds for steel while the force stays below yield stress times section area. Several welds: the largest
/// dominates, the rest add less than in proportion.
/// heat_input_kJ_mm: net, with thermal efficiency (kJ/mm, > 0).
template <class Real>
Real tendon_force_kN(const Real& heat_input_kJ_mm) {
  return Real(heat_input_kJ_mm * (0.2 * 1000));
}

/// Bow at mid-length (mm) of a member under that force over its whole length: F e L^2 / (8 E I) (derived).
/// force_kN, eccentricity_mm (either sign), length_mm > 0, modulus_MPa > 0, second_moment_mm4 > 0.
template <class Real>
Real tendon_bow_mm(const Real& force_kN, const Real& eccentricity_mm, const Real& length_mm,
                   const Real& modulus_MPa, const Real& second_moment_mm4) {
  const Real moment_N_mm = force_kN * 1000.0 * eccentricity_mm;
  return Real(moment_N_mm * length_mm * length_mm / (modulus_MPa * second_moment_mm4 * 8.0));
}

/// Shortening (mm) of the member: F L / (E A) (derived). section_area_mm2 > 0.
template <class Real>
Real tendon_shortening_mm(const Real& force_kN, const Real& length_mm, const Real& modulus_MPa,
                          const Real& section_area_mm2) {
  return Real(force_kN * 1000.0 * length_mm / (modulus_MPa * section_area_mm2));
}

/// Modulus of elasticity of steel (MPa): EN 1993-1-1, 3.2.6, recalled.
inline constexpr double steel_modulus_MPa = 210000;

inline constexpr const char* distortion_accuracy =
    "a factor of 1.5 to 2 either way (common practice, no source)";

inline constexpr FormulaNote fillet_angular_note{
    "distortion.fillet-angular",
    "movement_mm",
    "D = 0.02*25.4^0.7*W*w^1.3/t^2",
    "blodgett",
    "distortion, angular distortion of flanges",
    "steel; the constant holds for mm only (0.02 in inches); one or two fillets on one side of a flange",
    distortion_accuracy,
    SourceBasis::recalled};

inline constexpr FormulaNote fillet_angular_angle_note{
    "distortion.fillet-angular-angle",    "angular_distortion_deg", "angle = atan(2*D/W)", "derived", "",
    "the halves of the flange stay flat", distortion_accuracy,      SourceBasis::derived};

inline constexpr FormulaNote longitudinal_bow_note{
    "distortion.longitudinal-bow",
    "movement_mm",
    "D = 0.005*A_w*L^2*d/I",
    "blodgett",
    "distortion, longitudinal bending",
    "steel; weld area with the plate melted in; welds along the whole length",
    distortion_accuracy,
    SourceBasis::recalled};

inline constexpr FormulaNote butt_transverse_note{
    "distortion.butt-transverse",
    "movement_mm",
    "D = 0.10*A_w/t",
    "shrinkage-method-statement",
    "butt welds",
    "steel butt welds, unrestrained; recalled texts have 0.2*A_w/t + 0.05*gap",
    distortion_accuracy,
    SourceBasis::read};

inline constexpr FormulaNote tendon_force_note{
    "distortion.tendon-force",
    "force_kN",
    "F = 0.2*1000*Q",
    "white-leggatt-dwight-1980",
    "",
    "steel, while the force stays below yield stress times section area; Q is net",
    distortion_accuracy,
    SourceBasis::recalled};

inline constexpr FormulaNote tendon_bow_note{
    "distortion.tendon-bow",    "bow_mm",
    "D = F*1000*e*L^2/(8*E*I)", "derived",
    "beam under end moments",   "elastic, slender member, weld along its whole length",
    distortion_accuracy,        SourceBasis::derived};

inline constexpr FormulaNote tendon_shortening_note{"distortion.tendon-shortening",
                                                    "shortening_mm",
                                                    "D = F*1000*L/(E*A)",
                                                    "derived",
                                                    "bar under end force",
                                                    "elastic, weld along its whole length",
                                                    distortion_accuracy,
                                                    SourceBasis::derived};

}  // namespace seamtakt
