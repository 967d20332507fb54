#include "base/text/text_table.hpp"
#include "base/units/units.hpp"
#include "cli/cell/line_output.hpp"
#include "cli/common/output.hpp"
#include "line/line_columns.hpp"

namespace seamtakt::cli {

namespace {

std::string hours(double time_s) {
  return rounded_text(time_s / 3600, 4) + " h";
}

/// What the headline is made of.
std::string runs_text(const LineResult& line) {
  const LineFigures& figures = line.figures;
  if (line.certain) return "Nothing in this line is left to chance: one run says all.\n";
  if (figures.runs == 1)
    return "One draw of chance, seed " + std::to_string(line.draw_seed) +
           ": another seed gives other figures (--runs for their mean).\n";
  std::string text = "Means of " + std::to_string(figures.runs) + " runs, seeds " +
                     std::to_string(line.seed) + " and on. In one run of ten below " +
                     rounded_text(*figures.throughput_p10_per_h, 4) + " an hour, in one of ten above " +
                     rounded_text(*figures.throughput_p90_per_h, 4) + "; standard error of the mean " +
                     rounded_text(figures.throughput_se_per_h, 2);
  if (line.takt_limit_s) text += ", of the misses " + rounded_text(figures.takt_misses_se, 2);
  return text + ".\n";
}

std::string not_run_text(const LineResult& line) {
  if (line.not_run == 0) return "";
  std::string text = std::to_string(line.not_run) + " of " +
                     std::to_string(line.not_run + line.units.size()) +
                     " units aren't run: seams of theirs are unwelded. They wait.\n";
  if (!line.units.empty())
    text +=
        "Units an hour are the finished ones over the time that all would take; each unit that isn't run is "
        "a takt miss.\n";
  return text;
}

std::string headline(const LineResult& line) {
  const LineFigures& figures = line.figures;
  std::string text = std::to_string(line.units.size()) + " units in " + hours(figures.makespan_s) + ", " +
                     rounded_text(figures.throughput_per_h, 4) + " an hour" +
                     (line.not_run == 0 ? " once the first is out" : "");
  if (line.takt_limit_s) text += " (takt wants " + rounded_text(3600 / *line.takt_limit_s, 4) + ")";
  text += "; bottleneck " + line.bottleneck + ".\n";
  if (line.takt_limit_s)
    text += "Takt misses: " + rounded_text(figures.takt_misses, 3) + ", the assembly line waits " +
            rounded_text(figures.takt_lost_s / 60, 4) + " min in all.\n";
  return text + runs_text(line);
}

/// Of which draw the rest is.
std::string draw_text(const LineResult& line) {
  if (line.certain || line.figures.runs == 1) return "";
  return "What follows of units and stages is one draw, the one in the middle by throughput: seed " +
         std::to_string(line.draw_seed) + ", " + hours(line.makespan_s) + ", " +
         rounded_text(line.throughput_per_h, 4) + " an hour" +
         (line.takt_misses ? ", takt misses " + std::to_string(*line.takt_misses) : "") + ".\n";
}

std::string summary(const LineResult& line) {
  std::string text = not_run_text(line) + headline(line) + "\n" + draw_text(line);
  text += "In the line on the mean: " + rounded_text(line.units_in_line, 3) + " units, each for " +
          hours(line.flow_time_mean_s) + ".";
  if (line.reworks > 0) text += " Sent back: " + std::to_string(line.reworks) + " times.";
  if (line.scrapped > 0) text += " Scrap: " + std::to_string(line.scrapped) + ".";
  text += "\n";
  if (line.worst_window)
    text += "Worst window: " + std::to_string(line.worst_window->units) + " units from " +
            hours(line.worst_window->start_s) + " to " + hours(line.worst_window->end_s) + ", " +
            rounded_text(line.worst_window->throughput_per_h, 3) + " an hour.\n";
  return text;
}

std::string stages_table(const LineResult& line) {
  return "\n" + column_table(stage_columns(), line.stages, false);
}

std::string misses_table(const LineResult& line) {
  if (line.misses_by_cause.empty()) return "";
  TextTable table({{"Takt missed by", "", true, 0},
                   {"Stage", "", true, 0},
                   {"Misses", "", false, 0},
                   {"Lost", "min", false, 4}});
  for (const MissGroup& group : line.misses_by_cause)
    table.cell(group.cause).cell(group.stage).cell(group.misses).cell(group.lost_s / 60);
  return "\n" + table.text();
}

std::string cures_table(const LineResult& line) {
  if (line.cures.empty()) return "";
  TextTable table({{"What would cure it", "", true, 0},
                   {"Stage", "", true, 0},
                   {"Throughput", "1/h", false, 4},
                   {"Change", "1/h", false, 3},
                   {"+-", "1/h", false, 2},
                   {"Misses", "", false, 3},
                   {"Change", "", false, 3}});
  for (const Improvement& cure : line.cures) {
    table.cell(cure.change)
        .cell(cure.stage)
        .cell(cure.figures.throughput_per_h)
        .cell(cure.throughput_change_per_h)
        .cell(cure.throughput_change_se_per_h);
    const bool has_takt = line.takt_limit_s.has_value();
    table.cell(has_takt ? std::optional<double>(cure.figures.takt_misses) : std::nullopt);
    table.cell(has_takt ? std::optional<double>(cure.takt_misses_change) : std::nullopt);
  }
  return "\n" + table.text();
}

void add_figures(TextTable& table, const char* name, const LineFigures& figures, bool has_takt) {
  table.cell(name).cell(figures.throughput_per_h).cell(figures.makespan_s / 3600);
  table.cell(has_takt ? std::optional<double>(figures.takt_misses) : std::nullopt);
  table.cell(has_takt ? std::optional<double>(figures.takt_lost_s / 60) : std::nullopt);
}

std::string compared_table(const char* heading, const char* before, const LineFigures& first,
                           const char* after, const LineFigures& second, bool has_takt) {
  TextTable table({{heading, "", true, 0},
                   {"Throughput", "1/h", false, 4},
                   {"Makespan", "h", false, 4},
                   {"Misses", "", false, 3},
                   {"Lost", "min", false, 4}});
  add_figures(table, before, first, has_takt);
  add_figures(table, after, second, has_takt);
  return "\n" + table.text();
}

std::string waiting_table(const LineResult& line) {
  if (line.waiting.empty()) return "";
  TextTable table({{"Waits", "", true, 0},
                   {"Weldment", "", true, 0},
                   {"For", "", true, 0},
                   {"Released next", "", true, 0}});
  for (const WaitingUnit& unit : line.waiting)
    table.cell(unit.order.serial)
        .cell(unit.order.weldment)
        .cell(unit.text)
        .cell(unit.released_instead.empty() ? "none" : unit.released_instead);
  return "\n" + table.text();
}

std::string units_table(const LineResult& line) {
  TextTable table({{"Unit", "", true, 0},
                   {"Weldment", "", true, 0},
                   {"Due", "", true, 0},
                   {"Start", "h", false, 4},
                   {"End", "h", false, 4},
                   {"Late", "min", false, 3},
                   {"By", "", true, 0}});
  for (const UnitResult& unit : line.units)
    table.cell(unit.serial)
        .cell(unit.weldment)
        .cell(unit.due)
        .cell(unit.start_s / 3600)
        .cell(unit.end_s / 3600)
        .cell(unit.wanted_s ? std::optional<double>((unit.end_s - *unit.wanted_s) / 60) : std::nullopt)
        .cell(unit.scrapped ? std::string("scrap") : unit.cause);
  return "\n" + table.text();
}

}  // namespace

std::string line_text(const LineResult& line, bool with_units) {
  const bool has_takt = line.takt_limit_s.has_value();
  if (line.units.empty())
    return not_run_text(line) + (line.not_run > 0 ? "No unit is run.\n" : "No unit is released.\n") +
           waiting_table(line);
  std::string text =
      summary(line) + stages_table(line) + misses_table(line) + cures_table(line) + waiting_table(line);
  if (line.with_all_carts)
    text +=
        compared_table("Carts", "as they are", line.figures, "all complete", *line.with_all_carts, has_takt);
  if (line.levelled)
    text += compared_table("Order", "as given", line.levelled->before, "levelled", line.levelled->after,
                           has_takt);
  return with_units ? text + units_table(line) : text;
}

}  // namespace seamtakt::cli
