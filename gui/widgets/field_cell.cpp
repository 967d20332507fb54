#include "widgets/field_cell.hpp"

#include <QComboBox>
#include <QKeyEvent>
#include <QLabel>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <utility>

#include "document/plan_address.hpp"
#include "models/tables/grid_model.hpp"
#include "models/tables/typed_edit.hpp"
#include "models/words/unit_view.hpp"
#include "widgets/points_dialog.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/rename_dialog.hpp"

namespace seamtakt::desk {

FieldCell::FieldCell(Document& document, std::string pointer, const FieldInfo& field, QWidget* parent)
    : QWidget(parent), document_(document), pointer_(std::move(pointer)), field_(field) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(1);
  label_ = new QLabel(core_label(field.label), this);
  label_->setProperty("role", "quiet");
  label_->setTextFormat(Qt::PlainText);
  label_->setContentsMargins(0, 2, 0, 0);
  refusal_ = new QLabel(this);
  refusal_->setProperty("role", "refusal");
  refusal_->setTextFormat(Qt::PlainText);
  refusal_->setWordWrap(true);
  refusal_->hide();
  column->addWidget(label_);
  if (field.kind == FieldKind::choice || field.kind == FieldKind::reference ||
      field.kind == FieldKind::boolean)
    makeChoice();
  else
    makeLine();
  column->addWidget(editor());
  column->addWidget(refusal_);
  column->addStretch(1);
  label_->setBuddy(editor());
  const auto object = object_at(*document_.plan(), pointer_);
  is_id_ = line_ && object && object->table().id_field == &field_;
  if (is_id_) lockId();
  refresh();
}

QWidget* FieldCell::editor() const {
  return choice_ ? static_cast<QWidget*>(choice_) : line_;
}

void FieldCell::makeChoice() {
  choice_ = new QComboBox(this);
  choice_->setAccessibleName(core_label(field_.label));
  choice_->setAccessibleDescription(core_text(field_.help));
  choice_->setToolTip(core_text(field_.help));
  choice_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  choice_->setMinimumContentsLength(6);
  choice_->setFocusPolicy(Qt::StrongFocus);
  fillChoices();
  connect(choice_, &QComboBox::activated, this,
          [this] { set(choice_->currentData().toString(), WhenLocked::offer); });
}

void FieldCell::fillChoices() {
  const QSignalBlocker quiet(choice_);
  choice_->clear();
  if (!field_.required) choice_->addItem(QStringLiteral("–"), QString());
  if (field_.kind == FieldKind::boolean) {
    choice_->addItem(tr("yes"), QStringLiteral("true"));
    choice_->addItem(tr("no"), QStringLiteral("false"));
  }
  for (std::string_view choice : field_.choices)
    choice_->addItem(core_text(choice),
                     QString::fromUtf8(choice.data(), static_cast<qsizetype>(choice.size())));
  for (const std::string& id : ids_of(*document_.plan(), field_.refers_to, pointer_))
    choice_->addItem(QString::fromStdString(id), QString::fromStdString(id));
}

void FieldCell::makeLine() {
  line_ = new QuantityEdit(this);
  line_->setField(&field_);
  connect(line_, &QuantityEdit::typed, this, [this](const QString& text) { set(text, WhenLocked::refuse); });
  connect(line_, &QuantityEdit::dropped, this, &FieldCell::takeBack);
  connect(line_, &QLineEdit::editingFinished, this, &FieldCell::finish);
  line_->installEventFilter(this);
  if (arePoints())
    line_->setToolTip(line_->toolTip() + QStringLiteral("\n") + tr("F2 or a double click: as a table"));
  connect(line_, &QuantityEdit::refusalChanged, this, [this](const QString& reason) {
    refusal_->setText(reason);
    refusal_->setVisible(!reason.isEmpty());
    line_->setAccessibleDescription(reason.isEmpty() ? core_text(field_.help) : reason);
  });
}

void FieldCell::set(const QString& text, WhenLocked when_locked) {
  const auto refusal = set_typed(document_, pointer_, std::string(field_.key), text, when_locked);
  const QString reason = refusal ? refusal->text : QString();
  asks_ = refusal && refusal->locked;
  if (line_) {
    line_->setRefusal(reason);
  } else {
    refusal_->setText(reason);
    refusal_->setVisible(!reason.isEmpty() && !asks_);
    document_.endTyping();
    if (refusal) refresh();
  }
}

/// An id is what others name it by: no stray key changes it.
void FieldCell::lockId() {
  line_->setReadOnly(true);
  line_->setToolTip(core_text(field_.help) + QStringLiteral("\n") +
                    tr("F2 or a double click: rename, with all that refers to it"));
}

void FieldCell::openId() {
  if (!is_id_) return;
  line_->setReadOnly(false);
  line_->setFocus(Qt::ShortcutFocusReason);
  line_->selectAll();
}

bool FieldCell::arePoints() const {
  return line_ && (field_.kind == FieldKind::path || field_.kind == FieldKind::number_pairs);
}

void FieldCell::askForPoints() {
  auto* dialog = new PointsDialog(field_, line_->text(), window());
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setTaker([this](const QString& text) {
    document_.endTyping();
    set(text, WhenLocked::offer);
    const QString reason = line_->refusal();
    document_.endTyping();
    refresh();
    return reason;
  });
  dialog->open();
}

bool FieldCell::eventFilter(QObject* watched, QEvent* event) {
  const bool is_own = watched == line_ && (arePoints() || (is_id_ && line_->isReadOnly()));
  if (!is_own) return QWidget::eventFilter(watched, event);
  const bool asks =
      event->type() == QEvent::MouseButtonDblClick ||
      (event->type() == QEvent::KeyPress && static_cast<QKeyEvent*>(event)->key() == Qt::Key_F2);
  if (!asks) return QWidget::eventFilter(watched, event);
  if (arePoints())
    askForPoints();
  else
    RenameDialog::ask(document_, pointer_, this);
  return true;
}

/// The entry is whole. What the plan took while it was typed stays; what it couldn't take because of a lock
/// is asked for once.
void FieldCell::finish() {
  document_.endTyping();
  if (is_id_) lockId();
  if (!std::exchange(asks_, false)) return;
  static_cast<void>(
      set_typed(document_, pointer_, std::string(field_.key), line_->text(), WhenLocked::offer));
}

void FieldCell::takeBack() {
  asks_ = false;
  document_.takeBack(pointer_ + "." + std::string(field_.key));
  document_.endTyping();
}

void FieldCell::refresh() {
  const std::string text = field_text(*document_.plan(), pointer_, field_.key);
  if (line_) return line_->setShown(UnitView::shared().fieldShown(text, field_));
  const QSignalBlocker quiet(choice_);
  if (field_.kind == FieldKind::reference) fillChoices();
  int at = choice_->findData(QString::fromStdString(text));
  if (at < 0 && !text.empty()) {
    choice_->addItem(QString::fromStdString(text), QString::fromStdString(text));
    at = choice_->count() - 1;
  }
  choice_->setCurrentIndex(at);
}

}  // namespace seamtakt::desk
