#pragma once

#include <array>
#include <bitset>
#include <string>
#include <string_view>
#include <vector>

#include "formula/real.hpp"

namespace seamtakt {

/// Chemical composition of a steel, mass %, with the elements that the trade's formulas use. An element that
/// wasn't reported counts as 0, and the composition knows that it wasn't.
template <class Real>
struct Composition {
  Real C = Real(0), Si = Real(0), Mn = Real(0), P = Real(0), S = Real(0), Cr = Real(0), Ni = Real(0),
       Mo = Real(0), Cu = Real(0), V = Real(0), Nb = Real(0), Ti = Real(0), B = Real(0), N = Real(0),
       Al = Real(0);

  static constexpr std::size_t elements = 15;
  std::bitset<elements> reported;

  struct Member {
    std::string_view symbol;
    Real Composition::*value;
  };
  static constexpr std::array<Member, elements> members() {
    using K = Composition;
    return {{{"C", &K::C},
             {"Si", &K::Si},
             {"Mn", &K::Mn},
             {"P", &K::P},
             {"S", &K::S},
             {"Cr", &K::Cr},
             {"Ni", &K::Ni},
             {"Mo", &K::Mo},
             {"Cu", &K::Cu},
             {"V", &K::V},
             {"Nb", &K::Nb},
             {"Ti", &K::Ti},
             {"B", &K::B},
             {"N", &K::N},
             {"Al", &K::Al}}};
  }

  /// Sets an element; false where no formula uses it (it is then ignored).
  bool set(std::string_view symbol, const Real& pct) {
    for (std::size_t i = 0; i < elements; ++i) {
      if (members()[i].symbol != symbol) continue;
      this->*(members()[i].value) = pct;
      reported.set(i);
      return true;
    }
    return false;
  }

  bool was_reported(std::string_view symbol) const {
    for (std::size_t i = 0; i < elements; ++i)
      if (members()[i].symbol == symbol) return reported.test(i);
    return false;
  }
};

/// From pairs of (symbol, mass %), in any order; elements that no formula uses are ignored.
template <class Real, class Pairs>
Composition<Real> composition_of(const Pairs& pairs) {
  Composition<Real> composition;
  for (const auto& [symbol, pct] : pairs) composition.set(symbol, Real(pct));
  return composition;
}

/// "Cr, Mo, V": those of `symbols` that weren't reported; empty where all were.
template <class Real, class Symbols>
std::string not_reported(const Composition<Real>& composition, const Symbols& symbols) {
  std::string text;
  for (std::string_view symbol : symbols) {
    if (composition.was_reported(symbol)) continue;
    if (!text.empty()) text += ", ";
    text += symbol;
  }
  return text;
}

}  // namespace seamtakt
