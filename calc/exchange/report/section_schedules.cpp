#include <algorithm>

#include "base/text/comma_list.hpp"
#include "exchange/report/plan_sections.hpp"
#include "plan/limited_quantities.hpp"
#include "plan/plan_index.hpp"

namespace seamtakt {

namespace {

constexpr Word title = "Schedule sheets"_word, not_stated = "not stated"_word;
constexpr Word basis = "Data items as ISO 15609-1 lists them for a welding procedure specification."_word;

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
  return PatternCell{"{1} ({2})"_word, {stated(value, unit), stated(limits, unit)}};
}

SheetCell weave_of(const std::optional<Weave>& weave) {
  if (!weave) return "stringer, no weave"_word;
  return PatternCell{"weave of half width {1} at {2}, dwell {3}"_word,
                     {Measure{weave->half_width_mm, "mm"}, Measure{weave->frequency_Hz, "Hz"},
                      Measure{weave->dwell_s, "s"}}};
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
    const Word label = each->label;
    const std::optional<Interval>& allowed = limits.*each->limit;
    const bool is_row_of_its_own = each->setting != nullptr && each->pass_label != Word();
    if (is_row_of_its_own)
      block.items.emplace_back(each->pass_label, Measure{schedule.*each->setting, each->unit});
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
      {{"Schedule, revision"_word,
        PatternCell{"{1}, revision {2}"_word, {schedule.id, static_cast<double>(schedule.revision)}}},
       {"Status"_word, chosen(schedule.status)},
       {"Approved by, in force from"_word,
        PatternCell{"{1}, {2}"_word, {stated(schedule.approved_by), stated(schedule.effective_from)}}},
       {"Qualification record"_word, qualification_of(index.qualification(schedule.qualification))},
       {"Welding process (ISO 4063)"_word, schedule.process},
       {"Metal transfer"_word, chosen(schedule.transfer)},
       {"Waveform"_word, chosen(schedule.waveform)},
       {"Current type and polarity"_word, stated(schedule.polarity)},
       {"Positions (ISO 6947)"_word, stated(comma_list(use.positions))},
       {"Plate thickness"_word, stated(use.thickness_mm, "mm")},
       {"Leg"_word, stated(use.leg_mm, "mm")},
       {"Root gap"_word, stated(use.gap_mm, "mm")},
       {"Joint preparation and cleaning"_word, stated(schedule.preparation)},
       {"Backing"_word, stated(schedule.backing)},
       {"Filler"_word, filler_of(schedule, index.wire(schedule.wire))},
       {"Shielding gas (ISO 14175), flow"_word,
        PatternCell{"{1}, {2} ({3})"_word,
                    {gas ? stated(gas->designation) : stated(schedule.gas),
                     stated(schedule.gas_flow_l_min, "l/min"), stated(limits.gas_flow_l_min, "l/min")}}},
       {"Nozzle"_word, stated(schedule.nozzle_mm, "mm")},
       {"Technique"_word, weave_of(schedule.weave)},
       {"Torch work angle, travel angle"_word,
        PatternCell{"{1}, {2}"_word,
                    {stated(schedule.torch_work_deg, "deg"), stated(schedule.torch_travel_deg, "deg")}}},
       {"Contact tip to work"_word, stated(schedule.contact_tip_distance_mm, "mm")}}};
  add_limits(schedule, block);
  return block;
}

}  // namespace

ReportSection schedules_section(const PlanReport& report) {
  const PlanIndex index(report.plan);
  Sheet sheet{
      "schedules", {{"schedule", {"Schedule"_word}}, {"item", {"Item"_word}}, {"value", {"Value"_word}}}, {}};
  GroupBlock sheets{GroupBlock::Kind::abreast, {}};
  for (const Schedule& schedule : report.plan.schedules) {
    const ItemsBlock items = schedule_items(schedule, index);
    for (const auto& [item, value] : items.items) sheet.rows.push_back({schedule.id, item, value});
    sheets.blocks.emplace_back(GroupBlock{
        GroupBlock::Kind::whole, {TitleBlock{3, PatternCell{"Schedule {1}"_word, {schedule.id}}}, items}});
  }
  return {{TitleBlock{2, title}, ParagraphBlock{basis, ParagraphBlock::Look::quiet}, sheets}, {sheet}};
}

}  // namespace seamtakt
