#include "pages/cell_page.hpp"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include "base/error.hpp"
#include "models/chain_figures.hpp"
#include "models/value_model.hpp"
#include "plots/seam_view.hpp"
#include "plots/timeline_view.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

std::vector<GridColumn> loss_columns() {
  return {{"part", CellPage::tr("Part of the cycle"), "", {}, false, true, nullptr},
          {"seconds", CellPage::tr("Time"), "s", CellPage::tr("Sum over all robots"), true, true, nullptr}};
}

std::vector<GridColumn> move_columns() {
  return {{"robot", CellPage::tr("Robot"), "", {}, false, true, nullptr},
          {"start", CellPage::tr("From"), "s", {}, true, true, nullptr},
          {"end", CellPage::tr("To"), "s", {}, true, true, nullptr},
          {"kind", CellPage::tr("Move"), "", {}, false, true, nullptr},
          {"seam", CellPage::tr("Seam"), "", {}, false, true, nullptr},
          {"pass", CellPage::tr("Pass"), "", {}, true, true, nullptr}};
}

ValueModel::Cell text_cell(const QString& text) {
  return {text, std::nullopt, 0, {}, {}};
}
ValueModel::Cell number_cell(double number, int digits) {
  return {{}, number, digits, {}, {}};
}

}  // namespace

