#include "pages/heat_page.hpp"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "base/error.hpp"
#include "document/shown_text.hpp"
#include "models/tables/value_model.hpp"
#include "models/words/state_text.hpp"
#include "models/words/typed_numbers.hpp"
#include "models/words/unit_view.hpp"
#include "pages/window_panel.hpp"
#include "plan/evaluate/heat_picture.hpp"
#include "plots/temperature_plot.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"

namespace seamtakt::desk {

namespace {

constexpr const char* heat_keys[] = {"weldment",
                                     "seam",
                                     "pass",
                                     "schedule",
                                     "heat_input_kJ_mm",
                                     "U_heat_input_kJ_mm",
                                     "cooling_time_s",
                                     "cooling_time_span_s",
                                     "cooling_time_hot_s",
                                     "preheat_needed_C",
                                     "haz_hardness_HV",
                                     "CET",
                                     "cooling_regime",
                                     "arc_energy_kJ_mm"};

bool is_heat_key(std::string_view key) {
  return std::find(std::begin(heat_keys), std::end(heat_keys), key) != std::end(heat_keys);
}

std::vector<GridColumn> heat_columns() {
  auto columns = value_columns(pass_columns(), false);
  std::erase_if(columns, [](const GridColumn& column) { return !is_heat_key(column.key); });
  columns.insert(columns.begin(), GridColumn{"mark", HeatPage::tr("State"), "", {}, false, true, nullptr});
  return columns;
}

constexpr double coldest_above_preheat_K = 250;
constexpr double field_to_C = 450;  // a little beyond the 500 degree isotherm
constexpr int draw_after_ms = 60;

}  // namespace

HeatPage::HeatPage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::heat, tr("Heat"),
           tr("Cooling times and hardness are estimates from formulas: the procedure test decides. The field "
              "shows one plate with constant properties."),
           parent) {
  passes_ = new ValueModel(heat_columns(), this);
  table_ = new GridView(*passes_, tr("Heat of each pass"), this);
  // What the page is about stands beside the pass that it is of.
  QHeaderView& header = *table_->horizontalHeader();
  int place = passes_->columnNamed("pass") + 1;
  for (const char* key : {"heat_input_kJ_mm", "cooling_time_s"})
    header.moveSection(header.visualIndex(passes_->columnNamed(key)), place++);
  table_->keepColumns(QStringLiteral("heat"));
  views_ = new QTabWidget(this);
  views_->setAccessibleName(tr("Views of heat"));
  views_->setDocumentMode(true);
  window_ = new WindowPanel(desk_, views_);
  views_->addTab(window_, tr("Operating window"));
  auto* field = new QWidget(views_);
  auto* column = new QVBoxLayout(field);
  column->setContentsMargins(0, unit_px, 0, 0);
  auto* row = new QHBoxLayout;
  auto* caption = new QLabel(tr("Points beside the seam"), field);
  caption->setProperty("role", "quiet");
  distances_ = new QLineEdit(field);
  distances_->setAccessibleName(tr("Points beside the seam"));
  distances_->setToolTip(
      tr("Distances from the seam's middle, separated by semicolons; a click on the map adds one"));
  distances_->setMaximumWidth(200);
  caption->setBuddy(distances_);
  read_out_ = new QLabel(field);
  read_out_->setProperty("role", "quiet");
  row->addWidget(caption);
  row->addWidget(distances_);
  row->addWidget(read_out_, 1);
  temperature_ = new TemperaturePlot(field);
  column->addLayout(row);
  column->addWidget(temperature_, 1);
  model_ = new QLabel(field);
  model_->setProperty("role", "quiet");
  model_->setWordWrap(true);
  model_->setTextFormat(Qt::PlainText);
  column->addWidget(model_);
  views_->addTab(field, tr("Temperature"));
  setWhat(table_);
  setWhy(views_);
  setShares(6, 7);
  tools().addStretch(1);
  draw_later_.setSingleShot(true);
  draw_later_.setInterval(draw_after_ms);
  connect(&draw_later_, &QTimer::timeout, this, &HeatPage::drawNow);
  connect(table_, &GridView::rowChosen, this, &HeatPage::choosePass);
  connect(views_, &QTabWidget::currentChanged, this, &HeatPage::drawTemperature);
  connect(&desk_.selection, &Selection::seamChanged, this, &HeatPage::follow);
  connect(&desk_.document, &Document::replaced, this, [this] { pass_ = 1; });
  connect(distances_, &QLineEdit::editingFinished, this, &HeatPage::drawTemperature);
  connect(temperature_, &TemperaturePlot::readOut, read_out_, &QLabel::setText);
  connect(temperature_, &TemperaturePlot::pointChosen, this, [this](double aside_mm) {
    const QString point = UnitView::shared().numberText(aside_mm, "mm", 2);
    distances_->setText(distances_->text().isEmpty() ? point
                                                     : distances_->text() + QStringLiteral("; ") + point);
    drawTemperature();
  });
  connect(window_, &WindowPanel::message, this, &Page::message);
  connect(&UnitView::shared(), &UnitView::changed, this, [this] {
    distances_->clear();
    if (results()) fillTable();
    drawTemperature();
  });
  showFirstStep();
}

