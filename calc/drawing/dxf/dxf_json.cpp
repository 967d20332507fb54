#include <cmath>

#include "base/json/json_writer.hpp"
#include "base/text/utf8.hpp"
#include "drawing/dxf/dxf_file.hpp"

namespace seamtakt::drawing {

namespace {

/// To a millionth of a millimetre, and no -0.
double tidy(double value) {
  const double result = std::round(value * 1e6) / 1e6;
  return result == 0 ? 0 : result;
}

std::string left_out_text(const FlatDrawing& drawing) {
  std::string text;
  for (const auto& [kind, count] : drawing.left_out)
    text += (text.empty() ? "" : ", ") + std::to_string(count) + " " + kind;
  return text.empty() ? text : "Left out: " + text + ".";
}

}  // namespace

std::string result_json(const FlatDrawing& drawing) {
  JsonWriter json;
  json.begin_object().member("format", "seamtakt-drawing").member("version", 1);
  json.key("source").begin_object().member("path", drawing.path).member("sha256", drawing.sha256);
  json.member("schema", "DXF " + drawing.version).member("unit", drawing.unit).end_object();
  json.member("gap_mm", 0.0);
  json.key("parts").begin_array().end_array();
  json.key("joints").begin_array().end_array();
  json.key("layers").begin_array();
  for (const auto& [name, paths] : drawing.layers) {
    json.begin_object().member("name", name).key("paths").begin_array();
    for (const FlatPath& path : paths) {
      json.begin_object().member("id", path.id).member("closed", path.is_closed).key("points_mm");
      json.begin_array(JsonWriter::Layout::compact);
      for (const FlatPoint& point : path.points_mm)
        json.value(std::vector<double>{tidy(point[0]), tidy(point[1])});
      json.end_array().end_object();
    }
    json.end_array().end_object();
  }
  json.end_array().key("notes").begin_array();
  if (const std::string text = left_out_text(drawing); !text.empty())
    json.begin_object().member("kind", "left-out").member("text", text).end_object();
  json.end_array().end_object();
  return json.take();
}

std::string result_text(const FlatDrawing& drawing) {
  std::string text;
  for (const auto& [name, paths] : drawing.layers) {
    std::size_t closed = 0;
    for (const FlatPath& path : paths) closed += path.is_closed ? 1 : 0;
    text += name + ": " + std::to_string(paths.size()) + " paths, " + std::to_string(closed) + " closed\n";
  }
  const std::string more = left_out_text(drawing);
  return more.empty() ? text : text + more + "\n";
}

}  // namespace seamtakt::drawing
