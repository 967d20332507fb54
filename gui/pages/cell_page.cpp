#include "pages/cell_page.hpp"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QSplitter>
#include <QStackedWidget>
#include <QStyle>
#include <QToolButton>
#include <QVBoxLayout>

#include "base/error.hpp"
#include "document/shown_text.hpp"
#include "exchange/picture/torch_place.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/tables/cycle_rows.hpp"
#include "pages/order_bar.hpp"
#include "plots/axonometric_view.hpp"
#include "plots/seam_view.hpp"
#include "plots/timeline_view.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

CellPage::CellPage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::cell, tr("Cell"),
           tr("A planned timeline is no proof that a robot's motion is safe: the cell's safeguards follow "
              "ISO 10218 and local law."),
           parent) {
  loss_ = new ValueModel(loss_columns(), this);
  moves_ = new ValueModel(move_columns(), this);
  setWhat(makeWhat());
  setWhy(makeWhy());
  setShares(2, 5);
  makeTools();
  connectParts();
  showCycle();
}

QWidget* CellPage::makeWhat() {
  auto* what = new QSplitter(Qt::Vertical);
  loss_table_ = new GridView(*loss_, tr("What the cycle is made of"), what);
  loss_table_->keepColumns(QStringLiteral("losses"));
  move_table_ = new GridView(*moves_, tr("Moves of the robots"), what);
  move_table_->keepColumns(QStringLiteral("moves"));
  move_table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  what->addWidget(loss_table_);
  what->addWidget(move_table_);
  what->setSizes({330, 260});
  return what;
}

QWidget* CellPage::makeWhy() {
  auto* side = new QWidget(this);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  without_note_ = new QLabel(side);
  without_note_->setWordWrap(true);
  without_note_->setTextFormat(Qt::PlainText);
  without_note_->hide();
  bar_ = new OrderBar(desk_, side);
  pictures_ = new QSplitter(Qt::Vertical, side);
  timeline_ = new TimelineView(pictures_);
  other_ = new TimelineView(pictures_);
  other_->setAccessibleName(tr("Timeline that it is compared with"));
  other_->hide();
  order_pictures_ = new QStackedWidget(pictures_);
  space_ = new AxonometricView(order_pictures_);
  order_ = new SeamView(order_pictures_);
  order_->setAccessibleName(tr("Seams in welding order"));
  order_pictures_->addWidget(space_);
  order_pictures_->addWidget(order_);
  for (QWidget* each : {static_cast<QWidget*>(timeline_), static_cast<QWidget*>(other_),
                        static_cast<QWidget*>(order_pictures_)})
    pictures_->addWidget(each);
  pictures_->setSizes({260, 260, 300});
  column->addWidget(without_note_);
  column->addWidget(bar_);
  column->addWidget(pictures_, 1);
  return side;
}

void CellPage::makeTools() {
  weldments_ = new QComboBox(this);
  weldments_->setAccessibleName(tr("Weldment"));
  weldments_->setMinimumContentsLength(10);
  headline_ = new QLabel(this);
  headline_->setTextFormat(Qt::PlainText);
  tools().addWidget(weldments_);
  without_ = new QComboBox(this);
  without_->setAccessibleName(tr("Robot that is out"));
  without_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
  without_->setToolTip(
      tr("What the cell does without one of its robots: its seams go to others, or to hands"));
  tools().addWidget(without_);
  tools().addWidget(headline_);
  tools().addStretch(1);
  QPushButton* all =
      tool_button(tr("Whole cycle"), tr("Shows the timeline from end to end (Home)"), {}, this);
  tools().addWidget(all);
  connect(all, &QPushButton::clicked, timeline_, &TimelineView::showAll);
  auto* in_space = new QToolButton(this);
  in_space->setText(tr("3D"));
  in_space->setAccessibleName(tr("Weldment in space"));
  in_space->setToolTip(tr("Shows the weldment in space in place of the plan of its seams"));
  in_space->setCheckable(true);
  in_space->setChecked(true);
  connect(in_space, &QToolButton::toggled, this, [this](bool is_space) {
    order_pictures_->setCurrentWidget(is_space ? static_cast<QWidget*>(space_) : order_);
  });
  tools().addWidget(in_space);
}

