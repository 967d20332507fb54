#pragma once

#include <cmath>
#include <numbers>
#include <optional>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Section of a fillet weld between two plates at the dihedral angle psi, legs z1 and z2 along the plates.
///   A = z1*z2*sin(psi)/2     f = sqrt(z1^2 + z2^2 - 2*z1*z2*cos(psi))     a = z1*z2*sin(psi)/f
/// Equal legs: a = z*cos(psi/2). Source: derived; definition of the throat en-1993-1-8 4.5.2(1), aws-d1-1.
/// Deviations: a root gap is always deducted from the legs (AWS D1.1 does so above 1.6 mm); where the legs
/// are so unequal that the perpendicular from the root meets the face outside the weld, the throat is the
/// shorter leg. "Leg" is the contact leg along the plate; the leg that AWS measures on a skewed joint is
/// z*sin(psi). Lengths mm, > 0; angles deg, 0 < psi < 180. Accuracy: geometry, exact.

template <class Real>
Real radians(const Real& angle_deg) {
  return Real(angle_deg * (std::numbers::pi / 180.0));
}

/// Theoretical triangle, mm2.
template <class Real>
Real fillet_area_mm2(const Real& leg_mm, const Real& leg_2_mm, const Real& dihedral_deg) {
  using std::sin;
  const Real angle = radians(dihedral_deg);
  return Real(leg_mm * leg_2_mm * sin(angle) / 2.0);
}

/// Flat face from toe to toe, mm.
template <class Real>
Real fillet_face_width_mm(const Real& leg_mm, const Real& leg_2_mm, const Real& dihedral_deg) {
  using std::sin;
  using std::sqrt;
  // (z1 - z2)^2 + 4*z1*z2*sin^2(psi/2): the cosine rule without its cancellation at small angles.
  const Real half = radians(dihedral_deg) / 2.0;
  const Real sine = sin(half);
  const Real difference = leg_mm - leg_2_mm;
  return Real(sqrt(difference * difference + 4.0 * leg_mm * leg_2_mm * sine * sine));
}

/// Whether the perpendicular from the root meets the face outside the weld.
inline bool throat_is_shorter_leg(double leg_mm, double leg_2_mm, double dihedral_deg) {
  double cosine = std::cos(radians(dihedral_deg));
  return leg_mm * cosine > leg_2_mm || leg_2_mm * cosine > leg_mm;
}

/// Theoretical throat, mm.
template <class Real>
Real fillet_throat_mm(const Real& leg_mm, const Real& leg_2_mm, const Real& dihedral_deg) {
  if (throat_is_shorter_leg(value_of(leg_mm), value_of(leg_2_mm), value_of(dihedral_deg)))
    return smaller<Real>(leg_mm, leg_2_mm);
  const Real area = fillet_area_mm2(leg_mm, leg_2_mm, dihedral_deg);
  const Real face = fillet_face_width_mm(leg_mm, leg_2_mm, dihedral_deg);
  return Real(2.0 * area / face);
}

/// Equal legs, mm, of a theoretical throat.
template <class Real>
Real fillet_leg_of_throat_mm(const Real& throat_mm, const Real& dihedral_deg) {
  using std::cos;
  const Real half = radians(dihedral_deg) / 2.0;
  return Real(throat_mm / cos(half));
}

/// Theoretical throat, mm, of equal legs.
template <class Real>
Real fillet_throat_of_leg_mm(const Real& leg_mm, const Real& dihedral_deg) {
  using std::cos;
  const Real half = radians(dihedral_deg) / 2.0;
  return Real(leg_mm * cos(half));
}

/// Equal legs, mm, of a triangle's area (mm2).
template <class Real>
Real fillet_leg_of_area_mm(const Real& area_mm2, const Real& dihedral_deg) {
  using std::sin;
  using std::sqrt;
  const Real angle = radians(dihedral_deg);
  const Real per_area = 2.0 / sin(angle);
  return Real(sqrt(area_mm2 * per_area));
}

/// Leg obtained from the deposited areas of all passes (mm2): the shop's allowance (1 or more; deposit over
/// theoretical triangle) and the gap (mm, >= 0) taken off. Negative where the deposit only fills the gap.
template <class Real>
Real fillet_leg_obtained_mm(const Real& deposit_area_mm2, const Real& area_allowance, const Real& gap_mm,
                            const Real& dihedral_deg) {
  const Real triangle = deposit_area_mm2 * (1.0 / area_allowance);
  return Real(fillet_leg_of_area_mm(triangle, dihedral_deg) - gap_mm);
}

/// Deposit, mm2, that a leg needs over a gap: inverse of fillet_leg_obtained_mm.
template <class Real>
Real fillet_area_needed_mm2(const Real& leg_mm, const Real& area_allowance, const Real& gap_mm,
                            const Real& dihedral_deg) {
  const Real over_gap = leg_mm + gap_mm;
  return Real(fillet_area_mm2(over_gap, over_gap, dihedral_deg) * area_allowance);
}

