#include "exchange/report/schedule_sheet.hpp"

#include "base/text/comma_list.hpp"
#include "base/units/units.hpp"

namespace seamtakt {

namespace {

constexpr const char* not_stated = "not stated";

std::string stated(const std::string& text) {
  return text.empty() ? not_stated : text;
}

std::string quantity(double value, const char* unit) {
  return number_text(value) + " " + unit;
}

std::string quantity(const std::optional<double>& value, const char* unit) {
  return value ? quantity(*value, unit) : not_stated;
}

std::string weave_text(const std::optional<Weave>& weave) {
  if (!weave) return "stringer, no weave";
  return "weave of half width " + quantity(weave->half_width_mm, "mm") + " at " +
         quantity(weave->frequency_Hz, "Hz") + ", dwell " + quantity(weave->dwell_s, "s");
}

}  // namespace

std::string interval_text(const std::optional<Interval>& interval, const char* unit) {
  if (!interval || (!interval->lower && !interval->upper)) return not_stated;
  const std::string suffix = *unit ? std::string(" ") + unit : std::string();
  if (!interval->lower) return "up to " + number_text(*interval->upper) + suffix;
  if (!interval->upper) return "from " + number_text(*interval->lower) + suffix;
  return number_text(*interval->lower) + " to " + number_text(*interval->upper) + suffix;
}

std::vector<std::pair<std::string, std::string>> schedule_sheet(const Schedule& schedule,
                                                                const PlanIndex& index) {
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  const ScheduleUse use = schedule.use.value_or(ScheduleUse{});
  const Wire* wire = index.wire(schedule.wire);
  const Gas* gas = index.gas(schedule.gas);
  const Qualification* qualification = index.qualification(schedule.qualification);
  const std::string wire_text = wire ? stated(wire->classification) + ", " +
                                           quantity(wire->diameter_mm, "mm") +
                                           (wire->form.empty() ? "" : ", " + wire->form)
                                     : stated(schedule.wire);
  return {
      {"Schedule, revision", schedule.id + ", revision " + std::to_string(schedule.revision)},
      {"Status", stated(schedule.status)},
      {"Approved by, in force from", stated(schedule.approved_by) + ", " + stated(schedule.effective_from)},
      {"Qualification record", qualification ? qualification->id + " (" + stated(qualification->certificate) +
                                                   ", " + stated(qualification->basis) + ")"
                                             : not_stated},
      {"Welding process (ISO 4063)", schedule.process},
      {"Metal transfer", stated(schedule.transfer)},
      {"Waveform", stated(schedule.waveform)},
      {"Current type and polarity", stated(schedule.polarity)},
      {"Positions (ISO 6947)", stated(comma_list(use.positions))},
      {"Plate thickness", interval_text(use.thickness_mm, "mm")},
      {"Leg", interval_text(use.leg_mm, "mm")},
      {"Root gap", interval_text(use.gap_mm, "mm")},
      {"Joint preparation and cleaning", stated(schedule.preparation)},
      {"Backing", stated(schedule.backing)},
      {"Filler", wire_text},
      {"Shielding gas (ISO 14175), flow", (gas ? stated(gas->designation) : stated(schedule.gas)) + ", " +
                                              quantity(schedule.gas_flow_l_min, "l/min") + " (" +
                                              interval_text(limits.gas_flow_l_min, "l/min") + ")"},
      {"Nozzle", quantity(schedule.nozzle_mm, "mm")},
      {"Technique", weave_text(schedule.weave)},
      {"Torch work angle, travel angle",
       quantity(schedule.torch_work_deg, "deg") + ", " + quantity(schedule.torch_travel_deg, "deg")},
      {"Contact tip to work", quantity(schedule.contact_tip_distance_mm, "mm")},
      {"Wire feed speed", quantity(schedule.wire_feed_speed_m_min, "m/min") + " (" +
                              interval_text(limits.wire_feed_speed_m_min, "m/min") + ")"},
      {"Current", interval_text(limits.current_A, "A")},
      {"Arc voltage",
       quantity(schedule.arc_voltage_V, "V") + " (" + interval_text(limits.voltage_V, "V") + ")"},
      {"Travel speed", quantity(schedule.travel_speed_mm_s, "mm/s") + " (" +
                           interval_text(limits.travel_speed_mm_s, "mm/s") + ")"},
      {"Heat input", interval_text(limits.heat_input_kJ_mm, "kJ/mm")},
      {"Cooling time t8/5", interval_text(limits.cooling_time_s, "s")},
      {"Preheat", quantity(schedule.preheat_C, "C")},
      {"Interpass temperature", interval_text(limits.interpass_C, "C")},
  };
}

}  // namespace seamtakt
