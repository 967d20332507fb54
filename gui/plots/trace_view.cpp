#include "plots/trace_view.hpp"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "models/pictures/contour.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

namespace {

constexpr double trace_left_px = 62, trace_right_px = 14, trace_top_px = 40, bottom_px = 34, lane_gap_px = 22;

struct ChannelName {
  const char* name;
  const char* unit;
};
constexpr ChannelName names[Trace::channels] = {{QT_TRANSLATE_NOOP("TraceView", "current"), "A"},
                                                {QT_TRANSLATE_NOOP("TraceView", "voltage"), "V"},
                                                {QT_TRANSLATE_NOOP("TraceView", "wire feed"), "m/min"},
                                                {QT_TRANSLATE_NOOP("TraceView", "travel"), "mm/s"}};

QString channel_name(int channel) {
  return QCoreApplication::translate("TraceView", names[channel].name);
}

/// As many levels as their texts have room for, one above the other.
std::vector<double> levels_with_room(double low, double high, double height_px) {
  constexpr double text_px = 14;
  std::vector<double> levels;
  for (int wanted = std::max(3, static_cast<int>(height_px / 30)); wanted > 0; --wanted) {
    levels = round_levels(low, high, wanted);
    if (static_cast<double>(levels.size()) * text_px <= height_px) break;
  }
  return levels;
}

}  // namespace

struct TraceView::Lane {
  Trace::Channel channel;
  QRectF area;
  double low, high;  ///< of the scale, in the file's unit
  double y(double value) const { return area.bottom() - (value - low) / (high - low) * area.height(); }
};

TraceView::TraceView(QWidget* parent) : QWidget(parent), axis_(trace_left_px, trace_right_px, 0.01) {
  setAccessibleName(tr("Trace of the pass"));
  setAccessibleDescription(tr(
      "Plus and minus zoom, arrow keys move, Home shows all. The table of passes has means and verdicts."));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
}

void TraceView::setTrace(const Trace* trace, std::size_t begin, std::size_t end, const TraceLimits& limits,
                         const QString& title) {
  trace_ = begin < end ? trace : nullptr;
  begin_ = begin;
  end_ = end;
  limits_ = limits;
  title_ = title;
  if (trace_) {
    first_s_ = trace_->time_s(begin);
    axis_.setEnds(first_s_, trace_->time_s(end - 1));
  }
  showAll();
}

void TraceView::showAll() {
  axis_.showAll();
  update();
}

void TraceView::showStretch(double from_s, double to_s) {
  const double beside_s = std::max(to_s - from_s, 1.0);
  axis_.show(first_s_ + from_s - beside_s, first_s_ + to_s + beside_s);
  update();
}

void TraceView::zoom(double factor, double at_s) {
  axis_.zoom(factor, at_s);
  update();
}

void TraceView::pan(double seconds) {
  axis_.pan(seconds);
  update();
}

std::vector<TraceView::Lane> TraceView::lanes() const {
  std::vector<Lane> lanes;
  if (!trace_) return lanes;
  for (int i = 0; i < Trace::channels; ++i)
    if (trace_->has(static_cast<Trace::Channel>(i)))
      lanes.push_back({static_cast<Trace::Channel>(i), {}, 0, 1});
  const double room =
      height() - trace_top_px - bottom_px - lane_gap_px * (static_cast<double>(lanes.size()) - 1);
  const double high = lanes.empty() ? 0 : room / static_cast<double>(lanes.size());
  for (std::size_t i = 0; i < lanes.size(); ++i) {
    Lane& lane = lanes[i];
    lane.area = QRectF(trace_left_px, trace_top_px + static_cast<double>(i) * (high + lane_gap_px),
                       width() - trace_left_px - trace_right_px, high);
    const Extremes all = trace_->channel(lane.channel).extremes(begin_, end_);
    lane.low = std::min<double>(0, all.low);
    lane.high = all.high;
    if (const auto& band = limits_.band[lane.channel])
      lane.high = std::max(lane.high, band->upper.value_or(lane.high));
    if (!(lane.high > lane.low)) lane.high = lane.low + 1;
    lane.high += (lane.high - lane.low) * 0.08;
  }
  return lanes;
}

