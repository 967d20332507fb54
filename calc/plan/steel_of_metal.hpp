#pragma once

#include <optional>

#include "formula/metal/composition.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// The composition that a metal is computed with.
struct SteelOfMetal {
  Composition<double> steel;
  /// Of Mn, Cr, Mo, V, Ni and Cu: below 1 where each element's maximum together would pass the highest carbon
  /// equivalent (formula/metal/cev_limit.hpp).
  double alloy_share = 1;
  double CE_IIW_pct = 0;          ///< the certificate's, else of `steel`
  std::optional<double> cev_pct;  ///< the limit that alloy_share keeps, where it is below 1
};

/// Of a plate of this thickness (mm). A composition with basis standard-maximum keeps the certificate's
/// carbon equivalent or, without one, that of its standard; any other is taken as it is. InputError: the
/// table of steels is damaged.
SteelOfMetal steel_of(const BaseMetal& metal, double thickness_mm);

/// Whether steel_of depends on the thickness.
inline bool depends_on_thickness(const BaseMetal& metal) {
  return metal.composition_basis == "standard-maximum" && !metal.CEV;
}

}  // namespace seamtakt
