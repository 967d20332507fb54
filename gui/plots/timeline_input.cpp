// Mouse, wheel and keys of the timeline.
#include <QApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QToolTip>
#include <algorithm>

#include "cell/timeline/plan_order.hpp"
#include "document/shown_text.hpp"
#include "models/tables/cycle_rows.hpp"
#include "models/words/unit_view.hpp"
#include "plots/timeline_view.hpp"

namespace seamtakt::desk {

void TimelineView::shown() {
  emit rangeShown(from(), to());
  update();
}

void TimelineView::showAll() {
  axis_.showAll();
  shown();
}

void TimelineView::zoom(double factor, double at_s) {
  axis_.zoom(factor, at_s);
  shown();
}

/// Comes from the other timeline, so it isn't told on.
void TimelineView::showRange(double from_s, double to_s) {
  axis_.show(from_s, to_s);
  update();
}

int TimelineView::moveAt(const QPointF& at) const {
  for (std::size_t i = cycle_.moves.size(); i-- > 0;)
    if (barOf(static_cast<int>(i)).adjusted(-1, -4, 1, 4).contains(at)) return static_cast<int>(i);
  return -1;
}

OrderPlace TimelineView::placeAt(const QPointF& at) const {
  std::size_t robots = robots_.size();
  while (robots > 1 && robots_[robots - 1].empty()) --robots;
  const int lane = std::clamp(static_cast<int>((at.y() - top()) / lanePx()), 0, static_cast<int>(robots) - 1);
  const std::string& robot = robots_[static_cast<std::size_t>(lane)];
  const std::string next = visit_after(cycle_, robot, axis_.at(at.x(), width()), carried_.toStdString());
  return {QString::fromStdString(robot), QString::fromStdString(next)};
}

void TimelineView::carry(const QPointF& to) {
  if (carried_.isEmpty()) {
    carried_ = QString::fromStdString(cycle_.moves[static_cast<std::size_t>(pressed_move_)].seam);
    setCursor(Qt::ClosedHandCursor);
    target_ = {};
  }
  hand_ = to;
  const OrderPlace place = placeAt(to);
  if (!(place == target_)) {
    target_ = place;
    note_.clear();
    emit carried(carried_, place);
  }
  update();
}

void TimelineView::endCarry() {
  pressed_move_ = -1;
  if (carried_.isEmpty()) return;
  carried_.clear();
  note_.clear();
  unsetCursor();
  update();
}

void TimelineView::setCarryNote(const QString& note) {
  note_ = note;
  update();
}

void TimelineView::wheelEvent(QWheelEvent* event) {
  zoom(event->angleDelta().y() > 0 ? 1.25 : 0.8, axis_.at(event->position().x(), width()));
  event->accept();
}

void TimelineView::mousePressEvent(QMouseEvent* event) {
  pressed_ = event->position();
  pressed_move_ = -1;
  const int index = moveAt(event->position());
  if (index < 0) return;
  const Move move = cycle_.moves[static_cast<std::size_t>(index)];
  if (move.seam.empty()) return;
  emit picked(QString::fromStdString(move.seam), move.pass);
  if (is_arrangeable_ && event->button() == Qt::LeftButton && !move.robot.empty()) pressed_move_ = index;
}

void TimelineView::mouseMoveEvent(QMouseEvent* event) {
  emit pointedAt(axis_.at(event->position().x(), width()));
  if (!(event->buttons() & Qt::LeftButton)) return;
  if (pressed_move_ >= 0) {
    const bool far = (event->position() - pressed_).manhattanLength() >= QApplication::startDragDistance();
    if (far || !carried_.isEmpty()) carry(event->position());
    return;
  }
  axis_.pan(axis_.secondsOf(pressed_.x() - event->position().x(), width()));
  pressed_ = event->position();
  shown();
}

void TimelineView::mouseReleaseEvent(QMouseEvent*) {
  const QString seam = carried_;
  const OrderPlace place = target_;
  endCarry();
  if (!seam.isEmpty()) emit dropped(seam, place);
}

void TimelineView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape && !carried_.isEmpty()) return endCarry();
  if (!axis_.takeKey(event->key())) return QWidget::keyPressEvent(event);
  shown();
}

bool TimelineView::event(QEvent* event) {
  // Esc cancels a drag, whatever else it may mean.
  if (event->type() == QEvent::ShortcutOverride && !carried_.isEmpty() &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
    event->accept();
    return true;
  }
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
  QString text =
      tr("%1%2\n%3 to %4 s")
          .arg(move_word(move.kind), seam, UnitView::shared().decimal(QString::number(move.start_s, 'f', 1)),
               UnitView::shared().decimal(QString::number(move.end_s, 'f', 1)));
  if (!move.why.is_empty()) text += QStringLiteral("\n") + shown_text(move.why);
  QToolTip::showText(help->globalPos(), text, this);
  return true;
}

}  // namespace seamtakt::desk
