#include "exchange/sketch/drawing.hpp"

#include "base/units/units.hpp"
#include "exchange/sheets/html.hpp"

namespace seamtakt {

namespace {

std::string number(double value) {
  return rounded_text(value, 6);
}

const char* fill_of(DrawingFill fill) {
  switch (fill) {
    case DrawingFill::none:
      break;
    case DrawingFill::light:
      return "fill=\"currentColor\" fill-opacity=\"0.08\"";
    case DrawingFill::weld:
      return "fill=\"currentColor\" fill-opacity=\"0.3\"";
    case DrawingFill::ink:
      return "fill=\"currentColor\"";
    case DrawingFill::paper:
      return "style=\"fill:var(--paper)\"";
  }
  return "fill=\"none\"";
}

const char* stroke_of(DrawingStroke stroke) {
  switch (stroke) {
    case DrawingStroke::none:
      break;
    case DrawingStroke::thin:
      return "stroke=\"currentColor\" stroke-width=\"0.5\"";
    case DrawingStroke::thick:
      return "stroke=\"currentColor\" stroke-width=\"1.1\"";
  }
  return "stroke=\"none\"";
}

const char* anchor_of(DrawingText::Anchor anchor) {
  switch (anchor) {
    case DrawingText::Anchor::begin:
      return "start";
    case DrawingText::Anchor::middle:
      return "middle";
    case DrawingText::Anchor::end:
      break;
  }
  return "end";
}

std::string path_svg(const DrawingPath& path) {
  std::string points;
  for (const DrawingPoint& point : path.points)
    points += (points.empty() ? "M" : "L") + number(point.x) + " " + number(point.y);
  return std::string("<path ") + fill_of(path.fill) + " " + stroke_of(path.stroke) + " d=\"" + points +
         (path.is_closed ? "Z" : "") + "\"/>\n";
}

std::string text_svg(const DrawingText& text) {
  return "<text x=\"" + number(text.at.x) + "\" y=\"" + number(text.at.y) + "\" dy=\".35em\" text-anchor=\"" +
         anchor_of(text.anchor) + "\" style=\"font-size:" + number(text.size) + "px" +
         (text.is_on_ink ? ";fill:var(--paper)" : "") + "\">" + html_text(text.text) + "</text>\n";
}

}  // namespace

std::string drawing_svg(const Drawing& drawing) {
  std::string svg = "<svg role=\"img\" aria-label=\"" + html_text(drawing.label) + "\" width=\"" +
                    number(drawing.width) + "\" viewBox=\"0 0 " + number(drawing.width) + " " +
                    number(drawing.height) + "\">\n";
  for (const DrawingPath& path : drawing.paths) svg += path_svg(path);
  for (const DrawingText& text : drawing.texts) svg += text_svg(text);
  return svg + "</svg>\n";
}

}  // namespace seamtakt