void CellPage::connectParts() {
  connect(weldments_, &QComboBox::activated, this, [this](int index) {
    const auto chosen = static_cast<std::size_t>(std::max(0, index));
    if (desk_.selection.seam().weldment != chosen) desk_.selection.setSeam({chosen, 0});
  });
  connect(without_, &QComboBox::activated, this, [this] { setWithout(without_->currentData().toString()); });
  connect(&what_if_, &Evaluator::ready, this, [this](const ResultsPtr& results) {
    if (results->plan != asked_) return;
    what_if_results_ = results;
    showCycle();
  });
  for (TimelineView* each : {timeline_, other_}) connect(each, &TimelineView::picked, this, &CellPage::pick);
  connect(timeline_, &TimelineView::pointedAt, this, &CellPage::showTorches);
  connect(space_, &AxonometricView::picked, this, [this](int index) {
    desk_.selection.setSeam({desk_.selection.seam().weldment, static_cast<std::size_t>(index)});
  });
  connect(timeline_, &TimelineView::rangeShown, other_, &TimelineView::showRange);
  connect(other_, &TimelineView::rangeShown, timeline_, &TimelineView::showRange);
  connect(timeline_, &TimelineView::carried, this, [this](const QString& seam, const OrderPlace& to) {
    timeline_->setCarryNote(bar_->preview(seam, to));
  });
  connect(timeline_, &TimelineView::dropped, bar_, &OrderBar::place);
  connect(bar_, &OrderBar::comparisonChanged, this, &CellPage::showCycle);
  connect(bar_, &OrderBar::message, this, &Page::message);
  connect(move_table_, &GridView::rowChosen, this, [this](int row) {
    const auto& cells = moves_->row(row).cells;
    pick(cells[move_seam_column].text, cells[move_pass_column].text.toInt());
  });
  connect(move_table_, &GridView::opened, this,
          [this](int row) { desk_.selection.goTo(moves_->row(row).address, "robots"); });
  connect(&desk_.selection, &Selection::seamChanged, this, &CellPage::showCycle);
  connect(&desk_.document, &Document::replaced, this, [this] {
    what_if_results_.reset();
    asked_.reset();
    out_ = {};
  });
}

const ResultsPtr& CellPage::shown() const {
  return what_if_results_ ? what_if_results_ : results();
}

const CycleResult* CellPage::cycle() const {
  const std::size_t at = desk_.selection.seam().weldment;
  return results() && at < shown()->cycles.size() ? &shown()->cycles[at] : nullptr;
}

void CellPage::setWithout(const QString& robot) {
  what_if_results_.reset();
  asked_.reset();
  out_ = {};
  if (robot.isEmpty() || !results()) return showCycle();
  try {
    out_ = without_robot(*results()->plan, robot.toStdString(), robot.toStdString());
    asked_ = std::make_shared<const Plan>(out_.plan);
    what_if_.evaluate(asked_);
  } catch (const InputError& error) {
    emit message(QString::fromUtf8(error.what()));
  }
}

QString CellPage::withoutText() const {
  return without_note_->isHidden() ? QString() : without_note_->text();
}

namespace {

QString listed(const std::vector<std::string>& places) {
  QStringList names;
  for (const std::string& place : places) names << QString::fromStdString(place);
  return names.join(QStringLiteral(", "));
}

/// What the takt leaves for a cycle; 0 without takt.
double planned_s(const CycleResult& cycle) {
  return cycle.takt_limit_s.value_or(0);
}

}  // namespace

void CellPage::pick(const QString& seam, int pass) {
  const CycleResult* shown = cycle();
  if (!shown || seam.isEmpty()) return;
  const auto place = find_seam(*results()->plan, shown->weldment, seam.toStdString());
  if (!place) return;
  desk_.selection.setSeam(*place);
  // Moves that belong to no pass leave the one that was chosen.
  if (pass > 0) bar_->setPass(pass);
}

