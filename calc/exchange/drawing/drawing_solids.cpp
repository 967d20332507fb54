#include "exchange/drawing/drawing_solids.hpp"

#include <cmath>

#include "exchange/picture/space.hpp"
#include "plan/fields/plate_relations.hpp"

namespace seamtakt {

namespace {

/// A rectangular tube's width lies level, or along x where it stands: `plan_solids` draws it so. Whether the
/// drawing's does, with width and height changed over where that helps; a tube turned otherwise isn't drawn.
bool turn_as_drawn(TubeSection& section, const Point_mm& b_along, const std::vector<Point_mm>& axis_mm) {
  const Point_mm along = space::unit(space::minus(axis_mm[1], axis_mm[0]));
  constexpr double upright_cosine = 0.999, same = 0.999;
  const Point_mm level =
      std::abs(along[2]) > upright_cosine ? Point_mm{1, 0, 0} : space::unit(space::cross({0, 0, 1}, along));
  const double cosine = std::abs(space::dot(level, space::unit(b_along)));
  if (cosine > same) return true;
  if (cosine > std::sqrt(1 - same * same)) return false;
  std::swap(section.b_mm, section.h_mm);
  return true;
}

/// The plan takes it: the drawing's outlines may have more corners than a plan's, or touch themselves.
bool is_sound(const Plate& plate) {
  Weldment alone;
  alone.plates.push_back(plate);
  FieldPath place("drawing");
  try {
    check_plate_relations(alone, place);
    return true;
  } catch (const InputError&) {
    return false;
  }
}

bool is_sound(const Tube& tube) {
  if (tube.axis_mm.size() != 2 || space::length(space::minus(tube.axis_mm[1], tube.axis_mm[0])) < 1e-3)
    return false;
  const TubeSection& section = *tube.section;
  return section.kind == "round" ? section.d_mm.has_value() : section.b_mm && section.h_mm;
}

}  // namespace

std::string last_name(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  const std::string name = slash == std::string::npos ? path : path.substr(slash + 1);
  return name.empty() ? "part" : name;
}

std::string free_id(const std::string& wish, std::set<std::string>& taken) {
  std::string id = wish;
  for (int count = 2; !taken.insert(id).second; ++count) id = wish + "-" + std::to_string(count);
  return id;
}

AddedSolids add_solids(const DrawingResult& drawing, Weldment& weldment) {
  AddedSolids added;
  if (!weldment.plates.empty() || !weldment.tubes.empty()) return added;
  std::set<std::string> taken;
  for (const DrawingPart& part : drawing.parts) {
    if (part.is_hardware) continue;
    if (part.plate && is_sound(*part.plate)) {
      Plate plate = *part.plate;
      plate.id = free_id(last_name(part.path), taken);
      weldment.plates.push_back(std::move(plate));
      ++added.plates;
    } else if (part.tube && is_sound(*part.tube)) {
      Tube tube = *part.tube;
      if (part.b_along && !turn_as_drawn(*tube.section, *part.b_along, tube.axis_mm)) continue;
      tube.id = free_id(last_name(part.path), taken);
      weldment.tubes.push_back(std::move(tube));
      ++added.tubes;
    }
  }
  return added;
}

Weldment drawn_weldment(const DrawingResult& drawing) {
  Weldment weldment;
  weldment.id = "drawing";
  add_solids(drawing, weldment);
  for (const DrawingJoint& joint : drawing.joints)
    for (const DrawingSide& side : joint.sides) {
      weldment.seams.emplace_back();
      weldment.seams.back().id = joint.id + "/" + side.id;
      weldment.seams.back().path_mm = side.path_mm;
    }
  return weldment;
}

}  // namespace seamtakt
