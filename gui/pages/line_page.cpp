#include "pages/line_page.hpp"

#include <QCheckBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

#include "document/demo_plan.hpp"
#include "models/line_rows.hpp"
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
  cure_table_ = new GridView(*cures_, tr("What would help"), tabs);
  auto* drafted = new QWidget(tabs);
  auto* column = new QVBoxLayout(drafted);
  column->setContentsMargins(0, 0, 0, 0);
  takt_ = new FieldForm(desk_.document, drafted);
  takt_->setAccessibleName(tr("Takt"));
  stage_table_ = new GridView(*stages_, tr("Stages"), drafted);
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
  QString text = tr("%1 units, %2 units/h, bottleneck %3")
                     .arg(line->units.size())
                     .arg(QString::fromStdString(rounded_text(line->throughput_per_h, 3)),
                          QString::fromStdString(line->bottleneck));
  if (line->takt_misses) text += tr(", %1 takt misses").arg(*line->takt_misses);
  if (line->levelled)
    text += tr(" (levelled: %1 before, %2 after, mean)")
                .arg(QString::fromStdString(rounded_text(line->levelled->before.takt_misses, 3)),
                     QString::fromStdString(rounded_text(line->levelled->after.takt_misses, 3)));
  if (!line->waiting.empty()) text += tr(", %1 units wait").arg(line->waiting.size());
  summary_->setText(text);
  summary_->setToolTip(text);
  if (results()) findings().setFindings(*results()->plan, line->findings);
  emit figureChanged();
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
  setEmptyStep(any ? QString()
                   : tr("A line is its takt and its stages. This plan names none; the demo shows one."));
  if (!any) return stages_->setRows({});
  takt_->setObject("/line", {{tr("Takt"), {}, {"takt_s", "planning_pct"}}});
  stages_->setRows(stage_rows(*plan->line));
  stage_table_->fitColumns();
  if (stage_table_->currentRow() < 0) stage_table_->selectRow(0);
}

QString LinePage::figure() const {
  return line_ ? tr("%1 units/h").arg(QString::fromStdString(rounded_text(line_->throughput_per_h, 3)))
               : QString();
}

QString LinePage::figureDetail() const {
  return line_ && line_->takt_misses ? tr("%1 missed").arg(*line_->takt_misses) : QString();
}

std::optional<Severity> LinePage::worst() const {
  if (!line_) return std::nullopt;
  Tally tally = FindingIndex(line_->findings).tally(Link::line);
  if (line_->takt_misses.value_or(0) > 0) tally.add(Severity::warn);
  return tally.worst();
}

void LinePage::setResults(const ResultsPtr& results) {
  Page::setResults(results);
  if (line_) findings().setFindings(*results->plan, line_->findings);
  if (isVisible()) ask();
}

}  // namespace seamtakt::desk
