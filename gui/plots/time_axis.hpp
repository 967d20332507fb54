#pragma once

#include <QtGlobal>

namespace seamtakt::desk {

/// The span of time that a view shows, and the positions of its moments on the screen. Zooming and moving
/// never leave the data's span.
class TimeAxis {
 public:
  /// Margins beside the axis (px), and the shortest stretch that can be shown (s).
  TimeAxis(double left_px, double right_px, double least_span_s)
      : left_px_(left_px), right_px_(right_px), least_span_s_(least_span_s) {}

  /// The first and last moment of the data; the shown span is kept as far as it is between them.
  void setEnds(double first_s, double last_s);
  void show(double from_s, double to_s);
  void showAll() { show(first_s_, last_s_); }
  bool isAll() const { return from_s_ <= first_s_ && to_s_ >= last_s_; }
  /// factor > 1: closer, with `at_s` staying where it is.
  void zoom(double factor, double at_s);
  void pan(double seconds) { show(from_s_ + seconds, to_s_ + seconds); }
  /// Plus, minus, Home and the arrows; false where the key isn't one of them.
  bool takeKey(int key);

  double from() const { return from_s_; }
  double to() const { return to_s_; }
  double span() const { return to_s_ - from_s_; }
  double x(double seconds, int width_px) const {
    return left_px_ + (seconds - from_s_) / span() * room_px(width_px);
  }
  double at(double px, int width_px) const { return from_s_ + secondsOf(px - left_px_, width_px); }
  /// How long a stretch of the screen is.
  double secondsOf(double px, int width_px) const { return px / room_px(width_px) * span(); }
  double room_px(int width_px) const { return qMax(1.0, width_px - left_px_ - right_px_); }

 private:
  double left_px_, right_px_, least_span_s_;
  double first_s_ = 0, last_s_ = 1, from_s_ = 0, to_s_ = 1;
};

}  // namespace seamtakt::desk
