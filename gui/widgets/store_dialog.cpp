#include "widgets/store_dialog.hpp"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "widgets/tool_button.hpp"

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
  new QVBoxLayout(this);
  store_ = makeLine(tr("Store"), tr("sqlite:FILE or postgresql://user@host/database"),
                    tr("Stores (*.db *.sqlite *.ledger);;All files (*)"), true);
  anchors_ = makeLine(tr("Anchors (optional)"), tr("file of anchor lines that is kept outside the store"),
                      tr("Anchors (*.txt *.anchor);;All files (*)"), false);
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
  layout()->addWidget(buttons);
}

QLineEdit* StoreDialog::makeLine(const QString& name, const QString& hint, const QString& filter,
                                 bool is_store) {
  auto* caption = new QLabel(name, this);
  auto* line = new QLineEdit(this);
  line->setAccessibleName(name);
  line->setPlaceholderText(hint);
  caption->setBuddy(line);
  QPushButton* choose = tool_button(tr("File …"), tr("Chooses a file"), {}, this);
  choose->setAutoDefault(false);
  connect(choose, &QPushButton::clicked, this, [this, line, name, filter, is_store] {
    const QString path = QFileDialog::getOpenFileName(this, name, {}, filter);
    if (!path.isEmpty()) line->setText(is_store ? store_uri(path) : path);
  });
  auto* row = new QHBoxLayout;
  row->addWidget(line, 1);
  row->addWidget(choose);
  auto* column = static_cast<QVBoxLayout*>(layout());
  column->addWidget(caption);
  column->addLayout(row);
  return line;
}

StoreQuestion StoreDialog::question() const {
  return {store_uri(store_->text()), anchors_->text().trimmed()};
}

}  // namespace seamtakt::desk
