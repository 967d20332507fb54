#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "formula/metal/carbon_equivalent.hpp"
#include "formula/metal/composition.hpp"
#include "formula/note.hpp"

namespace seamtakt {

/// A product standard limits the carbon equivalent (IIW's formula, CEV) beside each element: a steel with
/// every element at its maximum would be richer than any that may be delivered. Such a composition is taken
/// with carbon at its maximum and the alloying elements of the formula in the same proportion to one another,
/// as much as the carbon equivalent leaves:
///   f = (CEV - C)/(CE - C)     Mn, Cr, Mo, V, Ni, Cu times f
/// Source of the limits: reference/steels.csv, each row with its own. The proportion is derived: the standard
/// doesn't say which element stays below its maximum. Carbon counts most for hardness and for CET, so that
/// the result stays on the safe side.

/// The highest carbon equivalent (mass %) that a steel's standard allows at a thickness (mm); empty: the
/// table hasn't the steel, its standard has no limit, or the plate is thicker than the row's. `standard`:
/// with the grade ("EN 10025-2 S355J2"), or the grade alone. InputError: the table is damaged.
std::optional<double> cev_limit_pct(std::string_view standard, double thickness_mm);

/// f, 0 to 1: 1 where the composition's carbon equivalent is within the limit.
template <class Real>
Real alloy_share(const Composition<Real>& steel, double cev_pct) {
  const Real ce = carbon_equivalent_iiw_pct(steel);
  if (value_of(ce) <= cev_pct) return Real(1.0);
  if (value_of(steel.C) >= cev_pct) return Real(0.0);
  return Real((cev_pct - steel.C) / (ce - steel.C));
}

/// Elements of the carbon equivalent beside carbon.
template <class Real>
constexpr auto alloying_members() {
  using K = Composition<Real>;
  return std::array{&K::Mn, &K::Cr, &K::Mo, &K::V, &K::Ni, &K::Cu};
}

/// With the alloying elements of the formula times `share`.
template <class Real>
Composition<Real> with_alloy_share(Composition<Real> steel, const Real& share) {
  for (const auto member : alloying_members<Real>()) steel.*member = Real(steel.*member * share);
  return steel;
}

inline constexpr FormulaNote alloy_share_note{
    "carbon-equivalent.alloy-share",
    "alloy_share",
    "f = (CEV - C)/(CE - C)",
    "derived",
    "every element at its maximum would pass the carbon equivalent that the standard allows",
    "steel whose standard limits the carbon equivalent; carbon stays at its maximum, Mn, Cr, Mo, V, Ni and "
    "Cu "
    "are times f",
    "no delivered steel has a higher carbon equivalent",
    SourceBasis::derived};

inline constexpr FormulaNote stated_cev_note{"carbon-equivalent.certificate",
                                             "CE_IIW",
                                             "CE = CEV",
                                             "en-10025-2",
                                             "7.2.3: of the ladle analysis, by the IIW's formula",
                                             "as the certificate states it",
                                             "that of the certificate",
                                             SourceBasis::read};

}  // namespace seamtakt
