#include "pages/schedules_page.hpp"

#include <QComboBox>
#include <QDate>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSortFilterProxyModel>
#include <QSplitter>
#include <QVBoxLayout>
#include <set>

#include "document/new_item.hpp"
#include "document/revision.hpp"
#include "models/tables/schedule_difference.hpp"
#include "models/tables/schedule_model.hpp"
#include "models/words/state_text.hpp"
#include "plan/approval.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plan/fields/plan_file.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

namespace {

std::vector<FieldGroup> schedule_form_groups() {
  return {{SchedulesPage::tr("Identity"),
           {},
           {"id", "revision", "revision_of", "status", "approved_by", "effective_from", "qualification"}},
          {SchedulesPage::tr("Arc"),
           {},
           {"process", "transfer", "waveform", "polarity", "wire", "gas", "power_source",
            "wire_feed_speed_m_min", "arc_voltage_V", "travel_speed_mm_s", "contact_tip_distance_mm",
            "arc_length_mm", "current_A", "waveform_factor", "preheat_C"}},
          {SchedulesPage::tr("Torch and gas"),
           {},
           {"gas_flow_l_min", "nozzle_mm", "torch_work_deg", "torch_travel_deg", "arc_start_s",
            "crater_fill_s", "preparation", "backing"}},
          {SchedulesPage::tr("Limits"), "limits", {}},
          {SchedulesPage::tr("Use"), "use", {}},
          {SchedulesPage::tr("Pulse"), "pulse", {}},
          {SchedulesPage::tr("Weave"), "weave", {}}};
}

/// Values of a pass that are shown where a schedule is used.
constexpr const char* use_keys[] = {
    "weldment",        "seam",      "pass", "length_mm", "heat_input_kJ_mm", "cooling_time_s",
    "haz_hardness_HV", "arc_time_s"};

bool is_use_key(std::string_view key) {
  return std::find(std::begin(use_keys), std::end(use_keys), key) != std::end(use_keys);
}

std::vector<GridColumn> use_columns() {
  auto columns = value_columns(pass_columns(), false);
  std::erase_if(columns, [](const GridColumn& column) { return !is_use_key(column.key); });
  columns.insert(columns.begin(),
                 GridColumn{"mark", SchedulesPage::tr("State"), "", {}, false, true, nullptr});
  return columns;
}

}  // namespace

SchedulesPage::SchedulesPage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::schedules, tr("Schedules"),
           tr("A schedule is a draft until it is qualified by test under the governing code and approved by "
              "a responsible person."),
           parent) {
  model_ = new ScheduleModel(desk_.document, this);
  difference_ = new ValueModel(difference_columns(), this);
  uses_ = new ValueModel(use_columns(), this);
  setWhat(makeWhat());
  setWhy(makeWhy());
  setShares(3, 2);
  makeTools();
  connect(table_, &GridView::rowChosen, this,
          [this](int row) { desk_.selection.setSchedule(static_cast<std::size_t>(row)); });
  connect(table_, &GridView::refused, this, &Page::message);
  connect(table_, &GridView::opened, this, [this](int) { form_->focusField("wire_feed_speed_m_min"); });
  connect(uses_table_, &GridView::opened, this,
          [this](int row) { desk_.selection.goTo(uses_->row(row).address, "schedules"); });
  connect(&desk_.selection, &Selection::scheduleChanged, this, [this] {
    chooseSameInOther();
    showSchedule();
  });
  connect(&desk_.document, &Document::planChanged, this, &SchedulesPage::refresh);
  connect(&desk_.document, &Document::replaced, table_, &GridView::fitColumns);
  connect(&desk_.document, &Document::replaced, this, [this] { other_plan_.reset(); });
  connect(&UnitView::shared(), &UnitView::changed, this, &SchedulesPage::showDifference);
  refresh();
}

