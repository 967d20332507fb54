#include "pages/page.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QSplitter>
#include <QStackedLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "models/tables/grid_model.hpp"
#include "pages/empty_side.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/plain_text.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

/// The place of a row's object as findings call it, and the schedules that it is welded with.
struct RowPlace {
  std::string place;
  std::vector<std::size_t> schedules;
};

RowPlace row_place(const Plan& plan, const std::string& address) {
  const PointerStep list = first_step(address), item = first_step(list.rest);
  if (list.part == "schedules") {
    const std::size_t at = list_index(item.part, plan.schedules.size());
    return at < plan.schedules.size() ? RowPlace{plan.schedules[at].id, {at}} : RowPlace();
  }
  const std::size_t w = list_index(item.part, plan.weldments.size());
  if (list.part != "weldments" || w >= plan.weldments.size()) return {};
  const Weldment& weldment = plan.weldments[w];
  const PointerStep seams = first_step(item.rest);
  const std::size_t s = list_index(first_step(seams.rest).part, weldment.seams.size());
  if (seams.part != "seams" || s >= weldment.seams.size()) return {weldment.id, {}};
  RowPlace row{weldment.id + "/" + weldment.seams[s].id, {}};
  for (const std::string& id : weldment.seams[s].schedules)
    if (const auto at = find_schedule(plan, id); at && std::ranges::count(row.schedules, *at) == 0)
      row.schedules.push_back(*at);
  return row;
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
  empty_ = new EmptySide(*this);
  stack_->addWidget(empty_);
  connect(findings_, &FindingList::goTo, &desk_.selection, &Selection::goTo);
  // A page with results of its own removes its first step when they arrive.
  connect(&desk_.document, &Document::replaced, this, [this] {
    if (!desk_.document.isEmpty()) setEmptyStep({});
  });
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

/// The shares apply when the page is first shown; then the user moves the splitter.
void Page::showEvent(QShowEvent* event) {
  QWidget::showEvent(event);
  if (std::exchange(was_shown_, true)) return;
  const int wide = std::max(across_->width(), width() - 4 * unit_px), all = what_share_ + why_share_;
  across_->setSizes({wide * what_share_ / all, wide * why_share_ / all});
}

void Page::setEmptyStep(const QString& step, const std::vector<FirstStep>& offered) {
  if (!step.isEmpty()) empty_->offer(step, offered);
  stack_->setCurrentIndex(step.isEmpty() ? 0 : 1);
}

QPushButton* Page::firstStep() const {
  return stack_->currentIndex() == 1 ? empty_->first() : nullptr;
}

/// Tables of hidden pages follow the selection too: nobody is looking at their current row.
void Page::connectExplain() {
  for (GridView* table : findChildren<GridView*>()) {
    connect(table, &GridView::said, this, &Page::message);
    connect(table, &GridView::menuAsked, this,
            [this, table](QMenu& menu, const QModelIndex& at) { addToMenu(*table, menu, at); });
    connect(table, &GridView::cellChosen, this, [this, table](const QString& place, const QString& key) {
      if (!table->isVisible()) return;
      explained_ = table;
      explainCell(table, place, key);
    });
  }
  explained_ = across_->count() > 0 ? across_->widget(0)->findChild<GridView*>() : nullptr;
  if (!explained_ && across_->count() > 0) explained_ = qobject_cast<GridView*>(across_->widget(0));
}

void Page::addToMenu(GridView&, QMenu& menu, const QModelIndex& at) {
  menu.addSeparator();
  const QString place = at.data(PlaceRole).toString();
  QAction* explain = menu.addAction(tr("Explain"), this, &Page::explainShown);
  explain->setEnabled(!place.isEmpty());
  const PlanPtr plan = desk_.document.plan();
  std::string address = at.data(AddressRole).toString().toStdString();
  if (address.empty()) address = address_of_finding(*plan, place.toStdString());
  const RowPlace row = row_place(*plan, address);
  QAction* findings = menu.addAction(tr("Go to finding"), this,
                                     [this, row] { emit findingsAsked(QString::fromStdString(row.place)); });
  const auto is_here = [&](const Finding& finding) { return lies_in(finding.where, row.place); };
  findings->setEnabled(results_ && !row.place.empty() && std::ranges::any_of(results_->findings, is_here));
  for (const std::size_t schedule : row.schedules)
    menu.addAction(
        tr("Open schedule %1").arg(menu_text(QString::fromStdString(plan->schedules[schedule].id))), this,
        [this, schedule] {
          desk_.selection.goTo(QString::fromStdString(schedule_address(schedule)),
                               QStringLiteral("wire_feed_speed_m_min"));
        });
}

void Page::explainAgain() {
  const QModelIndex at = explained_ && explained_->isVisible() ? explained_->currentIndex() : QModelIndex();
  explainCell(explained_, at.data(PlaceRole).toString(), at.data(KeyRole).toString());
}

void Page::explainCell(GridView*, const QString& place, const QString& key) {
  desk_.selection.explain(place, key);
}

void Page::setResults(const ResultsPtr& results) {
  results_ = results;
  findings_->setFindings(*results->plan, results->findings);
}

}  // namespace seamtakt::desk
