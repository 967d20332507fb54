#include "exchange/drawing/flat_drawing.hpp"

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
#include "exchange/drawing/drawing_solids.hpp"
#include "exchange/picture/space.hpp"
#include "plan/fields/field_path.hpp"

namespace seamtakt {

namespace {

constexpr double meets_mm = 0.05;
/// Ends are compared with each other.
constexpr std::size_t most_chained = 5000;

bool meet(const NumberPair& a, const NumberPair& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1]) <= meets_mm;
}

double area_of(const std::vector<NumberPair>& outline) {
  double twice = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const NumberPair &a = outline[i], &b = outline[(i + 1) % outline.size()];
    twice += a[0] * b[1] - b[0] * a[1];
  }
  return std::abs(twice) / 2;
}

bool is_inside(const NumberPair& point, const std::vector<NumberPair>& outline) {
  bool inside = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const NumberPair &a = outline[i], &b = outline[(i + 1) % outline.size()];
    const bool crosses = (a[1] > point[1]) != (b[1] > point[1]);
    if (crosses && point[0] < a[0] + (point[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])) inside = !inside;
  }
  return inside;
}

/// Puts `more` behind `line` where they meet, turned round where that helps.
bool append(FlatLine& line, FlatLine& more) {
  std::vector<NumberPair>&to = line.points_mm, &from = more.points_mm;
  if (meet(to.front(), from.front()) || meet(to.front(), from.back())) std::reverse(to.begin(), to.end());
  if (meet(to.back(), from.back()) && !meet(to.back(), from.front())) std::reverse(from.begin(), from.end());
  if (!meet(to.back(), from.front())) return false;
  to.insert(to.end(), from.begin() + 1, from.end());
  return true;
}

const FlatLayer& layer_of(const DrawingResult& drawing, const std::string& name, const char* option) {
  std::vector<std::string_view> names;
  for (const FlatLayer& layer : drawing.layers) {
    if (layer.name == name) return layer;
    names.push_back(layer.name);
  }
  throw InputError(option, '"' + printable(name) + '"',
                   with_nearest(Sentence("the name of a layer of the drawing"_word), name, names));
}

std::string names_of(const DrawingResult& drawing) {
  std::string names;
  constexpr std::size_t most = 20;
  for (std::size_t i = 0; i < drawing.layers.size() && i < most; ++i)
    names += (i == 0 ? "" : ", ") + printable(drawing.layers[i].name);
  return drawing.layers.size() > most ? names + ", ..." : names;
}

class MeaningGiver {
 public:
  MeaningGiver(const FlatMeaning& meaning, const DrawingImportOptions& options, DrawingResult& drawing)
      : meaning_(meaning), options_(options), drawing_(drawing) {}

  void give() {
    if (meaning_.seam_layers.empty() && meaning_.plate_layers.empty())
      throw InputError("--layer-seams", "no layer"_word,
                       Sentence("drawing.layers"_key, {{"layers", names_of(drawing_)}}));
    if (!meaning_.z_mm)
      throw InputError("--z", "no height"_word, "the height at which the drawing lies"_word);
    if (!meaning_.seam_layers.empty() && meaning_.joint.empty())
      throw InputError("--joint", "no joint"_word, "tee, corner, lap or butt"_word);
    for (const std::string& name : meaning_.plate_layers)
      add_plates(layer_of(drawing_, name, "--layer-plates"));
    for (const std::string& name : meaning_.seam_layers) add_seams(layer_of(drawing_, name, "--layer-seams"));
  }

 private:
  std::optional<double> thickness_of(const std::string& layer) const {
    std::optional<double> of_all;
    for (const auto& [name, thickness] : options_.thickness_mm) {
      if (name == layer) return thickness;
      if (name.empty()) of_all = thickness;
    }
    return of_all;
  }

