#include "pages/order_bar.hpp"

#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QSettings>
#include <QSpinBox>

#include "base/error.hpp"
#include "cell/timeline/plan_order.hpp"
#include "document/pass_step.hpp"
#include "document/shown_text.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/words/unit_view.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "widgets/style.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

OrderBar::OrderBar(const Desk& desk, QWidget* parent) : QWidget(parent), desk_(desk) {
  makeButtons();
  connect(&job_, &BestJob::progress, this, [this](const SearchState& state) {
    say(tr("best %1, bound %2, gap %3 %, %4 s")
            .arg(minutes_text(state.best_s), minutes_text(state.bound_s),
                 UnitView::shared().numberText(state.gap_pct, "", 3))
            .arg(state.elapsed_s, 0, 'f', 0));
  });
  connect(&job_, &BestJob::found, this, &OrderBar::showFound);
  connect(&job_, &BestJob::failed, this, [this](const QString& reason) {
    showState();
    emit message(reason);
  });
  connect(&other_, &Evaluator::ready, this, [this](const ResultsPtr& results) {
    if (results->has_cycles) showOther();
  });
  connect(&other_, &Evaluator::failed, this, &OrderBar::message);
  connect(&desk_.document, &Document::replaced, this, [this] {
    job_.drop();
    close();
  });
  showState();
}

void OrderBar::makeButtons() {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(unit_px, 0, 0, 4);
  row->setSpacing(unit_px);
  const auto button = [&](const QString& text, const QString& tip, const QKeySequence& keys, auto slot) {
    QPushButton* made = tool_button(text, tip, keys, this);
    connect(made, &QPushButton::clicked, this, slot);
    row->addWidget(made);
    return made;
  };
  earlier_ = button(tr("Earlier"), tr("Welds the chosen pass before what its robot welds before it"),
                    QKeySequence(Qt::ALT | Qt::Key_Left), [this] { step(false); });
  later_ = button(tr("Later"), tr("Welds the chosen pass after what its robot welds next"),
                  QKeySequence(Qt::ALT | Qt::Key_Right), [this] { step(true); });
  robot_ = button(tr("Other robot"), tr("Gives the chosen seam to the next robot that reaches it"),
                  QKeySequence(Qt::ALT | Qt::Key_R), [this] { changeRobot(); });
  place_ = new QLabel(this);
  place_->setProperty("role", "quiet");
  place_->setTextFormat(Qt::PlainText);
  place_->setMinimumWidth(10);
  row->addWidget(place_);
  row->addStretch(1);
  state_ = new QLabel(this);
  state_->setTextFormat(Qt::PlainText);
  state_->setAccessibleName(tr("Search for the best order"));
  state_->setMinimumWidth(10);
  row->addWidget(state_);
  seconds_ = new QSpinBox(this);
  seconds_->setRange(1, 600);
  seconds_->setSuffix(QStringLiteral("\u202fs"));
  seconds_->setValue(QSettings().value("search_s", 60).toInt());
  seconds_->setAccessibleName(tr("Length of the search"));
  seconds_->setToolTip(tr("After so many seconds the search ends by itself"));
  connect(seconds_, &QSpinBox::valueChanged, this,
          [](int value) { QSettings().setValue("search_s", value); });
  row->addWidget(seconds_);
  search_ =
      button(tr("Search best order"),
             tr("Searches order, robots and directions of the shortest cycle, as long as the field says or "
                "until you stop it"),
             QKeySequence(Qt::CTRL | Qt::Key_B), [this] { search(); });
  stop_ = button(tr("Stop"), tr("Ends the search; the best order found is kept"),
                 QKeySequence(Qt::CTRL | Qt::Key_B), [this] { job_.stop(); });
  take_ = button(tr("Take it over"), tr("Makes the order that was found the plan's, as one step of undo"),
                 QKeySequence(Qt::CTRL | Qt::Key_T), [this] { take(); });
  compare_ = button(tr("Compare …"), tr("Compares with the same weldment of another plan file"),
                    QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_O), [this] {
                      const QString path = QFileDialog::getOpenFileName(
                          this, tr("Compare with plan"), {}, tr("Plans (*.weldplan.json);;All files (*)"));
                      if (!path.isEmpty()) compareWith(path);
                    });
  close_ = button(tr("Close comparison"), tr("Shows the cycle alone again"),
                  QKeySequence(Qt::CTRL | Qt::Key_W), [this] { close(); });
}

/// Room may be short: the tip has it whole.
void OrderBar::say(const QString& text) {
  state_->setText(text);
  state_->setToolTip(text);
}

