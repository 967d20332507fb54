#include "pages/page.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QStackedLayout>
#include <QVBoxLayout>
#include <utility>

#include "widgets/finding_list.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

QWidget* empty_side(Page& page, QLabel*& step, const std::function<void()>& demo,
                    const std::function<void()>& fresh) {
  auto* side = new QWidget(&page);
  auto* column = new QVBoxLayout(side);
  step = new QLabel(side);
  step->setWordWrap(true);
  step->setAlignment(Qt::AlignCenter);
  step->setMaximumWidth(520);
  step->setProperty("role", "figure");
  auto* demo_button = new QPushButton(Page::tr("Open the demo"), side);
  demo_button->setAccessibleName(demo_button->text());
  demo_button->setDefault(true);
  auto* new_button = new QPushButton(Page::tr("New plan"), side);
  new_button->setAccessibleName(new_button->text());
  QObject::connect(demo_button, &QPushButton::clicked, &page, demo);
  QObject::connect(new_button, &QPushButton::clicked, &page, fresh);
  auto* buttons = new QHBoxLayout;
  buttons->addStretch(1);
  buttons->addWidget(demo_button);
  buttons->addWidget(new_button);
  buttons->addStretch(1);
  column->addStretch(2);
  column->addWidget(step, 0, Qt::AlignHCenter);
  column->addSpacing(unit_px * 2);
  column->addLayout(buttons);
  column->addStretch(3);
  return side;
}

}  // namespace

Page::Page(const Desk& desk, Link link, const QString& title, const QString& caution, QWidget* parent)
    : QWidget(parent), desk_(desk), title_(title), link_(link) {
  setAccessibleName(title);
  stack_ = new QStackedLayout(this);
  auto* full = new QWidget(this);
  auto* column = new QVBoxLayout(full);
  column->setContentsMargins(unit_px * 2, unit_px, unit_px * 2, 4);
  column->setSpacing(unit_px);
  tools_ = new QHBoxLayout;
  auto* heading = new QLabel(title, full);
  heading->setProperty("role", "title");
  tools_->addWidget(heading);
  tools_->addSpacing(unit_px * 2);
  column->addLayout(tools_);
  down_ = new QSplitter(Qt::Vertical, full);
  across_ = new QSplitter(Qt::Horizontal, down_);
  across_->setChildrenCollapsible(false);
  findings_ = new FindingList(link, down_);
  down_->addWidget(across_);
  down_->addWidget(findings_);
  down_->setStretchFactor(0, 4);
  down_->setStretchFactor(1, 1);
  down_->setChildrenCollapsible(false);
  column->addWidget(down_, 1);
  auto* foot = new QLabel(caution, full);
  foot->setProperty("role", "quiet");
  foot->setTextFormat(Qt::PlainText);
  foot->setToolTip(caution);
  foot->setMinimumWidth(10);
  column->addWidget(foot);
  stack_->addWidget(full);
  stack_->addWidget(empty_side(
      *this, step_, [this] { emit demoAsked(); }, [this] { emit newAsked(); }));
  connect(findings_, &FindingList::goTo, &desk_.selection, &Selection::goTo);
}

void Page::fill(int index, QWidget* widget) {
  across_->insertWidget(index, widget);
}

QList<QWidget*> Page::parts() const {
  QList<QWidget*> parts;
  for (int i = 0; i < across_->count(); ++i) parts << across_->widget(i);
  return parts << findings_;
}

void Page::setShares(int what, int why) {
  what_share_ = what;
  why_share_ = why;
  across_->setStretchFactor(0, what);
  across_->setStretchFactor(1, why);
}

/// The shares hold for the first look; then the splitter is the user's.
void Page::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (std::exchange(was_shown_, true)) return;
  const int wide = std::max(across_->width(), width() - 4 * unit_px), all = what_share_ + why_share_;
  across_->setSizes({wide * what_share_ / all, wide * why_share_ / all});
}

void Page::setEmptyStep(const QString& step) {
  step_->setText(step);
  stack_->setCurrentIndex(step.isEmpty() ? 0 : 1);
}

void Page::setResults(const ResultsPtr& results) {
  results_ = results;
  findings_->setFindings(*results->plan, results->findings);
}

}  // namespace seamtakt::desk
