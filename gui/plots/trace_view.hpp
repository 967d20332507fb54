#pragma once

#include <QWidget>
#include <optional>
#include <vector>

#include "jobs/trace.hpp"
#include "plan/plan.hpp"
#include "plots/time_axis.hpp"

namespace seamtakt::desk {

/// A stretch in which a quantity lay outside its limit.
struct TraceMark {
  Trace::Channel channel;
  double from_s, to_s;  ///< after the first sample shown
  double value;         ///< mean of its worst window, in the file's unit
  double length_mm;
};

/// What a trace is judged against: bands by channel, and where it left them.
struct TraceLimits {
  std::optional<Interval> band[Trace::channels];
  std::vector<TraceMark> marks;
};

/// Logged quantities over time, one lane each, with their limits as bands. Wheel or plus and minus zoom,
/// dragging or the arrow keys move, Home shows all; drawn from the extremes of each column of pixels, so any
/// length pans at once.
class TraceView : public QWidget {
  Q_OBJECT

 public:
  explicit TraceView(QWidget* parent = nullptr);
  /// `trace` must exist until another is set; the view shows begin to end.
  void setTrace(const Trace* trace, std::size_t begin, std::size_t end, const TraceLimits& limits,
                const QString& title);
  void zoom(double factor, double at_s);
  void pan(double seconds);
  void showAll();
  /// A stretch (s after the first sample shown) with as much again on both sides, at least a second.
  void showStretch(double from_s, double to_s);
  double from() const { return axis_.from(); }
  double to() const { return axis_.to(); }
  const std::vector<TraceMark>& marks() const { return limits_.marks; }
  /// "outside for 42 mm: 361 A"
  static QString markText(const TraceMark& mark);
  QSize minimumSizeHint() const override { return {280, 180}; }

 signals:
  void readOut(const QString& text);

 protected:
  void paintEvent(QPaintEvent*) override;
  void wheelEvent(QWheelEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  struct Lane;
  std::vector<Lane> lanes() const;
  void paintLane(QPainter& painter, const Lane& lane) const;
  void paintMarks(QPainter& painter, const Lane& lane) const;
  void paintTime(QPainter& painter) const;
  double x(double seconds) const { return axis_.x(seconds, width()); }
  double secondsAt(double px) const { return axis_.at(px, width()); }

  const Trace* trace_ = nullptr;
  std::size_t begin_ = 0, end_ = 0;
  TraceLimits limits_;
  QString title_;
  TimeAxis axis_;
  double first_s_ = 0;  ///< of what is shown; times count from here
  double pressed_px_ = 0;
};

}  // namespace seamtakt::desk