/// Seams named by their place in the welding order of their robot: "3 S07".
void CellPage::showOrder(const CycleResult& cycle) {
  const Weldment& weldment = results()->plan->weldments[desk_.selection.seam().weldment];
  std::vector<DrawnSeam> drawn;
  std::map<std::string, DrawnSeam*> by_id;
  drawn.reserve(weldment.seams.size());
  for (const Seam& seam : weldment.seams) {
    DrawnSeam line;
    line.name = QString::fromStdString(seam.id);
    line.path_mm = seam.path_mm;
    line.by_hand = seam.by == "manual";
    drawn.push_back(std::move(line));
    by_id[seam.id] = &drawn.back();
  }
  std::map<std::string, int> order;
  for (const OrderStep& step : cycle.order) {
    const auto at = by_id.find(step.seam);
    if (at == by_id.end() || at->second->order != 0) continue;
    DrawnSeam& seam = *at->second;
    seam.order = ++order[step.robot];
    seam.value = seam.order;
    seam.name =
        tr("%1: %3 no. %2").arg(seam.name, QString::number(seam.order), QString::fromStdString(step.robot));
  }
  for (DrawnSeam& seam : drawn) seam.tip = seam.name;
  const auto text = [](double value) { return QString::number(value, 'f', 0); };
  order_->setMeaning(tr("place in the robot's order"), text);
  space_->setMeaning(tr("place in the robot's order"), text);
  space_->setWeldment(results()->plan, desk_.selection.seam().weldment);
  space_->setPicked(static_cast<int>(desk_.selection.seam().seam));
  space_->setTorches({});
  space_->setSeams(drawn);
  order_->setSeams(std::move(drawn));
  order_->setPicked(static_cast<int>(desk_.selection.seam().seam));
}

/// The torches as the timeline has them at a time.
void CellPage::showTorches(double at_s) {
  const CycleResult* shown = cycle();
  if (!shown || !space_->isVisible()) return;
  std::vector<TorchMark> marks;
  for (const TorchPlace& place : torch_places(*shown, at_s))
    marks.push_back({QString::fromStdString(place.robot), place.at_mm, place.is_welding});
  space_->setTorches(std::move(marks));
}

void CellPage::showChoices(const Plan& plan) {
  weldments_->clear();
  for (const Weldment& weldment : plan.weldments) weldments_->addItem(QString::fromStdString(weldment.id));
  weldments_->setCurrentIndex(static_cast<int>(desk_.selection.seam().weldment));
  const QString out = without_->currentData().toString();
  without_->clear();
  without_->addItem(tr("all robots"), QString());
  for (const Robot& robot : plan.cell->robots)
    without_->addItem(tr("without %1").arg(QString::fromStdString(robot.id)),
                      QString::fromStdString(robot.id));
  without_->setCurrentIndex(std::max(0, without_->findData(what_if_results_ ? out : QString())));
  without_note_->setVisible(what_if_results_ != nullptr);
  if (!what_if_results_) return;
  const QString rest = out_.unreached.empty()
                           ? tr("none is left to hands.")
                           : tr("nobody reaches %1: by hand, or they wait.").arg(listed(out_.unreached));
  without_note_->setText(shown_text(Sentence(
      "desk.cell.without"_key,
      {{"robot", out.toStdString()}, {"seams", out_.taken_over.size()}, {"rest", rest.toStdString()}})));
}

void CellPage::showTimelines(const CycleResult& cycle) {
  const auto& comparison = bar_->comparison();
  const double reach_s =
      comparison ? std::max(TimelineView::reachOf(cycle, planned_s(cycle)),
                            TimelineView::reachOf(comparison->cycle, planned_s(comparison->cycle)))
                 : 0;
  timeline_->setArrangeable(!what_if_results_);
  timeline_->setRobots(ids_of(*shown()->plan, IdList::robots, {}));
  timeline_->setCycle(cycle, planned_s(cycle), comparison ? tr("This plan") : QString(), reach_s);
  timeline_->setLegend(!comparison);
  if (other_->isHidden() == comparison.has_value()) {
    const int all = pictures_->height();
    pictures_->setSizes(comparison ? QList<int>{all * 4 / 11, all * 5 / 11, all * 2 / 11}
                                   : QList<int>{all * 5 / 11, 0, all * 6 / 11});
    other_->setVisible(comparison.has_value());
  }
  if (comparison) {
    other_->setCycle(comparison->cycle, planned_s(comparison->cycle), comparison->name, reach_s);
    other_->showRange(timeline_->from(), timeline_->to());
  }
  const std::size_t seam = desk_.selection.seam().seam;
  const auto& seams = results()->plan->weldments[desk_.selection.seam().weldment].seams;
  const QString name = seam < seams.size() ? QString::fromStdString(seams[seam].id) : QString();
  timeline_->setPicked(name);
  other_->setPicked(name);
}

