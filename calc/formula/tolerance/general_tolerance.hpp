#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "formula/note.hpp"

namespace seamtakt {

/// General tolerances of welded constructions, where the drawing states none.
/// Source: iso-13920 (ISO 13920:1996), tables of linear dimensions (classes A to D), angles (A to D) and
/// straightness, flatness, parallelism (E to H; G and H recalled). Rows in reference/iso13920.csv; a range's
/// upper bound belongs to it.

enum class ToleranceKind { linear, angular, straightness };

struct GeneralTolerance {
  std::optional<double> tolerance_mm;   ///< +- for linear; whole for straightness
  std::optional<double> tolerance_deg;  ///< +-
  std::optional<double>
      tolerance_mm_per_m;  ///< +-, angular: at the end of the shorter leg, as the standard rounds it
  SourceBasis basis = SourceBasis::read;
};

/// Tolerance of one nominal length (mm, > 0; of an angle, its shorter leg). Empty where the standard has no
/// row: linear below 2 mm (2 itself included), straightness up to 30 mm. tolerance_class: one letter.
/// InputError where no table of this kind has the class.
std::optional<GeneralTolerance> general_tolerance(ToleranceKind kind, std::string_view tolerance_class,
                                                  double length_mm);

/// Linear for A to D, straightness for E to H, as a drawing's "BF" combines them; empty for any other text.
std::optional<ToleranceKind> kind_of_class(std::string_view tolerance_class);

inline constexpr FormulaNote linear_tolerance_note{"tolerance.linear",
                                                   "tolerance_mm",
                                                   "+- tolerance of the table's row for class and length",
                                                   "iso-13920",
                                                   "table of linear dimensions",
                                                   "2 mm and more; a range's upper bound belongs to it",
                                                   "a rule, no scatter",
                                                   SourceBasis::part_read};

inline constexpr FormulaNote angular_tolerance_note{
    "tolerance.angular",
    "tolerance_deg",
    "+- tolerance of the table's row for class and shorter leg",
    "iso-13920",
    "table of angular dimensions",
    "length of the shorter leg",
    "a rule, no scatter",
    SourceBasis::part_read};

inline constexpr FormulaNote angular_tolerance_mm_note{
    "tolerance.angular-mm",
    "tolerance_mm",
    "T = t*L/1000",
    "iso-13920",
    "table of angular dimensions",
    "at the end of the shorter leg; t is the table's rounded mm/m",
    "a rule, no scatter",
    SourceBasis::part_read};

inline constexpr FormulaNote straightness_tolerance_note{"tolerance.straightness",
                                                         "tolerance_mm",
                                                         "tolerance of the table's row for class and length",
                                                         "iso-13920",
                                                         "table of straightness, flatness and parallelism",
                                                         "above 30 mm; classes G and H recalled",
                                                         "a rule, no scatter",
                                                         SourceBasis::part_read};

}  // namespace seamtakt
