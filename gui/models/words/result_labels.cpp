#include <QCoreApplication>
#include <string_view>

#include "models/tables/grid_model.hpp"
#include "models/words/note_text.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt::desk {

namespace {

struct ResultLabel {
  std::string_view key;
  const char* english;
};

// clang-format off: one label a line
/// Results of formulas that are no column of the tables, by the key in their notes.
constexpr ResultLabel labels[] = {
    {"acceptance", QT_TRANSLATE_NOOP("Explanation", "Acceptance interval")},
    {"alpha_mm_s_A", QT_TRANSLATE_NOOP("Explanation", "Arc coefficient alpha")},
    {"arc_energy_kJ_in", QT_TRANSLATE_NOOP("Explanation", "Arc energy per inch")},
    {"arc_power_W", QT_TRANSLATE_NOOP("Explanation", "Arc power")},
    {"bainite_hardness_HV", QT_TRANSLATE_NOOP("Explanation", "Hardness of bainite")},
    {"beta_per_s_A2", QT_TRANSLATE_NOOP("Explanation", "Resistance coefficient beta")},
    {"bow_mm", QT_TRANSLATE_NOOP("Explanation", "Longitudinal bow")},
    {"cap_area_mm2", QT_TRANSLATE_NOOP("Explanation", "Cap area")},
    {"cet_used", QT_TRANSLATE_NOOP("Explanation", "CET of the plate or the weld metal")},
    {"cooling_time_2d_s", QT_TRANSLATE_NOOP("Explanation", "Cooling time, two-dimensional heat flow")},
    {"cooling_time_3d_s", QT_TRANSLATE_NOOP("Explanation", "Cooling time, three-dimensional heat flow")},
    {"design_shear_strength_MPa", QT_TRANSLATE_NOOP("Explanation", "Design shear strength of the weld")},
    {"distance_mm", QT_TRANSLATE_NOOP("Explanation", "Distance from the fusion line")},
    {"duty_pct", QT_TRANSLATE_NOOP("Explanation", "Duty cycle")},
    {"effective_throat_mm", QT_TRANSLATE_NOOP("Explanation", "Effective throat")},
    {"energy_J", QT_TRANSLATE_NOOP("Explanation", "Energy of the record")},
    {"force_kN", QT_TRANSLATE_NOOP("Explanation", "Tendon force")},
    {"groove_area_mm2", QT_TRANSLATE_NOOP("Explanation", "Groove area")},
    {"hardness_HV", QT_TRANSLATE_NOOP("Explanation", "Hardness of the heat-affected zone")},
    {"leg_min_mm", QT_TRANSLATE_NOOP("Explanation", "Least leg")},
    {"limits_mm.convexity", QT_TRANSLATE_NOOP("Explanation", "Limit of convexity")},
    {"limits_mm.excess_throat", QT_TRANSLATE_NOOP("Explanation", "Limit of excess throat")},
    {"limits_mm.root_gap", QT_TRANSLATE_NOOP("Explanation", "Limit of the root gap")},
    {"limits_mm.undercut", QT_TRANSLATE_NOOP("Explanation", "Limit of undercut")},
    {"limits_mm.undersize_throat", QT_TRANSLATE_NOOP("Explanation", "Limit of undersize throat")},
    {"limits_mm.unequal_legs", QT_TRANSLATE_NOOP("Explanation", "Limit of unequal legs")},
    {"martensite_hardness_HV", QT_TRANSLATE_NOOP("Explanation", "Hardness of martensite")},
    {"mean_power_W", QT_TRANSLATE_NOOP("Explanation", "Mean power")},
    {"movement_mm", QT_TRANSLATE_NOOP("Explanation", "Movement by distortion")},
    {"peak_temperature_C", QT_TRANSLATE_NOOP("Explanation", "Peak temperature")},
    {"preheat_C", QT_TRANSLATE_NOOP("Explanation", "Preheat needed")},
    {"probability_of_conformity", QT_TRANSLATE_NOOP("Explanation", "Probability of conformity")},
    {"product_power_W", QT_TRANSLATE_NOOP("Explanation", "Product of the means")},
    {"reached_speed_mm_s", QT_TRANSLATE_NOOP("Explanation", "Speed reached")},
    {"resistance_N", QT_TRANSLATE_NOOP("Explanation", "Resistance of the weld")},
    {"rms_current_A", QT_TRANSLATE_NOOP("Explanation", "Effective current")},
    {"shortening_mm", QT_TRANSLATE_NOOP("Explanation", "Shortening")},
    {"skew_factor", QT_TRANSLATE_NOOP("Explanation", "Factor for skewed joints")},
    {"susceptibility_index", QT_TRANSLATE_NOOP("Explanation", "Susceptibility index")},
    {"takt_s", QT_TRANSLATE_NOOP("Explanation", "Takt")},
    {"temperature_C", QT_TRANSLATE_NOOP("Explanation", "Temperature")},
    {"thickness_mm", QT_TRANSLATE_NOOP("Explanation", "Qualified thickness")},
    {"throat_min_mm", QT_TRANSLATE_NOOP("Explanation", "Least throat")},
    {"time_s", QT_TRANSLATE_NOOP("Explanation", "Time of the move")},
    {"tolerance_deg", QT_TRANSLATE_NOOP("Explanation", "Tolerance of the angle")},
    {"tolerance_mm", QT_TRANSLATE_NOOP("Explanation", "Tolerance")},
    {"top_width_mm", QT_TRANSLATE_NOOP("Explanation", "Width of the groove at the top")},
    {"transition_current_A", QT_TRANSLATE_NOOP("Explanation", "Transition current")},
    {"transition_thickness_mm", QT_TRANSLATE_NOOP("Explanation", "Transition thickness")},
    {"units_per_h", QT_TRANSLATE_NOOP("Explanation", "Units an hour")},
    {"utilisation_directional", QT_TRANSLATE_NOOP("Explanation", "Utilisation, directional method")},
    {"utilisation_simplified", QT_TRANSLATE_NOOP("Explanation", "Utilisation, simplified method")},
    {"wait_s", QT_TRANSLATE_NOOP("Explanation", "Interpass wait")},
    {"wire_feed_speed_m_min", QT_TRANSLATE_NOOP("Explanation", "Wire feed speed")},
};
// clang-format on

}  // namespace

QString result_label(std::string_view key) {
  if (const auto* column = find_column(pass_columns(), key)) return core_label(column->label);
  if (const auto* column = find_column(seam_columns(), key)) return core_label(column->label);
  for (const ResultLabel& label : labels)
    if (label.key == key) return QCoreApplication::translate("Explanation", label.english);
  return QString::fromUtf8(key.data(), static_cast<qsizetype>(key.size()));
}

}  // namespace seamtakt::desk
