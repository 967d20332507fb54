#include "pages/line_page.hpp"

#include <QCheckBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QStyle>
#include <QTabWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "document/demo_plan.hpp"
#include "document/shown_text.hpp"
#include "models/tables/line_rows.hpp"
#include "models/words/unit_view.hpp"
#include "plots/line_view.hpp"
#include "widgets/field_form.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/style.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

LinePage::LinePage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::line, tr("Line"),
           tr("Times are planned ones and chance is drawn: what the line does is measured at the line."),
           parent) {
  stages_ = new ValueModel(stage_columns(), this);
  units_ = new ValueModel(line_unit_columns(), this);
  cures_ = new ValueModel(cure_columns(), this);
  setWhat(makeWhat());
  setWhy(makeWhy());
  setShares(1, 1);
  makeTools();
  connect(stage_table_, &GridView::rowChosen, this, [this](int row) {
    stage_->setObject("/line/stages/" + std::to_string(row), {{tr("Stage"), {}, {}}});
  });
  connect(&desk_.document, &Document::planChanged, this, &LinePage::refresh);
  connect(&desk_.document, &Document::replaced, this, &LinePage::drop);
  connect(&UnitView::shared(), &UnitView::changed, this, &LinePage::refresh);
  connect(&job_, &LineJob::answered, this, &LinePage::show);
  connect(&job_, &LineJob::failed, this, [this](const QString& reason) {
    summary_->setText(reason);
    emit message(reason);
  });
  refresh();
}

QWidget* LinePage::makeWhat() {
  auto* tabs = new QTabWidget(this);
  tabs->setAccessibleName(tr("Tables of the line"));
  tabs->setDocumentMode(true);
  unit_table_ = new GridView(*units_, tr("Units of the day"), tabs);
  unit_table_->keepColumns(QStringLiteral("units"));
  cure_table_ = new GridView(*cures_, tr("What would help"), tabs);
  cure_table_->keepColumns(QStringLiteral("cures"));
  auto* drafted = new QWidget(tabs);
  auto* column = new QVBoxLayout(drafted);
  column->setContentsMargins(0, 0, 0, 0);
  takt_ = new FieldForm(desk_.document, drafted);
  takt_->setAccessibleName(tr("Takt"));
  stage_table_ = new GridView(*stages_, tr("Stages"), drafted);
  stage_table_->keepColumns(QStringLiteral("stages"));
  auto* scroll = new QScrollArea(drafted);
  scroll->setWidgetResizable(true);
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setAccessibleName(tr("Fields of the stage"));
  stage_ = new FieldForm(desk_.document, scroll);
  stage_->setAccessibleName(tr("Fields of the stage"));
  scroll->setWidget(stage_);
  column->addWidget(takt_);
  column->addWidget(stage_table_, 1);
  column->addWidget(scroll, 1);
  tabs->addTab(drafted, tr("Takt and stages"));
  tabs->addTab(unit_table_, tr("Units of the day"));
  tabs->addTab(cure_table_, tr("What would help"));
  tables_ = tabs;
  return tabs;
}

QWidget* LinePage::makeWhy() {
  picture_ = new LineView(this);
  return picture_;
}

void LinePage::makeTools() {
  const auto button = [&](const QString& text, const QString& tip, auto slot) {
    QPushButton* made = tool_button(text, tip, {}, this);
    connect(made, &QPushButton::clicked, this, slot);
    tools().addWidget(made);
  };
  button(tr("Read orders …"), tr("A table with unit_serial, weldment and due"), [this] {
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Read orders"), {}, tr("Tables (*.csv);;All files (*)"));
    if (!path.isEmpty()) readOrders(path);
  });
  button(tr("Carts …"), tr("A folder with one cart a unit, SERIAL.csv: only complete units are released"),
         [this] {
           question_.carts = QFileDialog::getExistingDirectory(this, tr("Folder of carts"));
           ask();
         });
  button(tr("Demo orders"), tr("The orders that belong to the demo plan"),
         [this] { readOrders(demo_file(QStringLiteral("orders.csv"))); });
  level_ = new QCheckBox(tr("Level the sequence"), this);
  level_->setAccessibleName(level_->text());
  level_->setToolTip(tr("Re-sequences the orders; due dates are kept"));
  connect(level_, &QCheckBox::toggled, this, [this](bool on) {
    question_.level = on;
    ask();
  });
  summary_ = new QLabel(this);
  summary_->setProperty("role", "quiet");
  summary_->setTextFormat(Qt::PlainText);
  summary_->setMinimumWidth(10);
  tools().addWidget(level_);
  tools().addWidget(summary_, 1);
}

void LinePage::readOrders(const QString& path) {
  question_.orders = path;
  ask();
}

void LinePage::ask() {
  if (question_.orders.isEmpty() || !results() || !results()->has_cycles || !results()->plan->line) return;
  summary_->setText(tr("working …"));
  job_.ask(question_, results());
}

void LinePage::show(const LineResultPtr& line) {
  if (!line_) tables_->setCurrentIndex(1);
  line_ = line;
  units_->setRows(line_unit_rows(*line));
  cures_->setRows(cure_rows(*line));
  unit_table_->fitColumns();
  cure_table_->fitColumns();
  picture_->setResult(line);
  const QString text = headlineOf(*line);
  summary_->setText(text);
  summary_->setToolTip(text + QStringLiteral("\n") + drawOf(*line));
  unit_table_->setToolTip(drawOf(*line));
  summary_->setProperty("role", line->not_run > 0 ? "refusal" : "quiet");
  summary_->style()->unpolish(summary_);
  summary_->style()->polish(summary_);
  if (results()) findings().setFindings(*results()->plan, line->findings);
  emit figureChanged();
}

