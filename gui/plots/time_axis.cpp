#include "plots/time_axis.hpp"

#include <Qt>
#include <algorithm>

namespace seamtakt::desk {

void TimeAxis::setEnds(double first_s, double last_s) {
  first_s_ = first_s;
  last_s_ = std::max(last_s, first_s + 1e-3);
  show(from_s_, to_s_);
}

void TimeAxis::show(double from_s, double to_s) {
  const double all_s = last_s_ - first_s_;
  const double span_s = std::clamp(to_s - from_s, std::min(least_span_s_, all_s), all_s);
  from_s_ = std::clamp(from_s, first_s_, std::max(first_s_, last_s_ - span_s));
  to_s_ = from_s_ + span_s;
}

void TimeAxis::zoom(double factor, double at_s) {
  show(at_s - (at_s - from_s_) / factor, at_s + (to_s_ - at_s) / factor);
}

bool TimeAxis::takeKey(int key) {
  switch (key) {
    case Qt::Key_Plus:
      zoom(1.5, (from_s_ + to_s_) / 2);
      return true;
    case Qt::Key_Minus:
      zoom(1 / 1.5, (from_s_ + to_s_) / 2);
      return true;
    case Qt::Key_Home:
      showAll();
      return true;
    case Qt::Key_Left:
      pan(-span() / 8);
      return true;
    case Qt::Key_Right:
      pan(span() / 8);
      return true;
    default:
      return false;
  }
}

}  // namespace seamtakt::desk
