#include "exchange/report/cycle_picture.hpp"

#include <algorithm>
#include <cmath>

#include "base/text/utf8.hpp"
#include "base/units/units.hpp"
#include "cell/timeline/move_look.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/html.hpp"

namespace seamtakt {

namespace {

constexpr double width = 1000, left = 70, right = 30, row_height = 46, bar_height = 26, axis_height = 40,
                 legend_height = 26;

std::string attribute(const char* name, double value) {
  return std::string(" ") + name + "=\"" + rounded_text(value, 6) + "\"";
}

/// The least round step that leaves no more than 14 ticks.
double tick_step(double longest_s) {
  for (double step : {1.0, 2.0, 5.0, 10.0, 20.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0})
    if (longest_s / step <= 14) return step;
  return 3600 * std::ceil(longest_s / 14 / 3600);
}

class TimelineDrawing {
 public:
  TimelineDrawing(const CycleResult& cycle, const TextView& view) : cycle_(cycle), view_(view) {
    longest_s_ = std::max(cycle.cycle_time_s, cycle.takt_s.value_or(0));
    for (const Move& move : cycle.moves) {
      if (std::find(robots_.begin(), robots_.end(), move.robot) == robots_.end())
        robots_.push_back(move.robot);
      longest_s_ = std::max(longest_s_, move.end_s);
    }
    bottom_ = axis_height + row_height * static_cast<double>(robots_.size());
  }

  std::string svg() {
    if (robots_.empty() || longest_s_ <= 0) return {};
    svg_ = "<svg role=\"img\" aria-label=\"" +
           html_text(cell_text(PatternCell{"Timeline of {1}"_word, {cycle_.weldment}}, view_)) +
           "\" viewBox=\"0 0 " + rounded_text(width, 6) + " " +
           rounded_text(bottom_ + legend_height + 10, 6) + "\">\n";
    axis();
    for (std::size_t row = 0; row < robots_.size(); ++row) bars(row);
    if (cycle_.lower_bound_s) limit(*cycle_.lower_bound_s, "bound"_word, "#1f5f99", "2 3");
    if (cycle_.takt_s) limit(*cycle_.takt_s, "takt"_word, "#b23a00", "7 4");
    legend();
    return svg_ + "</svg>\n";
  }

 private:
  std::string seconds(double value) const { return view_.quantity({value, "s", 5}); }

  std::string title_of(const Move& move) const {
    const Sentence span("table.range"_key,
                        {{"from", UnitValue{move.start_s, "s", 5}}, {"to", UnitValue{move.end_s, "s", 5}}});
    return sentence_text(kind_sentence(move.kind), view_) + " " + move.seam + " " +
           sentence_text(span, view_) + " " + view_.unit("s");
  }

  double x_of(double seconds) const { return left + seconds * (width - left - right) / longest_s_; }

  void text(double x, double y, std::string_view words, const char* more = "") {
    svg_ += "<text" + attribute("x", x) + attribute("y", y) + more + ">" + html_text(words) + "</text>\n";
  }

  void rectangle(const MoveLook& look, double x, double middle, double bar_width, const std::string& title) {
    const double height = bar_height * look.share;
    svg_ += "<rect fill=\"" + std::string(look.colour) + "\" stroke=\"#5a626d\" stroke-width=\"0.4\"" +
            attribute("x", x) + attribute("y", middle - height / 2) +
            attribute("width", std::max(0.3, bar_width)) + attribute("height", height) + "><title>" +
            html_text(title) + "</title></rect>\n";
  }

  void axis() {
    const double step = tick_step(longest_s_);
    for (double t = 0; t <= longest_s_; t += step) {
      svg_ += "<line stroke=\"#9994\"" + attribute("x1", x_of(t)) + attribute("x2", x_of(t)) +
              attribute("y1", axis_height - 6) + attribute("y2", bottom_) + "/>";
      text(x_of(t) + 2, axis_height - 10, seconds(t));
    }
  }

  void bars(std::size_t row) {
    const double middle = axis_height + row_height * (static_cast<double>(row) + 0.5);
    text(4, middle + 4, robots_[row].empty() ? view_.word("cell"_word) : robots_[row]);
    for (const Move& move : cycle_.moves) {
      if (move.robot != robots_[row]) continue;
      rectangle(look_of(move.kind), x_of(move.start_s), middle, x_of(move.end_s) - x_of(move.start_s),
                title_of(move));
    }
  }

  void limit(double at_s, Word word, const char* colour, const char* dashes) {
    svg_ += "<line stroke=\"" + std::string(colour) + "\" stroke-width=\"1.6\" stroke-dasharray=\"" + dashes +
            "\"" + attribute("x1", x_of(at_s)) + attribute("x2", x_of(at_s)) + attribute("y1", 16) +
            attribute("y2", bottom_) + "/>";
    text(x_of(at_s) - 3, 13, view_.word(word) + " " + seconds(at_s), " text-anchor=\"end\"");
  }

  bool has(std::string_view legend) const {
    return std::any_of(cycle_.moves.begin(), cycle_.moves.end(),
                       [&](const Move& move) { return look_of(move.kind).legend == legend; });
  }

  void legend() {
    double x = left;
    std::string_view before;
    for (const MoveLook& look : move_looks) {
      if (look.legend == before || !has(look.legend)) continue;
      before = look.legend;
      const std::string word = view_.word(before);
      rectangle(look, x, bottom_ + legend_height / 2, 16, word);
      text(x + 21, bottom_ + legend_height / 2 + 4, word);
      x += 48 + 6.2 * static_cast<double>(display_width(word));
    }
  }

  const CycleResult& cycle_;
  const TextView& view_;
  std::vector<std::string> robots_;
  double longest_s_ = 0, bottom_ = 0;
  std::string svg_;
};

}  // namespace

std::string cycle_svg(const CycleResult& cycle, const TextView& view) {
  return TimelineDrawing(cycle, view).svg();
}

}  // namespace seamtakt