QWidget* SchedulesPage::makeWhat() {
  auto* split = new QSplitter(Qt::Vertical);
  table_ = new GridView(*model_, tr("Schedules"), split);
  table_->keepColumns(QStringLiteral("schedules"));
  auto* below = new QWidget(split);
  auto* column = new QVBoxLayout(below);
  column->setContentsMargins(0, unit_px, 0, 0);
  lock_note_ = new QLabel(below);
  lock_note_->setProperty("role", "quiet");
  lock_note_->setTextFormat(Qt::PlainText);
  lock_note_->setWordWrap(true);
  lock_note_->setContentsMargins(unit_px, 0, 0, 0);
  auto* scroll = new QScrollArea(below);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setAccessibleName(tr("Fields of the schedule"));
  form_ = new FieldForm(desk_.document, scroll);
  form_->setAccessibleName(tr("Fields of the schedule"));
  scroll->setWidget(form_);
  column->addWidget(lock_note_);
  column->addWidget(scroll, 1);
  split->addWidget(table_);
  split->addWidget(below);
  split->setSizes({260, 300});
  return split;
}

QWidget* SchedulesPage::makeWhy() {
  auto* side = new QWidget;
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(unit_px, 0, 0, 0);
  uses_title_ = new QLabel(side);
  uses_title_->setProperty("role", "section");
  uses_table_ = new GridView(*uses_, tr("Passes welded by the schedule"), side);
  uses_table_->keepColumns(QStringLiteral("schedule-passes"));
  auto* head = new QHBoxLayout;
  auto* title = new QLabel(tr("Difference to"), side);
  title->setProperty("role", "section");
  other_ = new QComboBox(side);
  other_->setAccessibleName(tr("Schedule to compare with"));
  other_->setMinimumContentsLength(10);
  connect(other_, &QComboBox::activated, this, &SchedulesPage::showDifference);
  title->setBuddy(other_);
  QPushButton* compare =
      tool_button(tr("Other plan …"), tr("Compares with the schedules of another plan file"), {}, side);
  connect(compare, &QPushButton::clicked, this, [this] {
    const QString path = QFileDialog::getOpenFileName(this, tr("Compare with plan"), {},
                                                      tr("Plans (*.weldplan.json);;All files (*)"));
    if (!path.isEmpty()) compareWith(path);
  });
  head->addWidget(title);
  head->addWidget(other_, 1);
  head->addWidget(compare);
  difference_table_ = new GridView(*difference_, tr("Difference of two schedules"), side);
  difference_table_->keepColumns(QStringLiteral("schedule-difference"));
  column->addWidget(uses_title_);
  column->addWidget(uses_table_, 3);
  column->addLayout(head);
  column->addWidget(difference_table_, 2);
  return side;
}

void SchedulesPage::makeTools() {
  const auto button = [&](const QString& text, const QString& tip, const QKeySequence& keys, auto slot) {
    QPushButton* made = tool_button(text, tip, keys, this);
    connect(made, &QPushButton::clicked, this, slot);
    tools().addWidget(made);
  };
  button(tr("Add schedule"), tr("A draft like the chosen one"), QKeySequence(Qt::ALT | Qt::Key_Insert),
         &SchedulesPage::addSchedule);
  button(tr("New revision"), tr("The next revision as a draft; this one stays as it is"),
         QKeySequence(Qt::CTRL | Qt::Key_D), &SchedulesPage::reviseSchedule);
  button(tr("Remove"), tr("Take the schedule out of the plan"), QKeySequence(Qt::ALT | Qt::Key_Delete),
         &SchedulesPage::removeSchedule);
  withdraw_ =
      tool_button(tr("Withdraw approval …"),
                  tr("Makes a reviewed or approved schedule a draft again, after a question"), {}, this);
  connect(withdraw_, &QPushButton::clicked, this, &SchedulesPage::withdrawApproval);
  tools().addWidget(withdraw_);
  button(tr("Print sheet …"), tr("The sheets of the chosen schedules as PDF, a page each to sign"),
         QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_P), [this] { emit sheetsAsked(chosen()); });
  tools().addStretch(1);
}

QStringList SchedulesPage::chosen() const {
  const PlanPtr plan = desk_.document.plan();
  std::set<std::size_t> rows = {desk_.selection.schedule()};
  for (const QModelIndex& index : table_->selectionModel()->selectedIndexes())
    rows.insert(static_cast<std::size_t>(table_->proxy().mapToSource(index).row()));
  QStringList ids;
  for (const std::size_t row : rows)
    if (row < plan->schedules.size()) ids << QString::fromStdString(plan->schedules[row].id);
  return ids;
}

