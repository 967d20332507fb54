#pragma once

#include <QRectF>
#include <QWidget>
#include <optional>
#include <vector>

#include "plan/window/window.hpp"

class QCPColorMap;
class QCPCurve;
class QCPItemTracer;
class QCustomPlot;

namespace seamtakt::desk {

class OutsideHatch;

/// Units of the map's axes.
inline constexpr const char *feed_unit = "m/min", *speed_unit = "mm/s";

/// Wire feed speed against travel speed: one value as colours, isolines of the values that limits are about,
/// all that isn't feasible hatched, the working point with its uncertainty ellipse. The point is dragged with
/// the mouse, or moved with the arrow keys (Shift: ten times as far).
class WindowPlot : public QWidget {
  Q_OBJECT

 public:
  explicit WindowPlot(QWidget* parent = nullptr);

  /// The map stays this plot's own, so that its memory is used again.
  WindowMap& map() { return map_; }
  /// Shows the map. `value`: key of the one that colours it.
  void showMap(const QString& value);
  /// Standard uncertainties of the working point; 0 where none is stated.
  void setUncertainty(double u_wire_feed_speed_m_min, double u_travel_speed_mm_s);
  void movePoint(double wire_feed_speed_m_min, double travel_speed_mm_s);
  void restyle();
  QPointF pointPixel() const;
  QPointF pixelOf(double wire_feed_speed_m_min, double travel_speed_mm_s) const;
  QCustomPlot& plot() { return *plot_; }
  /// Where the map's texts stand, in pixels.
  const std::vector<QRectF>& labels() const { return labels_; }

 signals:
  /// The working point was moved; `last`: and let go.
  void moved(double wire_feed_speed_m_min, double travel_speed_mm_s, bool last);
  void readOut(const QString& text);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void colour(const QString& value);
  void drawIsolines(const QString& value);
  void drawEdges();
  /// Puts a text on the map where the working point and other texts leave room; false where it has none.
  bool label(double wire_feed_speed_m_min, double travel_speed_mm_s, const QString& text);
  void drawEllipse();
  void press(QMouseEvent* event);
  void follow(QMouseEvent* event);
  void release(QMouseEvent* event);
  const std::vector<double>* valuesOf(const QString& key) const;
  QString describe(double wire_feed_speed_m_min, double travel_speed_mm_s) const;

  WindowMap map_;
  QCustomPlot* plot_;
  QCPColorMap* colors_;
  OutsideHatch* hatch_;
  QCPCurve* ellipse_;
  std::vector<QCPCurve*> isolines_;
  QCPCurve* outline_;
  std::vector<QRectF> labels_;  ///< of the map, in pixels
  QCPItemTracer* point_;
  QString value_;
  double feed_m_min_ = 0, speed_mm_s_ = 0, u_feed_m_min_ = 0, u_speed_mm_s_ = 0;
  bool dragging_ = false;
};

/// What a window's values are called.
struct WindowValue {
  const char* key;
  const char* label;
  const char* unit;
};
std::vector<WindowValue> window_values();

}  // namespace seamtakt::desk
