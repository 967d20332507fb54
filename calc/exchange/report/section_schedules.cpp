#include <algorithm>

#include "base/text/comma_list.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/limited_quantities.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

constexpr Words title{"Schedule sheets"}, not_stated{"not stated"};
constexpr Words basis{"Data items as ISO 15609-1 lists them for a welding procedure specification."};

SheetCell stated(const std::string& text) {
  return text.empty() ? SheetCell(not_stated) : SheetCell(text);
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
  return PatternCell{{"{1} ({2})"}, {stated(value, unit), stated(limits, unit)}};
}

SheetCell weave_of(const std::optional<Weave>& weave) {
  if (!weave) return Words{"stringer, no weave"};
  return PatternCell{{"weave of half width {1} at {2}, dwell {3}"},
                     {Measure{weave->half_width_mm, "mm"}, Measure{weave->frequency_Hz, "Hz"},
                      Measure{weave->dwell_s, "s"}}};
}

SheetCell filler_of(const Schedule& schedule, const Wire* wire) {
  if (!wire) return stated(schedule.wire);
  const Measure diameter{wire->diameter_mm, "mm"};
  if (wire->form.empty()) return PatternCell{{"{1}, {2}"}, {stated(wire->classification), diameter}};
  return PatternCell{{"{1}, {2}, {3}"}, {stated(wire->classification), diameter, wire->form}};
}

SheetCell qualification_of(const Qualification* qualification) {
  if (!qualification) return not_stated;
  return PatternCell{{"{1} ({2}, {3})"},
                     {qualification->id, stated(qualification->certificate), stated(qualification->basis)}};
}

std::vector<const LimitedQuantity*> quantities_in_rows() {
  std::vector<const LimitedQuantity*> in_rows;
  for (const LimitedQuantity& each : limited_quantities)
    if (each.sheet_row > 0) in_rows.push_back(&each);
  std::sort(in_rows.begin(), in_rows.end(),
            [](const auto* a, const auto* b) { return a->sheet_row < b->sheet_row; });
  return in_rows;
}

/// Setting and limits; a setting with a name of its own has a row of its own.
void add_limits(const Schedule& schedule, ItemsBlock& block) {
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  for (const LimitedQuantity* each : quantities_in_rows()) {
    const Words label{each->label.english()};
    const std::optional<Interval>& allowed = limits.*each->limit;
    const bool is_row_of_its_own = each->setting != nullptr && each->pass_label != Word();
    if (is_row_of_its_own)
      block.items.emplace_back(Words{each->pass_label.english()},
                               Measure{schedule.*each->setting, each->unit});
    if (each->setting != nullptr && !is_row_of_its_own)
      block.items.emplace_back(label, within(schedule.*each->setting, allowed, each->unit));
    else
      block.items.emplace_back(label, stated(allowed, each->unit));
  }
}

/// The data items of a welding procedure specification that ISO 15609-1 lists, as far as the schedule states
/// them. An item that the schedule leaves open reads "not stated".
ItemsBlock schedule_items(const Schedule& schedule, const PlanIndex& index) {
  const ScheduleLimits limits = schedule.limits.value_or(ScheduleLimits{});
  const ScheduleUse use = schedule.use.value_or(ScheduleUse{});
  const Gas* gas = index.gas(schedule.gas);
  ItemsBlock block{
      {{Words{"Schedule, revision"},
        PatternCell{{"{1}, revision {2}"}, {schedule.id, static_cast<double>(schedule.revision)}}},
       {Words{"Status"}, stated(schedule.status)},
       {Words{"Approved by, in force from"},
        PatternCell{{"{1}, {2}"}, {stated(schedule.approved_by), stated(schedule.effective_from)}}},
       {Words{"Qualification record"}, qualification_of(index.qualification(schedule.qualification))},
       {Words{"Welding process (ISO 4063)"}, schedule.process},
       {Words{"Metal transfer"}, stated(schedule.transfer)},
       {Words{"Waveform"}, stated(schedule.waveform)},
       {Words{"Current type and polarity"}, stated(schedule.polarity)},
       {Words{"Positions (ISO 6947)"}, stated(comma_list(use.positions))},
       {Words{"Plate thickness"}, stated(use.thickness_mm, "mm")},
       {Words{"Leg"}, stated(use.leg_mm, "mm")},
       {Words{"Root gap"}, stated(use.gap_mm, "mm")},
       {Words{"Joint preparation and cleaning"}, stated(schedule.preparation)},
       {Words{"Backing"}, stated(schedule.backing)},
       {Words{"Filler"}, filler_of(schedule, index.wire(schedule.wire))},
       {Words{"Shielding gas (ISO 14175), flow"},
        PatternCell{{"{1}, {2} ({3})"},
                    {gas ? stated(gas->designation) : stated(schedule.gas),
                     stated(schedule.gas_flow_l_min, "l/min"), stated(limits.gas_flow_l_min, "l/min")}}},
       {Words{"Nozzle"}, stated(schedule.nozzle_mm, "mm")},
       {Words{"Technique"}, weave_of(schedule.weave)},
       {Words{"Torch work angle, travel angle"},
        PatternCell{{"{1}, {2}"},
                    {stated(schedule.torch_work_deg, "deg"), stated(schedule.torch_travel_deg, "deg")}}},
       {Words{"Contact tip to work"}, stated(schedule.contact_tip_distance_mm, "mm")}}};
  add_limits(schedule, block);
  return block;
}

}  // namespace

ReportSection schedules_section(const PlanReport& report) {
  const PlanIndex index(report.plan);
  Sheet sheet{"schedules", {{"schedule", {"Schedule"}}, {"item", {"Item"}}, {"value", {"Value"}}}, {}};
  GroupBlock sheets{GroupBlock::Kind::abreast, {}};
  for (const Schedule& schedule : report.plan.schedules) {
    const ItemsBlock items = schedule_items(schedule, index);
    for (const auto& [item, value] : items.items) sheet.rows.push_back({schedule.id, item, value});
    sheets.blocks.emplace_back(GroupBlock{
        GroupBlock::Kind::whole, {TitleBlock{3, PatternCell{{"Schedule {1}"}, {schedule.id}}}, items}});
  }
  return {{TitleBlock{2, title}, ParagraphBlock{basis, ParagraphBlock::Look::quiet}, sheets}, {sheet}};
}

}  // namespace seamtakt
