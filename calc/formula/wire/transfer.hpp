#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "formula/note.hpp"
#include "formula/real.hpp"
#include "formula/wire/shielding_gas.hpp"

namespace seamtakt {

/// Transition current from globular to spray transfer: published values by wire material, gas and diameter,
/// linear in between. Source: mig-handbook, Table 1-2; two single public notes for mild steel in 90Ar-10CO2
/// (marked). Above 15 % CO2 there is no clear transition on carbon steel (the same handbook; others put the
/// limit at 20 to 25 %, common practice): up to 25 % none is published, above it there is no spray. A gas or
/// diameter outside the table is "not published": nothing is extrapolated. Accuracy: not stated by the
/// source; a longer extension lowers the current.

struct TransitionCurrent {
  std::string_view material;
  std::string_view gas;  ///< as in the source's table
  double diameter_mm, current_A;
  bool indicative;  ///< common practice: from a single public note
};

/// reference/transition_current.csv, read once: rows of one material and gas in order of diameter.
/// InputError: the table is damaged.
const std::vector<TransitionCurrent>& transition_currents();

/// Whether a nominal size is the table's (its inch sizes are rounded to mm in more than one way).
inline constexpr double same_diameter_within_mm = 0.015;

inline constexpr double spray_co2_limit_pct = 15;
/// Where others put that limit at the most (common practice): up to it nothing clear is published.
inline constexpr double spray_co2_others_limit_pct = 25;

enum class TransitionStatus {
  published,      ///< current_A holds
  unclear,        ///< more CO2 than has a clear transition, less than all agree to allow no spray
  no_spray,       ///< more CO2 than allows spray
  not_published,  ///< no row for this material, gas or diameter
};

template <class Real>
struct Transition {
  TransitionStatus status = TransitionStatus::not_published;
  std::optional<Real> current_A;
  bool interpolated = false;
  std::string_view table_gas;    ///< the row's gas
  bool gas_is_table_gas = true;  ///< false: the gas is in the row's range, with other percentages
  bool indicative = false;       ///< from a single public note
};

/// The rows that a gas may use.
struct TransitionRows {
  TransitionStatus status = TransitionStatus::not_published;
  std::string_view table_gas;
  bool exact = true;
};
TransitionRows transition_rows(std::string_view material, const ShieldingGas& gas);

/// material: mild-steel, stainless or aluminium; wire diameter mm, > 0.
template <class Real>
Transition<Real> transition_current(std::string_view material, const Real& diameter_mm,
                                    const ShieldingGas& gas) {
  Transition<Real> result;
  TransitionRows rows = transition_rows(material, gas);
  result.status = rows.status;
  if (rows.status != TransitionStatus::published) return result;
  result.table_gas = rows.table_gas;
  result.gas_is_table_gas = rows.exact;
  result.status = TransitionStatus::not_published;
  const TransitionCurrent* below = nullptr;
  for (const TransitionCurrent& row : transition_currents()) {
    if (row.material != material || row.gas != rows.table_gas) continue;
    result.indicative = result.indicative || row.indicative;
    double off = value_of(diameter_mm) - row.diameter_mm;
    if (off >= -same_diameter_within_mm && off <= same_diameter_within_mm) {
      result.current_A = Real(row.current_A);
    } else if (below && off < 0 && !result.current_A) {
      const Real share = (diameter_mm - below->diameter_mm) / (row.diameter_mm - below->diameter_mm);
      result.current_A = Real(below->current_A + share * (row.current_A - below->current_A));
      result.interpolated = true;
    }
    below = off > 0 ? &row : nullptr;
  }
  if (result.current_A) result.status = TransitionStatus::published;
  return result;
}

/// "spray", "below-spray" or "not published", by the transition current alone.
template <class Real>
const char* transfer_mode(const Transition<Real>& transition, double current_A) {
  if (transition.status == TransitionStatus::no_spray) return "below-spray";
  if (transition.status != TransitionStatus::published) return "not published";
  return current_A >= value_of(*transition.current_A) ? "spray" : "below-spray";
}

inline constexpr FormulaNote transition_current_note{
    "transfer.transition-current",
    "transition_current_A",
    "I = table(material, gas, d)",
    "mig-handbook",
    "Table 1-2",
    "solid wire 0.76 to 1.6 mm; mild steel in Ar with O2, stainless in Ar with O2, aluminium in Ar; no clear "
    "transition above 15 % CO2",
    "not stated by the source; a longer extension lowers it",
    SourceBasis::read};

}  // namespace seamtakt
