#include "models/pictures/contour.hpp"

#include <cmath>
#include <cstddef>
#include <deque>
#include <limits>
#include <map>
#include <utility>

namespace seamtakt::desk {

namespace {

struct Corner {
  double x, y, value;
};

/// Where the level is crossed between two corners.
void add_crossing(const Corner& a, const Corner& b, double level, double (&points)[8], int& count) {
  if ((a.value < level) == (b.value < level) || count >= 4) return;
  // From the lower corner, so that both cells at an edge get the same point to the last bit.
  const Corner& low = a.value < b.value ? a : b;
  const Corner& high = a.value < b.value ? b : a;
  // At the corner itself where that is on the level: edges that meet there must end at the same point.
  const double t = (level - low.value) / (high.value - low.value);
  points[2 * count] = t < 1 ? low.x + t * (high.x - low.x) : high.x;
  points[2 * count + 1] = t < 1 ? low.y + t * (high.y - low.y) : high.y;
  ++count;
}

}  // namespace

std::vector<ContourPiece> contour(const std::vector<double>& x, const std::vector<double>& y,
                                  const double* values, double level, std::size_t stride) {
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

namespace {

/// Ends that are the same point of the grid come from the same arithmetic, so they are equal to the last bit.
using End = std::pair<double, double>;

}  // namespace

ContourLines joined_contour(const std::vector<ContourPiece>& pieces) {
  std::multimap<End, std::size_t> at;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    at.emplace(End{pieces[i].x1, pieces[i].y1}, i);
    at.emplace(End{pieces[i].x2, pieces[i].y2}, i);
  }
  // A piece without length, at a corner that is on the level, joins nothing.
  std::vector<bool> used(pieces.size(), false);
  for (std::size_t i = 0; i < pieces.size(); ++i)
    used[i] = pieces[i].x1 == pieces[i].x2 && pieces[i].y1 == pieces[i].y2;
  const auto next = [&](const End& end) -> const ContourPiece* {
    for (auto [it, last] = at.equal_range(end); it != last; ++it)
      if (!used[it->second]) {
        used[it->second] = true;
        return &pieces[it->second];
      }
    return nullptr;
  };
  ContourLines lines;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (used[i]) continue;
    used[i] = true;
    std::deque<End> line = {{pieces[i].x1, pieces[i].y1}, {pieces[i].x2, pieces[i].y2}};
    const auto other = [](const ContourPiece& piece, const End& end) {
      return End{piece.x1, piece.y1} == end ? End{piece.x2, piece.y2} : End{piece.x1, piece.y1};
    };
    while (const ContourPiece* piece = next(line.back())) line.push_back(other(*piece, line.back()));
    while (const ContourPiece* piece = next(line.front())) line.push_front(other(*piece, line.front()));
    for (const End& point : line) {
      lines.x.push_back(point.first);
      lines.y.push_back(point.second);
    }
    lines.x.push_back(std::numeric_limits<double>::quiet_NaN());
    lines.y.push_back(std::numeric_limits<double>::quiet_NaN());
  }
  return lines;
}

std::vector<double> round_levels(double low, double high, int count) {
  std::vector<double> levels;
  if (!(high > low) || count < 1) return levels;
  const double rough = (high - low) / count;
  const double power = std::pow(10, std::floor(std::log10(rough)));
  const double step = power * (rough / power < 1.5   ? 1
                               : rough / power < 3.5 ? 2
                               : rough / power < 7.5 ? 5
                                                     : 10);
  for (double level = std::ceil(low / step) * step; level < high && levels.size() < 100; level += step)
    if (level > low) levels.push_back(level);
  return levels;
}

}  // namespace seamtakt::desk
