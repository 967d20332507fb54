#include "base/text/comma_list.hpp"
#include "base/text/text_table.hpp"
#include "cli/cell/line_output.hpp"
#include "cli/common/output.hpp"
#include "line/line_columns.hpp"
#include "plan/clock_time.hpp"

namespace seamtakt::cli {

namespace {

UnitValue hours(double time_s, int digits = 4) {
  return {time_s / 3600, "h", digits};
}
UnitValue minutes(double time_s) {
  return {time_s / 60, "min"};
}
UnitValue per_hour(double rate, int digits = 4) {
  return {rate, "1/h", digits};
}

std::string line_of(SentenceKey key, std::vector<Argument> arguments = {}) {
  return shown_text(Sentence(key, std::move(arguments))) + "\n";
}

bool has_calendar(const LineResult& line) {
  return !line.calendar_start.empty();
}

/// A time of the run under a name: on the clock where there is one, else in hours.
Argument when(const LineResult& line, const char* name, double elapsed_s) {
  if (const std::optional<double> start_s = parse_clock_s(line.calendar_start))
    return {name, clock_text(*start_s + elapsed_s)};
  return {name, hours(elapsed_s)};
}

/// What the headline is made of.
std::string runs_text(const LineResult& line) {
  const LineFigures& figures = line.figures;
  if (line.certain) return line_of("cli.line.certain"_key);
  if (figures.runs == 1) return line_of("cli.line.one-draw"_key, {{"seed", std::to_string(line.draw_seed)}});
  std::vector<Argument> arguments{{"runs", figures.runs},
                                  {"seed", std::to_string(line.seed)},
                                  {"low", per_hour(*figures.throughput_p10_per_h)},
                                  {"high", per_hour(*figures.throughput_p90_per_h)},
                                  {"error", per_hour(figures.throughput_se_per_h, 2)}};
  if (!line.takt_limit_s) return line_of("cli.line.runs"_key, std::move(arguments));
  arguments.emplace_back("misses", UnitValue{figures.takt_misses_se, "", 2});
  return line_of("cli.line.runs.takt"_key, std::move(arguments));
}

std::string not_run_text(const LineResult& line) {
  if (line.not_run == 0) return "";
  const std::size_t all = line.not_run + line.units.size();
  const std::string text = line_of("cli.line.not-run"_key, {{"waiting", line.not_run}, {"units", all}});
  return line.units.empty() ? text : text + line_of("cli.line.not-run.rate"_key);
}

SentenceKey headline_key(const LineResult& line) {
  if (line.not_run == 0) return line.takt_limit_s ? "cli.line.headline.takt"_key : "cli.line.headline"_key;
  return line.takt_limit_s ? "cli.line.headline.part.takt"_key : "cli.line.headline.part"_key;
}

std::string headline(const LineResult& line) {
  const LineFigures& figures = line.figures;
  std::vector<Argument> arguments{{"units", line.units.size()},
                                  {"time", hours(figures.makespan_s)},
                                  {"rate", per_hour(figures.throughput_per_h)},
                                  {"stage", line.bottleneck}};
  if (line.takt_limit_s) arguments.emplace_back("wanted", per_hour(3600 / *line.takt_limit_s));
  std::string text = line_of(headline_key(line), std::move(arguments));
  if (line.takt_limit_s)
    text += line_of("cli.line.misses"_key, {{"misses", UnitValue{figures.takt_misses, "", 3}},
                                            {"lost", minutes(figures.takt_lost_s)}});
  return text + runs_text(line);
}

/// Of which draw the rest is.
std::string draw_text(const LineResult& line) {
  if (line.certain || line.figures.runs == 1) return "";
  std::vector<Argument> arguments{{"seed", std::to_string(line.draw_seed)},
                                  {"time", hours(line.makespan_s)},
                                  {"rate", per_hour(line.throughput_per_h)}};
  if (!line.takt_misses) return line_of("cli.line.draw"_key, std::move(arguments));
  arguments.emplace_back("misses", *line.takt_misses);
  return line_of("cli.line.draw.takt"_key, std::move(arguments));
}

std::string in_line_text(const LineResult& line) {
  std::vector<Sentence> sentences{
      Sentence("cli.line.in-line"_key,
               {{"units", UnitValue{line.units_in_line, "", 3}}, {"time", hours(line.flow_time_mean_s)}})};
  if (line.reworks > 0) sentences.push_back(Sentence("cli.line.reworks"_key, {{"times", line.reworks}}));
  if (line.scrapped > 0) sentences.push_back(Sentence("cli.line.scrap"_key, {{"units", line.scrapped}}));
  std::string text;
  for (const Sentence& each : sentences) text += (text.empty() ? "" : " ") + shown_text(each);
  return text + "\n";
}

std::string calendar_text(const LineResult& line) {
  if (!has_calendar(line)) return "";
  constexpr std::size_t longest = 300;
  const std::size_t units = line.units.size() + line.waiting.size();
  std::string text =
      line_of("cli.line.first-day"_key, {{"day", line.first_day},
                                         {"until", line.first_day_clock},
                                         {"finished", UnitValue{line.figures.finished_first_day, "", 3}},
                                         {"units", units}});
  if (line.has_dues)
    text += line_of("cli.line.late-orders"_key, {{"late", UnitValue{line.figures.late_orders, "", 3}}});
  text += line_of("cli.line.calendar"_key, {{"start", line.calendar_start}, {"end", line.finished_clock}});
  if (!line.unfinished.empty())
    text += line_of("cli.line.unfinished"_key,
                    {{"day", line.first_day}, {"units", printable(comma_list(line.unfinished), longest)}});
  return text;
}

std::string people_text(const LineResult& line) {
  std::string text;
  for (const StageResult& stage : line.stages)
    if (stage.no_person_pct)
      text += line_of("cli.line.no-person"_key,
                      {{"stage", stage.stage}, {"share", UnitValue{*stage.no_person_pct, "%", 3}}});
  return text;
}

std::string summary(const LineResult& line) {
  std::string text = not_run_text(line) + headline(line) + "\n" + draw_text(line) + calendar_text(line) +
                     in_line_text(line) + people_text(line);
  if (line.worst_window)
    text +=
        line_of("cli.line.worst-window"_key, {{"units", line.worst_window->units},
                                              when(line, "from", line.worst_window->start_s),
                                              when(line, "to", line.worst_window->end_s),
                                              {"rate", per_hour(line.worst_window->throughput_per_h, 3)}});
  return text;
}

std::string stages_table(const LineResult& line) {
  return "\n" + column_table(stage_columns(), line.stages, false);
}

std::string misses_table(const LineResult& line) {
  if (line.misses_by_cause.empty()) return "";
  TextTable table({{"Takt missed by"_word, "", true, 0},
                   {"Stage"_word, "", true, 0},
                   {"Misses"_word, "", false, 0},
                   {"Lost"_word, "min", false, 4}},
                  output_view());
  for (const MissGroup& group : line.misses_by_cause)
    table.cell(word_of(group.cause)).cell(group.stage).cell(group.misses).cell(group.lost_s / 60);
  return "\n" + table.text();
}

std::string cures_table(const LineResult& line) {
  if (line.cures.empty()) return "";
  TextTable table({{"What would cure it"_word, "", true, 0},
                   {"Stage"_word, "", true, 0},
                   {"Throughput"_word, "1/h", false, 4},
                   {"Change"_word, "1/h", false, 3},
                   {"+-"_word, "1/h", false, 2},
                   {"Misses"_word, "", false, 3},
                   {"Change"_word, "", false, 3}},
                  output_view());
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

void add_figures(TextTable& table, Word name, const LineFigures& figures, bool has_takt) {
  table.cell(name).cell(figures.throughput_per_h).cell(figures.makespan_s / 3600);
  table.cell(has_takt ? std::optional<double>(figures.takt_misses) : std::nullopt);
  table.cell(has_takt ? std::optional<double>(figures.takt_lost_s / 60) : std::nullopt);
}

std::string compared_table(Word heading, Word before, const LineFigures& first, Word after,
                           const LineFigures& second, bool has_takt) {
  TextTable table({{heading, "", true, 0},
                   {"Throughput"_word, "1/h", false, 4},
                   {"Makespan"_word, "h", false, 4},
                   {"Misses"_word, "", false, 3},
                   {"Lost"_word, "min", false, 4}},
                  output_view());
  add_figures(table, before, first, has_takt);
  add_figures(table, after, second, has_takt);
  return "\n" + table.text();
}

std::string waiting_table(const LineResult& line) {
  if (line.waiting.empty()) return "";
  TextTable table({{"Waits"_word, "", true, 0},
                   {"Weldment"_word, "", true, 0},
                   {"For"_word, "", true, 0},
                   {"Released next"_word, "", true, 0}},
                  output_view());
  for (const WaitingUnit& unit : line.waiting)
    table.cell(unit.order.serial)
        .cell(unit.order.weldment)
        .cell(unit.sentence)
        .cell(unit.released_instead.empty() ? shown_word("none"_word) : unit.released_instead);
  return "\n" + table.text();
}

/// With the clock's times, and by how much an order is overdue.
std::string clock_table(const LineResult& line) {
  TextTable table({{"Unit"_word, "", true, 0},
                   {"Weldment"_word, "", true, 0},
                   {"Due"_word, "", true, 0},
                   {"Start"_word, "", true, 0},
                   {"End"_word, "", true, 0},
                   {"Overdue"_word, "h", false, 3},
                   {"Late"_word, "min", false, 3},
                   {"By"_word, "", true, 0}},
                  output_view());
  const auto over = [](const std::optional<double>& time_s, double unit_s) {
    return time_s ? std::optional<double>(*time_s / unit_s) : std::nullopt;
  };
  for (const UnitResult& unit : line.units)
    table.cell(unit.serial)
        .cell(unit.weldment)
        .cell(unit.due)
        .cell(unit.start_clock)
        .cell(unit.end_clock)
        .cell(over(unit.late_s, 3600))
        .cell(over(unit.missed_by_s, 60))
        .cell(unit.scrapped ? Sentence("scrap"_word) : unit.cause);
  return "\n" + table.text();
}

std::string units_table(const LineResult& line) {
  if (has_calendar(line)) return clock_table(line);
  TextTable table({{"Unit"_word, "", true, 0},
                   {"Weldment"_word, "", true, 0},
                   {"Due"_word, "", true, 0},
                   {"Start"_word, "h", false, 4},
                   {"End"_word, "h", false, 4},
                   {"Late"_word, "min", false, 3},
                   {"By"_word, "", true, 0}},
                  output_view());
  for (const UnitResult& unit : line.units)
    table.cell(unit.serial)
        .cell(unit.weldment)
        .cell(unit.due)
        .cell(unit.start_s / 3600)
        .cell(unit.end_s / 3600)
        .cell(unit.wanted_s ? std::optional<double>((unit.end_s - *unit.wanted_s) / 60) : std::nullopt)
        .cell(unit.scrapped ? Sentence("scrap"_word) : unit.cause);
  return "\n" + table.text();
}

}  // namespace

std::string line_text(const LineResult& line, bool with_units) {
  const bool has_takt = line.takt_limit_s.has_value();
  if (line.units.empty())
    return not_run_text(line) +
           line_of(line.not_run > 0 ? "cli.line.none-run"_key : "cli.line.none-released"_key) +
           waiting_table(line);
  std::string text =
      summary(line) + stages_table(line) + misses_table(line) + cures_table(line) + waiting_table(line);
  if (line.with_all_carts)
    text += compared_table("Carts"_word, "as they are"_word, line.figures, "all complete"_word,
                           *line.with_all_carts, has_takt);
  if (line.levelled)
    text += compared_table("Order"_word, "as given"_word, line.levelled->before, "levelled"_word,
                           line.levelled->after, has_takt);
  return with_units ? text + units_table(line) : text;
}

}  // namespace seamtakt::cli