void CellPage::showHeadline(const CycleResult& cycle) {
  QString headline = tr("cycle %1, arc on %2 %")
                         .arg(minutes_text(cycle.cycle_time_s),
                              UnitView::shared().numberText(cycle.arc_on_ratio * 100, "", 3));
  if (!cycle.unwelded.empty())
    headline += tr(", %1: no margin").arg(unwelded_text(cycle));
  else if (cycle.takt_margin_s)
    headline += *cycle.takt_margin_s >= 0 ? tr(", %1 under takt").arg(minutes_text(*cycle.takt_margin_s))
                                          : tr(", %1 over takt").arg(minutes_text(-*cycle.takt_margin_s));
  headline_->setText(headline);
  headline_->setProperty("role", cycle.unwelded.empty() ? "" : "refusal");
  headline_->style()->unpolish(headline_);
  headline_->style()->polish(headline_);
}

void CellPage::showCycle() {
  const Plan& plan = results() ? *results()->plan : *desk_.document.plan();
  if (desk_.document.isEmpty())
    return setEmptyStep(
        tr("A cell is its robots, positioner and stations. Open the demo to see one, or start a new plan."));
  if (!plan.cell)
    return setEmptyStep(tr("The plan has no cell yet. A starter cell has two robots, a positioner and two "
                           "stations, with times to be changed."),
                        {FirstStep::cell});
  if (plan.weldments.empty())
    return setEmptyStep(tr("The cell has nothing to weld yet: the plan has no weldment."), {FirstStep::seam});
  setEmptyStep({});
  if (!results()) return;
  showChoices(plan);
  const CycleResult* shown = cycle();
  if (!shown) return;
  const SeamPlace& at = desk_.selection.seam();
  const auto& seams = plan.weldments[at.weldment].seams;
  const QString seam = at.seam < seams.size() ? QString::fromStdString(seams[at.seam].id) : QString();
  bar_->setShown(this->shown(), at.weldment, seam, !what_if_results_);
  showTimelines(*shown);
  showHeadline(*shown);
  const auto& comparison = bar_->comparison();
  loss_->setRows(
      loss_rows(*shown, comparison ? &comparison->cycle : nullptr, comparison && comparison->is_before));
  for (int column = loss_other_column; column < loss_->columnCount(); ++column)
    loss_table_->setColumnHidden(column, !comparison);
  loss_table_->fitColumns();
  if (isVisible()) {
    moves_->setRows(move_rows(plan, *shown));
    move_table_->fitColumns();
    followMoves();
  }
  showOrder(*shown);
}

void CellPage::followMoves() {
  const SeamPlace at = desk_.selection.seam();
  const auto& seams = results()->plan->weldments[at.weldment].seams;
  if (at.seam >= seams.size()) return move_table_->selectRow(-1);
  const QString seam = QString::fromStdString(seams[at.seam].id);
  const auto is_of_seam = [&](int row) { return moves_->row(row).cells[move_seam_column].text == seam; };
  if (const int now = move_table_->currentRow(); now >= 0 && is_of_seam(now)) return;
  int row = 0;
  while (row < moves_->rowCount() && !is_of_seam(row)) ++row;
  // Nobody chose this row: the pass that was chosen stays.
  const QSignalBlocker quiet(move_table_);
  move_table_->selectRow(row < moves_->rowCount() ? row : -1);
}

bool CellPage::goTo(const QString& address, const QString&) {
  const std::string pointer = address.toStdString();
  const PointerStep list = first_step(pointer);
  const std::size_t weldments = desk_.document.plan()->weldments.size();
  const std::size_t at = list_index(first_step(list.rest).part, weldments);
  if (list.part != "weldments" || at >= weldments) return false;
  if (desk_.selection.seam().weldment != at) desk_.selection.setSeam({at, 0});
  timeline_->setFocus(Qt::OtherFocusReason);
  return true;
}

void CellPage::setResults(const ResultsPtr& results) {
  Page::setResults(results);
  const QString out = without_->currentData().toString();
  showCycle();
  if (what_if_results_ && results->has_cycles) setWithout(out);
}

}  // namespace seamtakt::desk
