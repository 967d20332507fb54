#pragma once

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// Takt: time available over units required. Source: derived (definition). Accuracy: exact.
/// available h, > 0; demand units, > 0.
template <class Real>
Real takt_s(const Real& available_h, const Real& demand_units) {
  return Real(available_h * 3600.0 / demand_units);
}

template <class Real>
Real units_per_h(const Real& available_h, const Real& demand_units) {
  return Real(demand_units / available_h);
}

inline constexpr FormulaNote takt_note{"takt.takt",  "takt_s", "t = h*3600/n", "derived",
                                       "definition", "any",    "exact",        SourceBasis::derived};
inline constexpr FormulaNote takt_rate_note{"takt.rate",  "units_per_h", "r = n/h", "derived",
                                            "definition", "any",         "exact",   SourceBasis::derived};

}  // namespace seamtakt
