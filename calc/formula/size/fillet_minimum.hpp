#pragma once

#include <algorithm>
#include <cmath>
#include <optional>

#include "formula/note.hpp"

namespace seamtakt {

/// Smallest fillets that the codes allow.

/// Plates that a fillet joins, and what the least leg depends on beside their thickness.
struct FilletMinimumCase {
  double thickness_mm = 0;        ///< of one plate (mm, > 0)
  double other_thickness_mm = 0;  ///< of the other (mm, > 0)
  bool low_hydrogen =
      true;             ///< all of GMAW, FCAW, SAW; false: welded without the preheat that prevents cracks
  bool cyclic = false;  ///< cyclically loaded
};

/// Thickness (mm) that determines the least leg: the thinner plate with low hydrogen, the thicker one
/// otherwise.
inline double governing_thickness_mm(const FilletMinimumCase& fillet) {
  return fillet.low_hydrogen ? std::min(fillet.thickness_mm, fillet.other_thickness_mm)
                             : std::max(fillet.thickness_mm, fillet.other_thickness_mm);
}

/// Least leg of a single-pass fillet (mm): the table's leg, but no more than the thinner plate; at least 5 mm
/// where loaded cyclically. Source: aws-d1-1, minimum fillet weld size (Table 5.7 in the 2015 edition); rows
/// in reference/fillet_minimum.csv. Throws InputError where the table can't be read.
double fillet_leg_min_mm(const FilletMinimumCase& fillet);

/// Leg that AWS D1.1 asks of a cyclically loaded fillet at least (mm).
inline constexpr double cyclic_leg_min_mm = 5;

/// Least throat of a load-bearing fillet (mm) by EN 1993-1-8, 4.5.2(2), recalled. The standard has no table
/// of throat against thickness.
inline constexpr double fillet_throat_min_mm = 3;

/// Additional requirement of Germany's national annex to EN 1993-1-8 (mm), recalled: a >= sqrt(t_max) - 0.5
/// with the thicker plate (mm). Empty below 3 mm, where it doesn't hold.
inline std::optional<double> fillet_throat_min_german_annex_mm(const FilletMinimumCase& fillet) {
  const double thicker = std::max(fillet.thickness_mm, fillet.other_thickness_mm);
  if (thicker < 3) return std::nullopt;
  return std::sqrt(thicker) - 0.5;
}

inline constexpr FormulaNote fillet_leg_min_note{
    "fillet-minimum.leg",
    "leg_min_mm",
    "leg_min = min(leg of the table for T, t_thinner), cyclic: at least 5",
    "aws-d1-1",
    "minimum fillet weld size, Table 5.7 of the 2015 edition",
    "steel; T is the thinner plate with low hydrogen, else the thicker plate and a single pass",
    "a rule, no scatter",
    SourceBasis::part_read};

inline constexpr FormulaNote fillet_throat_min_note{
    "fillet-minimum.throat",
    "throat_min_mm",
    "throat_min = 3",
    "en-1993-1-8",
    "4.5.2(2)",
    "plates of 4 mm and more; national annexes may ask for more",
    "a rule, no scatter",
    SourceBasis::recalled};

}  // namespace seamtakt
