#include <algorithm>
#include <memory>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "cli/common/command.hpp"
#include "cli/common/number_option.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "plan/window/window.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, schedule, seam;
  std::size_t size = WindowOptions{}.size;
  bool json = false;
};

struct NamedMap {
  const char* key;
  const std::vector<double> WindowMap::*values;
};
constexpr NamedMap named_maps[] = {{"heat_input_kJ_mm", &WindowMap::heat_input_kJ_mm},
                                   {"deposit_area_mm2", &WindowMap::deposit_area_mm2},
                                   {"leg_mm", &WindowMap::leg_mm},
                                   {"cooling_time_s", &WindowMap::cooling_time_s},
                                   {"preheat_needed_C", &WindowMap::preheat_needed_C},
                                   {"haz_hardness_HV", &WindowMap::haz_hardness_HV}};

void write_maps(JsonWriter& json, const WindowMap& map) {
  const std::size_t speeds = map.travel_speed_mm_s.size();
  json.key("maps").begin_object();
  for (const NamedMap& each : named_maps) {
    const std::vector<double>& values = map.*each.values;
    if (values.empty()) {
      json.null_member(each.key);
      continue;
    }
    json.key(each.key).begin_array();
    for (std::size_t first = 0; first < values.size(); first += speeds)
      json.value(std::span(values).subspan(first, speeds));
    json.end_array();
  }
  json.end_object();
  json.key("feasible").begin_array();
  for (std::size_t i = 0; i < map.wire_feed_speed_m_min.size(); ++i) {
    json.begin_array(JsonWriter::Layout::compact);
    for (std::size_t j = 0; j < speeds; ++j) json.value(map.is_feasible(i, j));
    json.end_array();
  }
  json.end_array();
}

void write_limits(JsonWriter& json, const WindowMap& map) {
  json.key("limits").begin_array();
  for (const WindowLimit& limit : map.limits) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("rule", limit.rule).member("what", limit.what.english());
    if (limit.key.empty())
      json.null_member("key");
    else
      json.member("key", limit.key);
    json.member("side", limit.is_upper ? "upper" : "lower").member("bound", limit.bound);
    json.member("value", limit.at_working_point).member("margin", limit.margin()).member("unit", limit.unit);
    json.member("broken_pct", limit.broken_pct).member("alone_pct", limit.alone_pct);
    json.member("cuts", limit.cuts).member("source", limit.source);
    json.end_object();
  }
  json.end_array();
}

std::string json_text(const WindowMap& map, const Provenance& provenance) {
  JsonWriter json;
  json.begin_object();
  json.member("weldment", map.weldment).member("seam", map.seam).member("schedule", map.schedule);
  json.member("passes", map.passes);
  json.member("wire_feed_speed_m_min", map.wire_feed_speed_m_min)
      .member("travel_speed_mm_s", map.travel_speed_mm_s);
  json.member("current_A", map.current_A).member("voltage_V", map.arc_voltage_V);
  json.member("deposition_rate_kg_h", map.deposition_rate_kg_h);
  write_maps(json, map);
  json.member("feasible_pct", map.feasible_pct());
  json.key("working_point").begin_object(JsonWriter::Layout::compact);
  json.member("wire_feed_speed_m_min", map.working_wire_feed_speed_m_min);
  json.member("travel_speed_mm_s", map.working_travel_speed_mm_s)
      .member("feasible", map.working_point_is_feasible);
  json.end_object();
  write_limits(json, map);
  write_findings(json, map.findings);
  write_provenance(json, provenance);
  json.end_object();
  return json.take();
}

std::size_t nearest_index(const std::vector<double>& values, double value) {
  const auto above = std::lower_bound(values.begin(), values.end(), value);
  if (above == values.end()) return values.size() - 1;
  const auto index = static_cast<std::size_t>(above - values.begin());
  return index > 0 && value - values[index - 1] < *above - value ? index - 1 : index;
}

