#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/units/units.hpp"
#include "exchange/drawing/drawing_result.hpp"
#include "exchange/picture/space.hpp"

namespace seamtakt {

namespace {

/// 10 km: no weldment is larger, and a file in the wrong unit isn't taken for one.
constexpr double farthest_mm = 1e7;
constexpr double longest_mm = 1e8;
constexpr std::size_t most_drawn_parts = 20'000, most_joints = 200'000, most_sides = 10'000,
                      most_points = 100'000, most_notes = 100'000, most_holes = 1'000;
constexpr std::size_t most_name_bytes = 4096;
constexpr JsonLimits limits = {.bytes = std::size_t{256} << 20,
                               .depth = 16,
                               .string_bytes = 64u << 10,
                               .members = 1'000'000,
                               .values = 8'000'000};

/// Reads the members of the program's document. Unknown ones are of a later version and are left alone.
class DrawingReader {
 public:
  explicit DrawingReader(const std::string& name) : name_(name) {}

  DrawingResult read(const JsonNode& root) const {
    DrawingResult result;
    expect(root, JsonNode::Kind::object, "an object");
    if (text(member(root, "format")) != "seamtakt-drawing")
      refuse(member(root, "format"), "another form", "\"seamtakt-drawing\"");
    if (number(member(root, "version"), 0, 1e6) != 1) refuse(member(root, "version"), "another version", "1");
    const JsonNode& source = object(member(root, "source"));
    result.path = text(member(source, "path"));
    result.sha256 = text(member(source, "sha256"));
    result.schema = text(member(source, "schema"));
    result.unit = text(member(source, "unit"));
    result.gap_mm = number(member(root, "gap_mm"), 0, 1000);
    for (const JsonNode& each : list(member(root, "parts"), most_drawn_parts))
      result.parts.push_back(part(each));
    for (const JsonNode& each : list(member(root, "joints"), most_joints))
      result.joints.push_back(joint(each, result.parts.size()));
    for (const JsonNode& each : list(member(root, "notes"), most_notes))
      result.notes.push_back({text(member(each, "kind")), text(member(each, "text"))});
    if (const JsonNode* layers = root.find("layers"))
      for (const JsonNode& each : list(*layers, most_drawn_parts)) result.layers.push_back(layer(each));
    return result;
  }

 private:
  [[noreturn]] void refuse(const JsonNode& at, Phrase found, Phrase expected) const {
    throw InputError(name_ + ":" + std::to_string(at.line) + ":" + std::to_string(at.column),
                     std::move(found), std::move(expected));
  }
  void expect(const JsonNode& node, JsonNode::Kind kind, const char* expected) const {
    if (node.kind != kind) refuse(node, node.kind_name(), expected);
  }
  const JsonNode& member(const JsonNode& node, const char* key) const {
    expect(node, JsonNode::Kind::object, "an object");
    const JsonNode* found = node.find(key);
    if (!found) refuse(node, "an object without \"" + std::string(key) + '"', '"' + std::string(key) + '"');
    return *found;
  }
  const JsonNode& object(const JsonNode& node) const {
    expect(node, JsonNode::Kind::object, "an object");
    return node;
  }
  const std::vector<JsonNode>& list(const JsonNode& node, std::size_t most, std::size_t fewest = 0) const {
    expect(node, JsonNode::Kind::array, "an array");
    if (node.elements.size() > most || node.elements.size() < fewest)
      refuse(node, std::to_string(node.elements.size()) + " elements",
             "from " + std::to_string(fewest) + " to " + std::to_string(most));
    return node.elements;
  }
  std::string text(const JsonNode& node) const {
    expect(node, JsonNode::Kind::string, "a string");
    if (node.string.size() > most_name_bytes)
      refuse(node, std::to_string(node.string.size()) + " bytes",
             "at most " + std::to_string(most_name_bytes));
    return node.string;
  }
  double number(const JsonNode& node, double least, double most) const {
    expect(node, JsonNode::Kind::number, "a number");
    if (!(node.number >= least && node.number <= most))
      refuse(node, number_text(node.number), "from " + number_text(least) + " to " + number_text(most));
    return node.number;
  }
  std::optional<double> maybe_number(const JsonNode& node, double least, double most) const {
    if (node.kind == JsonNode::Kind::null) return {};
    return number(node, least, most);
  }
  bool truth(const JsonNode& node) const {
    expect(node, JsonNode::Kind::boolean, "true or false");
    return node.boolean;
  }
  Point_mm point(const JsonNode& node, double most = farthest_mm) const {
    const auto& values = list(node, 3, 3);
    return {number(values[0], -most, most), number(values[1], -most, most), number(values[2], -most, most)};
  }
  std::vector<NumberPair> outline(const JsonNode& node) const {
    std::vector<NumberPair> corners;
    for (const JsonNode& each : list(node, most_points)) {
      const auto& values = list(each, 2, 2);
      corners.push_back(
          {number(values[0], -farthest_mm, farthest_mm), number(values[1], -farthest_mm, farthest_mm)});
    }
    return corners;
  }

