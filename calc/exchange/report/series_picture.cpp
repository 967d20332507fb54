#include <algorithm>

#include "base/units/units.hpp"
#include "exchange/report/seam_statistics.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/html.hpp"

namespace seamtakt {

namespace {

constexpr double width = 1000, height = 260, left = 80, right = 20, top = 30, bottom = 30;

std::string attribute(const char* name, double value) {
  return std::string(" ") + name + "=\"" + rounded_text(value, 6) + "\"";
}

class Picture {
 public:
  Picture(const SeamSeries& series, const TextView& view)
      : series_(series), view_(view), chart_(process_chart(series.values)) {
    const auto [least, greatest] = std::minmax_element(series.values.begin(), series.values.end());
    low_ = chart_ ? std::min(*least, chart_->lower) : *least;
    high_ = chart_ ? std::max(*greatest, chart_->upper) : *greatest;
    const double margin = high_ > low_ ? 0.05 * (high_ - low_) : 1;
    low_ -= margin;
    high_ += margin;
  }

  std::string svg(const std::string& title) {
    out_ = "<svg role=\"img\" xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + rounded_text(width, 6) +
           " " + rounded_text(height, 6) + "\"><title>" + html_text(title) + "</title>";
    label(left, top - 12, "start", title);
    if (chart_) {
      level(chart_->centre, "", cell_text(PatternCell{"mean {1}"_word, {number(chart_->centre, 4)}}, view_));
      level(chart_->lower, "6 4", number(chart_->lower, 4));
      level(chart_->upper, "6 4", number(chart_->upper, 4));
    }
    for (std::size_t i = 0; i < series_.values.size(); ++i) point(i);
    label(left, height - 8, "start", series_.units.front());
    label(width - right, height - 8, "end", series_.units.back());
    return out_ + "</svg>\n";
  }

 private:
  std::string number(double value, int digits) const {
    return view_.number({value, series_.unit.c_str(), digits});
  }
  double x_of(std::size_t index) const {
    const double steps = static_cast<double>(std::max<std::size_t>(series_.values.size() - 1, 1));
    return left + static_cast<double>(index) / steps * (width - left - right);
  }
  double y_of(double value) const {
    return height - bottom - (value - low_) / (high_ - low_) * (height - top - bottom);
  }
  void label(double x, double y, const char* anchor, const std::string& text) {
    out_ += "<text" + attribute("x", x) + attribute("y", y) + " text-anchor=\"" + anchor +
            "\" font-size=\"13\" fill=\"currentColor\">" + html_text(text) + "</text>";
  }
  void level(double value, const char* dashes, const std::string& text) {
    const double y = y_of(value);
    out_ += "<line" + attribute("x1", left) + attribute("y1", y) + attribute("x2", width - right) +
            attribute("y2", y) + " stroke=\"#7a7a7a\" stroke-dasharray=\"" + dashes + "\"/>";
    label(left - 6, y + 4, "end", text);
  }
  /// A disc within the limits, a square outside of them.
  void point(std::size_t i) {
    const double value = series_.values[i], x = x_of(i), y = y_of(value);
    const std::string words = "<title>" + html_text(series_.units[i] + ": " + number(value, 5)) + "</title>";
    if (chart_ && (value < chart_->lower || value > chart_->upper))
      out_ += "<rect" + attribute("x", x - 5) + attribute("y", y - 5) +
              " width=\"10\" height=\"10\" fill=\"#d55e00\">" + words + "</rect>";
    else
      out_ += "<circle" + attribute("cx", x) + attribute("cy", y) + " r=\"3.5\" fill=\"#0072b2\">" + words +
              "</circle>";
  }

  const SeamSeries& series_;
  const TextView& view_;
  std::optional<ProcessChart> chart_;
  double low_ = 0, high_ = 0;
  std::string out_;
};

}  // namespace

std::string series_svg(const SeamSeries& series, const SheetCell& title, const TextView& view) {
  return Picture(series, view).svg(cell_text(title, view));
}

}  // namespace seamtakt
