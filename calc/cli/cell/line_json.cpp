#include "cli/cell/line_output.hpp"

namespace seamtakt::cli {

namespace {

void write_figures(JsonWriter& json, const LineFigures& figures, bool has_takt) {
  json.begin_object(JsonWriter::Layout::compact);
  json.member("runs", figures.runs).member("throughput_per_h", figures.throughput_per_h);
  json.member("throughput_p10_per_h", figures.throughput_p10_per_h);
  json.member("throughput_p90_per_h", figures.throughput_p90_per_h);
  json.member("throughput_se_per_h", figures.throughput_se_per_h).member("makespan_s", figures.makespan_s);
  if (has_takt)
    json.member("takt_misses", figures.takt_misses)
        .member("takt_misses_se", figures.takt_misses_se)
        .member("takt_lost_s", figures.takt_lost_s);
  json.end_object();
}

void write_units(JsonWriter& json, const LineResult& line) {
  json.key("units").begin_array();
  for (const UnitResult& unit : line.units) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("serial", unit.serial).member("weldment", unit.weldment);
    if (!unit.due.empty()) json.member("due", unit.due);
    json.member("start_s", unit.start_s).member("end_s", unit.end_s);
    if (unit.reworks > 0) json.member("reworks", unit.reworks);
    if (unit.scrapped) json.member("scrapped", true);
    if (unit.wanted_s) json.member("wanted_s", *unit.wanted_s).member("cause", unit.cause);
    json.end_object();
  }
  json.end_array();
}

void write_stages(JsonWriter& json, const LineResult& line) {
  json.key("stages").begin_array();
  for (const StageResult& stage : line.stages) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("stage", stage.stage).member("servers", stage.servers).member("busy_pct", stage.busy_pct);
    json.member("blocked_pct", stage.blocked_pct).member("starved_pct", stage.starved_pct);
    json.member("stopped_pct", stage.stopped_pct);
    json.end_object();
  }
  json.end_array();
}

void write_misses(JsonWriter& json, const LineResult& line) {
  json.key("takt_misses_by_cause").begin_array();
  for (const MissGroup& group : line.misses_by_cause) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("stage", group.stage).member("cause", group.cause).member("misses", group.misses);
    json.member("lost_s", group.lost_s);
    json.end_object();
  }
  json.end_array();
  if (!line.worst_window) {
    json.null_member("worst_window");
    return;
  }
  json.key("worst_window").begin_object(JsonWriter::Layout::compact);
  json.member("units", line.worst_window->units).member("start_s", line.worst_window->start_s);
  json.member("end_s", line.worst_window->end_s)
      .member("throughput_per_h", line.worst_window->throughput_per_h);
  json.end_object();
}

void write_cures(JsonWriter& json, const LineResult& line) {
  const bool has_takt = line.takt_limit_s.has_value();
  json.key("cures").begin_array();
  for (const Improvement& cure : line.cures) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("stage", cure.stage).member("change", cure.change);
    json.member("throughput_per_h", cure.figures.throughput_per_h);
    json.member("throughput_change_per_h", cure.throughput_change_per_h);
    json.member("throughput_change_se_per_h", cure.throughput_change_se_per_h);
    if (has_takt)
      json.member("takt_misses", cure.figures.takt_misses)
          .member("takt_misses_change", cure.takt_misses_change);
    json.member("makespan_s", cure.figures.makespan_s);
    json.end_object();
  }
  json.end_array();
}

void write_waiting(JsonWriter& json, const LineResult& line) {
  json.key("waiting").begin_array();
  for (const WaitingUnit& unit : line.waiting) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("serial", unit.order.serial).member("weldment", unit.order.weldment).member("for", unit.text);
    if (unit.unwelded_seams > 0) json.member("unwelded_seams", unit.unwelded_seams);
    json.key("released_instead");
    if (unit.released_instead.empty())
      json.null();
    else
      json.value(unit.released_instead);
    json.end_object();
  }
  json.end_array();
  if (line.with_all_carts) {
    json.key("with_all_carts");
    write_figures(json, *line.with_all_carts, line.takt_limit_s.has_value());
  }
}

void write_levelling(JsonWriter& json, const LineResult& line) {
  if (!line.levelled) return;
  json.key("levelling").begin_object();
  json.key("before");
  write_figures(json, line.levelled->before, line.takt_limit_s.has_value());
  json.key("after");
  write_figures(json, line.levelled->after, line.takt_limit_s.has_value());
  json.key("order_before").begin_array(JsonWriter::Layout::compact);
  for (const std::string& serial : line.order_before) json.value(serial);
  json.end_array().end_object();
}

/// The headline: of all runs.
void write_headline(JsonWriter& json, const LineResult& line) {
  const LineFigures& figures = line.figures;
  const bool has_takt = line.takt_limit_s.has_value();
  const auto with_takt = [&](double value) { return has_takt ? std::optional(value) : std::nullopt; };
  json.member("unit_count", line.units.size()).member("units_not_run", line.not_run);
  json.member("runs", figures.runs).member("seed", line.seed).member("left_to_chance", !line.certain);
  json.member("makespan_s", figures.makespan_s).member("throughput_per_h", figures.throughput_per_h);
  json.member("throughput_p10_per_h", figures.throughput_p10_per_h);
  json.member("throughput_p90_per_h", figures.throughput_p90_per_h);
  json.member("throughput_overall_per_h", figures.throughput_overall_per_h);
  json.member("takt_s", line.takt_s).member("takt_limit_s", line.takt_limit_s);
  json.member("takt_misses", with_takt(figures.takt_misses));
  json.member("takt_lost_s", with_takt(figures.takt_lost_s));
}

/// The one draw that all further figures, units and stages are of.
void write_draw(JsonWriter& json, const LineResult& line) {
  json.key("draw").begin_object(JsonWriter::Layout::compact);
  json.member("seed", line.draw_seed).member("makespan_s", line.makespan_s);
  json.member("throughput_per_h", line.throughput_per_h);
  json.member("throughput_overall_per_h", line.throughput_overall_per_h);
  json.member("takt_misses", line.takt_misses).member("takt_lost_s", line.takt_lost_s);
  json.end_object();
}

}  // namespace

void write_line(JsonWriter& json, const LineResult& line) {
  write_headline(json, line);
  write_draw(json, line);
  json.member("intervals_over_takt", line.intervals_over_takt);
  if (line.bottleneck.empty())
    json.null_member("bottleneck");
  else
    json.member("bottleneck", line.bottleneck);
  json.member("units_in_line", line.units_in_line).member("flow_time_mean_s", line.flow_time_mean_s);
  json.member("scrapped", line.scrapped).member("reworks", line.reworks);
  write_stages(json, line);
  write_units(json, line);
  write_misses(json, line);
  json.key("mean_of_runs");
  write_figures(json, line.figures, line.takt_limit_s.has_value());
  write_cures(json, line);
  write_waiting(json, line);
  write_levelling(json, line);
}

}  // namespace seamtakt::cli
