#include "pages/seams_page.hpp"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStackedWidget>
#include <QToolButton>
#include <algorithm>

#include "document/new_item.hpp"
#include "models/tables/seam_model.hpp"
#include "models/tables/value_model.hpp"
#include "models/words/state_text.hpp"
#include "models/words/unit_view.hpp"
#include "plan/evaluate/evaluation_columns.hpp"
#include "plots/axonometric_view.hpp"
#include "plots/seam_view.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

namespace {
constexpr const char* first_weldment_id = "W1";
}

std::vector<FieldGroup> seam_form_groups() {
  return {{SeamsPage::tr("Joint"),
           {},
           {"id", "joint", "thickness_mm", "base_metals", "leg_mm", "throat_mm", "dihedral_deg", "gap_mm",
            "gap_max_mm", "area_allowance", "flange_width_mm", "quality"}},
          {SeamsPage::tr("Welding"),
           {},
           {"schedules", "position", "direction", "by", "manual_schedule", "robots", "orientation",
            "tracking", "sense_points", "after", "balance", "overlap_mm", "path_mm"}},
          {SeamsPage::tr("Groove"), "groove", {}},
          {SeamsPage::tr("Intermittent"), "intermittent", {}},
          {SeamsPage::tr("Tacks"), "tacks", {}}};
}

std::vector<FieldGroup> weldment_form_groups() {
  return {
      {SeamsPage::tr("Weldment"), {}, {"id", "drawing", "tolerance_class"}},
      {SeamsPage::tr("Times"), {}, {"load_s", "unload_s", "tack_s", "manual_s", "measure_s", "inspect_s"}},
      {SeamsPage::tr("Section"), "section", {}}};
}

SeamsPage::SeamsPage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::seams, tr("Seams"),
           tr("Estimates only: the governing code, qualification by test and a responsible welding "
              "coordinator (ISO 14731) decide."),
           parent) {
  model_ = new SeamModel(desk_.document, this);
  passes_ = new ValueModel(value_columns(pass_columns(), true), this);
  setWhat(makeWhat());
  setWhy(makeWhy());
  setShares(3, 2);
  makeTools();
  connect(table_, &GridView::rowChosen, this,
          [this](int row) { desk_.selection.setSeam(model_->place(row)); });
  connect(table_, &GridView::refused, this, &Page::message);
  connect(table_, &GridView::opened, this, [this](int) { form_->setFocus(); });
  connect(picture_, &SeamView::picked, this,
          [this](int index) { desk_.selection.setSeam(model_->place(index)); });
  connect(space_, &AxonometricView::picked, this, [this](int index) {
    desk_.selection.setSeam({desk_.selection.seam().weldment, static_cast<std::size_t>(index)});
  });
  connect(&desk_.selection, &Selection::seamChanged, this, &SeamsPage::showSeam);
  connect(&desk_.document, &Document::planChanged, this, &SeamsPage::fillWeldments);
  connect(&desk_.document, &Document::replaced, this, [this] {
    fillWeldments();
    table_->fitColumns();
  });
  connect(&UnitView::shared(), &UnitView::changed, this, [this] {
    if (results()) showPasses();
    draw();
  });
  fillWeldments();
}

QWidget* SeamsPage::makeWhat() {
  auto* split = new QSplitter(Qt::Vertical);
  table_ = new GridView(*model_, tr("Seams"), split);
  table_->setColumnHidden(model_->columnNamed("weldment"), true);
  table_->keepColumns(QStringLiteral("seams"));
  auto* scroll = new QScrollArea(split);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setAccessibleName(tr("Fields of the seam"));
  form_ = new FieldForm(desk_.document, scroll);
  form_->setAccessibleName(tr("Fields of the seam"));
  scroll->setWidget(form_);
  split->addWidget(table_);
  split->addWidget(scroll);
  split->setStretchFactor(0, 3);
  split->setStretchFactor(1, 2);
  split->setSizes({300, 230});
  return split;
}

