#include "widgets/record_form.hpp"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QVBoxLayout>

#include "document/shown_text.hpp"
#include "ledger/store/refusal_sentence.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

RecordForm::RecordForm(const QString& title, const QString& about, QWidget* parent) : QDialog(parent) {
  setWindowTitle(title);
  setAccessibleName(title);
  setMinimumWidth(560);
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  const auto label = [&](const QString& text) {
    auto* made = new QLabel(text, this);
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    return made;
  };
  if (!about.isEmpty()) column->addWidget(label(about));
  rows_ = new QFormLayout;
  column->addLayout(rows_);
  refusal_ = label({});
  refusal_->setAccessibleName(tr("Why it wasn't written"));
  refusal_->hide();
  column->addWidget(refusal_);
}

QLineEdit* RecordForm::addLine(const QString& label, const QString& hint, const QString& text) {
  auto* line = new QLineEdit(text, this);
  line->setAccessibleName(label);
  line->setPlaceholderText(hint);
  rows_->addRow(label, line);
  return line;
}

QComboBox* RecordForm::addChoice(const QString& label,
                                 const std::vector<std::pair<QString, QString>>& choices) {
  auto* box = new QComboBox(this);
  box->setAccessibleName(label);
  for (const auto& [value, word] : choices) box->addItem(word, value);
  rows_->addRow(label, box);
  return box;
}

void RecordForm::finish(const QString& action, const QString& uri, const Make& make) {
  uri_ = uri;
  make_ = make;
  const QSettings settings;
  who_ = addLine(tr("Who"), tr("your name, kept with the record"), settings.value("records/who").toString());
  why_ = addLine(tr("Why"), tr("the reason, kept with the record"));
  key_ = addLine(tr("Store's key (optional)"), tr("file, where it isn't in its usual place"),
                 settings.value("records/key").toString());
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
  write_ = buttons->addButton(action, QDialogButtonBox::ActionRole);
  write_->setAccessibleName(action);
  write_->setDefault(true);
  connect(write_, &QPushButton::clicked, this, &RecordForm::ask);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  layout()->addWidget(buttons);
}

void RecordForm::ask() {
  QSettings settings;
  settings.setValue("records/who", who_->text().trimmed());
  settings.setValue("records/key", key_->text().trimmed());
  try {
    const auto write = make_();
    refusal_->hide();
    write_->setEnabled(false);
    emit writingAsked({uri_, key_->text(), who_->text(), why_->text(), write});
  } catch (const InputError& error) {
    showRefusal(shown_text(refusal_sentence(error)));
  }
}

void RecordForm::showRefusal(const QString& reason) {
  refusal_->setText(reason);
  refusal_->show();
  write_->setEnabled(true);
}

QString RecordForm::refusal() const {
  return refusal_->isHidden() ? QString() : refusal_->text();
}

}  // namespace seamtakt::desk
