#include "widgets/store_dialog.hpp"

#include <QDialogButtonBox>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/file_line.hpp"

namespace seamtakt::desk {

QString store_uri(const QString& text) {
  const QString place = text.trimmed();
  if (place.isEmpty() || place.startsWith(QStringLiteral("sqlite:")) || place.contains(QStringLiteral("://")))
    return place;
  return QStringLiteral("sqlite:") + place;
}

StoreDialog::StoreDialog(const StoreQuestion& last, QWidget* parent) : QDialog(parent) {
  setWindowTitle(tr("Open record store"));
  setMinimumWidth(560);
  auto* column = new QVBoxLayout(this);
  store_ = add_file_line(*this, *column, tr("Store"), tr("sqlite:FILE or postgresql://user@host/database"),
                         tr("Stores (*.db *.sqlite *.ledger);;All files (*)"), store_uri);
  anchors_ = add_file_line(*this, *column, tr("Anchors (optional)"),
                           tr("file of anchor lines that is kept outside the store"),
                           tr("Anchors (*.txt *.anchor);;All files (*)"));
  store_->setText(last.uri);
  anchors_->setText(last.anchors);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel, this);
  buttons->button(QDialogButtonBox::Ok)->setText(tr("Open and verify"));
  buttons->button(QDialogButtonBox::Ok)->setEnabled(!store_->text().trimmed().isEmpty());
  connect(store_, &QLineEdit::textChanged, buttons, [buttons](const QString& text) {
    buttons->button(QDialogButtonBox::Ok)->setEnabled(!text.trimmed().isEmpty());
  });
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  column->addWidget(buttons);
}

StoreQuestion StoreDialog::question() const {
  return {store_uri(store_->text()), anchors_->text().trimmed()};
}

}  // namespace seamtakt::desk