/// Circular segment over a face of width f (mm, > 0) and height h (mm; negative where concave), mm2, with its
/// sign. With u = 2*h/f: A = f^2/(8*u^2)*((1+u^2)^2*atan(u) - u*(1-u^2)); a series where u is small.
template <class Real>
Real face_segment_area_mm2(const Real& face_width_mm, const Real& height_mm) {
  const Real u = 2.0 * height_mm / face_width_mm;
  const Real u2 = u * u;
  if (std::abs(value_of(u)) < 0.05) {
    const Real series = 1.0 / 3.0 + u2 * (1.0 / 15.0 + u2 * (-1.0 / 105.0 + u2 * (1.0 / 315.0 - u2 / 693.0)));
    return Real(2.0 * face_width_mm * height_mm * series);
  }
  const Real arc = arc_tangent(u);
  const Real square = (1.0 + u2) * (1.0 + u2);
  const Real bracket = square * arc - u * (1.0 - u2);
  return Real(face_width_mm * face_width_mm / (8.0 * u2) * bracket);
}

/// Equal legs, mm, of a weld whose whole section (triangle and face segment of height h) is given; empty
/// where no triangle is left beside the segment.
template <class Real>
std::optional<Real> fillet_leg_of_full_area_mm(const Real& area_mm2, const Real& height_mm,
                                               const Real& dihedral_deg) {
  auto section = [](const auto& leg, const auto& height, const auto& dihedral) {
    using Number = std::decay_t<decltype(leg)>;
    const Number face = fillet_face_width_mm(leg, leg, dihedral);
    return Number(fillet_area_mm2(leg, leg, dihedral) + face_segment_area_mm2(face, height));
  };
  double area = value_of(area_mm2), height = value_of(height_mm), dihedral = value_of(dihedral_deg);
  double flat = fillet_leg_of_area_mm(area, dihedral);
  double low = height > 0 ? flat * 1e-6 : flat, high = flat;
  for (int doubling = 0; doubling < 60 && section(high, height, dihedral) < area; ++doubling) high *= 2;
  if (!(section(low, height, dihedral) <= area) || !(section(high, height, dihedral) >= area))
    return std::nullopt;
  for (int step = 0; step < 100 && low < high; ++step) {
    double middle = low + (high - low) / 2;
    (section(middle, height, dihedral) < area ? low : high) = middle;
    if (middle == low + (high - low) / 2) break;
  }
  // One step of Newton in Real gives the leg its derivatives.
  double step = high * 1e-6;
  double slope =
      (section(high + step, height, dihedral) - section(high - step, height, dihedral)) / (2 * step);
  const Real miss = section(Real(high), height_mm, dihedral_deg) - area_mm2;
  return Real(high - miss / slope);
}

/// Leg as AWS measures it on a skewed joint, over that of a 90 deg joint with the same throat:
/// sin(psi/2)/sin(45 deg).
template <class Real>
Real fillet_skew_factor(const Real& dihedral_deg) {
  using std::sin;
  const Real half = radians(dihedral_deg) / 2.0;
  return Real(sin(half) * std::numbers::sqrt2);
}

/// Greatest convexity, mm, by the width of the face: aws-d1-1, weld profiles (recalled).
inline double convexity_limit_mm(double face_width_mm) {
  if (face_width_mm <= 8) return 2;
  return face_width_mm < 25 ? 3 : 5;
}

inline constexpr double aws_gap_free_mm = 1.6;    ///< up to here AWS D1.1 deducts nothing (recalled)
inline constexpr double aws_gap_greatest_mm = 5;  ///< without a special procedure (recalled)

inline constexpr FormulaNote fillet_area_note{
    "fillet.area", "area_mm2",          "A = z1*z2*sin(psi*pi/180)/2 + As",
    "derived",     "geometry",          "flat face, As = 0; else a circular segment",
    "exact",       SourceBasis::derived};
inline constexpr FormulaNote fillet_throat_note{
    "fillet.throat",
    "throat_mm",
    "a = z1*z2*sin(psi*pi/180)/sqrt(z1^2 + z2^2 - 2*z1*z2*cos(psi*pi/180))",
    "en-1993-1-8",
    "4.5.2(1)",
    "0 < psi < 180 deg; the shorter leg where the perpendicular falls outside the face",
    "exact",
    SourceBasis::read};
inline constexpr FormulaNote fillet_leg_of_throat_note{
    "fillet.leg-of-throat", "leg_mm", "z = a/cos(psi*pi/360)", "derived", "geometry",
    "equal legs",           "exact",  SourceBasis::derived};
inline constexpr FormulaNote fillet_leg_of_area_note{
    "fillet.leg-of-area",
    "leg_mm",
    "z = sqrt(2*(A - As)/sin(psi*pi/180))",
    "derived",
    "geometry",
    "equal legs; As the face's segment, itself a function of z",
    "exact",
    SourceBasis::derived};
inline constexpr FormulaNote fillet_effective_throat_note{
    "fillet.effective-throat",
    "effective_throat_mm",
    "ae = (z1-g)*(z2-g)*sin(psi*pi/180)/sqrt((z1-g)^2 + (z2-g)^2 - 2*(z1-g)*(z2-g)*cos(psi*pi/180)) - h",
    "aws-d1-1",
    "fit-up of fillet welds",
    "gap g deducted whatever its size, concavity h deducted, convexity not counted",
    "exact",
    SourceBasis::recalled};
inline constexpr FormulaNote fillet_skew_note{"fillet.skew-factor",
                                              "skew_factor",
                                              "k = sin(psi*pi/360)*sqrt(2)",
                                              "aws-d1-1",
                                              "annex on skewed T-joints, 60 to 135 deg",
                                              "60 to 135 deg",
                                              "exact",
                                              SourceBasis::recalled};

}  // namespace seamtakt