void SchedulesPage::refresh() {
  const PlanPtr plan = desk_.document.plan();
  if (desk_.document.isEmpty())
    setEmptyStep(
        tr("A schedule says how a pass is welded. Open the demo to look around, or start a new plan: "
           "it begins with one draft."));
  else if (plan->schedules.empty())
    setEmptyStep(
        tr("A schedule says how a pass is welded. Add the first one, or import a list of schedules."),
        {FirstStep::schedule, FirstStep::list});
  else
    setEmptyStep({});
  const QString chosen = other_->currentText();
  other_->clear();
  for (const Schedule& schedule : plan->schedules) other_->addItem(QString::fromStdString(schedule.id));
  if (other_plan_)
    for (const Schedule& schedule : other_plan_->schedules)
      other_->addItem(tr("%1 in %2").arg(QString::fromStdString(schedule.id), other_name_));
  const int at = other_->findText(chosen);
  other_->setCurrentIndex(at >= 0 ? at : other_->count() > 1 ? 1 : 0);
  showSchedule();
}

void SchedulesPage::showSchedule() {
  const std::size_t at = desk_.selection.schedule();
  const bool exists = at < desk_.document.plan()->schedules.size();
  form_->setObject(exists ? schedule_address(at) : std::string(), schedule_form_groups());
  if (exists) table_->selectRow(static_cast<int>(at));
  showLock();
  showUses();
  showDifference();
}

/// Says before typing that a change won't be made in place.
void SchedulesPage::showLock() {
  const auto& schedules = desk_.document.plan()->schedules;
  const std::size_t at = desk_.selection.schedule();
  const bool locked = at < schedules.size() && is_locked(schedules[at]);
  withdraw_->setEnabled(locked);
  lock_note_->setVisible(locked);
  if (!locked) return;
  QString note = tr("%1 stays as it is: a change goes into a new revision.")
                     .arg(locked_names(*desk_.document.plan(), {at}));
  const std::string today = QDate::currentDate().toString(Qt::ISODate).toStdString();
  const Schedule* in_force = schedule_in_force(*desk_.document.plan(), schedules[at].id, today);
  if (in_force && in_force != &schedules[at])
    note += QLatin1Char(' ') + tr("In force today: %1.").arg(QString::fromStdString(in_force->id));
  lock_note_->setText(note);
}

void SchedulesPage::showUses() {
  std::vector<ValueModel::Row> rows;
  const std::size_t at = desk_.selection.schedule();
  const PlanPtr plan = desk_.document.plan();
  if (results() && at < plan->schedules.size()) {
    const FindingIndex findings(results()->findings);
    const auto columns = pass_columns();
    for (const PassEvaluation& pass : results()->evaluation.passes) {
      if (pass.schedule != plan->schedules[at].id) continue;
      const std::string place = pass.weldment + "/" + pass.seam + "/pass " + std::to_string(pass.pass);
      ValueModel::Row all = value_row(columns, false, pass, QString::fromStdString(place));
      ValueModel::Row row;
      RowState state = findings.stateAt(Link::schedules, place);
      state.is_partly_judged = is_partly_judged(pass);
      row.severity = state.own;
      row.beyond = state.beyond;
      row.is_partly_judged = state.is_partly_judged;
      row.cells.push_back({state_text(state), std::nullopt, 0, QString::fromStdString(place), {}});
      for (std::size_t i = 0; i < columns.size(); ++i)
        if (is_use_key(columns[i].key)) row.cells.push_back(all.cells[i]);
      if (const auto seam = find_seam(*plan, pass.weldment, pass.seam))
        row.address = QString::fromStdString(seam_address(seam->weldment, seam->seam));
      rows.push_back(std::move(row));
    }
  }
  uses_title_->setText(at < plan->schedules.size() ? tr("Passes welded by %1: %2")
                                                         .arg(QString::fromStdString(plan->schedules[at].id),
                                                              QString::number(rows.size()))
                                                   : QString());
  uses_->setPlan(plan);
  uses_->setRows(std::move(rows));
  uses_table_->fitColumns();
}

const Schedule* SchedulesPage::compared() const {
  const auto& own = desk_.document.plan()->schedules;
  const auto at = static_cast<std::size_t>(std::max(0, other_->currentIndex()));
  if (at < own.size()) return &own[at];
  if (!other_plan_ || at - own.size() >= other_plan_->schedules.size()) return nullptr;
  return &other_plan_->schedules[at - own.size()];
}

