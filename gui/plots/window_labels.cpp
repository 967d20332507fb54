// Names on the operating window's map: limits on the edges of the feasible region, values on isolines.
#include <qcustomplot.h>

#include <algorithm>
#include <cmath>

#include "document/shown_text.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"
#include "plots/plot_style.hpp"
#include "plots/window_edges.hpp"
#include "plots/window_plot.hpp"

namespace seamtakt::desk {

namespace {
/// Round the working point: it is grabbed there.
constexpr double clear_px = 18;
}  // namespace

bool WindowPlot::label(double wire_feed_speed_m_min, double travel_speed_mm_s, const QString& text) {
  const UnitView& units = UnitView::shared();
  const QPointF centre = pixelOf(wire_feed_speed_m_min, travel_speed_mm_s);
  const QFontMetricsF metrics(plot_->font());
  QRectF box(0, 0, metrics.horizontalAdvance(text) + 6, metrics.height() + 2);
  box.moveCenter(centre);
  QRectF round_point(0, 0, 2 * clear_px, 2 * clear_px);
  round_point.moveCenter(pointPixel());
  if (box.intersects(round_point) || !QRectF(plot_->axisRect()->rect()).contains(box)) return false;
  if (std::any_of(labels_.begin(), labels_.end(), [&](const QRectF& other) { return other.intersects(box); }))
    return false;
  labels_.push_back(box);
  map_text(*plot_, units.toShown(travel_speed_mm_s, speed_unit),
           units.toShown(wire_feed_speed_m_min, feed_unit), text);
  return true;
}

/// The region's edge as one smooth line, and on each stretch the limit that it is.
void WindowPlot::drawEdges() {
  const UnitView& units = UnitView::shared();
  const ContourLines lines = feasible_outline(map_);
  QVector<double> t, x, y;
  for (std::size_t i = 0; i < lines.x.size(); ++i) {
    t.push_back(static_cast<double>(i));
    x.push_back(units.toShown(lines.x[i], speed_unit));
    y.push_back(units.toShown(lines.y[i], feed_unit));
  }
  outline_->setData(t, x, y, true);
  outline_->setPen(QPen(Palette::light().ink, 2.2));
  // On the edge, else a little to a side of it: the working point and other names stay free.
  const double up = (map_.wire_feed_speed_m_min.back() - map_.wire_feed_speed_m_min.front()) * 0.05;
  const double right = (map_.travel_speed_mm_s.back() - map_.travel_speed_mm_s.front()) * 0.09;
  for (const WindowEdge& edge : window_edges(map_)) {
    const QString name = shown_text(map_.limits[edge.limit].what);
    for (const auto& [rows, columns] : {std::pair(0, 0), std::pair(1, 0), std::pair(-1, 0), std::pair(0, 1),
                                        std::pair(0, -1), std::pair(1, 1), std::pair(-1, -1), std::pair(2, 0),
                                        std::pair(-2, 0), std::pair(0, 2), std::pair(0, -2)})
      if (label(edge.wire_feed_speed_m_min + rows * up, edge.travel_speed_mm_s + columns * right, name))
        break;
  }
}

}  // namespace seamtakt::desk
