#include "exchange/sketch/joint_drawing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "exchange/sheets/cell_text.hpp"

namespace seamtakt {

namespace {

constexpr double width = 228, height = 168, caption_height = 14;
/// Room for dimensions beside and above the joint.
constexpr double side_room = 52, upper_room = 30;
constexpr double text_size = 8, tick = 2.5, dimension_room = 13, text_room = 7, leader = 16;

class JointDrawing {
 public:
  JointDrawing(const SketchedJoint& shape, const std::set<int>& filled, const TextView& view)
      : shape_(shape), filled_(filled), view_(view) {
    drawing_.width = width;
    drawing_.height = height;
    fit();
  }

  Drawing draw(const SheetCell& caption) {
    for (const SketchOutline& plate : shape_.plates)
      add_path(plate, true, DrawingFill::light, DrawingStroke::thick);
    add_path(shape_.weld, true, DrawingFill::weld, DrawingStroke::thick);
    for (const SketchOutline& line : shape_.lines)
      add_path(line, false, DrawingFill::none, DrawingStroke::thin);
    for (const SketchDimension& dimension : shape_.dimensions) add_dimension(dimension);
    for (const SketchNote& note : shape_.notes) add_note(note);
    add_runs();
    drawing_.label = cell_text(caption, view_);
    drawing_.texts.push_back({{width / 2, height - caption_height / 2},
                              drawing_.label,
                              DrawingText::Anchor::middle,
                              text_size,
                              false});
    return std::move(drawing_);
  }

 private:
  /// The scale at which plates, weld and arcs fill the room that the dimensions leave.
  void fit() {
    SketchPoint low = shape_.weld.front(), high = low;
    const auto take = [&](const SketchOutline& outline) {
      for (const SketchPoint& point : outline) {
        low = {std::min(low.x_mm, point.x_mm), std::min(low.y_mm, point.y_mm)};
        high = {std::max(high.x_mm, point.x_mm), std::max(high.y_mm, point.y_mm)};
      }
    };
    for (const SketchOutline& plate : shape_.plates) take(plate);
    for (const SketchOutline& line : shape_.lines) take(line);
    take(shape_.weld);
    middle_ = {(low.x_mm + high.x_mm) / 2, (low.y_mm + high.y_mm) / 2};
    constexpr double least_mm = 1e-6;
    scale_ = std::min((width - 2 * side_room) / std::max(high.x_mm - low.x_mm, least_mm),
                      (height - caption_height - 2 * upper_room) / std::max(high.y_mm - low.y_mm, least_mm));
  }

  DrawingPoint placed(const SketchPoint& point) const {
    return {width / 2 + (point.x_mm - middle_.x_mm) * scale_,
            (height - caption_height) / 2 - (point.y_mm - middle_.y_mm) * scale_};
  }

  /// `away` goes up in the sketch and down in the drawing.
  static DrawingPoint moved(const DrawingPoint& point, const SketchPoint& away, double by) {
    return {point.x + away.x_mm * by, point.y - away.y_mm * by};
  }

  void add_path(const SketchOutline& outline, bool is_closed, DrawingFill fill, DrawingStroke stroke) {
    DrawingPath path{{}, is_closed, fill, stroke};
    for (const SketchPoint& point : outline) path.points.push_back(placed(point));
    drawing_.paths.push_back(std::move(path));
  }

  void add_line(const DrawingPoint& from, const DrawingPoint& to) {
    drawing_.paths.push_back({{from, to}, false, DrawingFill::none, DrawingStroke::thin});
  }

  void add_text(const DrawingPoint& at, const SketchPoint& away, const SheetCell& text) {
    constexpr double sideways = 0.5;
    const auto anchor = away.x_mm > sideways    ? DrawingText::Anchor::begin
                        : away.x_mm < -sideways ? DrawingText::Anchor::end
                                                : DrawingText::Anchor::middle;
    const double by = anchor == DrawingText::Anchor::middle ? text_room : tick + 1;
    drawing_.texts.push_back({moved(at, away, by), cell_text(text, view_), anchor, text_size, false});
  }

  void add_tick(const DrawingPoint& at) { add_line({at.x - tick, at.y + tick}, {at.x + tick, at.y - tick}); }

  void add_dimension(const SketchDimension& dimension) {
    const double off = dimension.off_mm * scale_ + dimension_room;
    const DrawingPoint from = placed(dimension.from), to = placed(dimension.to);
    const DrawingPoint begin = moved(from, dimension.away, off), end = moved(to, dimension.away, off);
    add_line(from, moved(begin, dimension.away, tick));
    add_line(to, moved(end, dimension.away, tick));
    add_line(begin, end);
    add_tick(begin);
    add_tick(end);
    add_text({(begin.x + end.x) / 2, (begin.y + end.y) / 2}, dimension.away, dimension.text);
  }

  void add_note(const SketchNote& note) {
    const DrawingPoint at = placed(note.at), end = moved(at, note.towards, leader);
    add_line(at, end);
    add_text(end, note.towards, note.text);
  }

  /// Half the way to the nearest neighbour, within what can be read.
  double radius_of_runs() const {
    constexpr double least = 3, most = 6.5;
    double nearest = 2 * most;
    for (std::size_t i = 1; i < shape_.runs.size(); ++i)
      for (std::size_t k = 0; k < i; ++k) {
        const DrawingPoint a = placed(shape_.runs[i].at), b = placed(shape_.runs[k].at);
        nearest = std::min(nearest, std::hypot(a.x - b.x, a.y - b.y));
      }
    return std::max(least, nearest / 2);
  }

  void add_runs() {
    constexpr int corners = 24;
    constexpr double text_share = 1.3;
    const double radius = radius_of_runs();
    for (const SketchRun& run : shape_.runs) {
      const bool is_filled = filled_.contains(run.number);
      const DrawingPoint centre = placed(run.at);
      DrawingPath disc{{}, true, is_filled ? DrawingFill::ink : DrawingFill::paper, DrawingStroke::thin};
      for (int i = 0; i < corners; ++i) {
        const double angle = 2 * std::numbers::pi * i / corners;
        disc.points.push_back({centre.x + radius * std::cos(angle), centre.y + radius * std::sin(angle)});
      }
      drawing_.paths.push_back(std::move(disc));
      drawing_.texts.push_back(
          {centre, std::to_string(run.number), DrawingText::Anchor::middle, radius * text_share, is_filled});
    }
  }

  const SketchedJoint& shape_;
  const std::set<int>& filled_;
  const TextView& view_;
  Drawing drawing_;
  SketchPoint middle_;
  double scale_ = 1;
};

}  // namespace

Drawing joint_drawing(const SketchedJoint& shape, const std::set<int>& filled, const SheetCell& caption,
                      const TextView& view) {
  return JointDrawing(shape, filled, view).draw(caption);
}

}  // namespace seamtakt
