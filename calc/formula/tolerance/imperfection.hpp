#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "formula/note.hpp"
#include "formula/real.hpp"

namespace seamtakt {

/// How large an imperfection of a fillet weld may be.
/// Source: iso-5817 (ISO 5817:2014), Table 1 (undercut, level D of excess throat, and the rows up to 3 mm
/// recalled): h <= c + f * size, at most a cap. Rows in reference/iso5817.csv. The older EN 25817 had other
/// limits for undercut and excess throat. Cracks and lack of fusion are permitted at no level.

enum class ImperfectionSize { throat, thickness, face_width };

/// One row: h <= constant + factor * size, at most cap (mm).
struct ImperfectionRule {
  std::string imperfection;  ///< convexity, excess_throat, undersize_throat, unequal_legs, root_gap, undercut
  std::string number;        ///< ISO 6520-1
  std::string level;         ///< B, C, D
  bool limited = true;       ///< false: permitted whatever its size
  double constant_mm = 0, factor = 0;
  ImperfectionSize factor_of = ImperfectionSize::throat;
  std::optional<double> cap_mm;
  bool short_only = false;
  std::optional<double> thickness_above_mm, thickness_up_to_mm;
  SourceBasis basis = SourceBasis::read;
};

/// The key of a row. Thickness 0: not known, taken as above 3 mm.
struct ImperfectionCase {
  std::string level;  ///< B, C, D
  double thickness_mm = 0;
  bool short_imperfection = false;
};

/// Why there is or isn't a limit.
enum class Permission {
  limited,    ///< up to the rule's limit
  unlimited,  ///< permitted whatever its size
  not_permitted,
  only_if_short,  ///< not permitted as it is, but would be if it were short
  no_row          ///< the table says nothing for this thickness
};

struct ImperfectionJudgement {
  Permission permission = Permission::no_row;
  const ImperfectionRule* rule = nullptr;  ///< where limited or unlimited
};

/// The six imperfections, in the order of the contract's result.
inline constexpr const char* fillet_imperfections[] = {"convexity",    "excess_throat", "undersize_throat",
                                                       "unequal_legs", "root_gap",      "undercut"};

/// InputError where the table can't be read.
ImperfectionJudgement judge_imperfection(std::string_view imperfection, const ImperfectionCase& weld);

/// Limit (mm) for the size that the rule depends on (mm, > 0).
template <class Real>
Real imperfection_limit_mm(const ImperfectionRule& rule, const Real& size_mm) {
  const Real limit = rule.constant_mm + size_mm * rule.factor;
  return rule.cap_mm ? smaller<Real>(limit, Real(*rule.cap_mm)) : limit;
}

namespace detail {

constexpr FormulaNote imperfection_note(const char* id, const char* result, const char* symbols,
                                        const char* clause, SourceBasis basis) {
  return {id,
          result,
          symbols,
          "iso-5817",
          clause,
          "fusion-welded fillets, 0.5 mm and thicker; the row of the level",
          "a rule, no scatter",
          basis};
}

}  // namespace detail

/// In the order of fillet_imperfections. c, f and cap are in the row; b face width, a throat, t thickness.
inline constexpr FormulaNote imperfection_notes[] = {
    detail::imperfection_note("imperfection.convexity", "limits_mm.convexity", "h = min(c + f*b, cap)",
                              "Table 1, 503", SourceBasis::read),
    detail::imperfection_note("imperfection.excess-throat", "limits_mm.excess_throat",
                              "h = min(c + f*a, cap)", "Table 1, 5214", SourceBasis::part_read),
    detail::imperfection_note("imperfection.undersize-throat", "limits_mm.undersize_throat",
                              "h = min(c + f*a, cap)", "Table 1, 5213", SourceBasis::part_read),
    detail::imperfection_note("imperfection.unequal-legs", "limits_mm.unequal_legs", "h = c + f*a",
                              "Table 1, 512", SourceBasis::read),
    detail::imperfection_note("imperfection.root-gap", "limits_mm.root_gap", "h = min(c + f*a, cap)",
                              "Table 1, 617", SourceBasis::part_read),
    detail::imperfection_note("imperfection.undercut", "limits_mm.undercut", "h = min(f*t, cap)",
                              "Table 1, 5011 and 5012", SourceBasis::recalled),
};

}  // namespace seamtakt