const CycleResult* OrderBar::cycle() const {
  return shown_ && weldment_ < shown_->cycles.size() ? &shown_->cycles[weldment_] : nullptr;
}

const Weldment& OrderBar::weldmentNow() const {
  return desk_.document.plan()->weldments[weldment_];
}

bool OrderBar::canArrange() const {
  const PlanPtr plan = desk_.document.plan();
  return is_plan_ && shown_ && plan->cell && weldment_ < plan->weldments.size();
}

CycleResult OrderBar::cycleNow() const {
  const PlanPtr plan = desk_.document.plan();
  if (shown_->plan == plan && cycle()) return *cycle();
  return cycle_given(*plan, weldmentNow(), evaluate(*plan, date_of_today()));
}

void OrderBar::setShown(const ResultsPtr& results, std::size_t weldment, const QString& seam, bool is_plan) {
  const bool other_weldment = weldment != weldment_;
  if (other_weldment || seam != seam_) pass_ = 1;
  shown_ = results;
  weldment_ = weldment;
  seam_ = seam;
  is_plan_ = is_plan;
  if (other_weldment) {
    job_.drop();
    found_.reset();
    comparison_.reset();
    if (other_.results() && !other_name_.isEmpty()) showOther();
  }
  showState();
}

void OrderBar::showState() {
  const CycleResult* now = cycle();
  const std::string robot = now ? robot_of(*now, seam_.toStdString()) : std::string();
  const auto visits = now ? visits_of(*now, robot) : std::vector<SeamVisit>();
  const auto at = std::find_if(visits.begin(), visits.end(),
                               [&](const SeamVisit& visit) { return visit.seam == seam_.toStdString(); });
  const bool movable = is_plan_ && at != visits.end();
  const auto can_go = [&](bool later) {
    return movable && moved_pass(*now, seam_.toStdString(), pass_, later).has_value();
  };
  earlier_->setEnabled(can_go(false));
  later_->setEnabled(can_go(true));
  robot_->setEnabled(movable && shown_->plan->cell->robots.size() > 1);
  const auto passes =
      now ? std::count_if(now->order.begin(), now->order.end(),
                          [&](const OrderStep& each) { return each.seam == seam_.toStdString(); })
          : 0;
  const QString name = passes > 1 ? tr("%1, pass %2").arg(seam_).arg(pass_) : seam_;
  place_->setText(at == visits.end()
                      ? QString()
                      : tr("%1: no. %2 of %3 on %4")
                            .arg(name, QString::number(at - visits.begin() + 1),
                                 QString::number(visits.size()), QString::fromStdString(robot)));
  place_->setToolTip(place_->text());
  const bool running = job_.isRunning();
  search_->setVisible(!running && !comparison_);
  seconds_->setVisible(!running && !comparison_);
  search_->setEnabled(now != nullptr);
  stop_->setVisible(running);
  take_->setVisible(!running && found_ != nullptr);
  take_->setEnabled(found_ && found_->of->plan == desk_.document.plan());
  close_->setVisible(!running && comparison_.has_value());
  compare_->setVisible(!running && !comparison_);
  if (!running && !found_) say({});
}

void OrderBar::search() {
  if (!cycle()) return;
  close();
  job_.start(shown_, weldment_, seconds_->value());
  say(tr("searching …"));
  showState();
}

void OrderBar::showFound(const FoundOrderPtr& order) {
  found_ = order;
  const CycleResult& now = order->of->cycles[order->weldment];
  comparison_ = Comparison{tr("Best order found"), order->cycle};
  say(tr("%1 against %2, gap %3 %")
          .arg(change_text(order->cycle.cycle_time_s - now.cycle_time_s), minutes_text(now.cycle_time_s),
               UnitView::shared().numberText(order->cycle.gap_pct.value_or(0), "", 3)));
  showState();
  emit comparisonChanged();
}

void OrderBar::take() {
  if (!found_ || found_->of->plan != desk_.document.plan()) return;
  const FoundOrderPtr order = found_;
  const auto refusal = desk_.document.edit(tr("Take over the best order"), {}, [&](Plan& plan) {
    take_order(plan.weldments[order->weldment], order->cycle);
  });
  if (refusal) return emit message(refusal->text);
  emit message(tr("The order is the plan's: cycle %1. Undo brings back the one before.")
                   .arg(minutes_text(order->cycle.cycle_time_s)));
  comparison_ = Comparison{tr("Before"), order->of->cycles[order->weldment], true};
  found_.reset();
  showState();
  emit comparisonChanged();
}

void OrderBar::close() {
  found_.reset();
  comparison_.reset();
  other_name_.clear();
  showState();
  emit comparisonChanged();
}