QWidget* SeamsPage::makeWhy() {
  auto* split = new QSplitter(Qt::Vertical);
  pictures_ = new QStackedWidget(split);
  space_ = new AxonometricView(pictures_);
  picture_ = new SeamView(pictures_);
  pictures_->addWidget(space_);
  pictures_->addWidget(picture_);
  pass_table_ = new GridView(*passes_, tr("Passes of the seam"), split);
  for (int column = 0; column < 2; ++column) pass_table_->setColumnHidden(column, true);
  pass_table_->keepColumns(QStringLiteral("seam-passes"));
  split->addWidget(pictures_);
  split->addWidget(pass_table_);
  split->setStretchFactor(0, 4);
  split->setStretchFactor(1, 1);
  split->setSizes({400, 130});
  return split;
}

void SeamsPage::makeTools() {
  weldments_ = new QComboBox(this);
  weldments_->setAccessibleName(tr("Weldment"));
  weldments_->setToolTip(tr("Weldment whose seams are shown"));
  weldments_->setMinimumContentsLength(10);
  connect(weldments_, &QComboBox::activated, this, [this](int index) {
    if (index == weldments_->count() - 1) return addWeldment();
    const std::size_t chosen = static_cast<std::size_t>(index - 1);
    if (index > 0 && desk_.selection.seam().weldment != chosen) desk_.selection.setSeam({chosen, 0});
    model_->setWeldment(index - 1);
    table_->setColumnHidden(model_->columnNamed("weldment"), index > 0);
    showSeam();
    draw();
  });
  tools().addWidget(weldments_);
  weldment_fields_ = new QToolButton(this);
  weldment_fields_->setText(tr("Its fields"));
  weldment_fields_->setAccessibleName(tr("Fields of the weldment"));
  weldment_fields_->setToolTip(
      tr("Shows the weldment's own fields, its times and section, in place of the seam's"));
  weldment_fields_->setCheckable(true);
  connect(weldment_fields_, &QToolButton::toggled, this, [this] {
    showFirstStep();
    showSeam();
  });
  tools().addWidget(weldment_fields_);
  const auto button = [&](const QString& text, const QString& tip, const QKeySequence& keys, auto slot) {
    QPushButton* made = tool_button(text, tip, keys, this);
    connect(made, &QPushButton::clicked, this, slot);
    tools().addWidget(made);
  };
  button(tr("Add seam"), tr("A new seam after the last one"), QKeySequence(Qt::ALT | Qt::Key_Insert),
         &SeamsPage::addSeam);
  button(tr("Duplicate"), tr("A copy of the seam"), QKeySequence(Qt::CTRL | Qt::Key_D),
         &SeamsPage::duplicateSeam);
  button(tr("Remove"), tr("Take the seam out of the plan"), QKeySequence(Qt::ALT | Qt::Key_Delete),
         &SeamsPage::removeSeam);
  tools().addStretch(1);
  meaning_ = new QComboBox(this);
  meaning_->setAccessibleName(tr("What colours the seams"));
  meaning_->setToolTip(tr("What colours the seams"));
  meaning_->addItem(tr("State"), QString());
  for (const GridColumn& column : model_->columns())
    if (column.is_derived && column.is_number)
      meaning_->addItem(column.label, QString::fromStdString(column.key));
  connect(meaning_, &QComboBox::activated, this, &SeamsPage::draw);
  tools().addWidget(meaning_);
  makeViewTools();
}

/// A plan without a seam offers to add or import one; a weldment's own fields can be filled in before.
void SeamsPage::showFirstStep() {
  const std::vector<Weldment>& weldments = desk_.document.plan()->weldments;
  if (desk_.document.isEmpty())
    return setEmptyStep(
        tr("A plan begins with a weldment and its seams. Open the demo to look around, or "
           "start a new plan."));
  const bool has_seams = std::ranges::any_of(weldments, [](const Weldment& w) { return !w.seams.empty(); });
  if (has_seams || (weldment_fields_->isChecked() && !weldments.empty())) return setEmptyStep({});
  std::vector<FirstStep> offered = {FirstStep::seam, FirstStep::list};
  if (!weldments.empty()) offered.push_back(FirstStep::weldment);
  setEmptyStep(tr("The plan has no seam yet: add the first one, or import a list of seams."), offered);
}

void SeamsPage::fillWeldments() {
  const PlanPtr plan = desk_.document.plan();
  showFirstStep();
  weldments_->clear();
  weldments_->addItem(tr("All weldments"));
  for (const Weldment& weldment : plan->weldments) weldments_->addItem(QString::fromStdString(weldment.id));
  weldments_->addItem(tr("New weldment"));
  if (model_->weldment() >= static_cast<int>(plan->weldments.size())) model_->setWeldment(-1);
  weldments_->setCurrentIndex(model_->weldment() + 1);
  showSeam();
  draw();
}

