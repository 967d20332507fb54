#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// What a welding procedure test qualifies.
/// Source: iso-15614-1 (ISO 15614-1:2017, level 2, and the edition of 2004), recalled: Table 7 (butt), Table
/// 8 (fillet), 8.4.7 (heat input), in 2004 Tables 5 and 6 and 8.4.8. The column for single runs of butt welds
/// is that of 2004 in both. The rows are in reference/qualification_ranges.csv: compare them with your copy
/// of the standard and correct them there. Preheat qualifies as tested or above, interpass temperature as
/// tested or below; process, mechanisation, kind of current, filler and transfer mode as tested.

/// The test weld, as far as the ranges depend on it.
struct QualifiedTest {
  std::string basis = "iso15614-1";
  std::string edition = "2017";  ///< 2004 or 2017
  std::string joint = "butt";    ///< butt, fillet
  std::string runs = "multi";    ///< single, multi
  bool impact_tested = false;
  bool hardness_tested = false;
};

/// How a range follows from the tested value: [max(low_factor * value, low_at_least), high_factor * value];
/// an empty side has no limit.
struct RangeRule {
  std::optional<double> low_factor, low_at_least, high_factor;
  bool has_limit() const { return low_factor || low_at_least || high_factor; }
};

template <class Real>
struct QualifiedRange {
  std::optional<Real> low, high;
};

/// Thickness (mm, > 0). Empty where the standard has no range: a single run thicker than 100 mm.
/// InputError for a basis that the table doesn't have.
std::optional<RangeRule> thickness_rule(const QualifiedTest& test, double tested_thickness_mm);
/// Throat of a fillet; no limit for several runs and for butt welds.
RangeRule throat_rule(const QualifiedTest& test);
/// Heat input: an upper limit where impact was tested, a lower one where hardness was. Arc energy may replace
/// heat input on both sides, with the same percentages.
RangeRule heat_input_rule(const QualifiedTest& test);

template <class Real>
QualifiedRange<Real> qualified_range(const RangeRule& rule, const Real& tested) {
  QualifiedRange<Real> range;
  if (rule.low_factor) range.low = Real(tested * *rule.low_factor);
  if (rule.low_at_least) {
    const Real at_least(*rule.low_at_least);
    range.low = range.low ? larger<Real>(*range.low, at_least) : at_least;
  }
  if (rule.high_factor) range.high = Real(tested * *rule.high_factor);
  return range;
}

/// Share of a limit by which a value may exceed it: the rounding of the products.
inline constexpr double qualified_rounding = 1e-12;

/// Whether a value is qualified; one on a limit is.
inline bool is_qualified(const QualifiedRange<double>& range, double value) {
  return (!range.low || value >= *range.low * (1 - qualified_rounding)) &&
         (!range.high || value <= *range.high * (1 + qualified_rounding));
}

inline constexpr FormulaNote qualified_thickness_low_note{
    "qualification.thickness-low", "thickness_mm",
    "low = max(f_low*t, t_least)", "iso-15614-1",
    "level 2, Tables 7 and 8",     "steel; f_low and t_least by joint, runs and thickness of the test piece",
    "a rule, no scatter",          SourceBasis::recalled};

inline constexpr FormulaNote qualified_thickness_high_note{
    "qualification.thickness-high",
    "thickness_mm",
    "high = f_high*t",
    "iso-15614-1",
    "level 2, Tables 7 and 8",
    "steel; f_high by joint, runs and thickness of the test piece",
    "a rule, no scatter",
    SourceBasis::recalled};

inline constexpr FormulaNote qualified_throat_low_note{"qualification.throat-low",
                                                       "throat_mm",
                                                       "low = f_low*a",
                                                       "iso-15614-1",
                                                       "level 2, Table 8",
                                                       "single-run fillets; several runs have no limit",
                                                       "a rule, no scatter",
                                                       SourceBasis::recalled};

inline constexpr FormulaNote qualified_throat_high_note{
    "qualification.throat-high", "throat_mm",
    "high = f_high*a",           "iso-15614-1",
    "level 2, Table 8",          "single-run fillets; several runs have no limit",
    "a rule, no scatter",        SourceBasis::recalled};

inline constexpr FormulaNote qualified_heat_input_low_note{"qualification.heat-input-low",
                                                           "heat_input_kJ_mm",
                                                           "low = f_low*Q",
                                                           "iso-15614-1",
                                                           "level 2, 8.4.7",
                                                           "where hardness was tested; arc energy likewise",
                                                           "a rule, no scatter",
                                                           SourceBasis::recalled};

inline constexpr FormulaNote qualified_heat_input_high_note{"qualification.heat-input-high",
                                                            "heat_input_kJ_mm",
                                                            "high = f_high*Q",
                                                            "iso-15614-1",
                                                            "level 2, 8.4.7",
                                                            "where impact was tested; arc energy likewise",
                                                            "a rule, no scatter",
                                                            SourceBasis::recalled};

}  // namespace seamtakt
