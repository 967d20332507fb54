#include "exchange/schedules/schedule_items.hpp"

#include <algorithm>
#include <set>

#include "base/text/comma_list.hpp"
#include "exchange/report/plan_sections.hpp"
#include "formula/metal/material_group.hpp"
#include "plan/limited_quantities.hpp"

namespace seamtakt {

namespace {

SheetCell stated(const std::string& text) {
  return text.empty() ? SheetCell(not_stated) : SheetCell(text);
}

/// One of a field's choices.
SheetCell chosen(const std::string& choice) {
  return choice.empty() ? SheetCell(not_stated) : SheetCell(Choice{choice});
}

SheetCell stated(const std::optional<double>& value, std::string_view unit) {
  return value ? SheetCell(Measure{*value, unit}) : SheetCell(not_stated);
}

SheetCell stated(const std::optional<Interval>& interval, std::string_view unit) {
  return interval ? SheetCell(MeasureRange{interval->lower, interval->upper, unit}) : SheetCell(not_stated);
}

/// "24 V (22 to 26 V)".
SheetCell within(const std::optional<double>& value, const std::optional<Interval>& limits,
                 std::string_view unit) {
  if (!limits) return stated(value, unit);
  return PatternCell{"{1} ({2})"_word, {stated(value, unit), stated(limits, unit)}};
}

SheetCell weave_of(const std::optional<Weave>& weave) {
  if (!weave) return "stringer, no weave"_word;
  return PatternCell{"weave of half width {1} at {2}, dwell {3}"_word,
                     {Measure{weave->half_width_mm, "mm"}, Measure{weave->frequency_Hz, "Hz"},
                      Measure{weave->dwell_s, "s"}}};
}

SheetCell pulse_of(const Schedule& schedule) {
  const bool is_open = schedule.transfer.empty() || schedule.transfer == "pulsed";
  if (!schedule.pulse) return is_open ? not_stated : "none"_word;
  const Pulse& pulse = *schedule.pulse;
  return PatternCell{"{1} for {2} at {3}, background {4}"_word,
                     {Measure{pulse.peak_A, "A"}, Measure{pulse.peak_ms, "ms"},
                      Measure{pulse.frequency_Hz, "Hz"}, Measure{pulse.background_A, "A"}}};
}

SheetCell filler_of(const Schedule& schedule, const Wire* wire) {
  if (!wire) return stated(schedule.wire);
  const Measure diameter{wire->diameter_mm, "mm"};
  if (wire->form.empty()) return PatternCell{"{1}, {2}"_word, {stated(wire->classification), diameter}};
  return PatternCell{"{1}, {2}, {3}"_word, {stated(wire->classification), diameter, Choice{wire->form}}};
}

SheetCell qualification_of(const Qualification* qualification) {
  if (!qualification) return not_stated;
  return PatternCell{"{1} ({2}, {3})"_word,
                     {qualification->id, stated(qualification->certificate), stated(qualification->basis)}};
}

/// The plate is at least as warm as the shop in any case.
SheetCell preheat_of(const Schedule& schedule) {
  constexpr double shop_C = 20;
  const Measure plate{schedule.preheat_C, "C"};
  if (schedule.preheat_C > shop_C) return plate;
  return PatternCell{"none, plate at {1}"_word, {plate}};
}

/// The metals of the seams that it welds, each once.
std::vector<const BaseMetal*> metals_of(const PlanIndex& index, const std::vector<SeamUse>& uses) {
  std::vector<const BaseMetal*> metals;
  std::set<std::string_view> seen;
  for (const SeamUse& use : uses)
    for (const std::string& id : use.seam->base_metals)
      if (const BaseMetal* metal = index.base_metal(id); metal && seen.insert(metal->id).second)
        metals.push_back(metal);
  return metals;
}

SheetCell names_of(const std::vector<const BaseMetal*>& metals) {
  std::vector<std::string> names;
  for (const BaseMetal* metal : metals)
    names.push_back(metal->standard.empty() ? metal->id : metal->standard);
  return stated(comma_list(names));
}

SheetCell groups_of(const std::vector<const BaseMetal*>& metals) {
  std::set<std::string> groups;
  for (const BaseMetal* metal : metals) {
    const std::string_view group = material_group_of(metal->standard);
    if (group.empty()) return not_stated;
    groups.emplace(group);
  }
  return stated(comma_list({groups.begin(), groups.end()}));
}

SheetCell tacks_of(const std::vector<SeamUse>& uses) {
  std::optional<double> shortest_mm, longest_mm;
  for (const SeamUse& use : uses)
    if (use.seam->tacks && use.seam->tacks->count > 0) {
      const double length_mm = use.seam->tacks->length_mm;
      shortest_mm = std::min(shortest_mm.value_or(length_mm), length_mm);
      longest_mm = std::max(longest_mm.value_or(length_mm), length_mm);
    }
  if (!shortest_mm) return not_stated;
  if (*shortest_mm == *longest_mm) return Measure{*shortest_mm, "mm"};
  return MeasureRange{shortest_mm, longest_mm, "mm"};
}

std::vector<const LimitedQuantity*> quantities_in_rows() {
  std::vector<const LimitedQuantity*> in_rows;
  for (const LimitedQuantity& each : limited_quantities)
    if (each.sheet_row > 0) in_rows.push_back(&each);
  std::sort(in_rows.begin(), in_rows.end(),
            [](const auto* a, const auto* b) { return a->sheet_row < b->sheet_row; });
  return in_rows;
}

/// Setting and limits; a setting with a name of its own, the preheat, is among the joint's items.
void add_limits(const Schedule& schedule, ItemsBlock& block) {
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  for (const LimitedQuantity* each : quantities_in_rows()) {
    if (each->limit == &ScheduleLimits::interpass_C) continue;
    const std::optional<Interval>& allowed = limits.*each->limit;
    if (each->setting != nullptr)
      block.items.emplace_back(each->label, within(schedule.*each->setting, allowed, each->unit));
    else if (each->limit == &ScheduleLimits::current_A && schedule.current_A)
      block.items.emplace_back(each->label, within(schedule.current_A, allowed, each->unit));
    else
      block.items.emplace_back(each->label, stated(allowed, each->unit));
  }
}

}  // namespace

ItemsBlock document_items(const Plan& plan, const Schedule& schedule) {
  return {{{"Manufacturer"_word, not_stated},
           {"Plan"_word, stated(plan.title)},
           {"Schedule, revision"_word,
            PatternCell{"{1}, revision {2}"_word, {schedule.id, static_cast<double>(schedule.revision)}}},
           {"Status"_word, chosen(schedule.status)},
           {"Approved by, in force from"_word,
            PatternCell{"{1}, {2}"_word, {stated(schedule.approved_by), stated(schedule.effective_from)}}},
           {"Code"_word, stated(plan.code)}}};
}

ItemsBlock joint_items(const PlanIndex& index, const Schedule& schedule, const std::vector<SeamUse>& uses) {
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  const ScheduleUse use = schedule.use.value_or(ScheduleUse{});
  const std::vector<const BaseMetal*> metals = metals_of(index, uses);
  return {{{"Qualification record"_word, qualification_of(index.qualification(schedule.qualification))},
           {"Parent metals"_word, names_of(metals)},
           {"Material group (ISO/TR 15608)"_word, groups_of(metals)},
           {"Plate thickness"_word, stated(use.thickness_mm, "mm")},
           {"Outside diameter"_word, not_stated},
           {"Positions (ISO 6947)"_word, stated(comma_list(use.positions))},
           {"Leg"_word, stated(use.leg_mm, "mm")},
           {"Root gap"_word, stated(use.gap_mm, "mm")},
           {"Joint preparation and cleaning"_word, stated(schedule.preparation)},
           {"Length of tacks"_word, tacks_of(uses)},
           {"Backing"_word, stated(schedule.backing)},
           {"Back gouging"_word, not_stated},
           {"Technique"_word, weave_of(schedule.weave)},
           {"Torch work angle, travel angle"_word,
            PatternCell{"{1}, {2}"_word,
                        {stated(schedule.torch_work_deg, "deg"), stated(schedule.torch_travel_deg, "deg")}}},
           {"Preheat"_word, preheat_of(schedule)},
           {"Interpass temperature"_word, stated(limits.interpass_C, "C")},
           {"Temperature kept in breaks"_word, not_stated},
           {"Post-heating for hydrogen release"_word, not_stated},
           {"Post-weld heat treatment"_word, not_stated},
           {"Estimated HAZ hardness"_word, stated(limits.hardness_HV, "HV")}}};
}

ItemsBlock arc_items(const PlanIndex& index, const Schedule& schedule) {
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  const Gas* gas = index.gas(schedule.gas);
  const auto flow_l_min = schedule.gas_flow_l_min > 0 ? std::optional(schedule.gas_flow_l_min) : std::nullopt;
  ItemsBlock block{{{"Welding process (ISO 4063)"_word, schedule.process},
                    {"Metal transfer"_word, chosen(schedule.transfer)},
                    {"Waveform"_word, chosen(schedule.waveform)},
                    {"Current type and polarity"_word, stated(schedule.polarity)},
                    {"Power source"_word, stated(schedule.power_source)},
                    {"Filler"_word, filler_of(schedule, index.wire(schedule.wire))},
                    {"Filler make and handling"_word, not_stated},
                    {"Wires, additional filler"_word, not_stated},
                    {"Shielding gas (ISO 14175), flow"_word,
                     PatternCell{"{1}, {2}"_word,
                                 {gas ? stated(gas->designation) : stated(schedule.gas),
                                  within(flow_l_min, limits.gas_flow_l_min, "l/min")}}},
                    {"Backing gas"_word, not_stated},
                    {"Nozzle"_word, stated(schedule.nozzle_mm, "mm")},
                    {"Contact tip to work"_word, stated(schedule.contact_tip_distance_mm, "mm")},
                    {"Pulse"_word, pulse_of(schedule)}}};
  add_limits(schedule, block);
  return block;
}

}  // namespace seamtakt
