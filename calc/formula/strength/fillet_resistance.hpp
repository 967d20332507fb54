#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <string_view>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Design resistance of fillet welds between plates at right angles.
/// Source: en-1993-1-8 (EN 1993-1-8:2005), 4.5.3.2 (directional method) and 4.5.3.3 (simplified method).
/// gamma_M2 is the recommended 1.25; a national annex may set another. Holds for structural steel of 4 mm and
/// more, effective length at least 30 mm and 6 times the throat. Deviation: none.

inline constexpr double gamma_M2 = 1.25;

/// What a grade gives, by the table in reference/fillet_strength.csv.
struct FilletSteel {
  double tensile_MPa = 0;  ///< nominal ultimate strength of the weaker part
  double beta_w = 1;       ///< correlation factor
};

enum class FilletEdition { ed2005, ed2024 };
/// Where the nominal tensile strength is taken from: EN 1993-1-1, Table 3.1, or the product standard EN
/// 10025.
enum class TensileTable { design, product };

/// Empty where the table doesn't have the grade. The correlation factors of the 2024 edition for S420 and
/// S460 are recalled. InputError where the table can't be read.
std::optional<FilletSteel> fillet_steel(std::string_view grade, FilletEdition edition, TensileTable tensile);

/// f_vw,d (MPa): fu/(sqrt3 beta_w gamma_M2). tensile_MPa > 0 of the weaker part, 0 < beta_w.
template <class Real>
Real weld_shear_strength_MPa(const Real& tensile_MPa, const Real& beta_w) {
  return Real(tensile_MPa / (beta_w * (std::numbers::sqrt3 * gamma_M2)));
}

/// Total throat area (mm2) of `count` welds of equal throat and effective length.
template <class Real>
Real fillet_throat_area_mm2(const Real& throat_mm, const Real& length_mm, const Real& count) {
  return Real(throat_mm * length_mm * count);
}

/// Stresses on the throat plane (MPa) when plates meet at right angles: a force normal to the weld's axis and
/// to the through plate makes equal normal and shear stress, a force along the axis shear along it.
template <class Real>
struct FilletStress {
  Real normal_MPa;        ///< sigma perpendicular
  Real shear_across_MPa;  ///< tau perpendicular
  Real shear_along_MPa;   ///< tau parallel
};

/// Forces in N, total over all welds, either sign.
template <class Real>
FilletStress<Real> fillet_stress(const Real& throat_area_mm2, const Real& force_normal_N,
                                 const Real& force_along_N) {
  const Real across = force_normal_N / (throat_area_mm2 * std::numbers::sqrt2);
  return {across, across, Real(force_along_N / throat_area_mm2)};
}

namespace detail {

/// sqrt(a^2 + b^2), differentiable where one of the two is 0.
template <class Real>
Real root_of_squares(const Real& a, const Real& b) {
  using std::sqrt;
  return sqrt(Real(a * a + b * b));
}

}  // namespace detail

/// Utilisation by the directional method: the larger of the combined stress over fu/(beta_w gamma_M2) and the
/// normal stress over 0.9 fu/gamma_M2.
template <class Real>
Real directional_utilisation(const FilletStress<Real>& stress, const Real& tensile_MPa, const Real& beta_w) {
  using std::abs;
  using std::sqrt;
  const Real squares =
      stress.normal_MPa * stress.normal_MPa + 3.0 * (stress.shear_across_MPa * stress.shear_across_MPa +
                                                     stress.shear_along_MPa * stress.shear_along_MPa);
  const Real combined = sqrt(squares) * beta_w * gamma_M2 / tensile_MPa;
  const Real normal = abs(stress.normal_MPa) * (gamma_M2 / 0.9) / tensile_MPa;
  return larger<Real>(combined, normal);
}

/// Utilisation by the simplified method: the resultant over the shear strength, whatever its direction.
template <class Real>
Real simplified_utilisation(const Real& throat_area_mm2, const Real& force_normal_N,
                            const Real& force_along_N, const Real& shear_strength_MPa) {
  return Real(detail::root_of_squares(force_normal_N, force_along_N) /
              (throat_area_mm2 * shear_strength_MPa));
}

/// Reduction of a long lap joint (<= 1): 1.2 - 0.2 L/(150 a) above L = 150 a (4.11(1)).
inline double long_lap_factor(double length_mm, double throat_mm) {
  const double ratio = length_mm / (150 * throat_mm);
  return ratio <= 1 ? 1.0 : std::max(0.0, 1.2 - 0.2 * ratio);
}

/// Least effective length (mm) of a fillet that carries load (4.5.1(2)).
inline double effective_length_min_mm(double throat_mm) {
  return std::max(30.0, 6 * throat_mm);
}

inline constexpr FormulaNote weld_shear_strength_note{
    "fillet-resistance.shear-strength",
    "design_shear_strength_MPa",
    "f_vwd = f_u/(sqrt(3)*beta_w*gamma_M2)",
    "en-1993-1-8",
    "4.5.3.3(3)",
    "f_u of the weaker part; gamma_M2 = 1.25 unless a national annex differs",
    "a rule, no scatter",
    SourceBasis::read};

inline constexpr FormulaNote fillet_resistance_note{
    "fillet-resistance.resistance",
    "resistance_N",
    "F = f_vwd*a*L*n",
    "en-1993-1-8",
    "4.5.3.3(2)",
    "simplified method, any direction of force; effective length at least 30 mm and 6*a",
    "a rule, no scatter",
    SourceBasis::read};

inline constexpr FormulaNote simplified_utilisation_note{"fillet-resistance.simplified",
                                                         "utilisation_simplified",
                                                         "u = sqrt(N^2 + V^2)/(f_vwd*a*L*n)",
                                                         "en-1993-1-8",
                                                         "4.5.3.3",
                                                         "effective length at least 30 mm and 6*a",
                                                         "a rule, no scatter",
                                                         SourceBasis::read};

inline constexpr FormulaNote directional_utilisation_note{
    "fillet-resistance.directional",
    "utilisation_directional",
    "u = max(sqrt(s^2 + 3*(tp^2 + tl^2))*beta_w*gamma_M2/f_u, s*gamma_M2/(0.9*f_u))",
    "en-1993-1-8",
    "4.5.3.2(6)",
    "plates at right angles: s = tp = N/(a*L*n*sqrt(2)), tl = V/(a*L*n)",
    "a rule, no scatter",
    SourceBasis::read};

}  // namespace seamtakt
