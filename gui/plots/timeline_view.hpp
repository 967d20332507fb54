#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "cell/timeline/timeline.hpp"
#include "plots/time_axis.hpp"

namespace seamtakt::desk {

/// A place in a robot's order: before a seam; empty: at the end.
struct OrderPlace {
  QString robot, before;
  bool operator==(const OrderPlace&) const = default;
};

/// The robots' timelines: a row a robot, kinds of move distinguished by height, hatch and letter as well as
/// colour; takt and lower bound as lines. The wheel zooms at the cursor, a click picks the seam; dragging a
/// bar moves its seam to another place or robot, dragging beside the bars moves the view.
class TimelineView : public QWidget {
  Q_OBJECT

 public:
  explicit TimelineView(QWidget* parent = nullptr);
  /// `planned_s`: takt to plan to; 0: none. `at_least_s`: how far the axis reaches at least, so that two
  /// timelines have the same.
  void setCycle(const CycleResult& cycle, double planned_s, const QString& title = {}, double at_least_s = 0);
  /// Robots that have a row even where they have nothing to do.
  void setRobots(std::vector<std::string> robots) { known_robots_ = std::move(robots); }
  void setPicked(const QString& seam);
  /// Whether bars may be carried elsewhere.
  void setArrangeable(bool is_arrangeable) { is_arrangeable_ = is_arrangeable; }
  /// One of two adjacent timelines has the legend of bars for both.
  void setLegend(bool is_shown) { has_legend_ = is_shown; }
  /// What would follow from dropping the seam that is carried.
  void setCarryNote(const QString& note);
  void showAll();
  void zoom(double factor, double at_s);
  void showRange(double from_s, double to_s);
  /// Seconds shown at the left and right edge.
  double from() const { return axis_.from(); }
  double to() const { return axis_.to(); }
  /// How far a cycle's axis must reach.
  static double reachOf(const CycleResult& cycle, double planned_s);
  /// Where a move is drawn.
  QRectF barOf(int move) const;
  /// The middle of a robot's row.
  double rowOf(const QString& robot) const;
  QSize minimumSizeHint() const override { return {300, 150}; }

 signals:
  void picked(const QString& seam, int pass);
  void rangeShown(double from_s, double to_s);
  /// The time under the cursor.
  void pointedAt(double at_s);
  void carried(const QString& seam, const seamtakt::desk::OrderPlace& to);
  void dropped(const QString& seam, const seamtakt::desk::OrderPlace& to);

 protected:
  void paintEvent(QPaintEvent*) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool event(QEvent* event) override;

 private:
  double x(double seconds) const { return axis_.x(seconds, width()); }
  double top() const;
  double bottom() const;  ///< height below the rows
  double lanePx() const;
  int laneOf(const std::string& robot) const;
  int moveAt(const QPointF& at) const;
  OrderPlace placeAt(const QPointF& at) const;
  void carry(const QPointF& to);
  void endCarry();
  void shown();
  void paintScale(QPainter& painter) const;
  void paintBars(QPainter& painter) const;
  void paintSeamName(QPainter& painter, const QRectF& bar, const QString& seam) const;
  QColor limitColor() const;
  void paintLimits(QPainter& painter) const;
  void paintLegend(QPainter& painter) const;
  void paintCarried(QPainter& painter) const;

  CycleResult cycle_;
  std::vector<std::string> robots_, known_robots_;
  double planned_s_ = 0;
  TimeAxis axis_;
  QString title_, picked_, carried_, note_;
  QPointF pressed_, hand_;
  int pressed_move_ = -1;
  bool is_arrangeable_ = false, has_legend_ = true;
  OrderPlace target_;
};

}  // namespace seamtakt::desk
