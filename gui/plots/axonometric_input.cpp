// Mouse, wheel and keys of the picture in space.
#include <QAction>
#include <QApplication>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QToolTip>
#include <algorithm>
#include <cmath>
#include <limits>

#include "plots/axonometric_view.hpp"

namespace seamtakt::desk {

namespace {

constexpr double turn_deg_px = 0.4, key_turn_deg = 5, least_zoom = 0.5, most_zoom = 40;
constexpr double near_bead_px = 9;
/// A bead that isn't seen is chosen only where no seen one is about as near.
constexpr double veiled_behind_px = 2, hidden_behind_px = 5;

double way_to_bead_px(const QPointF& from, const QPointF& a, const QPointF& b) {
  const QPointF way = b - a;
  const double length2 = QPointF::dotProduct(way, way);
  const double t = length2 > 0 ? std::clamp(QPointF::dotProduct(from - a, way) / length2, 0.0, 1.0) : 0;
  const QPointF gap = from - (a + t * way);
  return std::hypot(gap.x(), gap.y());
}

}  // namespace

void AxonometricView::makeActions() {
  const std::pair<QString, ViewAngles> views[] = {
      {tr("From the front"), angles_of(SnapView::front)}, {tr("From the rear"), angles_of(SnapView::rear)},
      {tr("From the left"), angles_of(SnapView::left)},   {tr("From the right"), angles_of(SnapView::right)},
      {tr("From above"), angles_of(SnapView::above)},     {tr("From below"), angles_of(SnapView::below)},
      {tr("From the front, left and above"), first_view}};
  for (const auto& [text, angles] : views) {
    auto* action = new QAction(text, this);
    action->setData(QVariant::fromValue(angles));
    connect(action, &QAction::triggered, this, [this, angles = angles] {
      zoom_ = 1;
      shift_px_ = {};
      setAngles(angles);
      update();
    });
    addAction(action);
    view_actions_ << action;
  }
}

void AxonometricView::turn(double yaw_deg, double pitch_deg) {
  setAngles({angles_.yaw_deg + yaw_deg, angles_.pitch_deg + pitch_deg});
}

void AxonometricView::zoomAt(double factor, const QPointF& at) {
  const double next = std::clamp(zoom_ * factor, least_zoom, most_zoom);
  // What is under the cursor stays there.
  const ViewFit before = fit();
  zoom_ = next;
  const ViewFit after = fit();
  const double ratio = after.scale / before.scale;
  shift_px_ +=
      QPointF(at.x() - ratio * (at.x() - before.x) - after.x, at.y() - ratio * (at.y() - before.y) - after.y);
  update();
}

int AxonometricView::seamAt(const QPointF& at) const {
  const ViewFit fit = this->fit();
  int best = -1;
  double nearest = near_bead_px;
  for (const BeadPart& bead : frame().beads()) {
    const double behind = bead.sight == Sight::hidden   ? hidden_behind_px
                          : bead.sight == Sight::veiled ? veiled_behind_px
                                                        : 0;
    const double away = way_to_bead_px(at, this->at(fit, bead.a), this->at(fit, bead.b)) + behind;
    if (away >= nearest) continue;
    nearest = away;
    best = static_cast<int>(bead.seam);
  }
  return best;
}

void AxonometricView::mousePressEvent(QMouseEvent* event) {
  pressed_px_ = last_px_ = event->position();
  is_turning_ = false;
}

void AxonometricView::mouseMoveEvent(QMouseEvent* event) {
  if (!(event->buttons() & (Qt::LeftButton | Qt::MiddleButton))) return;
  if ((event->position() - pressed_px_).manhattanLength() >= QApplication::startDragDistance())
    is_turning_ = true;
  if (!is_turning_) return;
  const QPointF way = event->position() - last_px_;
  last_px_ = event->position();
  if (event->buttons() & Qt::MiddleButton || event->modifiers() & Qt::ShiftModifier) {
    shift_px_ += way;
    update();
  } else {
    // The near side follows the hand.
    turn(-turn_deg_px * way.x(), turn_deg_px * way.y());
  }
}

void AxonometricView::mouseReleaseEvent(QMouseEvent* event) {
  if (is_turning_ || event->button() != Qt::LeftButton) return;
  const int index = seamAt(event->position());
  if (index >= 0) emit picked(index);
}

void AxonometricView::wheelEvent(QWheelEvent* event) {
  if (event->angleDelta().y() == 0) return event->ignore();
  zoomAt(event->angleDelta().y() > 0 ? 1.2 : 1 / 1.2, event->position());
  event->accept();
}

void AxonometricView::keyPressEvent(QKeyEvent* event) {
  if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier)) return QWidget::keyPressEvent(event);
  const QPointF middle = QRectF(rect()).center();
  switch (event->key()) {
    case Qt::Key_Left:
      return turn(-key_turn_deg, 0);
    case Qt::Key_Right:
      return turn(key_turn_deg, 0);
    case Qt::Key_Up:
      return turn(0, key_turn_deg);
    case Qt::Key_Down:
      return turn(0, -key_turn_deg);
    case Qt::Key_Plus:
      return zoomAt(1.2, middle);
    case Qt::Key_Minus:
      return zoomAt(1 / 1.2, middle);
    case Qt::Key_Home:
      return view_actions_.last()->trigger();
    default:
      break;
  }
  const int which = event->key() - Qt::Key_1;
  if (which >= 0 && which < static_cast<int>(snap_views.size())) return view_actions_[which]->trigger();
  QWidget::keyPressEvent(event);
}

void AxonometricView::focusInEvent(QFocusEvent* event) {
  QWidget::focusInEvent(event);
  update();
}

void AxonometricView::focusOutEvent(QFocusEvent* event) {
  QWidget::focusOutEvent(event);
  update();
}

bool AxonometricView::event(QEvent* event) {
  if (event->type() == QEvent::PaletteChange) update();
  if (event->type() != QEvent::ToolTip) return QWidget::event(event);
  auto* help = static_cast<QHelpEvent*>(event);
  const int index = seamAt(help->pos());
  if (index >= 0 && static_cast<std::size_t>(index) < seams_.size())
    QToolTip::showText(help->globalPos(), seams_[static_cast<std::size_t>(index)].tip, this);
  else
    QToolTip::hideText();
  return true;
}

}  // namespace seamtakt::desk