void HeatPage::showFirstStep() {
  const auto has_seams = [](const Weldment& weldment) { return !weldment.seams.empty(); };
  if (results() && !results()->evaluation.passes.empty())
    setEmptyStep({});
  else if (desk_.document.isEmpty())
    setEmptyStep(tr("Heat follows from seams and their schedules: open the demo, or start a new plan."));
  else if (std::ranges::none_of(desk_.document.plan()->weldments, has_seams))
    setEmptyStep(tr("Heat follows from seams and their schedules: the plan has no seam yet."),
                 {FirstStep::seam, FirstStep::list});
  else
    setEmptyStep(tr("Heat follows from seams and their schedules: give a seam a schedule."),
                 {FirstStep::seams});
}

const PassEvaluation* HeatPage::pass() const {
  const SeamPlace at = desk_.selection.seam();
  if (!results() || at.weldment >= results()->plan->weldments.size()) return nullptr;
  const Weldment& weldment = results()->plan->weldments[at.weldment];
  if (at.seam >= weldment.seams.size()) return nullptr;
  for (const PassEvaluation& each : results()->evaluation.passes)
    if (each.weldment == weldment.id && each.seam == weldment.seams[at.seam].id && each.pass == pass_)
      return &each;
  return nullptr;
}

void HeatPage::fillTable() {
  const FindingIndex findings(results()->findings);
  const auto columns = pass_columns();
  std::vector<ValueModel::Row> rows;
  for (const PassEvaluation& each : results()->evaluation.passes) {
    const std::string place = each.weldment + "/" + each.seam + "/pass " + std::to_string(each.pass);
    ValueModel::Row all = value_row(columns, false, each, QString::fromStdString(place));
    ValueModel::Row row;
    RowState state = findings.stateAt(Link::heat, place);
    state.is_partly_judged = is_partly_judged(each);
    row.severity = state.own;
    row.beyond = state.beyond;
    row.is_partly_judged = state.is_partly_judged;
    row.cells.push_back({state_text(state), std::nullopt, 0, QString::fromStdString(place), {}});
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (is_heat_key(columns[i].key)) row.cells.push_back(std::move(all.cells[i]));
    rows.push_back(std::move(row));
  }
  passes_->setPlan(results()->plan);
  passes_->setRows(std::move(rows));
}

void HeatPage::choosePass(int row) {
  if (!results() || static_cast<std::size_t>(row) >= results()->evaluation.passes.size()) return;
  const PassEvaluation& chosen = results()->evaluation.passes[static_cast<std::size_t>(row)];
  pass_ = chosen.pass;
  if (const auto at = find_seam(*results()->plan, chosen.weldment, chosen.seam)) desk_.selection.setSeam(*at);
  // While another page is shown the row only follows; on this page the schedule is the user's choice.
  const auto schedule = find_schedule(*results()->plan, chosen.schedule);
  if (schedule && table_->isVisible()) desk_.selection.setSchedule(*schedule);
  follow();
}

