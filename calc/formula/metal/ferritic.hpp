#pragma once

#include <optional>
#include <string_view>

namespace seamtakt {

/// Whether a metal is a ferritic steel in the sense of en-1011-2 (unalloyed and low-alloyed; its scope leaves
/// stainless steels out), which t8/5, carbon equivalents, preheat, hardness of the heat-affected zone and
/// penetration are formulas for. Decided from the composition alone:
///   Cr from 10.5 %: stainless (en-10088-1, recalled)
///   Ni above 10 %: beyond group 9, the nickel-alloyed steels (iso-tr-15608, recalled)
///   Mn, Al or Cu above 10 %, Mg above 0.2 %, Fe reported below 50 %: austenitic manganese steel, or no steel
///   (common practice, no source)
/// An element that isn't reported says nothing: a metal without any of these counts as ferritic.

/// Why a metal isn't one: an element's content and the bound that it passes.
struct NotFerritic {
  std::string_view symbol;
  double pct = 0, bound_pct = 0;
  bool is_upper = true;  ///< above the bound, else below it
  const char* source = "";
};

namespace detail {

struct FerriticBound {
  std::string_view symbol;
  double pct;
  bool is_upper;
  const char* source;
};
inline constexpr FerriticBound ferritic_bounds[] = {
    {"Cr", 10.5, true, "EN 10088-1, 3.1 (recalled)"}, {"Ni", 10, true, "ISO/TR 15608, Table 1 (recalled)"},
    {"Mn", 10, true, "common practice, no source"},   {"Al", 10, true, "common practice, no source"},
    {"Cu", 10, true, "common practice, no source"},   {"Mg", 0.2, true, "common practice, no source"},
    {"Fe", 50, false, "common practice, no source"}};

}  // namespace detail

/// From pairs of (symbol, mass %); empty: a ferritic steel, as far as the composition tells. A value equal to
/// the Cr bound is stainless; a value equal to another bound is inside.
template <class Pairs>
std::optional<NotFerritic> why_not_ferritic(const Pairs& composition_pct) {
  for (const auto& bound : detail::ferritic_bounds)
    for (const auto& [symbol, pct] : composition_pct) {
      if (symbol != bound.symbol) continue;
      const bool is_beyond = bound.is_upper ? pct > bound.pct : pct < bound.pct;
      if (is_beyond || (symbol == "Cr" && pct == bound.pct))
        return NotFerritic{bound.symbol, pct, bound.pct, bound.is_upper, bound.source};
    }
  return std::nullopt;
}

}  // namespace seamtakt
