#include "exchange/report/cycle_picture.hpp"
#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

namespace {

constexpr Words title{"Cycle sheets"}, not_stated{"not stated"}, none{"none"};

Sheet cycle_sheet(const std::vector<CycleResult>& cycles) {
  Sheet sheet{"cycle",
              {{"weldment", {"Weldment"}},
               {"cycle_time_s", {"Cycle time", "s"}},
               {"takt_s", {"Takt to plan to", "s"}},
               {"takt_margin_s", {"Margin", "s"}},
               {"lower_bound_s", {"Proven lower bound", "s"}},
               {"gap_pct", {"Gap", "%"}},
               {"weld_s", {"Robots at work", "s"}},
               {"arc_on_s", {"Arc on", "s"}},
               {"arc_on_ratio", {"Arc-on ratio"}},
               {"air_s", {"Air moves", "s"}},
               {"sense_s", {"Sensing", "s"}},
               {"start_end_s", {"Starts and ends", "s"}},
               {"wait_s", {"Waits", "s"}},
               {"orientation_s", {"Positioner", "s"}},
               {"service_s", {"Torch service", "s"}},
               {"wire_change_s", {"Wire changes", "s"}},
               {"load_unload_s", {"Load and unload", "s"}},
               {"robot_seams", {"Robot seams"}},
               {"unwelded_seams", {"Unwelded of them"}}},
              {}};
  const auto cell = [](const std::optional<double>& value) {
    return value ? SheetCell(*value) : SheetCell();
  };
  for (const CycleResult& cycle : cycles)
    sheet.rows.push_back({cycle.weldment, cycle.cycle_time_s, cell(cycle.takt_s), cell(cycle.takt_margin_s),
                          cell(cycle.lower_bound_s), cell(cycle.gap_pct), cycle.weld_s, cycle.arc_on_s,
                          cycle.arc_on_ratio, cycle.air_s, cycle.sense_s, cycle.start_end_s, cycle.wait_s,
                          cycle.orientation_s, cycle.service_s, cycle.wire_change_s, cycle.load_unload_s,
                          static_cast<double>(cycle.robot_seams),
                          static_cast<double>(cycle.unwelded.size())});
  return sheet;
}

SheetCell seconds(double value) {
  return Measure{value, "s", 5};
}

SheetCell seconds_or(const std::optional<double>& value, Words otherwise) {
  return value ? seconds(*value) : SheetCell(otherwise);
}

SheetCell margin_of(const CycleResult& cycle) {
  if (cycle.unwelded.empty()) return seconds_or(cycle.takt_margin_s, not_stated);
  return Phrase{{"none: {1} of {2} robot seams unwelded"},
                {static_cast<double>(cycle.unwelded.size()), static_cast<double>(cycle.robot_seams)}};
}

ItemsBlock items_of(const CycleResult& cycle) {
  return {{{Words{"Cycle time"}, seconds(cycle.cycle_time_s)},
           {Words{"Takt to plan to"}, seconds_or(cycle.takt_s, not_stated)},
           {Words{"Margin"}, margin_of(cycle)},
           {Words{"Proven lower bound"}, seconds_or(cycle.lower_bound_s, none)},
           {Words{"Arc on, all robots"},
            Phrase{{"{1} ({2} of robot time)"},
                   {seconds(cycle.arc_on_s), Measure{100 * cycle.arc_on_ratio, "%", 3}}}},
           {Words{"Air moves"}, seconds(cycle.air_s)},
           {Words{"Starts and ends"}, seconds(cycle.start_end_s)},
           {Words{"Sensing"}, seconds(cycle.sense_s)},
           {Words{"Waits"}, seconds(cycle.wait_s)},
           {Words{"Positioner"}, seconds(cycle.orientation_s)},
           {Words{"Torch service"}, seconds(cycle.service_s)},
           {Words{"Wire changes"}, seconds(cycle.wire_change_s)},
           {Words{"Load and unload"}, seconds(cycle.load_unload_s)}}};
}

}  // namespace

ReportSection cycles_section(const PlanReport& report) {
  ReportSection section{{TitleBlock{2, title}}, {cycle_sheet(report.cycles)}};
  for (const CycleResult& cycle : report.cycles)
    section.blocks.emplace_back(GroupBlock{GroupBlock::Kind::whole,
                                           {TitleBlock{3, Phrase{{"Weldment {1}"}, {cycle.weldment}}},
                                            items_of(cycle), FigureBlock{cycle_svg(cycle)}}});
  return section;
}

}  // namespace seamtakt
