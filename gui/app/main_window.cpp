#include "app/main_window.hpp"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileInfo>
#include <QKeyEvent>
#include <QLabel>
#include <QMessageBox>
#include <QMimeData>
#include <QPushButton>
#include <QSettings>
#include <QSplitter>
#include <QStackedWidget>
#include <QStatusBar>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/theme_choice.hpp"
#include "base/error.hpp"
#include "jobs/store_report.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/tables/finding_target.hpp"
#include "models/words/state_text.hpp"
#include "models/words/unit_view.hpp"
#include "pages/cell_page.hpp"
#include "pages/findings_page.hpp"
#include "pages/heat_page.hpp"
#include "pages/line_page.hpp"
#include "pages/records_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "widgets/chain_strip.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/plain_text.hpp"

namespace seamtakt::desk {

MainWindow::MainWindow(const QString& recovery_folder, QWidget* parent) : QMainWindow(parent) {
  show_plain_text_only();
  setAccessibleName(tr("Seamtakt desk"));
  setAcceptDrops(true);
  auto* centre = new QWidget(this);
  auto* column = new QVBoxLayout(centre);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  chain_ = new ChainStrip(centre);
  across_ = new QSplitter(Qt::Horizontal, centre);
  stack_ = new QStackedWidget(across_);
  explain_ = new ExplainPanel(across_);
  explain_->hide();
  across_->addWidget(stack_);
  across_->addWidget(explain_);
  across_->setStretchFactor(0, 1);
  across_->setStretchFactor(1, 0);
  across_->setChildrenCollapsible(false);
  column->addWidget(chain_);
  column->addWidget(across_, 1);
  setCentralWidget(centre);
  state_ = new QLabel(this);
  disk_note_ = new QLabel(this);
  disk_note_->setTextFormat(Qt::PlainText);
  statusBar()->addWidget(disk_note_);
  statusBar()->addPermanentWidget(state_);
  followPlan();
  makePages();
  makeMenus();
  connectParts();
  if (!recovery_folder.isEmpty()) recovery_ = std::make_unique<Recovery>(document_, recovery_folder);
  showTitle();
  resize(1280, 800);
}

MainWindow::~MainWindow() {
  // Parts that still send signals while they are destroyed must find no receiver.
  document_.disconnect();
  evaluator_.disconnect();
}

void MainWindow::followPlan() {
  followed_ = document_.plan();
  connect(&document_, &Document::replaced, this, [this] {
    followed_ = document_.plan();
    selection_.reset();
  });
  connect(&document_, &Document::planChanged, this, [this] {
    const PlanPtr before = std::exchange(followed_, document_.plan());
    selection_.follow(*before, *followed_);
  });
  // Choosing a seam also chooses its schedule.
  connect(&selection_, &Selection::seamChanged, this, [this] {
    const SeamPlace at = selection_.seam();
    const auto& weldments = followed_->weldments;
    if (at.weldment >= weldments.size() || at.seam >= weldments[at.weldment].seams.size()) return;
    const auto& passes = weldments[at.weldment].seams[at.seam].schedules;
    if (passes.empty()) return;
    if (const auto schedule = find_schedule(*followed_, passes.front())) selection_.setSchedule(*schedule);
  });
}

void MainWindow::makePages() {
  const Desk desk{document_, evaluator_, selection_};
  records_ = new RecordsPage(desk, this);
  line_ = new LinePage(desk, this);
  pages_ = {new SeamsPage(desk, this),
            new SchedulesPage(desk, this),
            new HeatPage(desk, this),
            new CellPage(desk, this),
            line_,
            records_,
            new FindingsPage(desk, this)};
  for (Page* page : pages_) {
    stack_->addWidget(page);
    page->connectExplain();
    connect(page, &Page::message, this, &MainWindow::say);
    connect(page, &Page::stepAsked, this, &MainWindow::takeStep);
    connect(page, &Page::explainShown, this, [this] { setExplainShown(true); });
    connect(page, &Page::findingsAsked, this, [this](const QString& place) {
      showPage(DeskPage::findings);
      static_cast<FindingsPage&>(this->page(DeskPage::findings)).chooseAt(place);
    });
  }
}

void MainWindow::connectParts() {
  connect(chain_, &ChainStrip::chosen, this, &MainWindow::openLink);
  connect(&document_, &Document::planChanged, this, [this] {
    state_->setText(tr("working …"));
    evaluator_.evaluate(document_.plan());
  });
  // Later: the origin of the edit, a drag or a table's editor, has to finish first.
  connect(&document_, &Document::lockedEdit, this, &MainWindow::askAboutLock, Qt::QueuedConnection);
  // Once the page shows it: the widget that had the focus, a button of the empty page, would pass it to the
  // form.
  connect(&document_, &Document::replaced, this, &MainWindow::focusPage, Qt::QueuedConnection);
  connect(&document_, &Document::fileChanged, this, &MainWindow::showTitle);
  connect(&document_, &Document::changedOnDisk, this, &MainWindow::fileChangedOnDisk);
  connect(&document_.undo(), &QUndoStack::indexChanged, this, &MainWindow::showTitle);
  connect(&evaluator_, &Evaluator::ready, this, &MainWindow::showResults);
  connect(&evaluator_, &Evaluator::failed, this, &MainWindow::say);
  connect(&selection_, &Selection::explainAsked, explain_, &ExplainPanel::show);
  connect(&selection_, &Selection::explanationGiven, explain_, &ExplainPanel::showMade);
  connect(&selection_, &Selection::goToAsked, this, &MainWindow::goTo);
  connect(explain_, &ExplainPanel::closed, this, [this] { setExplainShown(false); });
  connect(records_, &RecordsPage::figureChanged, this, [this] {
    chain_->link(DeskPage::records)
        .setFigure(records_->figure(), records_->figureDetail(), records_->worst());
  });
  connect(static_cast<SchedulesPage*>(&page(DeskPage::schedules)), &SchedulesPage::sheetsAsked, this,
          &MainWindow::exportSchedules);
  connect(records_, &RecordsPage::unitReportAsked, this, &MainWindow::exportUnit);
  connect(records_, &RecordsPage::storeReportAsked, this, [this](const StoreReportQuestion& question) {
    const bool is_certificate = question.kind == StoreReportQuestion::Kind::certificate;
    exportFromStore(question, is_certificate ? tr("Certificate of conformity") : tr("Heat-input record"),
                    is_certificate ? question.unit : tr("record"));
  });
  connect(line_, &LinePage::figureChanged, this, [this] {
    chain_->link(DeskPage::line).setFigure(line_->figure(), line_->figureDetail(), line_->worst());
  });
  connect(&UnitView::shared(), &UnitView::changed, this, [this] {
    if (evaluator_.results()) showResults(evaluator_.results());
  });
}

void MainWindow::showResults(const ResultsPtr& results) {
  const auto figures = chain_figures(*results);
  const auto show = [&](DeskPage page, const LinkFigure& of) {
    chain_->link(page).setFigure(of.figure, of.detail, of.tally.worst(), tally_text(of.tally), of.judged);
  };
  for (const DeskPage page :
       {DeskPage::seams, DeskPage::schedules, DeskPage::heat, DeskPage::cell, DeskPage::line})
    show(page, figures[position_of(page)]);
  cell_figure_of_ = figures[position_of(DeskPage::cell)].weldment;
  if (line_->line())
    chain_->link(DeskPage::line).setFigure(line_->figure(), line_->figureDetail(), line_->worst());
  show(DeskPage::findings, document_.isEmpty() ? LinkFigure() : figures.back());
  for (Page* page : pages_) page->setResults(results);
  explain_->setResults(results);
  page(currentPage()).explainAgain();
  state_->setText(results->has_cycles ? tr("up to date") : tr("working …"));
}

DeskPage MainWindow::currentPage() const {
  return desk_pages[static_cast<std::size_t>(stack_->currentIndex())];
}

void MainWindow::showPage(DeskPage to) {
  stack_->setCurrentWidget(&page(to));
  chain_->setCurrent(to);
  page(to).opened();
  page(to).explainAgain();
  focusPage();
}

/// To the first step of an empty page, else to the page's table where it has one: a stray key in a form's
/// first field, an id, would rename something.
void MainWindow::focusPage() {
  Page& current = page(currentPage());
  if (QPushButton* first = current.firstStep()) return first->setFocus(Qt::OtherFocusReason);
  QWidget* what = current.parts().first();
  QList<GridView*> tables = what->findChildren<GridView*>();
  if (auto* itself = qobject_cast<GridView*>(what)) tables.prepend(itself);
  for (GridView* table : tables)
    if (table->isVisible()) return table->setFocus(Qt::OtherFocusReason);
  for (QWidget* child : what->findChildren<QWidget*>())
    if (child->isVisible() && (child->focusPolicy() & Qt::TabFocus))
      return child->setFocus(Qt::OtherFocusReason);
}

void MainWindow::openLink(DeskPage page) {
  const std::size_t weldment = cell_figure_of_.value_or(selection_.seam().weldment);
  if (page == DeskPage::cell && weldment != selection_.seam().weldment) selection_.setSeam({weldment, 0});
  showPage(page);
}

void MainWindow::goTo(const QString& address, const QString& key) {
  const std::string pointer = address.toStdString();
  const std::string_view list = first_step(pointer).part;
  if (list != "schedules" && list != "weldments")
    return say(tr("This finding is about the plan as a whole."));
  const DeskPage to = list == "schedules" ? DeskPage::schedules
                      : key == cycle_key  ? DeskPage::cell
                                          : DeskPage::seams;
  showPage(to);
  page(to).goTo(address, key);
}

void MainWindow::takeStep(FirstStep step) {
  switch (step) {
    case FirstStep::seam:
      showPage(DeskPage::seams);
      return static_cast<SeamsPage&>(page(DeskPage::seams)).addSeam();
    case FirstStep::schedule:
      showPage(DeskPage::schedules);
      return static_cast<SchedulesPage&>(page(DeskPage::schedules)).addSchedule();
    case FirstStep::cell:
      return addStarterCell();
    case FirstStep::list:
      return askForList();
    case FirstStep::weldment:
      showPage(DeskPage::seams);
      return static_cast<SeamsPage&>(page(DeskPage::seams)).showWeldmentFields();
    case FirstStep::seams:
      return showPage(DeskPage::seams);
    case FirstStep::plan_data:
      return showPlanData();
    case FirstStep::demo:
      return openDemo();
    case FirstStep::fresh:
      return newPlan();
  }
}

/// Enter that no button handled: on a page that shows the first step it presses the default button.
void MainWindow::keyPressEvent(QKeyEvent* event) {
  QPushButton* first = page(currentPage()).firstStep();
  if (first && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)) return first->click();
  QMainWindow::keyPressEvent(event);
}

