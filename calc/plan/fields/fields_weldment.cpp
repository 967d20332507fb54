#include "plan/fields/field_builders.hpp"

namespace seamtakt {

using namespace table;

namespace {

/// ISO 13920: a class for lengths and angles, A to D, and one for straightness, E to H, that may follow it.
std::vector<std::string_view> tolerance_classes() {
  return {"A", "AE", "AF", "AG", "AH", "B", "BE", "BF", "BG", "BH",
          "C", "CE", "CF", "CG", "CH", "D", "DE", "DF", "DG", "DH"};
}

}  // namespace

template <>
const FieldTable& fields_of<Part>() {
  static const FieldTable table(
      struct_info<Part>("part", "a part"),
      {
          id(&Part::id, "Number of the part, as a cart's list has it."),
          integer("quantity", "quantity", &Part::quantity, at_least(0), "How many of it a weldment takes."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Section>() {
  static const FieldTable table(
      struct_info<Section>("section", "a cross-section"),
      {
          number("area_mm2", "area", &Section::area_mm2, above(0), "Area of the weldment's cross-section."),
          number("second_moment_mm4", "second moment of area", &Section::second_moment_mm4, above(0),
                 "Second moment of area about the axis of bending."),
          numbers("neutral_axis_mm", "neutral axis", &Section::neutral_axis_mm, any_number(),
                  "Where the neutral axis lies across the member: [y, z] of one along x.")
              .count(2, 2),
          choice("axis", "axis", &Section::axis, {"x", "y", "z"}, "Along which the member runs."),
          numbers("second_moments_mm4", "second moments of area", &Section::second_moments_mm4, above(0),
                  "About the member's two cross axes, in the order of their letters: of a member along x, "
                  "about y and about z.")
              .count(2, 2),
      },
      {{{"second_moment_mm4", "second_moments_mm4"}, false}});
  return table;
}

template <>
const FieldTable& fields_of<Feature>() {
  static const FieldTable table(
      struct_info<Feature>("feature", "a feature"),
      {
          id(&Feature::id, "Name of the measured feature."),
          choice("kind", "kind", &Feature::kind, {"length", "angle", "straightness"}, "What is measured."),
          texts("points", "points", &Feature::points, "Names of the measured points between which it lies."),
          number("nominal_mm", "nominal size", &Feature::nominal_mm, above(0), "Nominal length."),
          number("nominal_deg", "nominal angle", &Feature::nominal_deg, from_to(0, 360), "Nominal angle."),
      },
      {{{"nominal_mm", "nominal_deg"}, false}});
  return table;
}

template <>
const FieldTable& fields_of<Groove>() {
  static const FieldTable table(
      struct_info<Groove>("groove", "a groove"),
      {
          choice("type", "type", &Groove::type,
                 {"square", "single-v", "double-v", "single-bevel", "double-bevel", "single-u"},
                 "Kind of groove.")
              .require(),
          number("angle_deg", "angle", &Groove::angle_deg, {.lower = 0, .upper = 180, .upper_open = true},
                 "Included angle of a V, else the angle of the bevel or wall."),
          number("root_gap_mm", "root gap", &Groove::root_gap_mm, at_least(0), "Gap at the root."),
          number("root_face_mm", "root face", &Groove::root_face_mm, at_least(0), "Height of the root face."),
          number("root_radius_mm", "root radius", &Groove::root_radius_mm, at_least(0),
                 "Radius at the root of a U."),
          number("cap_height_mm", "cap height", &Groove::cap_height_mm, at_least(0),
                 "Height of the cap above the plate."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Intermittent>() {
  static const FieldTable table(
      struct_info<Intermittent>("intermittent", "an intermittent weld"),
      {
          number("length_mm", "run", &Intermittent::length_mm, above(0), "Length of each run of weld.")
              .require(),
          number("gap_mm", "gap between runs", &Intermittent::gap_mm, at_least(0),
                 "Way from one run to the next."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Tacks>() {
  static const FieldTable table(
      struct_info<Tacks>("tacks", "a seam's tacks"),
      {
          integer("count", "count", &Tacks::count, at_least(0), "How many tacks hold the joint."),
          number("length_mm", "length", &Tacks::length_mm, at_least(0), "Length of a tack."),
          number("leg_mm", "leg", &Tacks::leg_mm, at_least(0), "Leg of a tack."),
          reference("schedule", "schedule", &Tacks::schedule, IdList::schedules,
                    "Schedule by which they are laid."),
          text("tested", "tested by", &Tacks::tested,
               "Trial or qualification that shows that tacks of this length hold."),
      });
  return table;
}

template <>
const FieldTable& fields_of<SeamDrawing>() {
  using S = SeamDrawing;
  static const FieldTable table(
      struct_info<S>("seam_drawing", "a seam's place in the drawing"),
      {
          texts("parts", "parts", &S::parts, "The two parts in the drawing, the through part first.")
              .count(2, 2),
          text("side", "side", &S::side, "Which of the sides between the two."),
      });
  return table;
}

template <>
const FieldTable& fields_of<DrawingFile>() {
  using S = DrawingFile;
  static const FieldTable table(
      struct_info<S>("drawing_file", "a drawing's file"),
      {
          text("path", "file", &S::path, "The file as it was named when it was read.").require(),
          text("sha256", "SHA-256", &S::sha256, "Digest of the file that was read."),
          text("unit", "unit", &S::unit, "Unit of lengths in the file."),
          choice("up", "up", &S::up, {"+X", "-X", "+Y", "-Y", "+Z", "-Z"},
                 "The direction that is up where the seams are welded."),
          number("gap_mm", "gap", &S::gap_mm, at_least(0), "Parts nearer than this counted as touching."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Seam>() {
  using S = Seam;
  static const FieldTable table(
      struct_info<Seam>("seam", "a seam"),
      {
          id(&S::id, "Name of the seam within its weldment."),
          choice("joint", "joint", &S::joint, {"tee", "corner", "lap", "butt"},
                 "Kind of joint; a corner is an inside corner.")
              .require(),
          numbers("thickness_mm", "thicknesses", &S::thickness_mm, above(0),
                  "Thickness of each of the two plates.")
              .count(2, 2)
              .require(),
          references("base_metals", "base metals", &S::base_metals, IdList::base_metals,
                     "Metal of each of the two plates, the through plate first.")
              .count(2, 2)
              .require(),
          number("leg_mm", "leg", &S::leg_mm, above(0), "Leg of the fillet, as drawn."),
          number("throat_mm", "throat", &S::throat_mm, above(0), "Throat of the fillet, as drawn."),
          object("groove", "groove", &S::groove, "The groove that is filled."),
          number("dihedral_deg", "dihedral", &S::dihedral_deg,
                 {.lower = 0, .upper = 180, .lower_open = true, .upper_open = true},
                 "Angle between the plates."),
          number("gap_mm", "gap", &S::gap_mm, at_least(0), "Gap between the plates."),
          number("gap_max_mm", "largest gap", &S::gap_max_mm, at_least(0),
                 "Gap at which the seam is judged."),
          number("area_allowance", "area allowance", &S::area_allowance, above(0),
                 "Deposit over what the nominal section takes."),
          number("leg_max_mm", "largest leg", &S::leg_max_mm, above(0),
                 "Leg that the fillet obtained may have at most; fit and window keep to it."),
          number("throat_max_mm", "largest throat", &S::throat_max_mm, above(0),
                 "Throat that the fillet obtained may have at most; fit and window keep to it."),
          number("flange_width_mm", "flange width", &S::flange_width_mm, above(0),
                 "Width of the flange that the fillet pulls round."),
          text("position", "position", &S::position, "Welding position by ISO 6947."),
          choice("direction", "direction", &S::direction, {"either", "as-drawn"},
                 "Whether the seam may be welded from its end to its beginning."),
          references("schedules", "schedules", &S::schedules, IdList::schedules,
                     "The schedule of each pass, in order.")
              .require(),
          path("path_mm", "path", &S::path_mm, "Points of the seam's line: [x, y, z].").count(2).require(),
          object("intermittent", "intermittent", &S::intermittent,
                 "Runs of weld with gaps between (ISO 2553)."),
          number("overlap_mm", "overlap", &S::overlap_mm, at_least(0),
                 "How far a closed seam runs over its beginning."),
          object("tacks", "tacks", &S::tacks, "The tacks that hold the joint."),
          integer("sense_points", "sense points", &S::sense_points, at_least(0),
                  "Touches that find the seam."),
          choice("tracking", "tracking", &S::tracking, {"none", "through-arc", "optical"},
                 "How the robot follows the seam."),
          choice("by", "welded by", &S::by, {"robot", "manual"}, "Who welds it."),
          references("robots", "robots", &S::robots, IdList::robots,
                     "Robots that reach it; none named: all."),
          reference("orientation", "orientation", &S::orientation, IdList::orientations,
                    "Orientation of the positioner in which it is welded."),
          references("after", "after", &S::after, IdList::seams, "Seams that must be welded before."),
          text("balance", "balance group", &S::balance, "Name of a group whose seams are welded by turns."),
          choice("quality", "quality", &S::quality, {"B", "C", "D"}, "Quality level by ISO 5817."),
          pairs("plate_mm", "plate sizes", &S::plate_mm, above(0),
                "Width and length of each of the two plates, for the heat that they store; left out: "
                "endless plates.")
              .count(2, 2),
          reference("with", "welded with", &S::with, IdList::seams,
                    "Seam that another robot begins together with this one."),
          texts("jobs", "job numbers", &S::jobs,
                "Number of the robot's job for each pass, in order, as the log's job column has it."),
          reference(
              "manual_schedule", "manual schedule", &S::manual_schedule, IdList::schedules,
              "Schedule of each pass where the seam is welded by hand; a robot's isn't weldable by hand."),
          object("drawing", "from the drawing", &S::drawing, "Where in the drawing it was found."),
      },
      {{{"leg_mm", "throat_mm", "groove"}, true}});
  return table;
}

template <>
const FieldTable& fields_of<OrderStep>() {
  static const FieldTable table(
      struct_info<OrderStep>("order_step", "a step of the order"),
      {
          reference("seam", "seam", &OrderStep::seam, IdList::seams, "The seam; its k-th step is its pass k.")
              .require(),
          reference("robot", "robot", &OrderStep::robot, IdList::robots, "The robot that welds it.")
              .require(),
          choice("direction", "direction", &OrderStep::direction, {"as-drawn", "reversed"},
                 "Whether the pass runs as the seam is drawn."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Hole>() {
  static const FieldTable table(struct_info<Hole>("hole", "a hole"),
                                {
                                    pairs("outline_mm", "outline", &Hole::outline_mm, any_number(),
                                          "Its corners along the plate's u and v.")
                                        .count(3)
                                        .require(),
                                });
  return table;
}

template <>
const FieldTable& fields_of<Plate>() {
  using S = Plate;
  static const FieldTable table(
      struct_info<Plate>("plate", "a plate"),
      {
          id(&S::id, "Name of the plate within its weldment."),
          reference("part", "part", &S::part, IdList::parts, "The part that it is."),
          point("origin_mm", "origin", &S::origin_mm, "Where u and v begin."),
          point("u", "u", &S::u, "Unit vector along the plate."),
          point("v", "v", &S::v, "Unit vector along the plate, at right angles to u."),
          pairs("outline_mm", "outline", &S::outline_mm, any_number(), "Its corners along u and v, in order.")
              .count(3)
              .require(),
          number("thickness_mm", "thickness", &S::thickness_mm, above(0),
                 "Thickness, from the outline's plane along u x v.")
              .require(),
          objects("holes", "holes", &S::holes, "Openings in it."),
      });
  return table;
}

template <>
const FieldTable& fields_of<TubeSection>() {
  using S = TubeSection;
  static const FieldTable table(
      struct_info<TubeSection>("tube_section", "a tube's section"),
      {
          choice("kind", "kind", &S::kind, {"round", "rect"}, "Round or rectangular.").require(),
          number("d_mm", "diameter", &S::d_mm, above(0), "Outer diameter of a round one."),
          number("b_mm", "width", &S::b_mm, above(0), "Outer width of a rectangular one."),
          number("h_mm", "height", &S::h_mm, above(0), "Outer height of a rectangular one."),
          number("t_mm", "wall", &S::t_mm, above(0), "Thickness of the wall."),
          number("r_mm", "corner radius", &S::r_mm, at_least(0), "Outer radius of the corners."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Tube>() {
  using S = Tube;
  static const FieldTable table(
      struct_info<Tube>("tube", "a tube"),
      {
          id(&S::id, "Name of the tube within its weldment."),
          reference("part", "part", &S::part, IdList::parts, "The part that it is."),
          path("axis_mm", "axis", &S::axis_mm, "Its two ends on its middle line.").count(2, 2).require(),
          object("section", "section", &S::section, "Its cross-section."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Weldment>() {
  using S = Weldment;
  static const FieldTable table(
      struct_info<Weldment>("weldment", "a weldment"),
      {
          id(&S::id, "Name of the weldment, as orders and logs have it."),
          text("drawing", "drawing", &S::drawing, "Number of its drawing."),
          object("drawing_file", "drawing's file", &S::drawing_file,
                 "The 3D model that its seams were taken from."),
          objects("parts", "parts", &S::parts, "The parts that it takes."),
          choice("tolerance_class", "tolerance class", &S::tolerance_class, tolerance_classes(),
                 "Class by ISO 13920: A to D, and E to H for straightness."),
          object("section", "cross-section", &S::section, "Its cross-section, for bow and shortening."),
          number("load_s", "load", &S::load_s, at_least(0), "Time to load it into the cell."),
          number("unload_s", "unload", &S::unload_s, at_least(0), "Time to unload it from the cell."),
          number("tack_s", "tack", &S::tack_s, at_least(0), "Time to set and tack it."),
          number("manual_s", "manual welding", &S::manual_s, at_least(0),
                 "Time for its manual seams; left out, it follows from the cell's hand welding."),
          number("measure_s", "measure", &S::measure_s, at_least(0), "Time to measure it."),
          number("inspect_s", "inspect", &S::inspect_s, at_least(0), "Time to inspect it."),
          objects("features", "features", &S::features, "What is measured on it."),
          objects("plates", "plates", &S::plates, "Its plates, for the picture and the heat they store."),
          objects("tubes", "tubes", &S::tubes, "Its hollow sections, for the picture."),
          objects("seams", "seams", &S::seams, "Its seams.").require(),
          objects(
              "order", "order", &S::order,
              "The order of the robots' passes, those of a seam apart where others cool meanwhile; absent: "
              "seams as they stand, each by the first robot of its list."),
      });
  return table;
}

}  // namespace seamtakt
