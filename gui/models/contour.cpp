#include "models/contour.hpp"

#include <cmath>
#include <cstddef>

namespace seamtakt::desk {

namespace {

struct Corner {
  double x, y, value;
};

/// Where the level is crossed between two corners.
void add_crossing(const Corner& a, const Corner& b, double level, double (&points)[8], int& count) {
  if ((a.value < level) == (b.value < level) || count >= 4) return;
  const double t = (level - a.value) / (b.value - a.value);
  points[2 * count] = a.x + t * (b.x - a.x);
  points[2 * count + 1] = a.y + t * (b.y - a.y);
  ++count;
}

}  // namespace

std::vector<ContourPiece> contour(const std::vector<double>& x, const std::vector<double>& y, const double* values,
                                  double level, std::size_t stride) {
  std::vector<ContourPiece> pieces;
  if (stride == 0 || x.size() < 2 || y.size() < 2) return pieces;
  for (std::size_t row = 0; row + stride < y.size(); row += stride)
    for (std::size_t column = 0; column + stride < x.size(); column += stride) {
      const std::size_t right = column + stride, above = row + stride;
      const Corner corners[4] = {{x[column], y[row], values[row * x.size() + column]},
                                 {x[right], y[row], values[row * x.size() + right]},
                                 {x[right], y[above], values[above * x.size() + right]},
                                 {x[column], y[above], values[above * x.size() + column]}};
      double points[8];
      int count = 0;
      for (int i = 0; i < 4; ++i) add_crossing(corners[i], corners[(i + 1) % 4], level, points, count);
      if (count >= 2) pieces.push_back({points[0], points[1], points[2], points[3]});
      if (count == 4) pieces.push_back({points[4], points[5], points[6], points[7]});
    }
  return pieces;
}

std::vector<double> round_levels(double low, double high, int count) {
  std::vector<double> levels;
  if (!(high > low) || count < 1) return levels;
  const double rough = (high - low) / count;
  const double power = std::pow(10, std::floor(std::log10(rough)));
  const double step = power * (rough / power < 1.5 ? 1 : rough / power < 3.5 ? 2 : rough / power < 7.5 ? 5 : 10);
  for (double level = std::ceil(low / step) * step; level < high && levels.size() < 100; level += step)
    if (level > low) levels.push_back(level);
  return levels;
}

}  // namespace seamtakt::desk
