#include "pages/records_page.hpp"

#include <QFileDialog>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QSplitter>
#include <QTabWidget>
#include <QVBoxLayout>

#include "document/demo_plan.hpp"
#include "document/shown_text.hpp"
#include "models/tables/record_rows.hpp"
#include "models/tables/statistics_rows.hpp"
#include "models/words/explanation_html.hpp"
#include "models/words/place_text.hpp"
#include "pages/actual_panel.hpp"
#include "pages/record_browser.hpp"
#include "pages/store_panel.hpp"
#include "plots/individuals_plot.hpp"
#include "plots/trace_limits.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/import_dialog.hpp"
#include "widgets/style.hpp"
#include "widgets/tool_button.hpp"

namespace seamtakt::desk {

RecordsPage::RecordsPage(const Desk& desk, QWidget* parent)
    : Page(desk, Link::records, tr("Records"),
           tr("A verdict holds for what was logged: it says nothing of what no sensor saw. Instruments must "
              "be in date."),
           parent) {
  units_ = new ValueModel(unit_columns(), this);
  passes_ = new ValueModel(record_columns(), this);
  statistics_ = new ValueModel(statistics_columns(), this);
  setWhat(makeWhat());
  setWhy(makeWhy());
  setShares(1, 1);
  makeTools();
  working(false);
  connect(&import_, &LogImport::progress, this, [this](qulonglong taken, qulonglong total) {
    progress_->setMaximum(total > 0 ? 1000 : 0);
    if (total > 0) progress_->setValue(static_cast<int>(1000 * taken / total));
  });
  connect(&import_, &LogImport::finished, this, &RecordsPage::show);
  connect(&import_, &LogImport::cancelled, this, [this] {
    working(false);
    emit message(tr("Import stopped: nothing was taken in."));
  });
  connect(&import_, &LogImport::failed, this, [this](const QString& reason) {
    working(false);
    summary_->setText(reason);
    emit message(reason);
  });
  connect(&desk_.document, &Document::replaced, this, &RecordsPage::dropLogs);
  connect(unit_table_, &GridView::rowChosen, this, &RecordsPage::showPasses);
  connect(pass_table_, &GridView::rowChosen, this, &RecordsPage::showTrace);
  connect(trace_, &TraceView::readOut, read_out_, &QLabel::setText);
  connect(statistics_table_, &GridView::rowChosen, this, [this](int row) {
    const QuantityStatistics& of = logs_->audit.statistics.quantities[static_cast<std::size_t>(row)];
    chart_schedule_ = of.schedule;
    chart_quantity_ = of.quantity;
    showChart();
  });
  connect(tabs_, &QTabWidget::currentChanged, this, [this](int tab) {
    QWidget* now = tabs_->widget(tab);
    parts()[1]->setVisible(now != store_ && now != browser_ && now != actual_);
  });
  connect(store_, &StorePanel::message, this, &Page::message);
  connect(store_, &StorePanel::answered, this, &RecordsPage::figureChanged);
  connect(store_, &StorePanel::answered, browser_,
          [this] { browser_->setStore(store_->answer()->question.uri); });
  connect(browser_, &RecordBrowser::message, this, &Page::message);
  connect(browser_, &RecordBrowser::reportAsked, this, &RecordsPage::storeReportAsked);
  connect(store_, &StorePanel::reportAsked, this, &RecordsPage::unitReportAsked);
}

QWidget* RecordsPage::makeWhat() {
  tabs_ = new QTabWidget(this);
  tabs_->setAccessibleName(tr("Records"));
  tabs_->setDocumentMode(true);
  auto* split = new QSplitter(Qt::Vertical, tabs_);
  unit_table_ = new GridView(*units_, tr("Units"), split);
  unit_table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  unit_table_->keepColumns(QStringLiteral("record-units"));
  pass_table_ = new GridView(*passes_, tr("Passes of the unit"), split);
  pass_table_->keepColumns(QStringLiteral("records"));
  split->addWidget(unit_table_);
  split->addWidget(pass_table_);
  split->setSizes({180, 360});
  statistics_table_ = new GridView(*statistics_, tr("Charts and capability"), tabs_);
  statistics_table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  statistics_table_->keepColumns(QStringLiteral("statistics"));
  store_ = new StorePanel(tabs_);
  // Short: five of them stand side by side in either language.
  tabs_->addTab(split, tr("Units"));
  tabs_->addTab(statistics_table_, tr("Charts"));
  browser_ = new RecordBrowser(tabs_);
  tabs_->addTab(store_, tr("Record store"));
  tabs_->addTab(browser_, tr("Stored passes"));
  actual_ = new ActualPanel(tabs_);
  tabs_->addTab(actual_, tr("Planned and actual"));
  return tabs_;
}

QWidget* RecordsPage::makeWhy() {
  auto* side = new QWidget;
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  auto* split = new QSplitter(Qt::Vertical, side);
  trace_ = new TraceView(split);
  individuals_ = new IndividualsPlot(split);
  split->addWidget(trace_);
  split->addWidget(individuals_);
  split->setSizes({360, 200});
  read_out_ = new QLabel(side);
  read_out_->setProperty("role", "quiet");
  read_out_->setMinimumWidth(10);
  column->addWidget(split, 1);
  column->addWidget(read_out_);
  return side;
}

void RecordsPage::makeTools() {
  const auto button = [&](const QString& text, const QString& tip) {
    QPushButton* made = tool_button(text, tip, {}, this);
    tools().addWidget(made);
    return made;
  };
  import_button_ = button(tr("Import log …"), tr("Reads arc logs and judges each pass by the plan (Ctrl+I)"));
  with_button_ = button(tr("Import with …"),
                        tr("The same with a columns file, its job numbers, units by time or manual seams"));
  demo_button_ = button(tr("Demo log"), tr("Reads the log that belongs to the demo plan"));
  cancel_button_ = button(tr("Stop"), tr("Stops the import; nothing is taken in (Esc)"));
  cancel_button_->setShortcut(Qt::Key_Escape);
  progress_ = new QProgressBar(this);
  progress_->setAccessibleName(tr("Progress of the import"));
  progress_->setMaximumWidth(180);
  progress_->setTextVisible(false);
  summary_ = new QLabel(this);
  summary_->setProperty("role", "quiet");
  summary_->setTextFormat(Qt::PlainText);
  summary_->setMinimumWidth(10);
  tools().addWidget(progress_);
  tools().addWidget(summary_, 1);
  const QString filter = tr("Arc logs (*.csv *.gz *.txt);;All files (*)");
  connect(import_button_, &QPushButton::clicked, this, [this, filter] {
    const QStringList paths = QFileDialog::getOpenFileNames(this, tr("Import log"), {}, filter);
    if (!paths.isEmpty()) importLogs(paths);
  });
  connect(with_button_, &QPushButton::clicked, this, &RecordsPage::askWhatToImport);
  connect(demo_button_, &QPushButton::clicked, this, [this] {
    importLogs({demo_file(QStringLiteral("arc-log.csv.gz"))}, demo_file(QStringLiteral("manual-seams.csv")));
  });
  connect(cancel_button_, &QPushButton::clicked, &import_, &LogImport::cancel);
}

void RecordsPage::working(bool is_working) {
  progress_->setVisible(is_working);
  cancel_button_->setVisible(is_working);
  for (QPushButton* button : {import_button_, with_button_, demo_button_}) button->setVisible(!is_working);
}

void RecordsPage::askCertificate() {
  const QString unit = store_->chosenUnit();
  if (unit.isEmpty()) {
    tabs_->setCurrentWidget(store_);
    emit message(tr("Open a record store and choose a unit first."));
    return;
  }
  emit storeReportAsked(
      {StoreReportQuestion::Kind::certificate, store_->answer()->question.uri, unit, {}, {}, {}});
}

void RecordsPage::askWhatToImport() {
  auto* dialog = new ImportDialog(last_request_, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &QDialog::accepted, this, [this, dialog] { importLogs(dialog->request()); });
  dialog->open();
}

void RecordsPage::importLogs(const QStringList& paths, const QString& manual_csv) {
  importLogs(ImportRequest{paths, {}, {}, manual_csv});
}

void RecordsPage::importLogs(const ImportRequest& request) {
  last_request_ = request;
  summary_->setText(tr("Reading %1 …").arg(request.logs.join(QStringLiteral(", "))));
  progress_->setMaximum(0);
  working(true);
  import_.start(request, desk_.document.plan());
}

Findings RecordsPage::recordFindings() const {
  Findings all = logs_ ? logs_->audit.findings : Findings();
  std::stable_sort(all.begin(), all.end(),
                   [](const Finding& a, const Finding& b) { return a.severity > b.severity; });
  return all;
}

void RecordsPage::show(const ImportedLogsPtr& logs) {
  working(false);
  trace_->setTrace(nullptr, 0, 0, {}, {});
  logs_ = logs;
  const AuditResult& audit = logs->audit;
  summary_->setText(shown_text(Sentence("desk.audit"_key, {{"passes", audit.passes.size()},
                                                           {"read", audit.rows.read},
                                                           {"in_passes", audit.rows.in_passes},
                                                           {"arc_off", audit.rows.arc_off},
                                                           {"rejected", audit.rows.rejected}})));
  units_->setRows(unit_rows(audit));
  unit_table_->fitColumns();
  statistics_->setRows(statistics_rows(audit));
  statistics_table_->fitColumns();
  actual_->setLogs(logs_);
  tabs_->setCurrentIndex(0);
  unit_table_->clearSelection();
  unit_table_->setCurrentIndex({});
  showPasses();
  if (!audit.units.empty()) unit_table_->selectRow(0);
  if (pass_table_->currentRow() < 0) pass_table_->selectRow(0);
  findings().setFindings(*logs->plan, recordFindings());
  emit figureChanged();
}

void RecordsPage::dropLogs() {
  import_.drop();
  working(false);
  if (!logs_) return;
  logs_.reset();
  chart_schedule_.clear();
  summary_->setText(tr("The logs were judged by another plan: import them again."));
  for (ValueModel* model : {units_, statistics_}) model->setRows({});
  actual_->setLogs(nullptr);
  showPasses();
  showChart();
  if (results()) findings().setFindings(*results()->plan, results()->findings);
  emit figureChanged();
}

void RecordsPage::showPasses() {
  shown_.clear();
  std::vector<ValueModel::Row> rows;
  const int unit = unit_table_->currentRow();
  for (std::size_t i = 0; logs_ && i < logs_->audit.passes.size(); ++i) {
    const PassRecord& record = logs_->audit.passes[i];
    if (unit >= 0 && record.unit_serial != logs_->audit.units[static_cast<std::size_t>(unit)].unit_serial)
      continue;
    shown_.push_back(i);
    rows.push_back(record_row(record));
  }
  passes_->setRows(std::move(rows));
  pass_table_->fitColumns();
  showTrace(pass_table_->currentRow());
}

void RecordsPage::showTrace(int row) {
  if (!logs_ || row < 0 || static_cast<std::size_t>(row) >= shown_.size())
    return trace_->setTrace(nullptr, 0, 0, {}, {});
  const PassRecord& record = logs_->audit.passes[shown_[static_cast<std::size_t>(row)]];
  std::size_t begin = 0, end = 0;
  const Trace* trace = trace_of(*logs_, record, begin, end);
  trace_->setTrace(trace, begin, end, trace_limits(*logs_->plan, record),
                   place_text(record.place()) + QStringLiteral(": ") + verdict_word(record.verdict));
  if (const auto failed = failed_stretch(record); failed && trace)
    trace_->showStretch(failed->first, failed->second);
  chart_schedule_ = record.schedule;
  showChart();
}

void RecordsPage::explainCell(GridView* table, const QString& place, const QString& key) {
  const int row = table == pass_table_ && table != nullptr ? pass_table_->currentRow() : -1;
  if (!logs_ || row < 0 || static_cast<std::size_t>(row) >= shown_.size())
    return Page::explainCell(table, place, key);
  const std::size_t pass = shown_[static_cast<std::size_t>(row)];
  desk_.selection.explainBy([logs = logs_, pass, key](int most_letters) {
    return record_explanation_html(logs->audit.passes[pass], *logs->plan, key, most_letters);
  });
}

void RecordsPage::showChart() {
  IndividualsChart chart;
  if (!logs_ || chart_schedule_.empty()) return individuals_->setChart(std::move(chart));
  const AuditResult& audit = logs_->audit;
  chart.limits = limits_of(find_by_id(logs_->plan->schedules, chart_schedule_), chart_quantity_);
  const bool is_heat = chart_quantity_ == "heat_input_kJ_mm";
  std::map<std::string, const PassRecord*> by_place;
  for (const PassRecord& record : audit.passes) by_place[record.place()] = &record;
  for (const QuantityStatistics& of : audit.statistics.quantities) {
    if (of.schedule != chart_schedule_ || of.quantity != chart_quantity_) continue;
    chart.chart = of.chart;
    chart.runs = of.chart_signals;
    chart.unit = find_unit(of.unit)->name;
    for (std::size_t i = 0; i < of.values.size(); ++i) {
      const PassRecord* record = by_place.at(of.places[i]);
      chart.points.push_back(
          {of.values[i], is_heat ? record->U_heat_input_kJ_mm.value_or(0) : 0, record->verdict});
    }
  }
  // Too few passes for a chart: their heat inputs alone.
  if (!chart.chart) {
    chart_quantity_ = "heat_input_kJ_mm";
    chart.unit = "kJ/mm";
    chart.limits = limits_of(find_by_id(logs_->plan->schedules, chart_schedule_), chart_quantity_);
    for (const PassRecord& each : audit.passes)
      if (each.schedule == chart_schedule_ && each.heat_input_kJ_mm)
        chart.points.push_back({*each.heat_input_kJ_mm, each.U_heat_input_kJ_mm.value_or(0), each.verdict});
  }
  chart.heading = tr("%1, %2").arg(quantity_word(chart_quantity_), QString::fromStdString(chart_schedule_));
  individuals_->setChart(std::move(chart));
}

QString RecordsPage::figure() const {
  const auto of = [](std::ptrdiff_t complete, std::size_t all) {
    return tr("%1 of %2").arg(complete).arg(all);
  };
  const auto complete = [](const auto& unit) { return unit.complete == true; };
  if (logs_)
    return of(std::count_if(logs_->audit.units.begin(), logs_->audit.units.end(), complete),
              logs_->audit.units.size());
  if (!store_->answer()) return {};
  const auto& units = store_->answer()->units;
  return of(std::count_if(units.begin(), units.end(), complete), units.size());
}

QString RecordsPage::figureDetail() const {
  return logs_ || store_->answer() ? tr("units complete") : QString();
}

std::optional<Severity> RecordsPage::worst() const {
  Tally tally;
  if (store_->answer() && !store_->answer()->report.trusted) tally.add(Severity::fail);
  if (!logs_) return tally.worst();
  for (const PassRecord& record : logs_->audit.passes)
    if (const auto severity = verdict_severity(record.verdict)) tally.add(*severity);
  return std::max(tally.worst(), FindingIndex(logs_->audit.findings).tally(Link::records).worst());
}

void RecordsPage::setResults(const ResultsPtr& results) {
  Page::setResults(results);
  if (logs_) findings().setFindings(*logs_->plan, recordFindings());
  individuals_->restyle();
}

}  // namespace seamtakt::desk
