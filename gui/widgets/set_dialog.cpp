#include "widgets/set_dialog.hpp"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "models/tables/grid_model.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

SetDialog::SetDialog(const FieldInfo& field, int rows, const QString& present, QWidget* parent)
    : QDialog(parent) {
  setWindowTitle(tr("Set for all selected rows"));
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  auto* label = new QLabel(tr("%1, rows: %2").arg(core_label(field.label)).arg(rows), this);
  label->setTextFormat(Qt::PlainText);
  column->addWidget(label);
  if (field.kind == FieldKind::choice) {
    choice_ = new QComboBox(this);
    if (!field.required) choice_->addItem(QStringLiteral("–"), QString());
    for (std::string_view item : field.choices)
      choice_->addItem(core_text(item), QString::fromUtf8(item.data(), static_cast<qsizetype>(item.size())));
    choice_->setCurrentIndex(std::max(0, choice_->findData(present)));
  } else {
    line_ = new QuantityEdit(this);
    line_->setField(&field);
    line_->setText(present);
    line_->selectAll();
  }
  editor()->setAccessibleName(core_label(field.label));
  column->addWidget(editor());
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* set = buttons->addButton(tr("Set"), QDialogButtonBox::AcceptRole);
  set->setDefault(true);
  buttons->addButton(tr("Leave it as it is"), QDialogButtonBox::RejectRole);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
  editor()->setFocus();
}

QWidget* SetDialog::editor() const {
  return choice_ ? static_cast<QWidget*>(choice_) : line_;
}

QString SetDialog::value() const {
  return choice_ ? choice_->currentData().toString() : line_->text();
}

}  // namespace seamtakt::desk
