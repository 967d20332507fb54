#pragma once

#include <QPointF>
#include <vector>

#include "models/pictures/contour.hpp"
#include "plan/window/window.hpp"

namespace seamtakt::desk {

/// A limit that cuts the feasible region, and a point in the middle of the edge where it does.
struct WindowEdge {
  std::size_t limit = 0;
  double wire_feed_speed_m_min = 0, travel_speed_mm_s = 0;
  std::size_t points = 0;  ///< of the map along the edge
};

/// The limits on the edge of the feasible region; such that cut next to nothing of it are left out.
std::vector<WindowEdge> window_edges(const WindowMap& map);

/// The edge of the feasible region as smooth lines, travel speed along x; without the stairs of the map's
/// points.
ContourLines feasible_outline(const WindowMap& map);

}  // namespace seamtakt::desk