namespace {

QString rounded(double value, int digits) {
  return UnitView::shared().rounded(value, digits);
}

}  // namespace

/// Means of the runs first, then of which draw tables and picture are.
QString LinePage::headlineOf(const LineResult& line) {
  const LineFigures& figures = line.figures;
  QString text;
  if (line.not_run > 0)
    text = tr("%1 of %2 units aren't run: seams of theirs are unwelded. ")
               .arg(line.not_run)
               .arg(line.not_run + line.units.size());
  if (line.units.empty()) return text + tr("No unit is run.");
  text += shown_text(
      Sentence("desk.line.units"_key,
               {{"units", line.units.size()}, {"rate", rounded(figures.throughput_per_h, 3).toStdString()}}));
  if (line.certain)
    text += tr(" (nothing is left to chance)");
  else if (figures.runs == 1)
    text += tr(" (one draw, seed %1)").arg(line.draw_seed);
  else
    text += tr(" (mean of %1 runs, 8 of 10 from %2 to %3)")
                .arg(figures.runs)
                .arg(rounded(figures.throughput_p10_per_h.value_or(0), 3),
                     rounded(figures.throughput_p90_per_h.value_or(0), 3));
  text += tr(", bottleneck %1").arg(QString::fromStdString(line.bottleneck));
  if (line.takt_limit_s) text += tr(", %1 takt misses").arg(rounded(figures.takt_misses, 3));
  if (line.levelled)
    text +=
        tr(" (levelled: %1 before, %2 after, mean)")
            .arg(rounded(line.levelled->before.takt_misses, 3), rounded(line.levelled->after.takt_misses, 3));
  if (line.has_dues) text += tr(", %1 orders late").arg(rounded(figures.late_orders, 3));
  if (!line.first_day.empty())
    text += tr(", %1 done on %2")
                .arg(rounded(figures.finished_first_day, 3), QString::fromStdString(line.first_day));
  const auto for_carts = std::ranges::count(line.waiting, 0, &WaitingUnit::unwelded_seams);
  if (for_carts > 0) text += shown_text(Sentence("desk.line.wait"_key, {{"units", for_carts}}));
  return text;
}

/// Of which draw units, stages and causes are.
QString LinePage::drawOf(const LineResult& line) {
  QString text;
  if (!line.unfinished.empty())
    text = tr("Not finished on %1: %2.")
               .arg(QString::fromStdString(line.first_day),
                    QString::fromStdString(printable(comma_list(line.unfinished), 300))) +
           QStringLiteral("\n");
  if (line.certain || line.units.empty() || line.figures.runs == 1) return text.trimmed();
  return text + tr("Tables and picture are of one draw of %1, the one in the middle by throughput: seed %2.")
                    .arg(line.figures.runs)
                    .arg(line.draw_seed);
}

void LinePage::drop() {
  job_.drop();
  question_ = {};
  question_.level = level_->isChecked();
  line_.reset();
  units_->setRows({});
  cures_->setRows({});
  picture_->setResult(nullptr);
  summary_->clear();
  summary_->setToolTip({});
  emit figureChanged();
}

void LinePage::refresh() {
  const PlanPtr plan = desk_.document.plan();
  const bool any = plan->line && !plan->line->stages.empty();
  if (any)
    setEmptyStep({});
  else if (desk_.document.isEmpty())
    setEmptyStep(tr("A line is its takt and its stages. This plan names none; the demo shows one."));
  else
    setEmptyStep(tr("A line is its takt and its stages: Plan data adds them."), {FirstStep::plan_data});
  if (!any) return stages_->setRows({});
  takt_->setObject("/line", {{tr("Takt"), {}, {"takt_s", "planning_pct", "pull"}}});
  stages_->setRows(stage_rows(*plan->line));
  stage_table_->fitColumns();
  if (stage_table_->currentRow() < 0) stage_table_->selectRow(0);
}

QString LinePage::figure() const {
  return line_ ? tr("%1 units/h").arg(rounded(line_->figures.throughput_per_h, 3)) : QString();
}

QString LinePage::figureDetail() const {
  if (!line_) return {};
  if (line_->not_run > 0)
    return tr("%1 of %2 not run").arg(line_->not_run).arg(line_->not_run + line_->units.size());
  if (line_->figures.runs == 1 && !line_->certain) return tr("one draw, seed %1").arg(line_->draw_seed);
  if (line_->figures.late_orders > 0) return tr("%1 orders late").arg(rounded(line_->figures.late_orders, 3));
  return line_->takt_limit_s ? tr("%1 missed").arg(rounded(line_->figures.takt_misses, 3)) : QString();
}

std::optional<Severity> LinePage::worst() const {
  if (!line_) return std::nullopt;
  Tally tally = FindingIndex(line_->findings).tally(Link::line);
  if (line_->figures.takt_misses > 0) tally.add(Severity::warn);
  return tally.worst();
}

void LinePage::setResults(const ResultsPtr& results) {
  Page::setResults(results);
  if (line_) findings().setFindings(*results->plan, line_->findings);
  if (isVisible()) ask();
}

}  // namespace seamtakt::desk
