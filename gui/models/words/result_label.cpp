#include "models/words/result_label.hpp"

#include "document/shown_text.hpp"
#include "models/tables/grid_model.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "records/passes/pass_columns.hpp"

namespace seamtakt::desk {

namespace {

struct ResultLabel {
  std::string_view key;
  Word english;
};

// clang-format off: one label a line
/// Results of formulas that are no column of the tables, by the key in their notes.
constexpr ResultLabel labels[] = {
    {"acceptance", "Acceptance interval"_word},
    {"alpha_mm_s_A", "Arc coefficient alpha"_word},
    {"arc_energy_kJ_in", "Arc energy per inch"_word},
    {"arc_power_W", "Arc power"_word},
    {"bainite_hardness_HV", "Hardness of bainite"_word},
    {"beta_per_s_A2", "Resistance coefficient beta"_word},
    {"bow_mm", "Longitudinal bow"_word},
    {"cap_area_mm2", "Cap area"_word},
    {"cet_used", "CET of the plate or the weld metal"_word},
    {"cooling_time_2d_s", "Cooling time, two-dimensional heat flow"_word},
    {"cooling_time_3d_s", "Cooling time, three-dimensional heat flow"_word},
    {"design_shear_strength_MPa", "Design shear strength of the weld"_word},
    {"distance_mm", "Distance from the fusion line"_word},
    {"duty_pct", "Duty cycle"_word},
    {"effective_throat_mm", "Effective throat"_word},
    {"energy_J", "Energy of the record"_word},
    {"force_kN", "Tendon force"_word},
    {"groove_area_mm2", "Groove area"_word},
    {"hardness_HV", "Hardness of the heat-affected zone"_word},
    {"leg_min_mm", "Least leg"_word},
    {"limits_mm.convexity", "Limit of convexity"_word},
    {"limits_mm.excess_throat", "Limit of excess throat"_word},
    {"limits_mm.root_gap", "Limit of the root gap"_word},
    {"limits_mm.undercut", "Limit of undercut"_word},
    {"limits_mm.undersize_throat", "Limit of undersize throat"_word},
    {"limits_mm.unequal_legs", "Limit of unequal legs"_word},
    {"martensite_hardness_HV", "Hardness of martensite"_word},
    {"mean_power_W", "Mean power"_word},
    {"movement_mm", "Movement by distortion"_word},
    {"peak_temperature_C", "Peak temperature"_word},
    {"preheat_C", "Preheat needed"_word},
    {"probability_of_conformity", "Probability of conformity"_word},
    {"product_power_W", "Product of the means"_word},
    {"reached_speed_mm_s", "Speed reached"_word},
    {"resistance_N", "Resistance of the weld"_word},
    {"rms_current_A", "Effective current"_word},
    {"shortening_mm", "Shortening"_word},
    {"skew_factor", "Factor for skewed joints"_word},
    {"susceptibility_index", "Susceptibility index"_word},
    {"takt_s", "Takt"_word},
    {"temperature_C", "Temperature"_word},
    {"thickness_mm", "Qualified thickness"_word},
    {"throat_min_mm", "Least throat"_word},
    {"time_s", "Time of the move"_word},
    {"tolerance_deg", "Tolerance of the angle"_word},
    {"tolerance_mm", "Tolerance"_word},
    {"top_width_mm", "Width of the groove at the top"_word},
    {"transition_current_A", "Transition current"_word},
    {"transition_thickness_mm", "Transition thickness"_word},
    {"units_per_h", "Units an hour"_word},
    {"utilisation_directional", "Utilisation, directional method"_word},
    {"utilisation_simplified", "Utilisation, simplified method"_word},
    {"wait_s", "Interpass wait"_word},
    {"wire_feed_speed_m_min", "Wire feed speed"_word},
};
// clang-format on

}  // namespace

QString result_label(std::string_view key) {
  if (const auto* column = find_column(pass_columns(), key)) return core_label(column->label);
  if (const auto* column = find_column(seam_columns(), key)) return core_label(column->label);
  for (const ResultLabel& label : labels)
    if (label.key == key) return shown_word(label.english.english());
  if (const auto* column = find_column(seamtakt::record_columns(), key)) return core_label(column->label);
  return QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()));
}

}  // namespace seamtakt::desk
