#pragma once

#include <array>
#include <cmath>
#include <string_view>

#include "formula/metal/composition.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {

/// Carbon equivalents of a ferritic steel, mass %.
///   CE_IIW = C + Mn/6 + (Cr+Mo+V)/5 + (Ni+Cu)/15
///   CET    = C + (Mn+Mo)/10 + (Cr+Cu)/20 + Ni/40
///   Pcm    = C + Si/30 + (Mn+Cu+Cr)/20 + Ni/60 + Mo/15 + V/10 + 5*B
///   CEN    = C + A(C)*(Si/24 + Mn/6 + Cu/15 + Ni/20 + (Cr+Mo+Nb+V)/5 + 5*B),  A = 0.75 +
///   0.25*tanh(20*(C-0.12))
/// Sources: en-1011-2 (CE, CET), ito-bessyo-1968 (Pcm), yurioka-1983 (CEN).
/// Deviation: none. AWS's variant of CE with (Mn+Si)/6 is not this one.
/// Accuracy: indices, exact for a given analysis. Elements not reported count as 0 (see Composition).

template <class Real>
Real carbon_equivalent_iiw_pct(const Composition<Real>& c) {
  return Real(c.C + c.Mn / 6.0 + (c.Cr + c.Mo + c.V) / 5.0 + (c.Ni + c.Cu) / 15.0);
}

template <class Real>
Real carbon_equivalent_cet_pct(const Composition<Real>& c) {
  return Real(c.C + (c.Mn + c.Mo) / 10.0 + (c.Cr + c.Cu) / 20.0 + c.Ni / 40.0);
}

template <class Real>
Real carbon_equivalent_pcm_pct(const Composition<Real>& c) {
  return Real(c.C + c.Si / 30.0 + (c.Mn + c.Cu + c.Cr) / 20.0 + c.Ni / 60.0 + c.Mo / 15.0 + c.V / 10.0 +
              5.0 * c.B);
}

/// A(C) of CEN.
template <class Real>
Real cen_accommodation(const Real& carbon_pct) {
  using std::tanh;
  const Real argument = 20.0 * (carbon_pct - 0.12);
  return Real(0.75 + 0.25 * tanh(argument));
}

template <class Real>
Real carbon_equivalent_cen_pct(const Composition<Real>& c) {
  const Real alloy =
      c.Si / 24.0 + c.Mn / 6.0 + c.Cu / 15.0 + c.Ni / 20.0 + (c.Cr + c.Mo + c.Nb + c.V) / 5.0 + 5.0 * c.B;
  return Real(c.C + cen_accommodation(c.C) * alloy);
}

/// Elements of all four.
inline constexpr std::array<std::string_view, 10> carbon_equivalent_elements = {"C",  "Si", "Mn", "Cr", "Ni",
                                                                                "Mo", "Cu", "V",  "Nb", "B"};

struct ElementRange {
  std::string_view symbol;
  ValidRange range;
};

/// Compositions for which CET was made (en-1011-2, C.3.1).
inline constexpr std::array cet_ranges = {
    ElementRange{"C", {"cet.C.range", "The carbon content"_word, 0.05, 0.32, "%", "en-1011-2, C.3"}},
    ElementRange{"Si", {"cet.Si.range", "The silicon content"_word, 0, 0.8, "%", "en-1011-2, C.3"}},
    ElementRange{"Mn", {"cet.Mn.range", "The manganese content"_word, 0.5, 1.9, "%", "en-1011-2, C.3"}},
    ElementRange{"Cr", {"cet.Cr.range", "The chromium content"_word, 0, 1.5, "%", "en-1011-2, C.3"}},
    ElementRange{"Cu", {"cet.Cu.range", "The copper content"_word, 0, 0.7, "%", "en-1011-2, C.3"}},
    ElementRange{"Mo", {"cet.Mo.range", "The molybdenum content"_word, 0, 0.75, "%", "en-1011-2, C.3"}},
    ElementRange{"Nb", {"cet.Nb.range", "The niobium content"_word, 0, 0.06, "%", "en-1011-2, C.3"}},
    ElementRange{"Ni", {"cet.Ni.range", "The nickel content"_word, 0, 2.5, "%", "en-1011-2, C.3"}},
    ElementRange{"Ti", {"cet.Ti.range", "The titanium content"_word, 0, 0.12, "%", "en-1011-2, C.3"}},
    ElementRange{"V", {"cet.V.range", "The vanadium content"_word, 0, 0.18, "%", "en-1011-2, C.3"}},
    ElementRange{"B", {"cet.B.range", "The boron content"_word, 0, 0.005, "%", "en-1011-2, C.3"}},
};

/// Warnings for reported elements outside CET's range of compositions.
template <class Real>
Findings outside_cet_range(const Composition<Real>& composition, const std::string& where) {
  Findings findings;
  for (const auto& [symbol, value] : Composition<Real>::members())
    for (const auto& limit : cet_ranges)
      if (limit.symbol == symbol && composition.was_reported(symbol))
        add_if_any(findings, outside_range(limit.range, value_of(composition.*value), where));
  return findings;
}

/// The first reported element above CET's range; nullptr where none is. Below the range (little carbon or
/// manganese) the steel is leaner than CET was made for and needs no more preheat than the leanest of it.
template <class Real>
const ElementRange* above_cet_range(const Composition<Real>& composition) {
  for (const auto& [symbol, value] : Composition<Real>::members())
    for (const auto& limit : cet_ranges)
      if (limit.symbol == symbol && composition.was_reported(symbol) &&
          value_of(composition.*value) > limit.range.upper)
        return &limit;
  return nullptr;
}

inline constexpr FormulaNote ce_iiw_note{"carbon-equivalent.iiw",
                                         "CE_IIW",
                                         "CE = C + Mn/6 + (Cr+Mo+V)/5 + (Ni+Cu)/15",
                                         "en-1011-2",
                                         "C.2 (IIW)",
                                         "unalloyed and low-alloy steels",
                                         "exact for the analysis",
                                         SourceBasis::read};
inline constexpr FormulaNote cet_note{"carbon-equivalent.cet",
                                      "CET",
                                      "CET = C + (Mn+Mo)/10 + (Cr+Cu)/20 + Ni/40",
                                      "en-1011-2",
                                      "C.3",
                                      "C 0.05-0.32, Si to 0.8, Mn 0.5-1.9, Cr to 1.5, Cu to 0.7, Mo to 0.75, "
                                      "Nb to 0.06, Ni to 2.5, Ti to 0.12, V to 0.18, B to 0.005 %",
                                      "exact for the analysis",
                                      SourceBasis::read};
inline constexpr FormulaNote pcm_note{"carbon-equivalent.pcm",
                                      "Pcm",
                                      "Pcm = C + Si/30 + (Mn+Cu+Cr)/20 + Ni/60 + Mo/15 + V/10 + 5*B",
                                      "ito-bessyo-1968",
                                      "",
                                      "low-carbon and high-strength steels",
                                      "exact for the analysis",
                                      SourceBasis::read};
inline constexpr FormulaNote cen_note{
    "carbon-equivalent.cen",
    "CEN",
    "CEN = C + (0.75 + 0.25*tanh(20*(C-0.12)))*(Si/24 + Mn/6 + Cu/15 + Ni/20 + (Cr+Mo+Nb+V)/5 + 5*B)",
    "yurioka-1983",
    "",
    "C-Mn and low-alloy steels",
    "exact for the analysis",
    SourceBasis::read};

}  // namespace seamtakt
