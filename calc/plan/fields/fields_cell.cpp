#include "plan/fields/field_builders.hpp"
#include "plan/fields/field_stage_time.hpp"

namespace seamtakt {

using namespace table;

template <>
const FieldTable& fields_of<Loaded>() {
  static const FieldTable table(
      struct_info<Loaded>("loaded", "what a robot has loaded"),
      {
          reference("wire", "wire", &Loaded::wire, IdList::wires, "The wire that is loaded."),
          reference("gas", "gas", &Loaded::gas, IdList::gases, "The gas that is connected."),
          reference("power_source", "power source", &Loaded::power_source, IdList::power_sources,
                    "The power source that is connected."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Robot>() {
  using S = Robot;
  static const FieldTable table(
      struct_info<Robot>("robot", "a robot"),
      {
          id(&S::id, "Name by which seams and instruments refer to this robot."),
          point("home_mm", "home", &S::home_mm, "Where the torch begins and ends a cycle."),
          object("loaded", "loaded", &S::loaded, "What it has loaded; left out, it welds with anything."),
          number("wire_change_s", "wire change", &S::wire_change_s, at_least(0),
                 "Time to change the wire; null or left out: it can't.")
              .allow_null(),
          number("air_speed_mm_s", "air speed", &S::air_speed_mm_s, above(0),
                 "Speed of the torch off the seams."),
          number("air_acceleration_mm_s2", "air acceleration", &S::air_acceleration_mm_s2, above(0),
                 "Acceleration of the torch off the seams."),
          number("wrist_s", "wrist", &S::wrist_s, at_least(0), "Time that the wrist adds to each air move."),
          number("sense_point_s", "sense point", &S::sense_point_s, at_least(0), "Time of one touch."),
          number("arc_start_s", "arc start", &S::arc_start_s, at_least(0), "Time to start the arc."),
          number("crater_fill_s", "crater fill", &S::crater_fill_s, at_least(0), "Time to fill the crater."),
          number("post_flow_s", "post flow", &S::post_flow_s, at_least(0),
                 "Time for which gas flows on after the arc."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Orientation>() {
  static const FieldTable table(struct_info<Orientation>("orientation", "an orientation"),
                                {
                                    id(&Orientation::id, "Name by which seams refer to this orientation."),
                                    numbers("rotation_deg", "rotation", &Orientation::rotation_deg,
                                            from_to(-3600, 3600), "Angles of the positioner's axes."),
                                });
  return table;
}

template <>
const FieldTable& fields_of<TorchService>() {
  static const FieldTable table(
      struct_info<TorchService>("torch_service", "a torch service"),
      {
          number("every_arc_s", "arc time between services", &TorchService::every_arc_s, above(0),
                 "Arc time after which the torch is serviced.")
              .require(),
          number("time_s", "service time", &TorchService::time_s, at_least(0), "Time of one service."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Zone>() {
  static const FieldTable table(
      struct_info<Zone>("zone", "a zone"),
      {
          id(&Zone::id, "Name of the zone."),
          references("seams", "seams", &Zone::seams, IdList::seam_places,
                     "Seams, as weldment/seam, of which two robots never weld two at once."),
      });
  return table;
}

namespace {

/// For a key that doesn't end in its unit.
FieldInfo in_seconds(FieldInfo field) {
  field.unit = "s";
  return field;
}

}  // namespace

template <>
const FieldTable& fields_of<ManualWork>() {
  static const FieldTable table(
      struct_info<ManualWork>("manual_work", "hand welding"),
      {
          number("arc_share", "arc share", &ManualWork::arc_share, above_to(0, 1),
                 "Share of the time at a seam in which a welder's arc burns; the set-up isn't part of it.")
              .require(),
          in_seconds(number("setup_s_per_seam", "set-up of a seam", &ManualWork::setup_s_per_seam,
                            at_least(0), "Time that a welder needs at each seam before the first arc.")
                         .require()),
      });
  return table;
}

template <>
const FieldTable& fields_of<Cell>() {
  using S = Cell;
  static const FieldTable table(
      struct_info<Cell>("cell", "a cell"),
      {
          objects("robots", "robots", &S::robots, "The robots of the cell."),
          objects("orientations", "orientations", &S::orientations, "The positioner's orientations."),
          number("orientation_change_s", "orientation change", &S::orientation_change_s, at_least(0),
                 "Time to change the positioner's orientation."),
          object("torch_service", "torch service", &S::torch_service, "Cleaning and cutting of the torch."),
          integer("stations", "stations", &S::stations, from_to(1, 2),
                  "1: loaded where it is welded; 2: loaded while the other one is welded."),
          number("index_s", "index", &S::index_s, at_least(0), "Time to swap the two stations."),
          objects("zones", "zones", &S::zones, "Places where only one robot may be."),
          object("manual", "hand welding", &S::manual,
                 "What hand welding takes beside the arc; left out, its hours aren't known."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Stage>() {
  using S = Stage;
  static const FieldTable table(
      struct_info<Stage>("stage", "a stage"),
      {
          id(&S::id, "Name of the stage."),
          integer("servers", "servers", &S::servers, from_to(1, 10'000), "Units that it works on at once."),
          integer("buffer_after", "buffer after", &S::buffer_after, at_least(0),
                  "Units that may wait behind it."),
          stage_time("time", "time", {"kit", "load", "tack", "cell", "manual", "measure", "inspect"},
                     "What gives its time for a unit: a weldment's or the cell's time by name, or seconds."),
          number("availability", "availability", &S::availability, above_to(0, 1),
                 "Share of time in which it can work."),
          number("repair_s", "repair", &S::repair_s, at_least(0), "Mean time of a stop."),
          number("yield_pct", "yield", &S::yield_pct, from_to(0, 100), "Share of units that leave it right."),
          reference("rework_to", "rework to", &S::rework_to, IdList::stages,
                    "Stage to which the others go back."),
          number("rework_s", "rework", &S::rework_s, at_least(0), "Time that rework takes there."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Line>() {
  static const FieldTable table(
      struct_info<Line>("line", "a line"),
      {
          number("takt_s", "takt", &Line::takt_s, above(0), "Time in which the line wants one unit."),
          number("planning_pct", "planning share", &Line::planning_pct, above_to(0, 100),
                 "Share of takt to plan to."),
          objects("stages", "stages", &Line::stages, "The stages, in the order in which a unit passes them."),
      });
  return table;
}

}  // namespace seamtakt