QString TraceView::markText(const TraceMark& mark) {
  const UnitView& units = UnitView::shared();
  return tr("outside for %1: %2")
      .arg(units.quantityText(mark.length_mm, "mm", 3),
           units.quantityText(mark.value, names[mark.channel].unit, 4));
}

void TraceView::paintMarks(QPainter& painter, const Lane& lane) const {
  constexpr double bar_px = 3, least_px = 2;
  const Palette& p = Palette::current();
  QColor shade = p.warn;
  shade.setAlpha(56);
  for (const TraceMark& mark : limits_.marks) {
    if (mark.channel != lane.channel) continue;
    const double left = std::max(x(first_s_ + mark.from_s), lane.area.left());
    const double right = std::min(std::max(x(first_s_ + mark.to_s), left + least_px), lane.area.right());
    if (right <= left) continue;
    const QRectF area(left, lane.area.top(), right - left, lane.area.height());
    painter.fillRect(area, shade);
    painter.fillRect(QRectF(left, lane.area.top(), right - left, bar_px), p.warn);
    const QString text = markText(mark);
    if (painter.fontMetrics().horizontalAdvance(text) + 8 > area.width()) continue;
    painter.setPen(p.ink);
    painter.drawText(area.adjusted(4, bar_px + 1, -4, 0), Qt::AlignLeft | Qt::AlignTop, text);
  }
}

void TraceView::paintLane(QPainter& painter, const Lane& lane) const {
  const Palette& p = Palette::current();
  const UnitView& units = UnitView::shared();
  const ChannelName& name = names[lane.channel];
  // Limits: the outside is hatched, the bounds are lines.
  if (const auto& band = limits_.band[lane.channel]) {
    const auto outside = [&](double from, double to) {
      const QRectF area(lane.area.left(), lane.y(to), lane.area.width(), lane.y(from) - lane.y(to));
      painter.fillRect(area.intersected(lane.area), QBrush(p.rule, Qt::BDiagPattern));
    };
    painter.setPen(QPen(p.quiet, 1, Qt::DashLine));
    if (band->upper) {
      outside(*band->upper, lane.high);
      painter.drawLine(QPointF(lane.area.left(), lane.y(*band->upper)),
                       QPointF(lane.area.right(), lane.y(*band->upper)));
    }
    if (band->lower) {
      outside(lane.low, *band->lower);
      painter.drawLine(QPointF(lane.area.left(), lane.y(*band->lower)),
                       QPointF(lane.area.right(), lane.y(*band->lower)));
    }
  }
  painter.setPen(QPen(p.rule, 1));
  painter.drawRect(lane.area);
  painter.setPen(p.quiet);
  for (const double level : levels_with_room(units.toShown(lane.low, name.unit),
                                             units.toShown(lane.high, name.unit), lane.area.height())) {
    const double y = lane.y(units.fromShown(level, name.unit));
    painter.drawText(QRectF(0, y - 9, trace_left_px - 6, 18), Qt::AlignRight | Qt::AlignVCenter,
                     UnitView::shared().rounded(level, 5));
    painter.drawLine(QPointF(trace_left_px - 3, y), QPointF(trace_left_px, y));
  }
  const TraceChannel& channel = trace_->channel(lane.channel);
  painter.setPen(QPen(p.series(lane.channel == 3 ? 4 : lane.channel), 1));
  const int columns = static_cast<int>(lane.area.width());
  QVector<QLineF> strokes;
  std::size_t index = std::max(begin_, trace_->indexAt(from()));
  QPointF last;
  bool has_last = false;
  for (int column = 0; column < columns; ++column) {
    const double until_s = secondsAt(lane.area.left() + column + 1);
    const std::size_t next = std::min(end_, trace_->indexAt(until_s));
    if (next <= index) continue;
    const Extremes range = channel.extremes(index, next);
    const double px = lane.area.left() + column + 0.5;
    const QPointF first(px, lane.y(channel.value(index)));
    if (has_last) strokes.push_back({last, first});
    if (range.low != range.high) strokes.push_back({px, lane.y(range.low), px, lane.y(range.high)});
    last = QPointF(px, lane.y(channel.value(next - 1)));
    has_last = true;
    index = next;
  }
  painter.save();
  painter.setClipRect(lane.area);
  painter.drawLines(strokes);
  painter.restore();
  paintMarks(painter, lane);
  painter.setPen(p.ink);
  painter.drawText(QRectF(lane.area.left(), lane.area.top() - 19, lane.area.width(), 18),
                   Qt::AlignLeft | Qt::AlignVCenter,
                   channel_name(lane.channel) + QStringLiteral(", ") + units.unitText(name.unit));
}