void MainWindow::nextPart() {
  QList<QWidget*> parts = {&chain_->link(currentPage())};
  for (QWidget* part : page(currentPage()).parts())
    if (part->isVisible()) parts << part;
  if (explain_->isVisible()) parts << explain_;
  int here = -1;
  for (int i = 0; i < parts.size(); ++i)
    if (QWidget* focus = QApplication::focusWidget();
        focus && (parts[i] == focus || parts[i]->isAncestorOf(focus)))
      here = i;
  for (int step = 1; step <= parts.size(); ++step) {
    QWidget* part = parts[(here + step) % parts.size()];
    QWidget* target = part->focusPolicy() & Qt::TabFocus ? part : nullptr;
    for (QWidget* child : part->findChildren<QWidget*>())
      if (!target && child->isVisible() && child->isEnabled() && (child->focusPolicy() & Qt::TabFocus))
        target = child;
    if (!target) continue;
    target->setFocus(Qt::ShortcutFocusReason);
    return;
  }
}

void MainWindow::setExplainShown(bool shown) {
  explain_->setVisible(shown);
  if (explain_action_) explain_action_->setChecked(shown);
  if (!shown) return;
  const int wide = std::max(300, width() / 4);
  across_->setSizes({width() - wide, wide});
  if (evaluator_.results()) explain_->setResults(evaluator_.results());
}