void SeamsPage::showSeam() {
  const SeamPlace at = desk_.selection.seam();
  const PlanPtr plan = desk_.document.plan();
  const bool exists =
      at.weldment < plan->weldments.size() && at.seam < plan->weldments[at.weldment].seams.size();
  if (exists && model_->weldment() >= 0 && static_cast<std::size_t>(model_->weldment()) != at.weldment) {
    model_->setWeldment(static_cast<int>(at.weldment));
    weldments_->setCurrentIndex(static_cast<int>(at.weldment) + 1);
    draw();
  }
  if (weldment_fields_->isChecked() && at.weldment < plan->weldments.size())
    form_->setObject("/weldments/" + std::to_string(at.weldment), weldment_form_groups());
  else
    form_->setObject(exists ? seam_address(at.weldment, at.seam) : std::string(), seam_form_groups());
  const int row = exists ? model_->rowOf(at) : -1;
  table_->selectRow(row);
  picture_->setPicked(row);
  // With all weldments in the table, the chosen seam says which of them is seen in space.
  if (exists && at.weldment != drawn_weldment_) draw();
  space_->setPicked(exists ? static_cast<int>(at.seam) : -1);
  showPasses();
}

void SeamsPage::showPasses() {
  std::vector<ValueModel::Row> rows;
  const int row = model_->rowOf(desk_.selection.seam());
  if (results() && row >= 0) {
    for (const PassEvaluation& pass : results()->evaluation.passes) {
      if (pass.weldment != model_->weldmentOf(row).id || pass.seam != model_->seam(row).id) continue;
      const std::string place = pass.weldment + "/" + pass.seam + "/pass " + std::to_string(pass.pass);
      rows.push_back(value_row(pass_columns(), true, pass, QString::fromStdString(place)));
    }
  }
  passes_->setPlan(results() ? results()->plan : nullptr);
  passes_->setRows(std::move(rows));
  pass_table_->fitColumns();
}

void SeamsPage::draw() {
  const QString key = meaning_->currentData().toString();
  const int column = key.isEmpty() ? -1 : model_->columnNamed(key.toStdString());
  std::vector<DrawnSeam> drawn;
  for (int row = 0; row < model_->rowCount(); ++row) {
    const Seam& seam = model_->seam(row);
    DrawnSeam line;
    line.name = QString::fromStdString(seam.id);
    line.path_mm = seam.path_mm;
    line.by_hand = seam.by == "manual";
    const QModelIndex first = model_->index(row, 0);
    if (const QVariant severity = first.data(SeverityRole); severity.isValid())
      line.severity = static_cast<Severity>(severity.toInt());
    line.is_partly_judged = first.data(PartlyJudgedRole).toBool();
    line.tip = line.name + QStringLiteral(": ") + state_text(model_->rowState(row));
    if (column >= 0) {
      const QModelIndex cell = model_->index(row, column);
      if (const QVariant number = cell.data(SortRole); number.typeId() == QMetaType::Double)
        line.value = number.toDouble();
      line.tip +=
          QStringLiteral("\n") + model_->headingText(column) + QStringLiteral(": ") + cell.data().toString();
    }
    drawn.push_back(std::move(line));
  }
  if (column >= 0) {
    const char* unit = model_->columns()[static_cast<std::size_t>(column)].unit;
    const auto text = [unit](double value) { return UnitView::shared().numberText(value, unit, 3); };
    picture_->setMeaning(model_->headingText(column), text);
    space_->setMeaning(model_->headingText(column), text);
  } else {
    picture_->setMeaning({}, {});
    space_->setMeaning({}, {});
  }
  drawSpace(drawn);
  picture_->setSeams(std::move(drawn));
  picture_->setPicked(model_->rowOf(desk_.selection.seam()));
}

void SeamsPage::setResults(const ResultsPtr& results) {
  const bool first = !this->results();
  Page::setResults(results);
  model_->setResults(results);
  if (first) table_->fitColumns();
  showPasses();
  draw();
}

