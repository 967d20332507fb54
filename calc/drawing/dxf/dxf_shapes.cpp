#include "drawing/dxf/dxf_shapes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drawing/refusal.hpp"

namespace seamtakt::drawing {

namespace {

constexpr double chord_deviation_mm = 0.05;
constexpr int deepest = 16;
constexpr std::size_t most_shapes = 200'000, most_points = 2'000'000;
/// 10 km, as where a result is read.
constexpr double farthest_mm = 1e7;

class Layout {
 public:
  Layout(const std::map<std::string, FlatBlock>& blocks, FlatDrawing& drawing)
      : blocks_(blocks), drawing_(drawing) {}

  void add(const FlatBlock& block, const FlatPlacing& place, const std::string& layer, const std::string& id,
           int depth) {
    if (depth > deepest)
      throw Refusal(drawing_.path, "blocks that hold themselves, or more than 16 in one another",
                    "blocks in at most 16 levels");
    for (const FlatShape& shape : block.shapes) add(shape, place, layer, id);
    for (const FlatInsert& insert : block.inserts) {
      const auto found = blocks_.find(insert.block);
      if (found == blocks_.end())
        throw Refusal(drawing_.path, "an INSERT of \"" + insert.block + "\"", "a block of the file");
      for (int row = 0; row < insert.rows; ++row)
        for (int column = 0; column < insert.columns; ++column) {
          // An array of empty blocks, in one another, would take for ever without making anything.
          if (++inserts_ > most_shapes) refuse_count();
          FlatPlacing at = insert.place;
          for (std::size_t axis = 0; axis < 2; ++axis)
            at.t[axis] += column * insert.column_step[axis] + row * insert.row_step[axis];
          const FlatPlacing from_base{{1, 0, 0, 1}, {-found->second.base[0], -found->second.base[1]}};
          std::string name = id + insert.id;
          if (insert.rows > 1 || insert.columns > 1)
            name += "." + std::to_string(row + 1) + "." + std::to_string(column + 1);
          add(found->second, place.after(at).after(from_base), layer_of(insert.layer, layer), name + "/",
              depth + 1);
        }
    }
  }

 private:
  [[noreturn]] void refuse_count() const {
    throw Refusal(drawing_.path, "more than 200000 lines, blocks put in included", "a drawing with fewer");
  }
  /// What a block has on layer 0 lies on the layer of its INSERT.
  static const std::string& layer_of(const std::string& own, const std::string& outer) {
    return own == "0" && !outer.empty() ? outer : own;
  }

  void add(const FlatShape& shape, const FlatPlacing& place, const std::string& layer,
           const std::string& id) {
    if (++shapes_ > most_shapes) refuse_count();
    FlatPath path;
    path.id = id + shape.id;
    path.is_closed = shape.is_closed;
    const std::size_t sides = shape.corners.size() - (shape.is_closed ? 0 : 1);
    for (std::size_t i = 0; i < sides; ++i)
      add_side(shape.corners[i], shape.corners[(i + 1) % shape.corners.size()].at, place, path);
    if (!shape.is_closed) push(place(shape.corners.back().at), path);
    // A path needs a length.
    if (path.points_mm.size() < 2) return;
    drawing_.layers[layer_of(shape.layer, layer)].push_back(std::move(path));
  }

  void push(const FlatPoint& point, FlatPath& path) {
    if (++points_ > most_points)
      throw Refusal(drawing_.path, "more than 2000000 points", "a drawing with fewer");
    if (!(std::abs(point[0]) <= farthest_mm && std::abs(point[1]) <= farthest_mm))
      throw Refusal(drawing_.path, "a point farther than 10 km away", "a drawing of a weldment");
    if (!path.points_mm.empty() &&
        std::hypot(point[0] - path.points_mm.back()[0], point[1] - path.points_mm.back()[1]) < 1e-6)
      return;
    path.points_mm.push_back(point);
  }

  /// The corner, and what lies between it and the next.
  void add_side(const FlatCorner& from, const FlatPoint& to, const FlatPlacing& place, FlatPath& path) {
    push(place(from.at), path);
    const double dx = to[0] - from.at[0], dy = to[1] - from.at[1];
    const double chord = std::hypot(dx, dy);
    if (std::abs(from.bulge) < 1e-9 || chord == 0) return;
    const double angle = 4 * std::atan(from.bulge);
    // Radius from chord and angle; the centre lies square to the chord's middle.
    const double radius = chord / (2 * std::abs(std::sin(angle / 2)));
    const double to_centre = chord / 2 / std::tan(angle / 2);
    const FlatPoint centre = {(from.at[0] + to[0]) / 2 - dy / chord * to_centre,
                              (from.at[1] + to[1]) / 2 + dx / chord * to_centre};
    const double radius_mm = radius * place.largest_scale();
    const double half =
        std::acos(std::max(0.0, 1 - chord_deviation_mm / std::max(radius_mm, chord_deviation_mm)));
    const double pieces = std::max(std::ceil(std::abs(angle) / (2 * half)), std::ceil(std::abs(angle) / 1.0));
    if (!(pieces < static_cast<double>(most_points)))
      throw Refusal(drawing_.path, "an arc of " + std::to_string(radius_mm) + " mm radius", "a smaller one");
    const double begin = std::atan2(from.at[1] - centre[1], from.at[0] - centre[0]);
    for (int i = 1; i < static_cast<int>(pieces); ++i) {
      const double at = begin + angle * i / pieces;
      push(place({centre[0] + radius * std::cos(at), centre[1] + radius * std::sin(at)}), path);
    }
  }

  const std::map<std::string, FlatBlock>& blocks_;
  FlatDrawing& drawing_;
  std::size_t shapes_ = 0, points_ = 0, inserts_ = 0;
};

}  // namespace

FlatPlacing FlatPlacing::after(const FlatPlacing& first) const {
  FlatPlacing both;
  both.m = {m[0] * first.m[0] + m[1] * first.m[2], m[0] * first.m[1] + m[1] * first.m[3],
            m[2] * first.m[0] + m[3] * first.m[2], m[2] * first.m[1] + m[3] * first.m[3]};
  both.t = (*this)(first.t);
  return both;
}

double FlatPlacing::largest_scale() const {
  // The larger singular value: half the sum of the two lengths of the sum and difference vectors.
  return (std::hypot(m[0] + m[3], m[2] - m[1]) + std::hypot(m[0] - m[3], m[2] + m[1])) / 2;
}

void lay_out(const FlatBlock& model, const std::map<std::string, FlatBlock>& blocks, double mm_per_unit,
             FlatDrawing& drawing) {
  Layout(blocks, drawing).add(model, {{mm_per_unit, 0, 0, mm_per_unit}, {}}, "", "", 0);
}

}  // namespace seamtakt::drawing
