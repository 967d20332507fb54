#include "plots/timeline_view.hpp"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>

#include "models/chain_figures.hpp"
#include "models/palette.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

constexpr double left_px = 64, right_px = 24, top_px = 44, bottom_px = 60;
constexpr double most_row_px = 74;

struct Look {
  int series;           ///< of the palette; -1: quiet
  double share;         ///< of the row's height
  Qt::BrushStyle fill;  ///< told apart without colour
};

Look look_of(MoveKind kind) {
  switch (kind) {
    case MoveKind::arc:
      return {1, 1.0, Qt::SolidPattern};
    case MoveKind::start:
      return {4, 0.75, Qt::Dense4Pattern};
    case MoveKind::end:
      return {4, 0.75, Qt::Dense6Pattern};
    case MoveKind::air:
      return {5, 0.28, Qt::SolidPattern};
    case MoveKind::sense:
      return {2, 0.5, Qt::VerPattern};
    case MoveKind::wait:
      return {-1, 0.5, Qt::BDiagPattern};
    case MoveKind::orientation:
      return {0, 0.65, Qt::DiagCrossPattern};
    case MoveKind::service:
      return {3, 0.65, Qt::HorPattern};
    case MoveKind::wire_change:
      return {6, 0.65, Qt::CrossPattern};
    case MoveKind::index:
      return {0, 0.4, Qt::FDiagPattern};
    case MoveKind::load:
      return {-1, 0.4, Qt::SolidPattern};
  }
  return {-1, 0.3, Qt::NoBrush};
}

QColor color_of(const Look& look) {
  return look.series < 0 ? Palette::current().quiet : Palette::current().series(look.series);
}

