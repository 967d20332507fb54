#include "widgets/quantity_edit.hpp"

#include <QKeyEvent>
#include <QPainter>
#include <QStyle>

#include "document/shown_text.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/grid_model.hpp"
#include "models/tables/step.hpp"
#include "models/words/typed_numbers.hpp"
#include "models/words/unit_view.hpp"

namespace seamtakt::desk {

QuantityEdit::QuantityEdit(QWidget* parent) : QLineEdit(parent) {
  connect(this, &QLineEdit::textEdited, this, &QuantityEdit::typed);
  connect(&UnitView::shared(), &UnitView::changed, this, [this] { setField(field_); });
}

void QuantityEdit::setField(const FieldInfo* field) {
  field_ = field;
  if (!field_) return;
  const QString unit = unitShown();
  setTextMargins(0, 0, unit.isEmpty() ? 0 : fontMetrics().horizontalAdvance(unit) + 6, 0);
  setAccessibleName(unit.isEmpty() ? core_label(field->label)
                                   : core_label(field->label) + QStringLiteral(", ") + unit);
  setAccessibleDescription(core_text(field->help));
  setToolTip(core_text(field->help) + QStringLiteral("\n") + shown_text(field->expectation()));
  if (field->kind == FieldKind::number || field->kind == FieldKind::integer) setAlignment(Qt::AlignRight);
  update();
}

QString QuantityEdit::unitShown() const {
  return field_ ? UnitView::shared().unitText(field_->unit) : QString();
}

void QuantityEdit::setShown(const QString& text) {
  shown_ = text;
  follows_ = true;
  if (hasFocus() && (isModified() || !refusal_.isEmpty())) return;
  if (text != this->text()) setText(text);
  if (!isModified()) setRefusal({});
}

void QuantityEdit::setRefusal(const QString& reason) {
  if (reason == refusal_) return;
  refusal_ = reason;
  setProperty("refused", !reason.isEmpty());
  style()->unpolish(this);
  style()->polish(this);
  emit refusalChanged(reason);
}

void QuantityEdit::focusOutEvent(QFocusEvent* event) {
  QLineEdit::focusOutEvent(event);
  // A refused text is replaced by the valid value; a good one is shown as the view shows it.
  if (!follows_) return;
  setModified(false);
  if (text() != shown_) setText(shown_);
  setRefusal({});
}

void QuantityEdit::step(double steps) {
  const double lower = field_ ? UnitView::shared().toShown(field_->range.lower, field_->unit) : -1e300;
  const std::string plain = plain_numbers(text().toStdString(), FieldKind::number, true);
  if (const auto next = stepped_text(plain, steps, lower)) {
    setText(UnitView::shared().decimal(QString::fromStdString(*next)));
    setModified(true);
    emit typed(text());
  }
}

void QuantityEdit::drop() {
  setModified(false);
  setRefusal({});
  emit dropped();
  setText(shown_);
}

/// Undo and redo act on the plan, not on the field; a refused text isn't in the plan yet and is dropped. The
/// key for the other units belongs to the menu: the field's text is then shown in them. A table's editor,
/// whose text would be read in other units than it was typed in, consumes that key and does nothing.
bool QuantityEdit::event(QEvent* event) {
  if (event->type() != QEvent::ShortcutOverride) return QLineEdit::event(event);
  auto* key = static_cast<QKeyEvent*>(event);
  const bool is_undo = key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo);
  const bool changes_units = key->keyCombination() == other_units_key;
  if (!is_undo && !changes_units) return QLineEdit::event(event);
  const bool was_refused = follows_ && !refusal_.isEmpty();
  if (was_refused)
    drop();
  else if (is_undo || follows_)
    setModified(false);
  event->setAccepted(is_undo ? was_refused : !follows_);
  return event->isAccepted();
}

void QuantityEdit::keyPressEvent(QKeyEvent* event) {
  const bool steps = field_ && (field_->kind == FieldKind::number || field_->kind == FieldKind::integer);
  if (follows_ && event->key() == Qt::Key_Escape && (isModified() || !refusal_.isEmpty())) {
    drop();
    return;
  }
  if (event->keyCombination() == other_units_key) return;
  if (steps && event->key() == Qt::Key_Up) return step(1);
  if (steps && event->key() == Qt::Key_Down) return step(-1);
  if (steps && event->key() == Qt::Key_PageUp) return step(10);
  if (steps && event->key() == Qt::Key_PageDown) return step(-10);
  QLineEdit::keyPressEvent(event);
}

void QuantityEdit::paintEvent(QPaintEvent* event) {
  QLineEdit::paintEvent(event);
  const QString unit = unitShown();
  if (unit.isEmpty()) return;
  QPainter painter(this);
  painter.setPen(Palette::current().quiet);
  painter.drawText(rect().adjusted(6, 0, -6, 0), Qt::AlignVCenter | Qt::AlignRight, unit);
}

}  // namespace seamtakt::desk
