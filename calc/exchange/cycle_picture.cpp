#include "exchange/cycle_picture.hpp"

#include <algorithm>
#include <cmath>

#include "base/units.hpp"
#include "exchange/html.hpp"

namespace seamtakt {

namespace {

constexpr double width = 1000, left = 70, row_height = 46, bar_height = 26, axis_height = 26;

struct Look {
  const char* fill;
  double share;  ///< of the bar's height, so that kinds differ without colour too
};

Look look_of(MoveKind kind) {
  switch (kind) {
    case MoveKind::arc: return {"#d55e00", 1.0};
    case MoveKind::air: return {"#56b4e9", 0.3};
    case MoveKind::sense: return {"#009e73", 0.55};
    case MoveKind::start:
    case MoveKind::end: return {"#e69f00", 0.8};
    case MoveKind::service: return {"#cc79a7", 0.7};
    case MoveKind::orientation: return {"#0072b2", 0.7};
    case MoveKind::wire_change: return {"#f0e442", 0.7};
    case MoveKind::index:
    case MoveKind::load: return {"#7a7a7a", 0.45};
    case MoveKind::wait: return {"none", 0.2};
  }
  return {"none", 0.2};
}

std::string attribute(const char* name, double value) {
  return std::string(" ") + name + "=\"" + rounded_text(value, 6) + "\"";
}

double tick_step(double longest_s) {
  for (double step : {10.0, 20.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0})
    if (longest_s / step <= 14) return step;
  return 3600;
}

}  // namespace

std::string cycle_svg(const CycleResult& cycle) {
  std::vector<std::string> robots;
  double longest_s = std::max(cycle.cycle_time_s, cycle.takt_s.value_or(0));
  for (const Move& move : cycle.moves) {
    if (std::find(robots.begin(), robots.end(), move.robot) == robots.end()) robots.push_back(move.robot);
    longest_s = std::max(longest_s, move.end_s);
  }
  if (robots.empty() || longest_s <= 0) return {};
  const double scale = (width - left - 30) / longest_s;
  const double height = axis_height + row_height * static_cast<double>(robots.size()) + 10;
  const auto x_of = [&](double seconds) { return left + seconds * scale; };

  std::string svg = "<svg role=\"img\" aria-label=\"Timeline of " + html_text(cycle.weldment) + "\" viewBox=\"0 0 " +
                    rounded_text(width, 6) + " " + rounded_text(height, 6) + "\">\n";
  const double step = tick_step(longest_s);
  for (double t = 0; t <= longest_s; t += step)
    svg += "<line stroke=\"#9994\"" + attribute("x1", x_of(t)) + attribute("x2", x_of(t)) + attribute("y1", axis_height - 6) +
           attribute("y2", height) + "/><text" + attribute("x", x_of(t) + 2) + attribute("y", axis_height - 10) + ">" +
           rounded_text(t, 5) + " s</text>\n";
  for (std::size_t row = 0; row < robots.size(); ++row) {
    const double middle = axis_height + row_height * (static_cast<double>(row) + 0.5);
    svg += "<text" + attribute("x", 4) + attribute("y", middle + 4) + ">" +
           html_text(robots[row].empty() ? "cell" : robots[row]) + "</text>\n";
    for (const Move& move : cycle.moves) {
      if (move.robot != robots[row]) continue;
      const Look look = look_of(move.kind);
      const double bar = bar_height * look.share;
      svg += "<rect fill=\"" + std::string(look.fill) + "\" stroke=\"#5a626d\" stroke-width=\"0.4\"" +
             attribute("x", x_of(move.start_s)) + attribute("y", middle - bar / 2) +
             attribute("width", std::max(0.3, (move.end_s - move.start_s) * scale)) + attribute("height", bar) + "><title>" +
             html_text(std::string(to_string(move.kind)) + " " + move.seam + " " + rounded_text(move.start_s, 5) + " to " +
                       rounded_text(move.end_s, 5) + " s") +
             "</title></rect>\n";
    }
  }
  if (cycle.takt_s)
    svg += "<line stroke=\"#b23a00\" stroke-width=\"1.6\" stroke-dasharray=\"7 4\"" + attribute("x1", x_of(*cycle.takt_s)) +
           attribute("x2", x_of(*cycle.takt_s)) + attribute("y1", axis_height - 6) + attribute("y2", height) + "/>\n";
  return svg + "</svg>\n";
}

}  // namespace seamtakt
