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
const FieldTable& fields_of<Track>() {
  using S = Track;
  static const FieldTable table(
      struct_info<Track>("track", "a track"),
      {
          choice("axis", "axis", &S::axis, {"x", "y", "z"}, "Along which it runs.").require(),
          number("from_mm", "from", &S::from_mm, any_number(), "Its lower end, from the base.").require(),
          number("to_mm", "to", &S::to_mm, any_number(), "Its upper end, from the base.").require(),
          number("speed_mm_s", "speed", &S::speed_mm_s, above(0), "Speed of travel.").require(),
          number("acceleration_mm_s2", "acceleration", &S::acceleration_mm_s2, above(0),
                 "Acceleration of travel.")
              .require(),
      });
  return table;
}

template <>
const FieldTable& fields_of<TipChange>() {
  static const FieldTable table(
      struct_info<TipChange>("tip_change", "a tip change"),
      {
          number("every_arc_s", "arc time between changes", &TipChange::every_arc_s, above(0),
                 "Arc time after which the contact tip is changed.")
              .require(),
          number("time_s", "time of a change", &TipChange::time_s, at_least(0), "Time of one change.")
              .require(),
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
          number("tracking_s", "tracking", &S::tracking_s, at_least(0),
                 "Time that following the seam adds to each tracked pass."),
          number("approach_mm", "approach", &S::approach_mm, at_least(0),
                 "Way that the torch leaves a seam by, and comes to it, along z."),
          number("clearance_mm", "clearance", &S::clearance_mm, any_number(),
                 "Height z at which the torch travels between seams."),
          point("base_mm", "base", &S::base_mm, "Where the robot stands."),
          number("reach_mm", "reach", &S::reach_mm, above(0), "How far from its base the torch comes."),
          object("track", "track", &S::track, "The track on which its base travels."),
          object("tip_change", "tip change", &S::tip_change, "Change of the contact tip."),
          number("spool_kg", "spool", &S::spool_kg, above(0), "Wire on a full spool or drum."),
          number("spool_change_s", "spool change", &S::spool_change_s, at_least(0),
                 "Time to change an empty spool or drum."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Orientation>() {
  static const FieldTable table(struct_info<Orientation>("orientation", "an orientation"),
                                {
                                    id(&Orientation::id, "Name by which seams refer to this orientation."),
                                    numbers("rotation_deg", "rotation", &Orientation::rotation_deg,
                                            from_to(-3600, 3600), "Turns of the weldment about x, y and z."),
                                    numbers("axes_deg", "axes", &Orientation::axes_deg, from_to(-3600, 3600),
                                            "Angles of the positioner's axes, for its travel."),
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
          point("place_mm", "place", &TorchService::place_mm, "Where the torch is serviced."),
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
          path("box_mm", "box", &Zone::box_mm,
               "Two opposite corners of a box in which only one robot is at a time, air moves counted.")
              .count(2, 2),
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
const FieldTable& fields_of<Turn>() {
  static const FieldTable table(
      struct_info<Turn>("turn", "a turn"),
      {
          reference("from", "from", &Turn::from, IdList::orientations, "Orientation before.").require(),
          reference("to", "to", &Turn::to, IdList::orientations, "Orientation after.").require(),
          number("time_s", "time", &Turn::time_s, at_least(0), "Time of the turn, either way.").require(),
      });
  return table;
}

template <>
const FieldTable& fields_of<Positioner>() {
  using S = Positioner;
  static const FieldTable table(
      struct_info<Positioner>("positioner", "a positioner"),
      {
          reference("load_orientation", "load orientation", &S::load_orientation, IdList::orientations,
                    "Orientation in which the weldment is loaded and unloaded."),
          objects("turns", "turns", &S::turns, "Times between orientations; they go before the axes'."),
          numbers("axis_deg_s", "axis speeds", &S::axis_deg_s, above(0),
                  "Speed of each axis; axes turn together, the shorter way."),
          number("settle_s", "settle", &S::settle_s, at_least(0), "Time after a turn until it is at rest."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Changeover>() {
  static const FieldTable table(
      struct_info<Changeover>("changeover", "a changeover"),
      {
          reference("from", "from", &Changeover::from, IdList::weldments, "Weldment before.").require(),
          reference("to", "to", &Changeover::to, IdList::weldments, "Weldment after.").require(),
          number("time_s", "time", &Changeover::time_s, at_least(0), "Time to change the fixtures.")
              .require(),
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
          object("positioner", "positioner", &S::positioner, "How the positioner turns."),
          object("torch_service", "torch service", &S::torch_service, "Cleaning and cutting of the torch."),
          integer("stations", "stations", &S::stations, from_to(1, 2),
                  "1: loaded where it is welded; 2: loaded while the other one is welded."),
          number("index_s", "index", &S::index_s, at_least(0), "Time to swap the two stations."),
          objects("zones", "zones", &S::zones, "Places where only one robot may be."),
          number("min_torch_distance_mm", "least torch distance", &S::min_torch_distance_mm, above(0),
                 "Two torches are never nearer than this."),
          number("changeover_s", "changeover", &S::changeover_s, at_least(0),
                 "Time to change the fixtures between two weldments that aren't the same."),
          objects("changeovers", "changeovers", &S::changeovers, "Times for certain pairs of weldments."),
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
          number("cv", "variation", &S::cv, from_to(0, 3),
                 "Standard deviation of its time over the mean; times are log-normal."),
          in_seconds(numbers("time_range_s", "time range", &S::time_range_s, above(0),
                             "Least, usual and most time for a unit (triangular); goes before the time.")
                         .count(3, 3)),
      });
  return table;
}

template <>
const FieldTable& fields_of<Shift>() {
  using S = Shift;
  static const FieldTable table(
      struct_info<Shift>("shift", "a shift"),
      {
          texts("days", "days", &S::days, "Days of the week: mon, tue, wed, thu, fri, sat, sun.")
              .count(1, 7)
              .require(),
          text("from", "from", &S::from, "Time of day hh:mm at which it begins.").require(),
          text("to", "to", &S::to, "Time of day hh:mm at which it ends; not after from: on the next day.")
              .require(),
          pairs("breaks", "breaks", &S::breaks, "Breaks, from and to as hh:mm."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Calendar>() {
  static const FieldTable table(
      struct_info<Calendar>("calendar", "a calendar"),
      {
          text("start", "start", &Calendar::start, "Local time YYYY-MM-DDThh:mm at which the line starts.")
              .require(),
          objects("shifts", "shifts", &Calendar::shifts, "When work is done.").count(1).require(),
      });
  return table;
}

template <>
const FieldTable& fields_of<Operators>() {
  static const FieldTable table(
      struct_info<Operators>("operators", "operators"),
      {
          id(&Operators::id, "Name of the group."),
          integer("count", "count", &Operators::count, from_to(1, 10'000), "How many people."),
          references("stages", "stages", &Operators::stages, IdList::stages,
                     "Stages that need one of them while they work.")
              .count(1)
              .require(),
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
          object("calendar", "calendar", &Line::calendar, "Shifts and breaks; left out, work never pauses."),
          choice("pull", "pull", &Line::pull, {"takt", "free"},
                 "takt: assembly takes one unit a takt, and the last buffer fills where none is wanted."),
          objects("operators", "operators", &Line::operators, "People whom stages share."),
      });
  return table;
}

}  // namespace seamtakt