void paint_bar(QPainter& painter, const QRectF& bar, MoveKind kind) {
  const Look look = look_of(kind);
  const QColor color = color_of(look);
  painter.fillRect(bar, Palette::current().paper);
  painter.fillRect(bar, QBrush(color, look.fill));
  if (bar.width() > 2.5) {
    painter.setPen(QPen(color, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(bar);
  }
}

double tick_step_s(double span_s, double room_px) {
  for (const double step : {1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 300.0, 600.0, 1800.0, 3600.0})
    if (room_px * step / span_s > 70) return step;
  return 7200;
}

}  // namespace

QString move_word(MoveKind kind) {
  switch (kind) {
    case MoveKind::arc:
      return TimelineView::tr("arc");
    case MoveKind::start:
      return TimelineView::tr("arc start");
    case MoveKind::end:
      return TimelineView::tr("crater and post-flow");
    case MoveKind::air:
      return TimelineView::tr("air move");
    case MoveKind::sense:
      return TimelineView::tr("sensing");
    case MoveKind::wait:
      return TimelineView::tr("wait");
    case MoveKind::orientation:
      return TimelineView::tr("positioner");
    case MoveKind::service:
      return TimelineView::tr("torch service");
    case MoveKind::wire_change:
      return TimelineView::tr("wire change");
    case MoveKind::index:
      return TimelineView::tr("index");
    case MoveKind::load:
      return TimelineView::tr("load and unload");
  }
  return {};
}

std::vector<MoveKind> TimelineView::legendKinds() {
  return {MoveKind::arc,  MoveKind::start,       MoveKind::end,     MoveKind::air,         MoveKind::sense,
          MoveKind::wait, MoveKind::orientation, MoveKind::service, MoveKind::wire_change, MoveKind::load};
}

TimelineView::TimelineView(QWidget* parent) : QWidget(parent) {
  setAccessibleName(tr("Timeline of the robots"));
  setAccessibleDescription(
      tr("The table of moves says the same in words. Arrow keys move, plus and minus zoom, Home shows all."));
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
}

void TimelineView::setCycle(const CycleResult& cycle, double planned_s) {
  const bool same = cycle.weldment == cycle_.weldment;
  const bool was_all = from_s_ <= 0 && to_s_ >= longest_s_;
  cycle_ = cycle;
  planned_s_ = planned_s;
  robots_.clear();
  longest_s_ = std::max({cycle.cycle_time_s, planned_s, cycle.lower_bound_s.value_or(0.0), 1.0});
  for (const Move& move : cycle_.moves) {
    if (std::find(robots_.begin(), robots_.end(), move.robot) == robots_.end()) robots_.push_back(move.robot);
    longest_s_ = std::max(longest_s_, move.end_s);
  }
  std::stable_sort(robots_.begin(), robots_.end(),
                   [](const auto& a, const auto& b) { return b.empty() ? !a.empty() : !a.empty() && a < b; });
  if (!same || was_all) showAll();
  limit();
  update();
}

void TimelineView::setPicked(const QString& seam) {
  picked_ = seam;
  update();
}

void TimelineView::showAll() {
  from_s_ = 0;
  to_s_ = longest_s_ * 1.02;
  update();
}

void TimelineView::limit() {
  const double span = std::clamp(to_s_ - from_s_, 2.0, longest_s_ * 1.02);
  from_s_ = std::clamp(from_s_, 0.0, std::max(0.0, longest_s_ * 1.02 - span));
  to_s_ = from_s_ + span;
}

void TimelineView::zoom(double factor, double at_s) {
  from_s_ = at_s - (at_s - from_s_) / factor;
  to_s_ = at_s + (to_s_ - at_s) / factor;
  limit();
  update();
}

double TimelineView::x(double seconds) const {
  return left_px + (seconds - from_s_) / (to_s_ - from_s_) * (width() - left_px - right_px);
}

double TimelineView::secondsAt(double px) const {
  return from_s_ + (px - left_px) / (width() - left_px - right_px) * (to_s_ - from_s_);
}

int TimelineView::rowOf(const std::string& robot) const {
  return static_cast<int>(std::find(robots_.begin(), robots_.end(), robot) - robots_.begin());
}

QRectF TimelineView::barOf(int index) const {
  const Move& move = cycle_.moves[static_cast<std::size_t>(index)];
  const double lane_px = std::min(most_row_px, (height() - top_px - bottom_px) /
                                                   std::max<double>(1, static_cast<double>(robots_.size())));
  const double high = lane_px * 0.62 * look_of(move.kind).share;
  const double middle = top_px + lane_px * (rowOf(move.robot) + 0.5);
  const double begin = x(move.start_s), end = x(move.end_s);
  return {begin, middle - high / 2, std::max(0.8, end - begin), high};
}

void TimelineView::paintScale(QPainter& painter) const {
  const Palette& p = Palette::current();
  const double step = tick_step_s(to_s_ - from_s_, width() - left_px - right_px);
  for (double tick = std::ceil(from_s_ / step) * step; tick <= to_s_; tick += step) {
    painter.setPen(QPen(p.rule, 1));
    painter.drawLine(QPointF(x(tick), top_px - 4), QPointF(x(tick), height() - bottom_px));
    painter.setPen(p.quiet);
    painter.drawText(QRectF(x(tick) - 40, top_px - 22, 80, 16), Qt::AlignCenter, minutes_text(tick));
  }
}

void TimelineView::paintBars(QPainter& painter) const {
  const Palette& p = Palette::current();
  painter.save();
  painter.setClipRect(QRectF(left_px, 0, width() - left_px - right_px + 1, height()));
  for (std::size_t i = 0; i < cycle_.moves.size(); ++i) {
    const Move& move = cycle_.moves[i];
    if (move.end_s < from_s_ || move.start_s > to_s_) continue;
    const QRectF bar = barOf(static_cast<int>(i));
    paint_bar(painter, bar, move.kind);
    const QString seam = QString::fromStdString(move.seam);
    if (!picked_.isEmpty() && seam == picked_) {
      painter.setPen(QPen(p.ink, 2));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(bar.adjusted(-1, -2, 1, 2));
    }
    if (move.kind == MoveKind::arc && bar.width() > painter.fontMetrics().horizontalAdvance(seam) + 6) {
      painter.setPen(p.dark ? QColor(0x1d, 0x21, 0x27) : QColor(Qt::white));
      painter.drawText(bar, Qt::AlignCenter, seam);
    }
  }
  painter.restore();
}

void TimelineView::paintLimits(QPainter& painter) const {
  const Palette& p = Palette::current();
  const auto line = [&](double at_s, const QString& text, const QColor& color, Qt::PenStyle style,
                        bool left) {
    if (at_s < from_s_ || at_s > to_s_) return;
    painter.setPen(QPen(color, 2, style));
    painter.drawLine(QPointF(x(at_s), 18), QPointF(x(at_s), height() - bottom_px + 4));
    const double wide = painter.fontMetrics().horizontalAdvance(text) + 4;
    double at = left ? x(at_s) - wide - 4 : x(at_s) + 4;
    at = std::clamp(at, 0.0, width() - wide);
    painter.drawText(QRectF(at, 2, wide, 16), Qt::AlignLeft | Qt::AlignVCenter, text);
  };
  if (cycle_.lower_bound_s)
    line(*cycle_.lower_bound_s, tr("bound %1").arg(minutes_text(*cycle_.lower_bound_s)), p.note, Qt::DotLine,
         true);
  if (planned_s_ > 0)
    line(planned_s_, tr("takt %1").arg(minutes_text(planned_s_)),
         cycle_.cycle_time_s > planned_s_ ? p.fail : p.ok, Qt::DashLine, planned_s_ < cycle_.cycle_time_s);
  line(cycle_.cycle_time_s, tr("cycle %1").arg(minutes_text(cycle_.cycle_time_s)), p.ink, Qt::SolidLine,
       cycle_.cycle_time_s < planned_s_);
}

void TimelineView::paintLegend(QPainter& painter) const {
  double at = left_px;
  double y = height() - 40;
  for (const MoveKind kind : legendKinds()) {
    if (std::none_of(cycle_.moves.begin(), cycle_.moves.end(),
                     [&](const Move& move) { return move.kind == kind; }))
      continue;
    const QString word = move_word(kind);
    const double wide = painter.fontMetrics().horizontalAdvance(word);
    if (at + wide + 24 > width()) {
      at = left_px;
      y += 20;
    }
    const double high = 14 * look_of(kind).share;
    paint_bar(painter, QRectF(at, y - high / 2, 18, high), kind);
    painter.setPen(Palette::current().quiet);
    painter.drawText(QRectF(at + 24, y - 9, wide + 2, 18), Qt::AlignVCenter, word);
    at += 24 + wide + 16;
  }
}

void TimelineView::paintEvent(QPaintEvent*) {
  const Palette& p = Palette::current();
  QPainter painter(this);
  if (robots_.empty()) return;
  paintScale(painter);
  const double lane_px =
      std::min(most_row_px, (height() - top_px - bottom_px) / static_cast<double>(robots_.size()));
  for (std::size_t row = 0; row < robots_.size(); ++row) {
    painter.setPen(p.ink);
    const QString name = robots_[row].empty() ? tr("cell") : QString::fromStdString(robots_[row]);
    painter.drawText(QRectF(4, top_px + lane_px * static_cast<double>(row), left_px - 10, lane_px),
                     Qt::AlignVCenter | Qt::AlignRight, name);
  }
  paintBars(painter);
  paintLimits(painter);
  paintLegend(painter);
  if (hasFocus()) {
    painter.setPen(QPen(p.accent, 1, Qt::DotLine));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
  }
}

int TimelineView::moveAt(const QPointF& at) const {
  for (std::size_t i = cycle_.moves.size(); i-- > 0;)
    if (barOf(static_cast<int>(i)).adjusted(-1, -4, 1, 4).contains(at)) return static_cast<int>(i);
  return -1;
}

void TimelineView::wheelEvent(QWheelEvent* event) {
  zoom(event->angleDelta().y() > 0 ? 1.25 : 0.8, secondsAt(event->position().x()));
  event->accept();
}

void TimelineView::mousePressEvent(QMouseEvent* event) {
  pressed_ = event->position();
  pressed_from_s_ = from_s_;
  const int index = moveAt(event->position());
  if (index < 0) return;
  const Move& move = cycle_.moves[static_cast<std::size_t>(index)];
  if (!move.seam.empty()) emit picked(QString::fromStdString(move.seam), move.pass);
}

void TimelineView::mouseMoveEvent(QMouseEvent* event) {
  if (!(event->buttons() & Qt::LeftButton)) return;
  const double span = to_s_ - from_s_;
  from_s_ = pressed_from_s_ - (event->position().x() - pressed_.x()) / (width() - left_px - right_px) * span;
  to_s_ = from_s_ + span;
  limit();
  update();
}

void TimelineView::keyPressEvent(QKeyEvent* event) {
  const double span = to_s_ - from_s_, middle = (from_s_ + to_s_) / 2;
  switch (event->key()) {
    case Qt::Key_Plus:
      return zoom(1.5, middle);
    case Qt::Key_Minus:
      return zoom(1 / 1.5, middle);
    case Qt::Key_Home:
      return showAll();
    case Qt::Key_Left:
      from_s_ -= span / 8;
      to_s_ -= span / 8;
      break;
    case Qt::Key_Right:
      from_s_ += span / 8;
      to_s_ += span / 8;
      break;
    default:
      return QWidget::keyPressEvent(event);
  }
  limit();
  update();
}

bool TimelineView::event(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return QWidget::event(event);
  auto* help = static_cast<QHelpEvent*>(event);
  const int index = moveAt(help->pos());
  if (index < 0) {
    QToolTip::hideText();
    return true;
  }
  const Move& move = cycle_.moves[static_cast<std::size_t>(index)];
  const QString seam = move.seam.empty() ? QString()
                                         : QStringLiteral(" ") + QString::fromStdString(move.seam) +
                                               (move.pass ? tr(", pass %1").arg(move.pass) : QString());
  QToolTip::showText(help->globalPos(),
                     tr("%1%2\n%3 to %4 s")
                         .arg(move_word(move.kind), seam)
                         .arg(move.start_s, 0, 'f', 1)
                         .arg(move.end_s, 0, 'f', 1),
                     this);
  return true;
}

}  // namespace seamtakt::desk
