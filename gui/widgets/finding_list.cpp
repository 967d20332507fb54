#include "widgets/finding_list.hpp"

#include <QHeaderView>
#include <QPushButton>
#include <QVBoxLayout>

#include "models/tables/finding_model.hpp"
#include "models/words/state_text.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

FindingList::FindingList(Link link, QWidget* parent) : QWidget(parent), model_(new FindingModel(this)) {
  model_->setLink(link);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  head_ = new QPushButton(this);
  head_->setProperty("role", "fold");
  head_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  head_->setAccessibleName(tr("Findings of this page"));
  view_ = new GridView(*model_, tr("Findings of this page"), this);
  view_->setColumnHidden(5, true);
  view_->setColumnHidden(6, true);
  view_->setSelectionBehavior(QAbstractItemView::SelectRows);
  view_->setSelectionMode(QAbstractItemView::SingleSelection);
  view_->horizontalHeader()->hide();
  column->addWidget(head_);
  column->addWidget(view_, 1);
  connect(head_, &QPushButton::clicked, this, [this] { setFolded(!folded_); });
  connect(view_, &GridView::opened, this, [this](int row) {
    const FindingTarget& target = model_->target(row);
    emit goTo(target.address, target.key);
  });
  setFolded(true);
}

void FindingList::setFindings(const Plan& plan, const Findings& findings) {
  const bool was_empty = model_->rowCount() == 0;
  model_->setFindings(plan, findings);
  tally_ = {};
  for (int row = 0; row < model_->rowCount(); ++row) tally_.add(model_->finding(row).severity);
  const bool is_empty = model_->rowCount() == 0;
  if (is_empty != was_empty) setFolded(is_empty);
  view_->setColumnWidth(0, 110);
  view_->fitColumn(1, 130, 260);
  view_->horizontalHeader()->setSectionResizeMode(2, QHeaderView::Stretch);
  for (const int quantity : {3, 4}) view_->fitColumn(quantity, 96, 150);
  paintHead();
}

void FindingList::paintHead() {
  const QString text = (folded_ ? QStringLiteral("▸ ") : QStringLiteral("▾ ")) + tally_text(tally_);
  head_->setText(text);
  head_->setAccessibleDescription(text);
}

void FindingList::setFolded(bool folded) {
  folded_ = folded;
  view_->setVisible(!folded);
  setMaximumHeight(folded ? head_->sizeHint().height() : QWIDGETSIZE_MAX);
  setMinimumHeight(folded ? head_->sizeHint().height() : head_->sizeHint().height() + row_px * 2);
  paintHead();
}

}  // namespace seamtakt::desk
