#pragma once

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "formula/heat/inch_forms.hpp"
#include "formula/note.hpp"
#include "formula/real.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {

/// Preheat against hydrogen cracking, method B.
///   Tp = 697*CET + 160*tanh(d/35) + 62*HD^0.35 + (53*CET - 32)*Q - 328
/// Source: en-1011-2, C.3, equation C.8. d is the thickness of the thicker plate, not the combined thickness;
/// HD the diffusible hydrogen of the weld metal (ml/100 g); Q the heat input (kJ/mm). Range: CET 0.2-0.5 %, d
/// 10-90 mm, HD 1-20 ml/100 g, Q 0.5-4.0 kJ/mm; yield strength to 1000 MPa (recalled). Outside it the value
/// is given with findings. A result at or below the temperature of the shop means no preheat. Accuracy: not
/// stated by the source; an older rounded form (700*CET, -330) differs by about 1 degC.
template <class Real>
Real preheat_method_b_C(const Real& cet_pct, const Real& thickness_mm, const Real& hydrogen_ml_100g,
                        const Real& heat_input_kJ_mm) {
  using std::pow;
  using std::tanh;
  const Real relative = thickness_mm / 35.0;
  return Real(697.0 * cet_pct + 160.0 * tanh(relative) + 62.0 * pow(hydrogen_ml_100g, 0.35) +
              (53.0 * cet_pct - 32.0) * heat_input_kJ_mm - 328.0);
}

/// CET to design with: the parent metal's, but at least the weld metal's + 0.03 (en-1011-2, C.3).
template <class Real>
Real design_cet_pct(const Real& parent_cet_pct, const Real& weld_metal_cet_pct) {
  const Real of_weld = weld_metal_cet_pct + 0.03;
  return larger<Real>(parent_cet_pct, of_weld);
}

inline constexpr ValidRange preheat_cet_range{"preheat.cet.range", "CET"_word, 0.2, 0.5, "%",
                                              "en-1011-2, C.3"};
inline constexpr ValidRange preheat_thickness_range{
    "preheat.thickness.range", "The plate thickness"_word, 10, 90, "mm", "en-1011-2, C.3"};
inline constexpr ValidRange preheat_hydrogen_range{
    "preheat.hydrogen.range", "The diffusible hydrogen"_word, 1, 20, "ml/100g", "en-1011-2, C.3"};
inline constexpr ValidRange preheat_heat_input_range{
    "preheat.heat-input.range", "The heat input"_word, 0.5, 4.0, "kJ/mm", "en-1011-2, C.3"};

/// Inputs of method B. Where an input is outside the range on the side where the edge asks for no less
/// preheat (CET below 0.2 %, a plate below 10 mm, hydrogen below 1 ml/100 g, heat input above 4 kJ/mm), a
/// plan is judged at that edge; on the other side it isn't judged at all (derived from C.8: Tp rises with
/// CET, d and HD, and falls with Q while 53*CET < 32).
struct PreheatInputs {
  double cet_pct = 0, thickness_mm = 0, hydrogen_ml_100g = 0, heat_input_kJ_mm = 0;
};

/// One input's place in the range, and in a set of them (`bit`).
struct PreheatInputRange {
  const char* symbol;  ///< as in preheat_method_b_note
  const ValidRange& range;
  double PreheatInputs::*value;
  bool edge_is_upper;  ///< which end of the range asks for no less preheat beyond it
  std::uint8_t bit;
};
inline constexpr PreheatInputRange preheat_input_ranges[] = {
    {"CET", preheat_cet_range, &PreheatInputs::cet_pct, false, 1},
    {"d", preheat_thickness_range, &PreheatInputs::thickness_mm, false, 2},
    {"HD", preheat_hydrogen_range, &PreheatInputs::hydrogen_ml_100g, false, 4},
    {"Q", preheat_heat_input_range, &PreheatInputs::heat_input_kJ_mm, true, 8},
};

/// Inputs moved to the edge where that asks for no less, and which ones were; `beyond`: which are outside on
/// the other side, where method B can't be judged (they stay as they are).
struct PreheatCase {
  PreheatInputs inputs;
  std::uint8_t at_edge = 0, beyond = 0;
};
inline PreheatCase preheat_case(const PreheatInputs& given) {
  PreheatCase result{given};
  for (const PreheatInputRange& each : preheat_input_ranges) {
    double& value = result.inputs.*each.value;
    if (is_inside(each.range, value)) continue;
    if ((value > each.range.upper) == each.edge_is_upper) {
      value = each.edge_is_upper ? each.range.upper : each.range.lower;
      result.at_edge |= each.bit;
    } else {
      result.beyond |= each.bit;
    }
  }
  return result;
}

/// Plates are welded dry and no colder than this, whatever the method asks for (en-1011-2, C.3, recalled).
inline constexpr double coldest_plate_C = 5;

/// Temperature of a shop: a need up to this counts as none (common practice, no source).
inline constexpr double shop_temperature_C = 20;

/// Preheat that a pass needs (degC): method B, heat inputs above its range taken at the edge, and never below
/// coldest_plate_C. The other inputs are expected inside the range (see preheat_case).
template <class Real>
Real preheat_needed_C(const Real& cet_pct, const Real& thickness_mm, const Real& hydrogen_ml_100g,
                      const Real& heat_input_kJ_mm) {
  const Real heat = smaller<Real>(heat_input_kJ_mm, Real(preheat_heat_input_range.upper));
  const Real needed = preheat_method_b_C<Real>(cet_pct, thickness_mm, hydrogen_ml_100g, heat);
  return larger<Real>(needed, Real(coldest_plate_C));
}

