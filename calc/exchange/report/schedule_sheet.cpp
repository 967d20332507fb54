#include "exchange/report/schedule_sheet.hpp"

#include <algorithm>

#include "base/text/comma_list.hpp"
#include "base/units/units.hpp"
#include "plan/limited_quantities.hpp"

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

using Rows = std::vector<std::pair<std::string, std::string>>;

std::vector<const LimitedQuantity*> quantities_in_rows() {
  std::vector<const LimitedQuantity*> in_rows;
  for (const LimitedQuantity& each : limited_quantities)
    if (each.sheet_row > 0) in_rows.push_back(&each);
  std::sort(in_rows.begin(), in_rows.end(),
            [](const auto* a, const auto* b) { return a->sheet_row < b->sheet_row; });
  return in_rows;
}

/// Setting and limits; a setting with a name of its own has a row of its own.
void add_limits(const Schedule& schedule, Rows& rows) {
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  for (const LimitedQuantity* each : quantities_in_rows()) {
    const std::string allowed = interval_text(limits.*each->limit, each->unit);
    const std::string set = each->setting ? quantity(schedule.*each->setting, each->unit) : std::string();
    if (each->setting && each->pass_label) rows.emplace_back(each->pass_label, set);
    if (each->setting && !each->pass_label)
      rows.emplace_back(each->label, set + " (" + allowed + ")");
    else
      rows.emplace_back(each->label, allowed);
  }
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
  Rows rows{
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
  };
  add_limits(schedule, rows);
  return rows;
}

}  // namespace seamtakt
