#pragma once

#include <string>
#include <vector>

namespace seamtakt {

/// A drawing as data, for a page (as SVG) and for paper (painted as paths): lines, polygons and texts. Units
/// are 1/96 inch on paper; x to the right, y down.
struct DrawingPoint {
  double x = 0, y = 0;
};

enum class DrawingFill { none, light, weld, ink, paper };
enum class DrawingStroke { none, thin, thick };

/// A line through points, or a polygon.
struct DrawingPath {
  std::vector<DrawingPoint> points;
  bool is_closed = false;
  DrawingFill fill = DrawingFill::none;
  DrawingStroke stroke = DrawingStroke::thin;
};

/// One line of text, its middle at the height of `at`.
struct DrawingText {
  enum class Anchor { begin, middle, end };
  DrawingPoint at;
  std::string text;
  Anchor anchor = Anchor::middle;
  double size = 8;
  bool is_on_ink = false;  ///< written on a dark ground
};

struct Drawing {
  double width = 0, height = 0;
  std::string label;  ///< what it shows, for those who can't see it
  std::vector<DrawingPath> paths;
  std::vector<DrawingText> texts;  ///< above all paths
};

/// The drawing as an SVG element in the colours of the page that holds it.
std::string drawing_svg(const Drawing& drawing);

}  // namespace seamtakt