bool SeamsPage::goTo(const QString& address, const QString& key) {
  const std::string pointer = address.toStdString();
  if (first_step(pointer).part != "weldments") return false;
  const PointerStep weldment = first_step(first_step(pointer).rest);
  const PointerStep seams = first_step(weldment.rest);
  const PlanPtr plan = desk_.document.plan();
  const std::size_t w = list_index(weldment.part, plan->weldments.size());
  if (w >= plan->weldments.size()) return false;
  if (weldment.rest.empty()) {
    if (desk_.selection.seam().weldment != w) desk_.selection.setSeam({w, 0});
    weldment_fields_->setChecked(true);
    if (!form_->focusField(key)) form_->focusField("id");
    return true;
  }
  const std::size_t s = list_index(first_step(seams.rest).part, plan->weldments[w].seams.size());
  if (s >= plan->weldments[w].seams.size()) return false;
  weldment_fields_->setChecked(false);
  desk_.selection.setSeam({w, s});
  showSeam();
  if (!form_->focusField(key)) table_->focusCell(model_->rowOf({w, s}), "id");
  return true;
}

void SeamsPage::insert(const Seam& seam, const QString& what) {
  const std::size_t w = desk_.selection.seam().weldment;
  std::size_t at = 0;
  const auto refusal = desk_.document.edit(what, {}, [&](Plan& plan) {
    if (plan.weldments.empty()) plan.weldments.emplace_back().id = first_weldment_id;
    auto& seams = plan.weldments.at(w).seams;
    at = seams.size();
    seams.push_back(seam);
  });
  if (refusal) {
    emit message(refusal->text);
    return;
  }
  // The new seam is named, not its weldment.
  weldment_fields_->setChecked(false);
  desk_.selection.setSeam({w, at});
  showSeam();
  form_->nameNew();
}

void SeamsPage::addSeam() {
  const PlanPtr plan = desk_.document.plan();
  const std::size_t w = desk_.selection.seam().weldment;
  if (plan->base_metals.empty()) return emit message(tr("A seam needs a base metal: the plan has none yet."));
  if (plan->weldments.empty()) {
    Weldment first;
    first.id = first_weldment_id;
    return insert(new_seam(*plan, first), tr("Add seam"));
  }
  if (w < plan->weldments.size()) insert(new_seam(*plan, plan->weldments[w]), tr("Add seam"));
}

void SeamsPage::addWeldment() {
  const PlanPtr plan = desk_.document.plan();
  const std::size_t at = plan->weldments.size();
  const auto refusal = desk_.document.edit(tr("Add weldment"), {}, [&](Plan& changed) {
    changed.weldments.emplace_back().id =
        next_id(plan->weldments, plan->weldments.empty() ? first_weldment_id : plan->weldments.back().id);
  });
  if (refusal) return emit message(refusal->text);
  model_->setWeldment(static_cast<int>(at));
  desk_.selection.setSeam({at, 0});
  fillWeldments();
  weldment_fields_->setChecked(true);
  form_->nameNew();
}

void SeamsPage::showWeldmentFields() {
  weldment_fields_->setChecked(true);
  form_->focusField(QStringLiteral("drawing"));
}

void SeamsPage::duplicateSeam() {
  const int row = model_->rowOf(desk_.selection.seam());
  if (row < 0) return;
  Seam copy = model_->seam(row);
  copy.id = next_id(model_->weldmentOf(row).seams, copy.id);
  insert(copy, tr("Duplicate seam"));
}

void SeamsPage::removeSeam() {
  const int row = model_->rowOf(desk_.selection.seam());
  if (row < 0) return;
  const SeamPlace at = model_->place(row);
  const auto refusal = desk_.document.edit(tr("Remove seam"), {}, [&](Plan& plan) {
    Weldment& weldment = plan.weldments.at(at.weldment);
    const std::string id = weldment.seams.at(at.seam).id;
    std::erase_if(weldment.order, [&](const OrderStep& step) { return step.seam == id; });
    weldment.seams.erase(weldment.seams.begin() + static_cast<std::ptrdiff_t>(at.seam));
  });
  if (refusal) return emit message(tr("The seam can't go: %1").arg(refusal->text));
  if (model_->rowCount() > 0) table_->selectRow(std::min(row, model_->rowCount() - 1));
}

}  // namespace seamtakt::desk