/// The region in characters, at most 60 by 20; where several points share one, it shows the middle one.
std::string picture(const WindowMap& map) {
  const std::size_t feeds = map.wire_feed_speed_m_min.size(), speeds = map.travel_speed_mm_s.size();
  const std::size_t rows = std::min<std::size_t>(20, feeds), columns = std::min<std::size_t>(60, speeds);
  const std::size_t point_row = nearest_index(map.wire_feed_speed_m_min, map.working_wire_feed_speed_m_min);
  const std::size_t point_column = nearest_index(map.travel_speed_mm_s, map.working_travel_speed_mm_s);
  const TextView& view = output_view();
  std::string text = view.word("Wire feed speed"_word) + "\n";
  for (std::size_t row = rows; row-- > 0;) {
    const std::size_t feed = (2 * row + 1) * feeds / (2 * rows);
    std::string label = view.number({map.wire_feed_speed_m_min[feed], "m/min", 3});
    label.resize(std::max<std::size_t>(label.size(), 6), ' ');
    text += label + "|";
    for (std::size_t column = 0; column < columns; ++column) {
      const bool is_point = point_row * rows / feeds == row && point_column * columns / speeds == column;
      const std::size_t speed = (2 * column + 1) * speeds / (2 * columns);
      text += is_point ? 'o' : map.is_feasible(feed, speed) ? '#' : '.';
    }
    text += '\n';
  }
  return text +
         shown_text(
             Sentence("window.picture"_key, {{"feed", UnitValue{0, "m/min"}},
                                             {"from", UnitValue{map.travel_speed_mm_s.front(), "mm/s", 3}},
                                             {"to", UnitValue{map.travel_speed_mm_s.back(), "mm/s", 3}}})) +
         "\n";
}

/// In the unit of its row.
void add_number(TextTable& table, const std::optional<double>& value, const std::string& unit) {
  if (value)
    table.cell(UnitValue{*value, unit.c_str()});
  else
    table.cell(value);
}

std::string limits_table(const WindowMap& map) {
  TextTable table({{"Limit"_word, "", true, 0},
                   {"Side"_word, "", true, 0},
                   {shown_text(Sentence("window.column.bound"_key)), "", false, 4},
                   {"Value"_word, "", false, 4},
                   {shown_text(Sentence("window.column.margin"_key)), "", false, 3},
                   {"Unit"_word, "", true, 0},
                   {"Beyond it"_word, "%", false, 3},
                   {"By it alone"_word, "%", false, 3},
                   {"Rule"_word, "", true, 0}},
                  output_view());
  for (const WindowLimit& limit : map.limits) {
    table.cell(limit.what).cell(limit.is_upper ? "at most"_word : "at least"_word);
    add_number(table, limit.bound, limit.unit);
    add_number(table, limit.at_working_point, limit.unit);
    const std::optional<double> margin = limit.margin();
    if (margin)
      table.difference_cell({*margin, limit.unit.c_str(), 3});
    else
      table.cell(margin);
    table.cell(output_view().unit(limit.unit.c_str()))
        .cell(limit.broken_pct)
        .cell(limit.alone_pct)
        .cell(limit.rule);
  }
  return table.text();
}

Sentence summary_of(const WindowMap& map) {
  constexpr int all = UnitValue::all_digits;
  return Sentence(map.working_point_is_feasible ? "window.summary.feasible"_key : "window.summary"_key,
                  {{"schedule", printable(map.schedule)},
                   {"seam", printable(map.weldment) + "/" + printable(map.seam)},
                   {"passes", map.passes},
                   {"share", UnitValue{map.feasible_pct(), "%", 3}},
                   {"feed", UnitValue{map.working_wire_feed_speed_m_min, "m/min", all}},
                   {"speed", UnitValue{map.working_travel_speed_mm_s, "mm/s", all}}});
}

std::string table_text(const WindowMap& map) {
  return shown_text(summary_of(map)) + "\n\n" + picture(map) + "\n" +
         shown_word("Limits, and the schedule's margin to each"_word) + "\n" + limits_table(map) +
         findings_section(map.findings);
}

void run(const Options& options, Result& result) {
  const LoadedPlan loaded = load(options.plan);
  WindowOptions window;
  window.size = options.size;
  window.with_hardness = options.json;
  const WindowMap map = window_map(loaded.plan, options.schedule, options.seam, window);
  result.output = options.json ? json_text(map, loaded.provenance) : table_text(map);
  result.exit_code = exit_code_for(map.findings);
}

}  // namespace

void add_window(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command =
      app.command("window", "What wire feed and travel speeds give on a seam, and which keep all limits");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command.option("--schedule", options->schedule, "the schedule to map").required();
  command.option("--seam", options->seam, "WELDMENT/SEAM, or the seam alone where one weldment has it")
      .required();
  add_whole_number(command, "--size", options->size, WindowOptions::least_size, WindowOptions::greatest_size,
                   "points each way, 2 to 2000 (default 50)");
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