CellPage::CellPage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::cell, tr("Cell"),
           tr("A planned timeline is no proof that a robot's motion is safe: the cell's safeguards follow "
              "ISO 10218 and local law."),
           parent) {
  loss_ = new ValueModel(loss_columns(), this);
  moves_ = new ValueModel(move_columns(), this);
  auto* what = new QSplitter(Qt::Vertical);
  loss_table_ = new GridView(*loss_, tr("What the cycle is made of"), what);
  move_table_ = new GridView(*moves_, tr("Moves of the robots"), what);
  move_table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  what->addWidget(loss_table_);
  what->addWidget(move_table_);
  what->setSizes({330, 260});
  auto* why = new QSplitter(Qt::Vertical);
  timeline_ = new TimelineView(why);
  order_ = new SeamView(why);
  order_->setAccessibleName(tr("Seams in welding order"));
  why->addWidget(timeline_);
  why->addWidget(order_);
  why->setSizes({260, 300});
  auto* side = new QWidget(this);
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  without_note_ = new QLabel(side);
  without_note_->setWordWrap(true);
  without_note_->setTextFormat(Qt::PlainText);
  without_note_->hide();
  column->addWidget(without_note_);
  column->addWidget(why, 1);
  setWhat(what);
  setWhy(side);
  setShares(2, 5);
  weldments_ = new QComboBox(this);
  weldments_->setAccessibleName(tr("Weldment"));
  weldments_->setMinimumContentsLength(10);
  headline_ = new QLabel(this);
  headline_->setTextFormat(Qt::PlainText);
  auto* all = new QPushButton(tr("Whole cycle"), this);
  all->setAccessibleName(all->text());
  all->setToolTip(tr("Shows the timeline from end to end (Home)"));
  tools().addWidget(weldments_);
  without_ = new QComboBox(this);
  without_->setAccessibleName(tr("Robot that is out"));
  without_->setToolTip(
      tr("What the cell does without one of its robots: its seams go to others, or to hands"));
  tools().addWidget(without_);
  tools().addWidget(headline_);
  tools().addStretch(1);
  tools().addWidget(all);
  connect(all, &QPushButton::clicked, timeline_, &TimelineView::showAll);
  connect(weldments_, &QComboBox::activated, this, [this](int index) {
    desk_.selection.setSeam({static_cast<std::size_t>(std::max(0, index)), 0});
    showCycle();
  });
  connect(without_, &QComboBox::activated, this, [this] { setWithout(without_->currentData().toString()); });
  connect(&what_if_, &Evaluator::ready, this, [this](const ResultsPtr& results) {
    what_if_results_ = results;
    showCycle();
  });
  connect(timeline_, &TimelineView::picked, this, [this](const QString& seam, int) { pick(seam); });
  connect(move_table_, &GridView::rowChosen, this, [this](int row) { pick(moves_->row(row).cells[4].text); });
  connect(move_table_, &GridView::opened, this,
          [this](int row) { desk_.selection.goTo(moves_->row(row).address, "robots"); });
  connect(&desk_.selection, &Selection::seamChanged, this, &CellPage::showCycle);
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
  out_ = {};
  if (robot.isEmpty() || !results()) return showCycle();
  try {
    out_ = without_robot(*results()->plan, robot.toStdString(), robot.toStdString());
    what_if_.evaluate(std::make_shared<const Plan>(out_.plan));
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

}  // namespace

void CellPage::pick(const QString& seam) {
  const CycleResult* shown = cycle();
  if (!shown || seam.isEmpty()) return;
  if (const auto place = find_seam(*results()->plan, shown->weldment, seam.toStdString()))
    desk_.selection.setSeam(*place);
}

void CellPage::showLosses(const CycleResult& cycle) {
  const std::pair<QString, double> parts[] = {{tr("Arc on"), cycle.arc_on_s},
                                              {tr("Arc starts and craters"), cycle.start_end_s},
                                              {tr("Air moves"), cycle.air_s},
                                              {tr("Sensing"), cycle.sense_s},
                                              {tr("Waiting"), cycle.wait_s},
                                              {tr("Positioner"), cycle.orientation_s},
                                              {tr("Torch service"), cycle.service_s},
                                              {tr("Wire changes"), cycle.wire_change_s},
                                              {tr("Loading and unloading"), cycle.load_unload_s}};
  std::vector<ValueModel::Row> rows;
  for (const auto& [part, seconds] : parts)
    rows.push_back({{text_cell(part), number_cell(seconds, 5)}, {}, {}});
  std::stable_sort(rows.begin(), rows.end(),
                   [](const auto& a, const auto& b) { return *a.cells[1].number > *b.cells[1].number; });
  loss_->setRows(std::move(rows));
  loss_table_->fitColumns();
}

void CellPage::showMoves(const CycleResult& cycle) {
  std::vector<ValueModel::Row> rows;
  const std::size_t w = desk_.selection.seam().weldment;
  for (const Move& move : cycle.moves) {
    ValueModel::Row row;
    row.cells = {text_cell(move.robot.empty() ? tr("cell") : QString::fromStdString(move.robot)),
                 number_cell(move.start_s, 5),
                 number_cell(move.end_s, 5),
                 text_cell(move_word(move.kind)),
                 text_cell(QString::fromStdString(move.seam)),
                 text_cell(move.pass ? QString::number(move.pass) : QString())};
    if (const auto place = find_seam(*results()->plan, results()->plan->weldments[w].id, move.seam))
      row.address = QString::fromStdString(seam_address(place->weldment, place->seam));
    rows.push_back(std::move(row));
  }
  moves_->setRows(std::move(rows));
  move_table_->fitColumns();
}

/// Seams named by their place in the welding order of their robot: "3 S07".
void CellPage::showOrder(const CycleResult& cycle) {
  const Weldment& weldment = results()->plan->weldments[desk_.selection.seam().weldment];
  std::vector<DrawnSeam> drawn;
  for (const Seam& seam : weldment.seams) {
    DrawnSeam line;
    line.name = QString::fromStdString(seam.id);
    line.path_mm = seam.path_mm;
    line.by_hand = seam.by == "manual";
    drawn.push_back(std::move(line));
  }
  std::map<std::string, int> order;
  for (const Move& move : cycle.moves) {
    if (move.kind != MoveKind::arc || move.pass > 1) continue;
    for (std::size_t i = 0; i < drawn.size(); ++i)
      if (weldment.seams[i].id == move.seam && drawn[i].order == 0) {
        drawn[i].order = ++order[move.robot];
        drawn[i].name = tr("%1: %3 no. %2")
                            .arg(drawn[i].name)
                            .arg(drawn[i].order)
                            .arg(QString::fromStdString(move.robot));
        drawn[i].value = drawn[i].order;
      }
  }
  for (DrawnSeam& seam : drawn) seam.tip = seam.name;
  order_->setMeaning(tr("place in the robot's order"),
                     [](double value) { return QString::number(value, 'f', 0); });
  order_->setSeams(std::move(drawn));
  order_->setPicked(static_cast<int>(desk_.selection.seam().seam));
}

void CellPage::showCycle() {
  if (!results()) return;
  const Plan& plan = *results()->plan;
  if (!plan.cell || plan.weldments.empty())
    return setEmptyStep(
        tr("The cell's robots are not described in this plan. The demo shows a cell of two robots."));
  setEmptyStep({});
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
  if (what_if_results_)
    without_note_->setText(
        tr("Without %1: %2 seams go to another robot; %3")
            .arg(out)
            .arg(out_.taken_over.size())
            .arg(out_.unreached.empty()
                     ? tr("none is left to hands.")
                     : tr("nobody reaches %1: by hand, or they wait.").arg(listed(out_.unreached))));
  const CycleResult* shown = cycle();
  if (!shown) return;
  const double planned_s = shown->takt_margin_s ? shown->cycle_time_s + *shown->takt_margin_s : 0;
  timeline_->setCycle(*shown, planned_s);
  const std::size_t seam = desk_.selection.seam().seam;
  const auto& seams = plan.weldments[desk_.selection.seam().weldment].seams;
  timeline_->setPicked(seam < seams.size() ? QString::fromStdString(seams[seam].id) : QString());
  QString headline = tr("cycle %1, arc on %2 %")
                         .arg(minutes_text(shown->cycle_time_s),
                              UnitView::shared().numberText(shown->arc_on_ratio * 100, "", 3));
  if (shown->takt_margin_s)
    headline += *shown->takt_margin_s >= 0 ? tr(", %1 under takt").arg(minutes_text(*shown->takt_margin_s))
                                           : tr(", %1 over takt").arg(minutes_text(-*shown->takt_margin_s));
  headline_->setText(headline);
  showLosses(*shown);
  if (isVisible()) showMoves(*shown);
  showOrder(*shown);
}

void CellPage::setResults(const ResultsPtr& results) {
  Page::setResults(results);
  const QString out = without_->currentData().toString();
  showCycle();
  if (what_if_results_ && results->has_cycles) setWithout(out);
}

}  // namespace seamtakt::desk
