#include "widgets/rename_dialog.hpp"

#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "document/plan_address.hpp"
#include "document/rename.hpp"
#include "models/tables/grid_model.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

/// "BD/S03: Schedules"; an accepted finding by its rule.
QString reference_text(const Plan& plan, const Reference& reference) {
  const FieldInfo* field = field_info(plan, reference.pointer, reference.key);
  const QString label = field ? core_label(field->label) : QString();
  const std::string rule = field_text(plan, reference.pointer, "rule");
  const std::string name = rule.empty() ? item_name(plan, reference.pointer) : rule;
  // What has no id on its way, such as the positioner, is called by its table.
  const auto object = object_at(plan, reference.pointer);
  const QString of = !name.empty() ? QString::fromStdString(name)
                     : object      ? core_text(object->table().title)
                                   : QString();
  return of + QStringLiteral(": ") + label;
}

}  // namespace

RenameDialog::RenameDialog(Document& document, std::string pointer, QWidget* parent)
    : QDialog(parent), document_(document), pointer_(std::move(pointer)) {
  const Plan& plan = *document_.plan();
  const QString id = QString::fromStdString(field_text(plan, pointer_, "id"));
  setWindowTitle(tr("Rename"));
  setAccessibleName(tr("Rename"));
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  const auto label = [&](const QString& words) {
    auto* made = new QLabel(words, this);
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    made->setMinimumWidth(420);
    column->addWidget(made);
    return made;
  };
  QLabel* caption = label(tr("New id of %1:").arg(id));
  line_ = new QLineEdit(id, this);
  line_->setAccessibleName(tr("New id"));
  line_->selectAll();
  caption->setBuddy(line_);
  column->addWidget(line_);
  const auto references = references_to(plan, pointer_);
  QLabel* named = label(
      references.empty() ? tr("Nothing refers to it.")
                         : tr("Fields that refer to it and are renamed with it: %1").arg(references.size()));
  references_ = new QListWidget(this);
  references_->setAccessibleName(tr("What refers to it"));
  for (const Reference& each : references) references_->addItem(reference_text(plan, each));
  references_->setVisible(!references.empty());
  named->setBuddy(references_);
  column->addWidget(references_, 1);
  refusal_ = label({});
  refusal_->setProperty("role", "refusal");
  refusal_->hide();
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* rename = buttons->addButton(tr("Rename"), QDialogButtonBox::AcceptRole);
  QPushButton* leave = buttons->addButton(tr("Leave it as it is"), QDialogButtonBox::RejectRole);
  for (QPushButton* button : {rename, leave}) button->setAccessibleName(button->text());
  rename->setDefault(true);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &RenameDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  line_->setFocus();
}

void RenameDialog::ask(Document& document, const std::string& pointer, QWidget* parent) {
  if (field_text(*document.plan(), pointer, "id").empty()) return;
  auto* dialog = new RenameDialog(document, pointer, parent->window());
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->open();
}

void RenameDialog::accept() {
  const std::string before = field_text(*document_.plan(), pointer_, "id");
  const std::string id = line_->text().trimmed().toStdString();
  if (id == before) return QDialog::accept();
  document_.endTyping();
  const auto refusal = document_.edit(
      tr("Rename %1").arg(QString::fromStdString(before)), {},
      [&](Plan& plan) { rename_item(plan, pointer_, id); }, WhenLocked::refuse);
  if (!refusal) return QDialog::accept();
  refusal_->setText(refusal->text);
  refusal_->show();
}

}  // namespace seamtakt::desk
