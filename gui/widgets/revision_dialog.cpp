#include "widgets/revision_dialog.hpp"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include "widgets/style.hpp"

namespace seamtakt::desk {

RevisionDialog::RevisionDialog(const QString& text, const QStringList& seams, QWidget* parent)
    : QDialog(parent) {
  setWindowTitle(tr("New revision"));
  setAccessibleName(tr("New revision"));
  auto* column = new QVBoxLayout(this);
  column->setSpacing(unit_px);
  const auto label = [&](const QString& words) {
    auto* made = new QLabel(words, this);
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    made->setMinimumWidth(460);
    column->addWidget(made);
    return made;
  };
  label(text);
  QLabel* caption = label(seams.isEmpty() ? tr("No seam is welded by it.")
                                          : tr("Seams welded by it. The ticked ones move to the draft:"));
  all_ = new QCheckBox(tr("All %n seams", nullptr, static_cast<int>(seams.size())), this);
  all_->setAccessibleName(all_->text());
  seams_ = new QListWidget(this);
  seams_->setSpacing(2);
  seams_->setAccessibleName(tr("Seams that move to the draft"));
  for (const QString& name : seams) {
    auto* item = new QListWidgetItem(name, seams_);
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
    item->setCheckState(Qt::Unchecked);
  }
  caption->setBuddy(seams_);
  all_->setVisible(seams.size() > 1);
  seams_->setVisible(!seams.isEmpty());
  column->addWidget(all_);
  column->addWidget(seams_, 1);
  auto* buttons = new QDialogButtonBox(this);
  QPushButton* make = buttons->addButton(tr("New revision as draft"), QDialogButtonBox::AcceptRole);
  QPushButton* leave = buttons->addButton(tr("Leave it as it is"), QDialogButtonBox::RejectRole);
  for (QPushButton* button : {make, leave}) button->setAccessibleName(button->text());
  make->setDefault(true);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(all_, &QCheckBox::clicked, this, &RevisionDialog::tickAll);
  connect(seams_, &QListWidget::itemChanged, this, [this] {
    const auto marks = ticked();
    all_->setChecked(std::find(marks.begin(), marks.end(), false) == marks.end());
  });
  make->setFocus();
}

void RevisionDialog::tickAll(bool ticked) {
  const QSignalBlocker quiet(seams_);
  for (int row = 0; row < seams_->count(); ++row)
    seams_->item(row)->setCheckState(ticked ? Qt::Checked : Qt::Unchecked);
  seams_->viewport()->update();
}

std::vector<bool> RevisionDialog::ticked() const {
  std::vector<bool> marks;
  for (int row = 0; row < seams_->count(); ++row)
    marks.push_back(seams_->item(row)->checkState() == Qt::Checked);
  return marks;
}

}  // namespace seamtakt::desk
