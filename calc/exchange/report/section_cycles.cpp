#include <memory>

#include "cell/timeline/cycle_columns.hpp"
#include "exchange/report/column_sheet.hpp"
#include "exchange/report/cycle_picture.hpp"
#include "exchange/report/plan_sections.hpp"

namespace seamtakt {

namespace {

constexpr Word cycles_title = "Cycle sheets"_word, none = "none"_word;

/// What a reader of a cycle sheet looks for first.
constexpr std::string_view first_of_cycle[] = {"weldment",      "cycle_time_s",  "takt_s",
                                               "takt_margin_s", "lower_bound_s", "gap_pct",
                                               "weld_s",        "arc_on_s",      "arc_on_ratio"};

SheetCell seconds(double value) {
  return Measure{value, "s", 5};
}

SheetCell seconds_or(const std::optional<double>& value, Word otherwise) {
  return value ? seconds(*value) : SheetCell(otherwise);
}

SheetCell margin_of(const CycleResult& cycle) {
  if (cycle.unwelded.empty()) return seconds_or(cycle.takt_margin_s, not_stated);
  return PatternCell{"none: {1} of {2} robot seams unwelded"_word,
                     {static_cast<double>(cycle.unwelded.size()), static_cast<double>(cycle.robot_seams)}};
}

ItemsBlock items_of(const CycleResult& cycle) {
  ItemsBlock block{{{"Cycle time"_word, seconds(cycle.cycle_time_s)},
                    {"Takt to plan to"_word, seconds_or(cycle.takt_s, not_stated)},
                    {"Margin"_word, margin_of(cycle)},
                    {"Proven lower bound"_word, seconds_or(cycle.lower_bound_s, none)},
                    {"Arc on, all robots"_word,
                     PatternCell{"{1} ({2} of robot time)"_word,
                                 {seconds(cycle.arc_on_s), Measure{100 * cycle.arc_on_ratio, "%", 3}}}}}};
  for (const CyclePart which : {CyclePart::loss, CyclePart::handling})
    for (const auto* part : cycle_parts(which))
      if (!part->present || part->present(cycle))
        block.items.emplace_back(Word::of_table(part->label),
                                 seconds(column_number(part->value(cycle)).value_or(0)));
  return block;
}

/// Drawn later than the section is made, so it keeps the cycle.
FigureBlock cycle_figure(const CycleResult& cycle) {
  return {[kept = std::make_shared<const CycleResult>(cycle)](const TextView& view) {
    return cycle_svg(*kept, view);
  }};
}

}  // namespace

ReportSection cycles_section(const PlanReport& report) {
  ReportSection section{{TitleBlock{2, cycles_title}},
                        {column_sheet<CycleResult>("cycle", cycle_columns(), report.cycles, first_of_cycle)}};
  for (const CycleResult& cycle : report.cycles)
    section.blocks.emplace_back(GroupBlock{GroupBlock::Kind::whole,
                                           {TitleBlock{3, PatternCell{"Weldment {1}"_word, {cycle.weldment}}},
                                            items_of(cycle), cycle_figure(cycle)}});
  return section;
}

}  // namespace seamtakt
