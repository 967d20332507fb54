#include "records/actual/actual_json.hpp"

#include "cell/timeline/cycle_columns.hpp"

namespace seamtakt {

namespace {

constexpr auto on_one_line = JsonWriter::Layout::compact;

void write_name(JsonWriter& json, const ArcName& name) {
  if (name.seam.empty())
    json.null_member("seam");
  else
    json.member("seam", name.seam);
  json.member("pass", name.pass > 0 ? std::optional(name.pass) : std::nullopt);
  if (name.run > 0) json.member("run", name.run);
  if (name.part > 1) json.member("part", name.part);
}

void write_names(JsonWriter& json, const char* key, const std::vector<ArcName>& names) {
  json.key(key).begin_array(on_one_line);
  for (const ArcName& name : names) {
    json.begin_object(on_one_line);
    write_name(json, name);
    json.end_object();
  }
  json.end_array();
}

void write_parts(JsonWriter& json, const std::vector<PlannedPart>& parts) {
  json.key("parts").begin_array(on_one_line);
  for (const PlannedPart& part : parts) {
    json.begin_object(on_one_line).member("kind", to_string(part.kind));
    if (part.cause != WaitCause::none) json.member("cause", to_string(part.cause));
    json.member("time_s", part.time_s).end_object();
  }
  json.end_array();
}

void write_arc(JsonWriter& json, const CycleStep& step) {
  write_name(json, step.to);
  json.member("is", to_string(step.is));
  json.member("start_s", step.start_s).member("planned_start_s", step.planned_start_s);
  json.member("time_s", step.time_s).member("rest_s", step.rest_s).member("planned_s", step.planned_s);
  json.member("difference_s", step.difference_s);
  json.member("arc_on_s", step.arc_on_s).member("arc_starts", step.arc_starts);
  json.member("planned_arc_starts", step.planned_s ? std::optional(step.planned_arc_starts) : std::nullopt);
}

void write_gap(JsonWriter& json, const CycleStep& step) {
  json.member("from", step.from.text()).member("to", step.to.text());
  json.member("start_s", step.start_s).member("planned_start_s", step.planned_start_s);
  json.member("time_s", step.time_s).member("rest_s", step.rest_s).member("planned_s", step.planned_s);
  json.member("difference_s", step.difference_s);
  write_parts(json, step.parts);
  write_names(json, "skipped", step.skipped);
  write_names(json, "extra", step.extra);
  json.member("extra_s", step.extra_s);
}

void write_step(JsonWriter& json, const CycleStep& step, bool with_robot) {
  const bool is_arc = step.kind == CycleStep::Kind::arc;
  json.begin_object(on_one_line);
  if (with_robot) json.member("robot", step.robot);
  json.member("kind", is_arc ? "arc" : "gap");
  is_arc ? write_arc(json, step) : write_gap(json, step);
  json.end_object();
}

void write_notes(JsonWriter& json, const std::vector<Sentence>& notes) {
  json.key("notes").begin_array();
  for (const Sentence& note : notes) json.value(note.english());
  json.end_array();
}

void write_robot(JsonWriter& json, const RobotActual& robot) {
  json.begin_object().member("robot", robot.robot);
  json.member("time_s", robot.time_s).member("planned_s", robot.planned_s);
  json.member("difference_s", robot.difference_s);
  json.key("steps").begin_array();
  for (const CycleStep& step : robot.steps) write_step(json, step, false);
  json.end_array();
  write_names(json, "skipped", robot.skipped);
  json.key("extra").begin_array(on_one_line);
  for (const RobotActual::Extra& extra : robot.extra) {
    json.begin_object(on_one_line);
    write_name(json, extra.arc);
    json.member("is", to_string(extra.is)).end_object();
  }
  json.end_array();
  write_notes(json, robot.notes);
  json.end_object();
}

void write_unit(JsonWriter& json, const UnitActual& unit) {
  json.begin_object().member("unit_serial", unit.unit_serial).member("weldment", unit.weldment);
  json.member("logged_s", unit.logged_s).member("planned_cycle_s", unit.planned_cycle_s);
  json.member("time_s", unit.time_s).member("planned_s", unit.planned_s);
  json.member("difference_s", unit.difference_s);
  if (unit.aligned_at.empty())
    json.null_member("aligned_at");
  else
    json.member("aligned_at", unit.aligned_at);
  json.key("robots").begin_array();
  for (const RobotActual& robot : unit.robots) write_robot(json, robot);
  json.end_array();
  json.key("largest").begin_array();
  for (const CycleStep* step : unit.largest()) write_step(json, *step, true);
  json.end_array();
  write_notes(json, unit.notes);
  json.end_object();
}

}  // namespace

void write_cycle_actual(const CycleActual& actual, JsonWriter& json) {
  if (actual.units.empty()) {
    json.null_member("cycle_actual");
    return;
  }
  json.key("cycle_actual").begin_array();
  for (const UnitActual& unit : actual.units) write_unit(json, unit);
  json.end_array();
}

}  // namespace seamtakt