void TraceView::paintTime(QPainter& painter) const {
  const Palette& p = Palette::current();
  painter.setPen(p.quiet);
  const double y = height() - bottom_px + 4;
  for (const double level : round_levels(from() - first_s_, to() - first_s_,
                                         std::max(2, static_cast<int>((width() - trace_left_px) / 110)))) {
    const double at = x(level + first_s_);
    painter.drawLine(QPointF(at, y - 4), QPointF(at, y));
    painter.drawText(QRectF(at - 50, y, 100, 14), Qt::AlignCenter, UnitView::shared().rounded(level, 7));
  }
  painter.drawText(QRectF(trace_left_px, y + 13, width() - trace_left_px - trace_right_px, 16),
                   Qt::AlignRight | Qt::AlignVCenter, tr("time since the first sample, s"));
}

void TraceView::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  painter.fillRect(rect(), p.paper);
  painter.setPen(p.quiet);
  if (!trace_) {
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap,
                     tr("Choose a pass to see what was logged of it."));
    return;
  }
  painter.drawText(QRectF(trace_left_px, 2, width() - trace_left_px, 18), Qt::AlignLeft | Qt::AlignVCenter,
                   title_);
  for (const Lane& lane : lanes()) paintLane(painter, lane);
  paintTime(painter);
  if (hasFocus()) {
    painter.setPen(QPen(p.accent, 1, Qt::DotLine));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
  }
}

void TraceView::wheelEvent(QWheelEvent* event) {
  zoom(event->angleDelta().y() > 0 ? 1.3 : 1 / 1.3, secondsAt(event->position().x()));
  event->accept();
}

void TraceView::mousePressEvent(QMouseEvent* event) {
  pressed_px_ = event->position().x();
}

void TraceView::mouseMoveEvent(QMouseEvent* event) {
  if (!trace_) return;
  if (event->buttons() & Qt::LeftButton) {
    pan(axis_.secondsOf(pressed_px_ - event->position().x(), width()));
    pressed_px_ = event->position().x();
    return;
  }
  const std::size_t index = std::clamp(trace_->indexAt(secondsAt(event->position().x())), begin_, end_ - 1);
  const UnitView& units = UnitView::shared();
  QString text = tr("line %1, %2 s")
                     .arg(trace_->line(index))
                     .arg(UnitView::shared().rounded(trace_->time_s(index) - first_s_, 6));
  for (int i = 0; i < Trace::channels; ++i)
    if (trace_->has(static_cast<Trace::Channel>(i)))
      text +=
          QStringLiteral("; ") +
          units.quantityText(trace_->channel(static_cast<Trace::Channel>(i)).value(index), names[i].unit, 4);
  const double at_s = trace_->time_s(index) - first_s_;
  for (const TraceMark& mark : limits_.marks)
    if (mark.from_s <= at_s && at_s < mark.to_s)
      text += QStringLiteral("; ") + channel_name(mark.channel) + QStringLiteral(" ") + markText(mark);
  emit readOut(text);
}

void TraceView::keyPressEvent(QKeyEvent* event) {
  if (!axis_.takeKey(event->key())) return QWidget::keyPressEvent(event);
  update();
}

}  // namespace seamtakt::desk