  void add_seams(const FlatLayer& layer) {
    DrawingPart part;
    part.name = part.path = layer.name;
    drawing_.parts.push_back(part);
    for (const FlatLine& line : layer.lines) {
      DrawingSide side;
      side.id = line.id;
      side.is_closed = line.is_closed;
      for (const NumberPair& point : line.points_mm)
        side.path_mm.push_back({point[0], point[1], *meaning_.z_mm});
      if (line.is_closed) side.path_mm.push_back(side.path_mm.front());
      for (std::size_t i = 1; i < side.path_mm.size(); ++i)
        side.length_mm += space::length(space::minus(side.path_mm[i], side.path_mm[i - 1]));
      const double angle = meaning_.joint == "butt" ? 180 : 90;
      side.dihedral_deg = {angle, angle, angle};
      DrawingJoint joint;
      joint.id = "J" + std::to_string(drawing_.joints.size() + 1);
      joint.type = meaning_.joint;
      joint.part_a = joint.part_b = drawing_.parts.size() - 1;
      joint.sides.push_back(std::move(side));
      drawing_.joints.push_back(std::move(joint));
    }
  }

  /// The outlines by their size: each lies in the smallest larger one around it, a hole in a plate or a plate
  /// in a hole.
  void add_plates(const FlatLayer& layer) {
    std::vector<FlatLine> outlines = chained(layer.lines);
    std::erase_if(outlines, [](const FlatLine& line) { return !line.is_closed; });
    if (outlines.size() < layer.lines.size() && outlines.empty())
      drawing_.notes.push_back({"open", "The layer " + printable(layer.name) + " has no closed outline."});
    const auto thickness = thickness_of(layer.name);
    if (!thickness)
      throw InputError("--thickness", "no thickness of the plates"_word, "8mm, or LAYER=8mm"_word);
    std::sort(outlines.begin(), outlines.end(), [](const FlatLine& a, const FlatLine& b) {
      return area_of(a.points_mm) > area_of(b.points_mm);
    });
    std::vector<std::optional<std::size_t>> plate_of(outlines.size());
    for (std::size_t i = 0; i < outlines.size(); ++i) {
      std::optional<std::size_t> around;
      for (std::size_t k = i; k-- > 0 && !around;)
        if (is_inside(outlines[i].points_mm.front(), outlines[k].points_mm)) around = k;
      if (around && plate_of[*around]) {
        drawing_.parts[*plate_of[*around]].plate->holes.push_back({outlines[i].points_mm, {}});
        continue;
      }
      plate_of[i] = drawing_.parts.size();
      drawing_.parts.push_back(plate(layer.name, outlines[i], *thickness));
    }
  }

  DrawingPart plate(const std::string& layer, const FlatLine& outline, double thickness) const {
    DrawingPart part;
    part.name = layer;
    part.path = layer + "/" + outline.id;
    part.thickness_mm = thickness;
    Plate plate;
    plate.origin_mm = {0, 0, *meaning_.z_mm};
    plate.outline_mm = outline.points_mm;
    plate.thickness_mm = thickness;
    part.plate = std::move(plate);
    return part;
  }

  const FlatMeaning& meaning_;
  const DrawingImportOptions& options_;
  DrawingResult& drawing_;
};

}  // namespace

std::vector<FlatLine> chained(std::vector<FlatLine> lines) {
  std::vector<FlatLine> done, open;
  for (FlatLine& line : lines) (line.is_closed ? done : open).push_back(std::move(line));
  if (open.size() > most_chained)
    throw InputError("--layer-plates", std::to_string(open.size()) + " open lines",
                     "a layer of outlines with at most " + std::to_string(most_chained));
  while (!open.empty()) {
    FlatLine line = std::move(open.back());
    open.pop_back();
    const auto is_closed = [&] {
      return line.points_mm.size() > 3 && meet(line.points_mm.front(), line.points_mm.back());
    };
    for (bool grows = true; grows && !is_closed();) {
      grows = false;
      for (std::size_t i = 0; i < open.size() && !grows; ++i)
        if (append(line, open[i])) {
          line.id = std::min(line.id, open[i].id);
          open.erase(open.begin() + static_cast<std::ptrdiff_t>(i));
          grows = true;
        }
    }
    if (is_closed()) {
      line.points_mm.pop_back();
      line.is_closed = true;
    }
    done.push_back(std::move(line));
  }
  return done;
}

void give_meaning(const FlatMeaning& meaning, const DrawingImportOptions& options, DrawingResult& drawing) {
  MeaningGiver(meaning, options, drawing).give();
}

}  // namespace seamtakt