void HeatPage::follow() {
  if (!results()) return;
  const PassEvaluation* shown = pass();
  if (!shown) {
    pass_ = 1;
    shown = pass();
  }
  if (!shown) {
    // A seam without a schedule: nothing of another one stays on the screen.
    table_->selectRow(-1);
    window_->setPass({}, {}, {});
    temperature_->hide();
    model_->hide();
    return;
  }
  temperature_->show();
  model_->show();
  const int row = static_cast<int>(shown - results()->evaluation.passes.data());
  if (table_->currentRow() != row) table_->selectRow(row);
  window_->setPass(shown->weldment, shown->seam, shown->schedule);
  drawTemperature();
}

void HeatPage::drawTemperature() {
  if (isVisible()) draw_later_.start();
}

/// Points at the fusion line and beyond, until the user chooses others.
void HeatPage::drawNow() {
  const PassEvaluation* shown = pass();
  if (!shown || views_->currentIndex() != 1) return;
  const Schedule* schedule = find_by_id(results()->plan->schedules, shown->schedule);
  const auto place = find_seam(*results()->plan, shown->weldment, shown->seam);
  if (!schedule || !place) return;
  const auto& thicknesses = results()->plan->weldments[place->weldment].seams[place->seam].thickness_mm;
  const double thinner_mm = *std::min_element(thicknesses.begin(), thicknesses.end());
  const auto source = source_of_pass(*shown, schedule->travel_speed_mm_s, schedule->preheat_C);
  const double coldest_C = schedule->preheat_C + coldest_above_preheat_K;
  temperature_->setField(surface_field(source, thinner_mm, std::max(field_to_C, coldest_C), 240, 121));
  std::vector<double> points;
  const UnitView& units = UnitView::shared();
  model_->setText(modelText(*shown, thinner_mm));
  for (const QString& text : distances_->text().split(';', Qt::SkipEmptyParts)) {
    try {
      const Unit& unit = units.shown(*find_unit("mm"));
      const std::string point = plain_numbers(text.trimmed().toStdString(), FieldKind::number,
                                              UnitView::shared().hasDecimalComma());
      points.push_back(to_canonical(parse_quantity(point, unit, "point"), unit));
    } catch (const InputError& error) {
      read_out_->setText(refusal_text(error));
    }
  }
  if (points.empty()) {
    const double edge = molten_half_width_mm(source, thinner_mm);
    points = {edge, edge + 2, edge + 6};
  }
  std::vector<ThermalCycle> cycles;
  for (const double aside_mm : points)
    cycles.push_back(thermal_cycle(source, thinner_mm, aside_mm, coldest_C, 300));
  temperature_->setCycles(cycles);
}

/// Two cooling times on one page: each by which model, and why they differ.
QString HeatPage::modelText(const PassEvaluation& pass, double thickness_mm) {
  const UnitView& units = UnitView::shared();
  QString text =
      tr("Map and curves: one plate of %1 with images of the arc (Grong 1997, chapter 1), constant "
         "handbook properties.")
          .arg(units.quantityText(thickness_mm, "mm", 3));
  if (pass.cooling_time_s)
    text +=
        QStringLiteral(" ") +
        tr("The table's t8/5 of this pass, %1, is by EN 1011-2, annex D: its shape factors count the heat "
           "that the joint's second plate takes, which the curves leave out.")
            .arg(units.quantityText(*pass.cooling_time_s, "s", 3));
  return text;
}

void HeatPage::opened() {
  window_->restyle();
  temperature_->restyle();
  drawTemperature();
}

void HeatPage::setResults(const ResultsPtr& results) {
  const bool first = !this->results();
  Page::setResults(results);
  showFirstStep();
  fillTable();
  if (first || table_->currentRow() < 0) table_->fitColumns();
  window_->setResults(results);
  follow();
}

}  // namespace seamtakt::desk
