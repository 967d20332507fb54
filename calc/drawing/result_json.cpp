#include "drawing/result_json.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/json/json_writer.hpp"

namespace seamtakt::drawing {

namespace {

/// To a millionth of a millimetre, and no -0: what is finer differs between machines and means nothing.
double rounded(double value) {
  const double result = std::round(value * 1e6) / 1e6;
  return result == 0 ? 0 : result;
}

std::vector<double> numbers(const gp_XYZ& point) {
  return {rounded(point.X()), rounded(point.Y()), rounded(point.Z())};
}

void write_maybe(JsonWriter& json, std::string_view name, const std::optional<double>& value) {
  json.member(name, value ? std::optional<double>(rounded(*value)) : value);
}

void write_outline(JsonWriter& json, const std::vector<Point2_mm>& outline) {
  json.begin_array(JsonWriter::Layout::compact);
  for (const Point2_mm& point : outline)
    json.value(std::vector<double>{rounded(point[0]), rounded(point[1])});
  json.end_array();
}

void write_plate(JsonWriter& json, const PlateShape& plate) {
  json.key("plate").begin_object();
  json.member("origin_mm", numbers(plate.origin.XYZ()));
  json.member("u", numbers(plate.u.XYZ()));
  json.member("v", numbers(plate.v.XYZ()));
  json.member("thickness_mm", rounded(plate.thickness_mm));
  json.key("outline_mm");
  write_outline(json, plate.outline_mm);
  json.key("holes_mm").begin_array();
  for (const auto& hole : plate.holes_mm) write_outline(json, hole);
  json.end_array();
  json.end_object();
}

void write_tube(JsonWriter& json, const TubeShape& tube) {
  json.key("tube").begin_object();
  json.key("axis_mm").begin_array(JsonWriter::Layout::compact);
  json.value(numbers(tube.begin.XYZ())).value(numbers(tube.end.XYZ()));
  json.end_array();
  json.member("kind", tube.d_mm ? "round" : "rect");
  write_maybe(json, "d_mm", tube.d_mm);
  write_maybe(json, "b_mm", tube.b_mm);
  write_maybe(json, "h_mm", tube.h_mm);
  write_maybe(json, "r_mm", tube.r_mm);
  json.member("t_mm", rounded(tube.t_mm));
  if (tube.b_mm) json.member("b_along", numbers(tube.b_along.XYZ()));
  json.end_object();
}

void write_part(JsonWriter& json, const Part& part) {
  json.begin_object();
  json.member("name", part.name);
  json.member("path", part.path);
  json.member("form", part.plate ? "plate" : part.tube ? "tube" : "other");
  write_maybe(json, "thickness_mm", part.thickness_mm);
  json.member("is_hardware", part.is_hardware);
  if (part.plate) write_plate(json, *part.plate);
  if (part.tube) write_tube(json, *part.tube);
  json.end_object();
}

void write_side(JsonWriter& json, const SeamSide& side, const std::string& id) {
  json.begin_object();
  json.member("id", id);
  json.key("path_mm").begin_array(JsonWriter::Layout::compact);
  for (const gp_Pnt& point : side.path) json.value(numbers(point.XYZ()));
  json.end_array();
  json.member("closed", side.is_closed);
  json.member("length_mm", rounded(side.length_mm));
  json.key("dihedral_deg");
  if (side.dihedral_deg)
    json.value(std::vector<double>{rounded((*side.dihedral_deg)[0]), rounded((*side.dihedral_deg)[1]),
                                   rounded((*side.dihedral_deg)[2])});
  else
    json.null();
  json.key("thickness_mm").begin_array(JsonWriter::Layout::compact);
  for (const auto& thickness : side.thickness_mm)
    json.value(thickness ? std::optional<double>(rounded(*thickness)) : thickness);
  json.end_array();
  json.member("gap_mm", std::vector<double>{rounded(side.gap_least_mm), rounded(side.gap_largest_mm)});
  json.member("outward", numbers(side.outward.XYZ()));
  json.member("position", side.position);
  json.key("flags").begin_array(JsonWriter::Layout::compact);
  for (const std::string& flag : flag_names(side.flags)) json.value(flag);
  json.end_array();
  json.end_object();
}

void write_joints(JsonWriter& json, const std::vector<Joint>& joints) {
  json.key("joints").begin_array();
  // Sides count between the same two parts, so that a part more elsewhere leaves their ids as they are.
  std::map<std::pair<int, int>, int> sides;
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const std::string id = "J" + std::to_string(i + 1);
    json.begin_object();
    json.member("id", id);
    json.member("part_a", joints[i].part_a);
    json.member("part_b", joints[i].part_b);
    json.member("type", type_name(joints[i].type));
    json.key("sides").begin_array();
    for (std::size_t k = 0; k < joints[i].sides.size(); ++k)
      write_side(json, joints[i].sides[k],
                 std::to_string(++sides[std::minmax(joints[i].part_a, joints[i].part_b)]));
    json.end_array();
    json.end_object();
  }
  json.end_array();
}

void write_notes(JsonWriter& json, const std::vector<Note>& notes) {
  json.key("notes").begin_array();
  for (const Note& note : notes) {
    json.begin_object();
    json.member("kind", note.kind);
    json.member("text", note.text);
    json.key("parts").begin_array(JsonWriter::Layout::compact);
    for (const int part : note.parts) json.value(part);
    json.end_array();
    json.end_object();
  }
  json.end_array();
}

}  // namespace

const char* type_name(JointType type) {
  switch (type) {
    case JointType::tee:
      return "tee";
    case JointType::corner:
      return "corner";
    case JointType::lap:
      return "lap";
    case JointType::butt:
      return "butt";
  }
  return "tee";
}

std::vector<std::string> flag_names(const SideFlags& flags) {
  std::vector<std::string> names;
  if (flags.inner) names.push_back("inner");
  if (flags.flare) names.push_back("flare");
  if (flags.end) names.push_back("end");
  if (flags.overlap) names.push_back("overlap");
  if (flags.flush) names.push_back("flush");
  return names;
}

std::string result_json(const Drawing& drawing) {
  JsonWriter json;
  json.begin_object();
  json.member("format", "seamtakt-drawing");
  json.member("version", 1);
  json.key("source").begin_object();
  json.member("path", drawing.path);
  json.member("sha256", drawing.assembly.sha256);
  json.member("schema", drawing.assembly.schema);
  json.member("unit", drawing.assembly.unit);
  json.end_object();
  json.member("gap_mm", drawing.options.gap_mm);
  json.key("up");
  if (drawing.options.up)
    json.value(numbers(drawing.options.up->XYZ()));
  else
    json.null();
  json.key("parts").begin_array();
  for (const Part& part : drawing.assembly.parts) write_part(json, part);
  json.end_array();
  write_joints(json, drawing.found.joints);
  write_notes(json, drawing.found.notes);
  json.end_object();
  return json.take();
}

}  // namespace seamtakt::drawing
