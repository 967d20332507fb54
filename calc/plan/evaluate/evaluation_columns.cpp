#include "plan/evaluate/evaluation_columns.hpp"

#include "formula/metal/preheat.hpp"

namespace seamtakt {

namespace {

using P = PassEvaluation;
using S = SeamEvaluation;
using W = WeldmentEvaluation;

/// The words of each set of JudgedBy.
constexpr const char* judged_words[16] = {"",
                                          "size",
                                          "heat",
                                          "size, heat",
                                          "position",
                                          "size, position",
                                          "heat, position",
                                          "size, heat, position",
                                          "qualification",
                                          "size, qualification",
                                          "heat, qualification",
                                          "size, heat, qualification",
                                          "position, qualification",
                                          "size, position, qualification",
                                          "heat, position, qualification",
                                          "size, heat, position, qualification"};

ColumnValue judged_value(const P& pass) {
  return std::string_view(judged_words[pass.judged]);
}

constexpr Column<P> judged_column() {
  Column<P> column{"judged", "Judged by", "", 0, false, "What the pass was judged by", judged_value};
  column.is_list = true;
  return column;
}

constexpr Column<P> pass_table[] = {
    {"weldment", "Weldment", "", 0, true, "Weldment", member_value<P, &P::weldment>},
    {"seam", "Seam", "", 0, true, "Seam", member_value<P, &P::seam>},
    {"pass", "Pass", "", 0, true, "Pass, counted from 1", member_value<P, &P::pass>},
    {"schedule", "Schedule", "", 0, true, "Schedule of this pass", member_value<P, &P::schedule>},
    {"process", "Process", "", 0, false, "Process number of ISO 4063", member_value<P, &P::process>},
    {"length_mm", "Length", "mm", 5, true, "Welded length of the pass", member_value<P, &P::length_mm>},
    {"current_A", "Current", "A", 4, true, "Measured mean, else from the melting law",
     member_value<P, &P::current_A>},
    {"voltage_V", "Voltage", "V", 4, true, "Arc voltage", member_value<P, &P::voltage_V>},
    {"arc_power_kW", "Arc power", "kW", 4, false, "Voltage x current x waveform factor",
     member_value<P, &P::arc_power_kW>},
    {"arc_energy_kJ_mm", "Arc energy", "kJ/mm", 4, false, "Arc power over travel speed, without efficiency",
     member_value<P, &P::arc_energy_kJ_mm>},
    {"heat_input_kJ_mm", "Heat input", "kJ/mm", 4, true, "Arc energy x thermal efficiency of the process",
     member_value<P, &P::heat_input_kJ_mm>},
    {"melting_rate_kg_h", "Melting rate", "kg/h", 4, false, "Wire melted an hour of arc",
     member_value<P, &P::melting_rate_kg_h>},
    {"deposition_rate_kg_h", "Deposition rate", "kg/h", 4, false, "Melting rate x deposition efficiency",
     member_value<P, &P::deposition_rate_kg_h>},
    {"deposit_area_mm2", "Deposit area", "mm2", 4, false, "Cross-section that the pass lays",
     member_value<P, &P::deposit_area_mm2>},
    {"penetration_mm", "Penetration", "mm", 3, false, "Rough estimate, bead on plate",
     member_value<P, &P::penetration_mm>},
    {"transfer_mode", "Transfer", "", 0, false, "Metal transfer", member_value<P, &P::transfer_mode>},
    {"cooling_time_s", "t8/5", "s", 4, true,
     "Cooling time 800 to 500 C by EN 1011-2, annex D: thinner plate, as preheated",
     member_value<P, &P::cooling_time_s>},
    {"cooling_regime", "Heat flow", "", 0, false, "Two- or three-dimensional heat flow",
     member_value<P, &P::cooling_regime>},
    {"cooling_time_span_s", "t8/5 span", "s", 4, false,
     "By EN 1011-2, annex D, over the range of the shape factor", member_value<P, &P::cooling_time_span_s>},
    {"cooling_time_plate_s", "t8/5 by plate", "s", 4, false, "By EN 1011-2, annex D, each plate's own",
     member_value<P, &P::cooling_time_plate_s>},
    {"cooling_time_hot_s", "t8/5 hot", "s", 4, false,
     "By EN 1011-2, annex D, from the upper interpass limit, thinner plate",
     member_value<P, &P::cooling_time_hot_s>},
    {"preheat_needed_C", "Preheat needed", "C", 3, true, "Method B of EN 1011-2, thicker plate",
     member_value<P, &P::preheat_needed_C>, shop_temperature_C},
    {"CE_IIW", "CE", "", 3, false, "Carbon equivalent, IIW", member_value<P, &P::CE_IIW>},
    {"CET", "CET", "", 3, false, "Carbon equivalent of EN 1011-2 method B", member_value<P, &P::CET>},
    {"Pcm", "Pcm", "", 3, false, "Cracking parameter", member_value<P, &P::Pcm>},
    {"CEN", "CEN", "", 3, false, "Carbon equivalent with the accommodation factor A(C)",
     member_value<P, &P::CEN>},
    {"haz_hardness_HV", "HAZ hardness", "HV", 3, false, "Estimated maximum, worse of the two plates",
     member_value<P, &P::haz_hardness_HV>},
    {"arc_time_s", "Arc time", "s", 4, true, "Welded length over travel speed",
     member_value<P, &P::arc_time_s>},
    {"wire_g", "Wire", "g", 4, false, "Wire fed", member_value<P, &P::wire_g>},
    {"gas_l", "Gas", "l", 4, false, "Shielding gas, post-flow included", member_value<P, &P::gas_l>},
    {"energy_kWh", "Energy", "kWh", 4, false, "Arc energy over the power source's efficiency",
     member_value<P, &P::energy_kWh>},
    {"U_current_A", "U current", "A", 2, false, "Expanded uncertainty, k = 2",
     member_value<P, &P::U_current_A>},
    {"U_heat_input_kJ_mm", "U heat input", "kJ/mm", 2, false, "Expanded uncertainty, k = 2",
     member_value<P, &P::U_heat_input_kJ_mm>},
    {"U_cooling_time_s", "U t8/5", "s", 2, false, "Expanded uncertainty, k = 2",
     member_value<P, &P::U_cooling_time_s>},
    judged_column(),
};

constexpr Column<S> seam_table[] = {
    {"weldment", "Weldment", "", 0, true, "Weldment", member_value<S, &S::weldment>},
    {"seam", "Seam", "", 0, true, "Seam", member_value<S, &S::seam>},
    {"leg_mm", "Leg", "mm", 3, true, "Leg obtained from all passes, gap deducted",
     member_value<S, &S::leg_mm>},
    {"leg_needed_mm", "Leg needed", "mm", 3, true, "As drawn", member_value<S, &S::leg_needed_mm>},
    {"throat_mm", "Throat", "mm", 3, true, "Throat obtained", member_value<S, &S::throat_mm>},
    {"throat_needed_mm", "Throat needed", "mm", 3, true, "As drawn", member_value<S, &S::throat_needed_mm>},
    {"area_mm2", "Area", "mm2", 4, true, "Cross-section that all passes lay", member_value<S, &S::area_mm2>},
    {"area_needed_mm2", "Area needed", "mm2", 4, true, "With gap and allowance, or groove and cap",
     member_value<S, &S::area_needed_mm2>},
    {"interpass_wait_s", "Interpass wait", "s", 3, true,
     "Longest wait between passes at one place, on plates of the sizes given, else endless ones",
     member_value<S, &S::interpass_wait_s>},
    {"angular_distortion_deg", "Angular distortion", "deg", 3, true, "Estimate for a fillet on a flange",
     member_value<S, &S::angular_distortion_deg>},
    {"U_leg_mm", "U leg", "mm", 2, false, "Expanded uncertainty, k = 2", member_value<S, &S::U_leg_mm>},
};

constexpr Column<W> weldment_table[] = {
    {"weldment", "Weldment", "", 0, true, "Weldment", member_value<W, &W::weldment>},
    {"arc_time_s", "Arc time", "s", 5, true, "Sum over all passes", member_value<W, &W::arc_time_s>},
    {"wire_kg", "Wire", "kg", 4, true, "Wire fed", member_value<W, &W::wire_kg>},
    {"gas_l", "Gas", "l", 4, true, "Shielding gas", member_value<W, &W::gas_l>},
    {"energy_kWh", "Energy", "kWh", 4, true, "At the power sources' mains", member_value<W, &W::energy_kWh>},
    {"cost", "Cost", "", 4, true, "Wire, gas, energy, and robot or labour time of the arc",
     member_value<W, &W::cost>},
    {"robot_share_pct", "Robot share", "%", 3, true, "Of weld length", member_value<W, &W::robot_share_pct>},
    {"robot_share_deposit_pct", "of deposit", "%", 3, false, "Of deposited mass",
     member_value<W, &W::robot_share_deposit_pct>},
    {"robot_share_arc_time_pct", "of arc time", "%", 3, false, "Of arc time",
     member_value<W, &W::robot_share_arc_time_pct>},
    {"bow_mm", "Bow", "mm", 3, true, "Longitudinal bow about the given neutral axis",
     member_value<W, &W::bow_mm>},
};

}  // namespace

std::span<const Column<PassEvaluation>> pass_columns() {
  return pass_table;
}
std::span<const Column<SeamEvaluation>> seam_columns() {
  return seam_table;
}
std::span<const Column<WeldmentEvaluation>> weldment_columns() {
  return weldment_table;
}

}  // namespace seamtakt