void SchedulesPage::chooseSameInOther() {
  const auto& own = desk_.document.plan()->schedules;
  const std::size_t at = desk_.selection.schedule();
  if (!other_plan_ || at >= own.size()) return;
  if (const auto same = find_schedule(*other_plan_, own[at].id))
    other_->setCurrentIndex(static_cast<int>(own.size() + *same));
}

void SchedulesPage::compareWith(const QString& path) {
  try {
    other_plan_ = std::make_shared<const Plan>(load_plan(path.toStdString()));
    other_name_ = QFileInfo(path).fileName();
    refresh();
    chooseSameInOther();
    showDifference();
  } catch (const std::exception& error) {
    emit message(QString::fromUtf8(error.what()));
  }
}

void SchedulesPage::showDifference() {
  const PlanPtr plan = desk_.document.plan();
  const std::size_t at = desk_.selection.schedule();
  const Schedule* other = compared();
  if (at >= plan->schedules.size() || !other) return difference_->setRows({});
  difference_->setRows(difference_rows(plan->schedules[at], *other));
  difference_table_->fitColumns();
  difference_table_->horizontalHeader()->setStretchLastSection(true);
}

void SchedulesPage::setResults(const ResultsPtr& results) {
  const bool first = !this->results();
  Page::setResults(results);
  model_->setResults(results);
  if (first) table_->fitColumns();
  showUses();
}

bool SchedulesPage::goTo(const QString& address, const QString& key) {
  const std::string pointer = address.toStdString();
  const PointerStep list = first_step(pointer);
  if (list.part != "schedules") return false;
  const std::size_t at = list_index(first_step(list.rest).part, desk_.document.plan()->schedules.size());
  if (at >= desk_.document.plan()->schedules.size()) return false;
  desk_.selection.setSchedule(at);
  showSchedule();
  if (!form_->focusField(key)) form_->focusField("wire_feed_speed_m_min");
  return true;
}

void SchedulesPage::append(Schedule schedule, const QString& what) {
  const std::size_t at = desk_.document.plan()->schedules.size();
  const auto refusal =
      desk_.document.edit(what, {}, [&](Plan& plan) { plan.schedules.push_back(std::move(schedule)); });
  if (refusal) return emit message(refusal->text);
  desk_.selection.setSchedule(at);
  showSchedule();
  form_->focusField("wire_feed_speed_m_min");
}

void SchedulesPage::addSchedule() {
  const PlanPtr plan = desk_.document.plan();
  const std::size_t at = desk_.selection.schedule();
  if (at >= plan->schedules.size())
    return emit message(tr("There is no schedule to begin from: start a new plan."));
  Schedule schedule = plan->schedules[at];
  schedule.id = next_id(plan->schedules, schedule.id);
  schedule.revision = 1;
  schedule.revision_of.clear();
  schedule.status = "draft";
  clear_approval(schedule);
  append(std::move(schedule), tr("Add schedule"));
}

void SchedulesPage::reviseSchedule() {
  const PlanPtr plan = desk_.document.plan();
  const std::size_t at = desk_.selection.schedule();
  if (at >= plan->schedules.size()) return;
  const QString kept = QString::fromStdString(plan->schedules[at].id);
  append(next_revision(*plan, plan->schedules[at]), tr("New revision"));
  other_->setCurrentIndex(other_->findText(kept));
  showDifference();
}

void SchedulesPage::withdrawApproval() {
  const std::string address = schedule_address(desk_.selection.schedule());
  // The lock refuses it, and asks.
  static_cast<void>(desk_.document.setField(address, "status", "draft"));
}

void SchedulesPage::removeSchedule() {
  const std::size_t at = desk_.selection.schedule();
  if (at >= desk_.document.plan()->schedules.size()) return;
  const auto refusal = desk_.document.edit(tr("Remove schedule"), {}, [&](Plan& plan) {
    plan.schedules.erase(plan.schedules.begin() + static_cast<std::ptrdiff_t>(at));
  });
  if (refusal) return emit message(tr("The schedule can't go: %1").arg(refusal->text));
  desk_.selection.setSchedule(at > 0 ? at - 1 : 0);
  refresh();
}

}  // namespace seamtakt::desk
