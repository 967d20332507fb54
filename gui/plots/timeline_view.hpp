#pragma once

#include <QWidget>
#include <vector>

#include "cell/timeline.hpp"

namespace seamtakt::desk {

/// The robots' timelines: a row a robot, kinds of move told apart by height, hatch and letter as well as
/// colour; takt and lower bound as lines. The wheel zooms at the cursor, dragging moves, a click picks the
/// seam.
class TimelineView : public QWidget {
  Q_OBJECT

 public:
  explicit TimelineView(QWidget* parent = nullptr);
  void setCycle(const CycleResult& cycle, double planned_s);
  void setPicked(const QString& seam);
  void showAll();
  void zoom(double factor, double at_s);
  /// Seconds shown at the left and right edge.
  double from() const { return from_s_; }
  double to() const { return to_s_; }
  /// Where a move is drawn.
  QRectF barOf(int move) const;
  QSize minimumSizeHint() const override { return {300, 160}; }
  static std::vector<MoveKind> legendKinds();

 signals:
  void picked(const QString& seam, int pass);

 protected:
  void paintEvent(QPaintEvent*) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool event(QEvent* event) override;

 private:
  double x(double seconds) const;
  double secondsAt(double px) const;
  int rowOf(const std::string& robot) const;
  int moveAt(const QPointF& at) const;
  void limit();
  void paintScale(QPainter& painter) const;
  void paintBars(QPainter& painter) const;
  void paintLimits(QPainter& painter) const;
  void paintLegend(QPainter& painter) const;

  CycleResult cycle_;
  std::vector<std::string> robots_;
  double longest_s_ = 1, from_s_ = 0, to_s_ = 1, planned_s_ = 0;
  QString picked_;
  QPointF pressed_;
  double pressed_from_s_ = 0;
};

/// The kind of a move in the user's language.
QString move_word(MoveKind kind);

}  // namespace seamtakt::desk