void OrderBar::compareWith(const QString& path) {
  try {
    const auto plan = std::make_shared<const Plan>(load_plan(path.toStdString()));
    close();
    other_name_ = QFileInfo(path).fileName();
    other_.evaluate(plan);
  } catch (const std::exception& error) {
    emit message(QString::fromUtf8(error.what()));
  }
}

void OrderBar::showOther() {
  if (other_name_.isEmpty() || !shown_ || weldment_ >= shown_->plan->weldments.size()) return;
  const std::string& wanted = shown_->plan->weldments[weldment_].id;
  for (const CycleResult& each : other_.results()->cycles)
    if (each.weldment == wanted) comparison_ = Comparison{other_name_, each};
  if (!comparison_)
    emit message(tr("%1 has no weldment %2 in a cell.").arg(other_name_, QString::fromStdString(wanted)));
  showState();
  emit comparisonChanged();
}

namespace {

/// Present position of a seam.
OrderPlace place_of(const CycleResult& cycle, const std::string& seam) {
  const std::string robot = robot_of(cycle, seam);
  const std::vector<SeamVisit> visits = visits_of(cycle, robot);
  for (std::size_t i = 0; i + 1 < visits.size(); ++i)
    if (visits[i].seam == seam)
      return {QString::fromStdString(robot), QString::fromStdString(visits[i + 1].seam)};
  return {QString::fromStdString(robot), {}};
}

}  // namespace

void OrderBar::place(const QString& seam, const OrderPlace& to) {
  if (!canArrange()) return;
  const CycleResult now = cycleNow();
  if (place_of(now, seam.toStdString()) == to) return;
  const auto refusal = desk_.document.edit(tr("Move %1").arg(seam), {}, [&](Plan& plan) {
    place_seam(*plan.cell, plan.weldments[weldment_], now, seam.toStdString(), to.robot.toStdString(),
               to.before.toStdString());
  });
  if (refusal) emit message(tr("%1 can't go there: %2").arg(seam, refusal->text));
}

QString OrderBar::preview(const QString& seam, const OrderPlace& to) const {
  const CycleResult* now = cycle();
  if (!now || shown_->plan != desk_.document.plan()) return {};
  Weldment weldment = shown_->plan->weldments[weldment_];
  const QString where = to.before.isEmpty() ? tr("%1: last on %2").arg(seam, to.robot)
                                            : tr("%1: before %2 on %3").arg(seam, to.before, to.robot);
  try {
    place_seam(*shown_->plan->cell, weldment, *now, seam.toStdString(), to.robot.toStdString(),
               to.before.toStdString());
    const CycleResult then = cycle_given(*shown_->plan, weldment, shown_->evaluation);
    return where +
           tr("; cycle %1 (%2)")
               .arg(minutes_text(then.cycle_time_s), change_text(then.cycle_time_s - now->cycle_time_s));
  } catch (const InputError& error) {
    return where + tr("; refused: expected %1").arg(shown_text(error.expected()));
  }
}

void OrderBar::setPass(int pass) {
  pass_ = std::max(1, pass);
  showState();
}

void OrderBar::step(bool later) {
  if (!canArrange()) return;
  const auto moved = moved_pass(cycleNow(), seam_.toStdString(), pass_, later);
  if (!moved) return;
  const auto refusal = desk_.document.edit(
      tr("Move %1").arg(seam_), {}, [&](Plan& plan) { plan.weldments[weldment_].order = moved->order; });
  if (refusal) return emit message(tr("%1 can't go there: %2").arg(seam_, refusal->text));
  setPass(moved->pass);
}

void OrderBar::changeRobot() {
  if (!canArrange()) return;
  const CycleResult now = cycleNow();
  const std::string robot = robot_of(now, seam_.toStdString());
  const Seam* seam = find_by_id(weldmentNow().seams, seam_.toStdString());
  if (!seam || robot.empty()) return;
  std::vector<std::string> reach = seam->robots;
  if (reach.empty()) reach = ids_of(*desk_.document.plan(), IdList::robots, {});
  const auto at = std::find(reach.begin(), reach.end(), robot);
  if (reach.size() < 2 || at == reach.end())
    return emit message(tr("Only %1 reaches %2.").arg(QString::fromStdString(robot), seam_));
  const std::string& next = at + 1 == reach.end() ? reach.front() : *(at + 1);
  double start_s = 0;
  for (const SeamVisit& visit : visits_of(now, robot))
    if (visit.seam == seam->id) start_s = visit.start_s;
  place(seam_,
        {QString::fromStdString(next), QString::fromStdString(visit_after(now, next, start_s, seam->id))});
}

}  // namespace seamtakt::desk