/// Warnings for what is outside method B's range; empty: in range.
inline Findings outside_preheat_range(double cet_pct, double thickness_mm, double hydrogen_ml_100g,
                                      double heat_input_kJ_mm, const std::string& where) {
  Findings findings;
  add_if_any(findings, outside_range(preheat_cet_range, cet_pct, where));
  add_if_any(findings, outside_range(preheat_thickness_range, thickness_mm, where));
  add_if_any(findings, outside_range(preheat_hydrogen_range, hydrogen_ml_100g, where));
  add_if_any(findings, outside_range(preheat_heat_input_range, heat_input_kJ_mm, where));
  return findings;
}

/// Hydrogen scale of en-1011-2 (Table C.2), "A" to "E": reference/hydrogen_scales.csv, read once. >= 0.
/// InputError: the table is damaged.
const std::string& hydrogen_scale(double hydrogen_ml_100g);

/// Preheat by hydrogen control, aws-d1-1, annex on alternative methods (recalled: compare with your copy).
///   SI = 12*Pcm + log10(H)
/// The group comes from Pcm and the hydrogen level by the annex's table where Pcm is below 0.38, else from
/// the index; the temperature from group, restraint and thickness.
enum class HydrogenLevel { h1, h2, h3 };

/// H1 below 5, H2 below 10 ml/100 g, H3 not controlled.
inline HydrogenLevel hydrogen_level_of(double hydrogen_ml_100g) {
  if (hydrogen_ml_100g < 5) return HydrogenLevel::h1;
  return hydrogen_ml_100g < 10 ? HydrogenLevel::h2 : HydrogenLevel::h3;
}

/// "H1", "H2" or "H3".
inline std::optional<HydrogenLevel> hydrogen_level_of(std::string_view name) {
  if (name == "H1") return HydrogenLevel::h1;
  if (name == "H2") return HydrogenLevel::h2;
  if (name == "H3") return HydrogenLevel::h3;
  return std::nullopt;
}

/// Hydrogen that a level represents in the index, ml/100 g.
inline double hydrogen_of_level_ml_100g(HydrogenLevel level) {
  switch (level) {
    case HydrogenLevel::h1:
      return 5;
    case HydrogenLevel::h2:
      return 10;
    case HydrogenLevel::h3:
      break;
  }
  return 30;
}

/// hydrogen > 0, ml/100 g.
template <class Real>
Real susceptibility_index(const Real& pcm_pct, const Real& hydrogen_ml_100g) {
  using std::log;
  return Real(12.0 * pcm_pct + log(hydrogen_ml_100g) / std::log(10.0));
}

/// Group 'A' to 'G' by the index; beyond 7.0 there is none: 'G' with the index out of range.
char susceptibility_group_of_index(double index);

/// Group 'A' to 'F' by the table; empty from Pcm 0.38 on.
std::optional<char> susceptibility_group_of_table(double pcm_pct, HydrogenLevel level);

enum class Restraint { low, medium, high };
std::optional<Restraint> restraint_of(std::string_view name);

struct AwsPreheat {
  double preheat_C = 0;
  /// The table's "65-": no preheat is needed above this temperature of the shop.
  bool none_needed_above = false;
};

/// reference/preheat_aws.csv, read once. group 'A' to 'G', thickness mm, > 0. InputError: the table is
/// damaged.
AwsPreheat aws_preheat(Restraint restraint, char group, double thickness_mm);

inline constexpr double susceptibility_index_greatest = 7.0;
inline constexpr ValidRange susceptibility_index_range{"preheat.index.range",
                                                       "The susceptibility index"_word,
                                                       0,
                                                       susceptibility_index_greatest,
                                                       "",
                                                       "aws-d1-1, hydrogen control (recalled)"};

inline constexpr FormulaNote preheat_method_b_note{
    "preheat.method-b",
    "preheat_C",
    "Tp = 697*CET + 160*tanh(d/35) + 62*HD^0.35 + (53*CET - 32)*Q - 328",
    "en-1011-2",
    "C.3, equation C.8",
    "CET 0.2-0.5 %, d 10-90 mm (thicker plate), HD 1-20 ml/100 g, Q 0.5-4.0 kJ/mm, yield to 1000 MPa",
    "not stated by the source",
    SourceBasis::read};
inline constexpr FormulaNote design_cet_note{"preheat.design-cet",
                                             "cet_used",
                                             "CETd = max(CET, CETw + 0.03)",
                                             "en-1011-2",
                                             "C.3",
                                             "CETw: weld metal, where given",
                                             "exact",
                                             SourceBasis::read};
inline constexpr FormulaNote susceptibility_note{
    "preheat.susceptibility",  "susceptibility_index",    "SI = 12*Pcm + log10(H)",   "aws-d1-1",
    "hydrogen control, index", "groups A to G up to 7.0", "not stated by the source", SourceBasis::recalled};
inline constexpr FormulaNote aws_preheat_note{"preheat.aws-hydrogen",
                                              "preheat_C",
                                              "Tp = table(group, restraint, t)",
                                              "aws-d1-1",
                                              "hydrogen control, minimum preheat",
                                              "groups A to G, three restraint levels, any thickness",
                                              "the table's steps",
                                              SourceBasis::recalled};

}  // namespace seamtakt
