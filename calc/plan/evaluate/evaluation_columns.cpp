#include "plan/evaluate/evaluation_columns.hpp"

#include "formula/metal/preheat.hpp"

namespace seamtakt {

namespace {

ColumnValue value_of(double value) {
  return value;
}
ColumnValue value_of(int value) {
  return value;
}
ColumnValue value_of(std::string_view value) {
  if (value.empty()) return {};
  return value;
}
ColumnValue value_of(const std::string& value) {
  return value_of(std::string_view(value));
}
template <class T>
ColumnValue value_of(const std::optional<T>& value) {
  if (!value) return {};
  return *value;
}

template <auto Member, class Row>
ColumnValue member(const Row& row) {
  return value_of(row.*Member);
}

using P = PassEvaluation;
using S = SeamEvaluation;
using W = WeldmentEvaluation;

constexpr Column<P> pass_table[] = {
    {"weldment", "Weldment", "", 0, true, "Weldment", member<&P::weldment, P>},
    {"seam", "Seam", "", 0, true, "Seam", member<&P::seam, P>},
    {"pass", "Pass", "", 0, true, "Pass, counted from 1", member<&P::pass, P>},
    {"schedule", "Schedule", "", 0, true, "Schedule of this pass", member<&P::schedule, P>},
    {"process", "Process", "", 0, false, "Process number of ISO 4063", member<&P::process, P>},
    {"length_mm", "Length", "mm", 5, true, "Welded length of the pass", member<&P::length_mm, P>},
    {"current_A", "Current", "A", 4, true, "Measured mean, else from the melting law",
     member<&P::current_A, P>},
    {"voltage_V", "Voltage", "V", 4, true, "Arc voltage", member<&P::voltage_V, P>},
    {"arc_power_kW", "Arc power", "kW", 4, false, "Voltage x current x waveform factor",
     member<&P::arc_power_kW, P>},
    {"arc_energy_kJ_mm", "Arc energy", "kJ/mm", 4, false, "Arc power over travel speed, without efficiency",
     member<&P::arc_energy_kJ_mm, P>},
    {"heat_input_kJ_mm", "Heat input", "kJ/mm", 4, true, "Arc energy x thermal efficiency of the process",
     member<&P::heat_input_kJ_mm, P>},
    {"melting_rate_kg_h", "Melting rate", "kg/h", 4, false, "Wire melted an hour of arc",
     member<&P::melting_rate_kg_h, P>},
    {"deposition_rate_kg_h", "Deposition rate", "kg/h", 4, false, "Melting rate x deposition efficiency",
     member<&P::deposition_rate_kg_h, P>},
    {"deposit_area_mm2", "Deposit area", "mm2", 4, false, "Cross-section that the pass lays",
     member<&P::deposit_area_mm2, P>},
    {"penetration_mm", "Penetration", "mm", 3, false, "Rough estimate, bead on plate",
     member<&P::penetration_mm, P>},
    {"transfer_mode", "Transfer", "", 0, false, "Metal transfer", member<&P::transfer_mode, P>},
    {"cooling_time_s", "t8/5", "s", 4, true, "Cooling time 800 to 500 C, thinner plate, as preheated",
     member<&P::cooling_time_s, P>},
    {"cooling_regime", "Heat flow", "", 0, false, "Two- or three-dimensional heat flow",
     member<&P::cooling_regime, P>},
    {"cooling_time_span_s", "t8/5 span", "s", 4, false, "Over the range of the shape factor",
     member<&P::cooling_time_span_s, P>},
    {"cooling_time_plate_s", "t8/5 by plate", "s", 4, false, "Each plate's own",
     member<&P::cooling_time_plate_s, P>},
    {"cooling_time_hot_s", "t8/5 hot", "s", 4, false, "From the upper interpass limit, thinner plate",
     member<&P::cooling_time_hot_s, P>},
    {"preheat_needed_C", "Preheat needed", "C", 3, true, "Method B of EN 1011-2, thicker plate",
     member<&P::preheat_needed_C, P>, shop_temperature_C},
    {"CE_IIW", "CE", "", 3, false, "Carbon equivalent, IIW", member<&P::CE_IIW, P>},
    {"CET", "CET", "", 3, false, "Carbon equivalent of EN 1011-2 method B", member<&P::CET, P>},
    {"Pcm", "Pcm", "", 3, false, "Cracking parameter", member<&P::Pcm, P>},
    {"CEN", "CEN", "", 3, false, "Carbon equivalent with the accommodation factor A(C)", member<&P::CEN, P>},
    {"haz_hardness_HV", "HAZ hardness", "HV", 3, false, "Estimated maximum, worse of the two plates",
     member<&P::haz_hardness_HV, P>},
    {"arc_time_s", "Arc time", "s", 4, true, "Welded length over travel speed", member<&P::arc_time_s, P>},
    {"wire_g", "Wire", "g", 4, false, "Wire fed", member<&P::wire_g, P>},
    {"gas_l", "Gas", "l", 4, false, "Shielding gas, post-flow included", member<&P::gas_l, P>},
    {"energy_kWh", "Energy", "kWh", 4, false, "Arc energy over the power source's efficiency",
     member<&P::energy_kWh, P>},
    {"U_heat_input_kJ_mm", "U heat input", "kJ/mm", 2, false, "Expanded uncertainty, k = 2",
     member<&P::U_heat_input_kJ_mm, P>},
    {"U_cooling_time_s", "U t8/5", "s", 2, false, "Expanded uncertainty, k = 2",
     member<&P::U_cooling_time_s, P>},
};

constexpr Column<S> seam_table[] = {
    {"weldment", "Weldment", "", 0, true, "Weldment", member<&S::weldment, S>},
    {"seam", "Seam", "", 0, true, "Seam", member<&S::seam, S>},
    {"leg_mm", "Leg", "mm", 3, true, "Leg obtained from all passes, gap deducted", member<&S::leg_mm, S>},
    {"leg_needed_mm", "Leg needed", "mm", 3, true, "As drawn", member<&S::leg_needed_mm, S>},
    {"throat_mm", "Throat", "mm", 3, true, "Throat obtained", member<&S::throat_mm, S>},
    {"throat_needed_mm", "Throat needed", "mm", 3, true, "As drawn", member<&S::throat_needed_mm, S>},
    {"area_mm2", "Area", "mm2", 4, true, "Cross-section that all passes lay", member<&S::area_mm2, S>},
    {"area_needed_mm2", "Area needed", "mm2", 4, true, "With gap and allowance, or groove and cap",
     member<&S::area_needed_mm2, S>},
    {"interpass_wait_s", "Interpass wait", "s", 3, true, "Longest wait between passes at one place",
     member<&S::interpass_wait_s, S>},
    {"angular_distortion_deg", "Angular distortion", "deg", 3, true, "Estimate for a fillet on a flange",
     member<&S::angular_distortion_deg, S>},
    {"U_leg_mm", "U leg", "mm", 2, false, "Expanded uncertainty, k = 2", member<&S::U_leg_mm, S>},
};

constexpr Column<W> weldment_table[] = {
    {"weldment", "Weldment", "", 0, true, "Weldment", member<&W::weldment, W>},
    {"arc_time_s", "Arc time", "s", 5, true, "Sum over all passes", member<&W::arc_time_s, W>},
    {"wire_kg", "Wire", "kg", 4, true, "Wire fed", member<&W::wire_kg, W>},
    {"gas_l", "Gas", "l", 4, true, "Shielding gas", member<&W::gas_l, W>},
    {"energy_kWh", "Energy", "kWh", 4, true, "At the power sources' mains", member<&W::energy_kWh, W>},
    {"cost", "Cost", "", 4, true, "Wire, gas, energy, and robot or labour time of the arc",
     member<&W::cost, W>},
    {"robot_share_pct", "Robot share", "%", 3, true, "Of weld length", member<&W::robot_share_pct, W>},
    {"robot_share_deposit_pct", "of deposit", "%", 3, false, "Of deposited mass",
     member<&W::robot_share_deposit_pct, W>},
    {"robot_share_arc_time_pct", "of arc time", "%", 3, false, "Of arc time",
     member<&W::robot_share_arc_time_pct, W>},
    {"bow_mm", "Bow", "mm", 3, true, "Longitudinal bow about the given neutral axis", member<&W::bow_mm, W>},
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
