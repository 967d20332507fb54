#include "models/pictures/contrast.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt::desk {

namespace {

double linear(double channel) {
  return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& color) {
  return 0.2126 * linear(color.redF()) + 0.7152 * linear(color.greenF()) + 0.0722 * linear(color.blueF());
}

}  // namespace

double contrast_of(const QColor& one, const QColor& other) {
  const double a = luminance(one) + 0.05, b = luminance(other) + 0.05;
  return std::max(a, b) / std::min(a, b);
}

QColor text_on(const QColor& ground) {
  const QColor black(0, 0, 0), white(255, 255, 255);
  return contrast_of(black, ground) >= contrast_of(white, ground) ? black : white;
}

QColor seen_on(QColor color, const QColor& ground, double least) {
  const bool is_light = luminance(ground) > 0.18;
  constexpr int percent = 104, most_steps = 60;
  for (int step = 0; step < most_steps && contrast_of(color, ground) < least; ++step)
    color = is_light ? color.darker(percent) : color.lighter(percent);
  return color;
}

}  // namespace seamtakt::desk
