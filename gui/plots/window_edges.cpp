#include "plots/window_edges.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace seamtakt::desk {

namespace {

struct Point {
  std::size_t feed, speed;
};

/// Points outside the region beside one inside it.
std::vector<Point> points_along(const WindowMap& map) {
  std::vector<Point> points;
  const std::size_t feeds = map.wire_feed_speed_m_min.size(), speeds = map.travel_speed_mm_s.size();
  for (std::size_t feed = 0; feed < feeds; ++feed)
    for (std::size_t speed = 0; speed < speeds; ++speed) {
      if (map.is_feasible(feed, speed)) continue;
      const bool beside = (feed > 0 && map.is_feasible(feed - 1, speed)) ||
                          (feed + 1 < feeds && map.is_feasible(feed + 1, speed)) ||
                          (speed > 0 && map.is_feasible(feed, speed - 1)) ||
                          (speed + 1 < speeds && map.is_feasible(feed, speed + 1));
      if (beside) points.push_back({feed, speed});
    }
  return points;
}

/// Of points along an edge, the one nearest to their mean.
Point middle_of(const std::vector<Point>& points) {
  double feed = 0, speed = 0;
  for (const Point& point : points) {
    feed += static_cast<double>(point.feed);
    speed += static_cast<double>(point.speed);
  }
  const double count = static_cast<double>(points.size());
  const auto gap = [&](const Point& point) {
    return std::hypot(static_cast<double>(point.feed) - feed / count,
                      static_cast<double>(point.speed) - speed / count);
  };
  return *std::min_element(points.begin(), points.end(),
                           [&](const Point& a, const Point& b) { return gap(a) < gap(b); });
}

/// Each point the mean of itself and its neighbours, ends kept; lines are apart by NaN.
void smooth(std::vector<double>& values) {
  const std::vector<double> before = values;
  for (std::size_t i = 1; i + 1 < values.size(); ++i)
    if (!std::isnan(before[i - 1]) && !std::isnan(before[i]) && !std::isnan(before[i + 1]))
      values[i] = (before[i - 1] + 2 * before[i] + before[i + 1]) / 4;
}

}  // namespace

std::vector<WindowEdge> window_edges(const WindowMap& map) {
  const std::vector<Point> along = points_along(map);
  std::vector<WindowEdge> edges;
  for (std::size_t k = 0; k < map.limits.size(); ++k) {
    const std::uint32_t bit = std::uint32_t{1} << k;
    if ((map.cutting & bit) == 0) continue;
    std::vector<Point> own;
    for (const Point& point : along)
      if ((map.broken[map.at(point.feed, point.speed)] & bit) != 0) own.push_back(point);
    // A corner of a few points isn't an edge.
    if (own.size() < std::max<std::size_t>(5, along.size() / 50)) continue;
    const Point middle = middle_of(own);
    edges.push_back(
        {k, map.wire_feed_speed_m_min[middle.feed], map.travel_speed_mm_s[middle.speed], own.size()});
  }
  return edges;
}

ContourLines feasible_outline(const WindowMap& map) {
  std::vector<double> outside(map.broken.size());
  for (std::size_t i = 0; i < outside.size(); ++i) outside[i] = (map.broken[i] & map.cutting) != 0 ? 1 : 0;
  ContourLines lines =
      joined_contour(contour(map.travel_speed_mm_s, map.wire_feed_speed_m_min, outside.data(), 0.5));
  // A stair is two points long where an edge is steep; eight passes take out those of about three.
  for (int pass = 0; pass < 8; ++pass) {
    smooth(lines.x);
    smooth(lines.y);
  }
  return lines;
}

}  // namespace seamtakt::desk