void MainWindow::say(const QString& text) {
  statusBar()->showMessage(text, 12000);
}

void MainWindow::showTitle() {
  setWindowTitle(title_text(document_.name()) + QStringLiteral("[*] – Seamtakt"));
  setWindowModified(document_.isModified());
}

void MainWindow::fileChangedOnDisk() {
  disk_note_->setText(tr("⚠ %1 was changed on disk by someone else. Saving asks before it writes over it.")
                          .arg(document_.name()));
}

void MainWindow::restyle() {
  if (evaluator_.results()) showResults(evaluator_.results());
  showPage(currentPage());
}

bool MainWindow::event(QEvent* event) {
  const bool follows = event->type() == QEvent::ThemeChange &&
                       QSettings().value("view/theme", "system").toString() == QStringLiteral("system");
  if (follows && follow_platform()) restyle();
  return QMainWindow::event(event);
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!mayLeave()) return event->ignore();
  if (recovery_) writeSettings();
  recovery_.reset();
  event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  for (const QUrl& url : event->mimeData()->urls()) {
    const QString path = url.toLocalFile();
    if (path.endsWith(QStringLiteral(".json"))) {
      if (mayLeave()) openPlan(path);
    } else if (is_drawing_file(path)) {
      importDrawing(path);
    } else if (is_seam_list(path)) {
      importList(path);
    } else if (!path.isEmpty()) {
      importLog(path);
    }
  }
  event->acceptProposedAction();
}

void MainWindow::importLog(const QString& path) {
  showPage(DeskPage::records);
  records_->importLogs({path});
}

void MainWindow::readSettings() {
  const QSettings settings;
  restoreGeometry(settings.value("window/geometry").toByteArray());
  const int last = static_cast<int>(desk_pages.size()) - 1;
  const int position = std::clamp(settings.value("window/page", 0).toInt(), 0, last);
  showPage(desk_pages[static_cast<std::size_t>(position)]);
  setExplainShown(settings.value("window/explain", width() >= 1500).toBool());
}

void MainWindow::writeSettings() const {
  QSettings settings;
  settings.setValue("window/geometry", saveGeometry());
  settings.setValue("window/page", static_cast<int>(currentPage()));
  settings.setValue("window/explain", explain_->isVisible());
  settings.setValue("view/units", UnitView::shared().system() == UnitSystem::us ? "us" : "si");
}

}  // namespace seamtakt::desk