  FlatLayer layer(const JsonNode& node) const {
    FlatLayer layer;
    layer.name = text(member(node, "name"));
    for (const JsonNode& each : list(member(node, "paths"), most_joints)) {
      FlatLine line;
      line.id = text(member(each, "id"));
      line.is_closed = truth(member(each, "closed"));
      line.points_mm = outline(member(each, "points_mm"));
      if (line.points_mm.size() < 2) refuse(member(each, "points_mm"), "a point alone", "at least 2 points");
      layer.lines.push_back(std::move(line));
    }
    return layer;
  }

  Plate plate(const JsonNode& node) const {
    Plate plate;
    plate.origin_mm = point(member(node, "origin_mm"));
    // At right angles and of length 1 to the last digit, as the plan wants them.
    plate.u = space::unit(point(member(node, "u"), 1.001));
    const Point_mm v = point(member(node, "v"), 1.001);
    plate.v = space::unit(space::minus(v, space::times(space::dot(v, plate.u), plate.u)));
    plate.thickness_mm = number(member(node, "thickness_mm"), 1e-3, farthest_mm);
    plate.outline_mm = outline(member(node, "outline_mm"));
    for (const JsonNode& each : list(member(node, "holes_mm"), most_holes))
      plate.holes.push_back({outline(each), {}});
    return plate;
  }

  Tube tube(const JsonNode& node) const {
    Tube tube;
    for (const JsonNode& each : list(member(node, "axis_mm"), 2, 2)) tube.axis_mm.push_back(point(each));
    TubeSection section;
    section.kind = text(member(node, "kind"));
    if (section.kind != "round" && section.kind != "rect")
      refuse(member(node, "kind"), '"' + section.kind + '"', "\"round\" or \"rect\"");
    section.d_mm = maybe_number(member(node, "d_mm"), 1e-3, farthest_mm);
    section.b_mm = maybe_number(member(node, "b_mm"), 1e-3, farthest_mm);
    section.h_mm = maybe_number(member(node, "h_mm"), 1e-3, farthest_mm);
    section.r_mm = maybe_number(member(node, "r_mm"), 0, farthest_mm);
    section.t_mm = maybe_number(member(node, "t_mm"), 1e-3, farthest_mm);
    tube.section = std::move(section);
    return tube;
  }

  DrawingPart part(const JsonNode& node) const {
    DrawingPart part;
    part.name = text(member(node, "name"));
    part.path = text(member(node, "path"));
    part.thickness_mm = maybe_number(member(node, "thickness_mm"), 1e-3, farthest_mm);
    part.is_hardware = truth(member(node, "is_hardware"));
    if (const JsonNode* found = node.find("plate")) part.plate = plate(*found);
    if (const JsonNode* found = node.find("tube")) {
      part.tube = tube(*found);
      if (const JsonNode* along = found->find("b_along")) part.b_along = point(*along, 1.001);
    }
    return part;
  }

  DrawingSide side(const JsonNode& node) const {
    DrawingSide side;
    side.id = text(member(node, "id"));
    for (const JsonNode& each : list(member(node, "path_mm"), most_points, 2))
      side.path_mm.push_back(point(each));
    side.is_closed = truth(member(node, "closed"));
    side.length_mm = number(member(node, "length_mm"), 1e-3, longest_mm);
    const JsonNode& dihedral = member(node, "dihedral_deg");
    if (dihedral.kind != JsonNode::Kind::null) {
      const auto& values = list(dihedral, 3, 3);
      side.dihedral_deg = {number(values[0], 0, 360), number(values[1], 0, 360), number(values[2], 0, 360)};
    }
    const auto& thicknesses = list(member(node, "thickness_mm"), 2, 2);
    for (std::size_t i = 0; i < 2; ++i)
      side.thickness_mm[i] = maybe_number(thicknesses[i], 1e-3, farthest_mm);
    side.gap_mm = number(list(member(node, "gap_mm"), 2, 2)[1], 0, 1000);
    const JsonNode& position = member(node, "position");
    if (position.kind != JsonNode::Kind::null) side.position = text(position);
    for (const JsonNode& each : list(member(node, "flags"), 16)) side.flags.push_back(text(each));
    return side;
  }

  DrawingJoint joint(const JsonNode& node, std::size_t parts) const {
    DrawingJoint joint;
    joint.id = text(member(node, "id"));
    joint.type = text(member(node, "type"));
    const auto types = {"tee", "corner", "lap", "butt"};
    if (std::find(types.begin(), types.end(), joint.type) == types.end())
      refuse(member(node, "type"), '"' + joint.type + '"', "tee, corner, lap or butt");
    const auto part_at = [&](const char* key) {
      const JsonNode& index = member(node, key);
      if (parts == 0 || number(index, 0, static_cast<double>(parts) - 1) != std::floor(index.number))
        refuse(index, number_text(index.number), "the number of a part");
      return static_cast<std::size_t>(index.number);
    };
    joint.part_a = part_at("part_a");
    joint.part_b = part_at("part_b");
    for (const JsonNode& each : list(member(node, "sides"), most_sides)) joint.sides.push_back(side(each));
    return joint;
  }

  const std::string& name_;
};

}  // namespace

DrawingResult read_drawing_result(std::string_view json, const std::string& name) {
  return DrawingReader(name).read(parse_json(json, name, limits));
}

}  // namespace seamtakt
