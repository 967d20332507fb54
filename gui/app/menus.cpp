#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QDesktopServices>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QSettings>
#include <QTreeWidget>
#include <QUndoView>
#include <QVBoxLayout>

#include "app/handbook_window.hpp"
#include "app/main_window.hpp"
#include "app/report_export.hpp"
#include "app/theme_choice.hpp"
#include "app/tour_panel.hpp"
#include "base/version.hpp"
#include "document/plan_items.hpp"
#include "exchange/report/caution.hpp"
#include "models/tables/grid_model.hpp"
#include "models/words/unit_view.hpp"
#include "pages/records_page.hpp"
#include "pages/seams_page.hpp"
#include "widgets/chain_strip.hpp"
#include "widgets/plain_text.hpp"
#include "widgets/plan_data_dialog.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/rename_dialog.hpp"

namespace seamtakt::desk {

namespace {
constexpr int most_recent = 8;
}

void MainWindow::makeMenus() {
  makeFileMenu();
  makeEditMenu();
  makeViewMenu();
  makeHelpMenu();
}

void MainWindow::makeFileMenu() {
  QMenu* file = menuBar()->addMenu(tr("&File"));
  file->addAction(tr("&New plan"), QKeySequence::New, this, &MainWindow::newPlan);
  file->addAction(tr("&Open plan …"), QKeySequence::Open, this, &MainWindow::open);
  recent_ = file->addMenu(tr("&Recent plans"));
  connect(recent_, &QMenu::aboutToShow, this, &MainWindow::fillRecent);
  file->addAction(tr("Open the &demo"), this, &MainWindow::openDemo);
  file->addSeparator();
  file->addAction(tr("&Save"), QKeySequence::Save, this, [this] { savePlan(); });
  file->addAction(tr("Save &as …"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S), this,
                  &MainWindow::saveAs);
  file->addSeparator();
  file->addAction(tr("&Import log …"), QKeySequence(Qt::CTRL | Qt::Key_I), this, [this] {
    const QStringList paths = QFileDialog::getOpenFileNames(
        this, tr("Import log"), {}, tr("Arc logs (*.csv *.csv.gz *.gz *.txt);;All files (*)"));
    for (const QString& path : paths) importLog(path);
  });
  file->addAction(tr("Import sea&ms or schedules …"), this, &MainWindow::askForList);
  file->addAction(tr("Import dra&wing …"), this, &MainWindow::askForDrawing);
  file->addAction(tr("E&xport seams and schedules …"), this, &MainWindow::exportList);
  file->addSeparator();
  file->addAction(tr("Report as &PDF …"), QKeySequence(Qt::CTRL | Qt::Key_R), this,
                  &MainWindow::exportReport);
  file->addAction(tr("Report as &HTML …"), this, &MainWindow::exportHtml);
  file->addAction(tr("&Certificate of a unit …"), this, [this] {
    showPage(DeskPage::records);
    records_->askCertificate();
  });
  file->addAction(tr("Pre&view and print report …"), QKeySequence::Print, this, &MainWindow::printReport);
  file->addSeparator();
  file->addAction(tr("&Quit"), QKeySequence::Quit, this, &QWidget::close);
}

void MainWindow::makeEditMenu() {
  QMenu* edit = menuBar()->addMenu(tr("&Edit"));
  QUndoStack& steps = document_.undo();
  QAction* undo = steps.createUndoAction(this, tr("Undo"));
  undo->setShortcuts(QKeySequence::Undo);
  QAction* redo = steps.createRedoAction(this, tr("Redo"));
  redo->setShortcuts({QKeySequence(Qt::CTRL | Qt::Key_Y), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z)});
  // Where there is a step, its name stands behind a colon in some languages; where there is none, nothing.
  connect(&steps, &QUndoStack::undoTextChanged, undo, [undo](const QString& step) {
    undo->setText(step.isEmpty() ? tr("Undo") : tr("Undo %1").arg(step));
  });
  connect(&steps, &QUndoStack::redoTextChanged, redo, [redo](const QString& step) {
    redo->setText(step.isEmpty() ? tr("Redo") : tr("Redo %1").arg(step));
  });
  edit->addActions({undo, redo});
  edit->addSeparator();
  edit->addAction(tr("&History …"), this, &MainWindow::showHistory);
  edit->addSeparator();
  edit->addAction(tr("Re&name …"), QKeySequence(Qt::SHIFT | Qt::Key_F2), this, &MainWindow::renameChosen);
  edit->addAction(tr("&Fit selected seams …"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_F), this,
                  [this] { static_cast<SeamsPage&>(page(DeskPage::seams)).fitSelected(); });
  edit->addAction(tr("Add a starter &cell"), this, &MainWindow::addStarterCell);
  edit->addAction(tr("Plan &data …"), QKeySequence(Qt::CTRL | Qt::Key_M), this, &MainWindow::showPlanData);
}

void MainWindow::makeViewMenu() {
  QMenu* view = menuBar()->addMenu(tr("&View"));
  for (const DeskPage each : desk_pages) {
    const auto key = static_cast<Qt::Key>(Qt::Key_1 + static_cast<int>(each));
    view->addAction(page(each).title(), QKeySequence(Qt::CTRL | key), this, [this, each] { showPage(each); });
  }
  view->addSeparator();
  explain_action_ = view->addAction(tr("E&xplain"), QKeySequence(Qt::Key_F1), this,
                                    [this](bool on) { setExplainShown(on); });
  explain_action_->setCheckable(true);
  view->addSeparator();
  view->addAction(tr("Next &part"), QKeySequence(Qt::Key_F6), this, &MainWindow::nextPart);
  auto* units = new QActionGroup(this);
  const auto unit_action = [&](const QString& text, UnitSystem system) {
    QAction* action = view->addAction(text, this, [system] { UnitView::shared().setSystem(system); });
    action->setCheckable(true);
    action->setChecked(UnitView::shared().system() == system);
    units->addAction(action);
    return action;
  };
  unit_action(tr("&SI units"), UnitSystem::si);
  unit_action(tr("&US units"), UnitSystem::us);
  view->addAction(tr("Other &units"), QKeySequence(other_units_key), this, [units] {
    const bool to_us = UnitView::shared().system() == UnitSystem::si;
    units->actions()[to_us ? 1 : 0]->trigger();
  });
  view->addSeparator();
  auto* themes = new QActionGroup(this);
  const std::pair<QString, QString> choices[] = {
      {tr("Colours of the system"), "system"}, {tr("Light"), "light"}, {tr("Dark"), "dark"}};
  for (const auto& [text, theme] : choices) {
    QAction* action = view->addAction(text, this, [this, theme = theme] {
      QSettings().setValue("view/theme", theme);
      theme == QStringLiteral("system") ? static_cast<void>(follow_platform()) : choose_theme(theme);
      restyle();
    });
    action->setCheckable(true);
    action->setChecked(QSettings().value("view/theme", "system").toString() == theme);
    themes->addAction(action);
  }
  view->addSeparator();
  makeLanguageMenu(*view->addMenu(tr("&Language")));
}

/// Each language by its own name. The window is made again in the other one, with the same plan.
void MainWindow::makeLanguageMenu(QMenu& menu) {
  auto* languages = new QActionGroup(this);
  const QString chosen = QSettings().value("view/language").toString();
  const std::pair<QString, QString> choices[] = {{tr("Language of the system"), QString()},
                                                 {QStringLiteral("English"), QStringLiteral("en")},
                                                 {QStringLiteral("Deutsch"), QStringLiteral("de")}};
  for (const auto& [text, code] : choices) {
    QAction* action = menu.addAction(text, this, [this, code = code] {
      if (QSettings().value("view/language").toString() == code) return;
      QSettings().setValue("view/language", code);
      emit languageChosen(code);
    });
    action->setCheckable(true);
    action->setChecked(code == chosen);
    languages->addAction(action);
  }
}

void MainWindow::makeHelpMenu() {
  QMenu* help = menuBar()->addMenu(tr("&Help"));
  help->addAction(tr("&Keys"), QKeySequence(Qt::CTRL | Qt::Key_F1), this, [this] {
    message_box(this, QMessageBox::Information, tr("Keys"),
                tr("Ctrl+1 … Ctrl+7: the links of the chain and the findings\nF1: Explain the "
                   "value in focus\nF2 or typing: edit a cell; F2 on an id: rename\n"
                   "Enter on a finding: go to its field\nArrow up and down in a number: step; "
                   "Page up and down: ten steps\n"
                   "Ctrl+C, Ctrl+V: a range of a table, to and from a spreadsheet\n"
                   "Ctrl+F: filter the table; Ctrl+Enter: set for all selected rows\n"
                   "Ctrl+Z, Ctrl+Y: undo, redo\nF8: SI or US units\n"
                   "Ctrl+I: import a log; Ctrl+R: report as PDF\nF6: next part of the page"));
  });
  help->addAction(tr("&Handbook"), QKeySequence(Qt::SHIFT | Qt::Key_F1), this,
                  [this] { HandbookWindow::open(this); });
  help->addAction(tr("&Tour"), this, [this] { TourPanel::start(*this); });
  help->addSeparator();
  help->addAction(tr("&About Seamtakt"), this, [this] {
    QMessageBox box(QMessageBox::NoIcon, tr("About Seamtakt"), {}, QMessageBox::Ok, this);
    box.setTextFormat(Qt::RichText);
    box.setText(tr("<h3>Seamtakt %1</h3><p>Plans robot weld cells: from the drawing's fillet to takt "
                   "and to the audited arc log.</p><p>%2</p>"
                   "<p>GPL-3.0-or-later. With Qt (LGPL-3), QCustomPlot (GPL-3), Eigen (MPL-2.0), "
                   "SQLite (public domain), OpenSSL (Apache-2.0), zlib.</p>")
                    .arg(QString::fromUtf8(program_version).toHtmlEscaped(),
                         core_text(caution_text()).toHtmlEscaped()));
    box.setIconPixmap(windowIcon().pixmap(64));
    box.exec();
  });
  help->addAction(tr("About &Qt"), this, [this] {
    message_box(this, QMessageBox::NoIcon, tr("About Qt"),
                tr("This program uses Qt %1, under the GNU Lesser General Public License, version 3. "
                   "Qt is at https://www.qt.io.")
                    .arg(QString::fromUtf8(qVersion())));
  });
}

void MainWindow::showPlanData() {
  if (!data_) data_ = new PlanDataDialog(document_, this);
  data_->show();
  data_->raise();
  data_->tree().setFocus(Qt::OtherFocusReason);
}

/// All steps of undo; a click on one goes there.
void MainWindow::showHistory() {
  if (!history_) {
    history_ = new QDialog(this);
    history_->setWindowTitle(tr("History of the plan"));
    auto* column = new QVBoxLayout(history_);
    auto* steps = new QUndoView(&document_.undo(), history_);
    steps->setEmptyLabel(tr("The plan as it was opened"));
    steps->setAccessibleName(history_->windowTitle());
    column->addWidget(steps);
    history_->resize(360, 420);
  }
  history_->show();
  history_->raise();
}

/// The schedule on the page of schedules, else the seam.
void MainWindow::renameChosen() {
  const SeamPlace& seam = selection_.seam();
  RenameDialog::ask(document_,
                    currentPage() == DeskPage::schedules ? schedule_address(selection_.schedule())
                                                         : seam_address(seam.weldment, seam.seam),
                    this);
}

void MainWindow::addStarterCell() {
  if (document_.plan()->cell) return say(tr("The plan has a cell: it is in Plan data."));
  document_.endTyping();
  const auto refusal =
      document_.edit(tr("Add a starter cell"), {}, [](Plan& plan) { plan.cell = starter_cell(plan); });
  if (refusal) return say(refusal->text);
  showPage(DeskPage::cell);
  say(tr("Two robots, a positioner and two stations: put in your own times in Plan data."));
}

void MainWindow::fillRecent() {
  recent_->clear();
  for (const QString& path : QSettings().value("recent").toStringList()) {
    if (!QFileInfo::exists(path)) continue;
    QAction* action = recent_->addAction(menu_text(QFileInfo(path).fileName()), this, [this, path] {
      if (mayLeave()) openPlan(path);
    });
    action->setToolTip(path);
  }
  if (recent_->isEmpty()) recent_->addAction(tr("No plan was opened yet"))->setEnabled(false);
}

void MainWindow::remember(const QString& path) {
  QSettings settings;
  QStringList paths = settings.value("recent").toStringList();
  const QString full = QFileInfo(path).absoluteFilePath();
  paths.removeAll(full);
  paths.prepend(full);
  settings.setValue("recent", paths.mid(0, most_recent));
}

void MainWindow::exportReport() {
  const QString path = QFileDialog::getSaveFileName(this, tr("Report as PDF"), {}, tr("PDF (*.pdf)"));
  if (path.isEmpty()) return;
  try {
    export_pdf(*results_of(document_.plan()), document_.path(), path);
    say(tr("Report written to %1").arg(path));
  } catch (const std::exception& error) {
    message_box(this, QMessageBox::Critical, tr("Not written"), QString::fromUtf8(error.what()));
  }
}

void MainWindow::exportSchedules(const QStringList& schedules) {
  if (schedules.isEmpty()) return say(tr("No schedule is chosen."));
  const QString name = schedules.size() == 1 ? schedules.first() + ".pdf" : QString();
  const QString path =
      QFileDialog::getSaveFileName(this, tr("Schedule sheets as PDF"), name, tr("PDF (*.pdf)"));
  if (path.isEmpty()) return;
  try {
    export_schedules_pdf(*results_of(document_.plan()), document_.path(), schedules, path);
    say(tr("Schedule sheets written to %1").arg(path));
  } catch (const std::exception& error) {
    message_box(this, QMessageBox::Critical, tr("Not written"), QString::fromUtf8(error.what()));
  }
}

void MainWindow::exportUnit(const QString& store, const QString& unit) {
  exportFromStore({StoreReportQuestion::Kind::unit, store, unit, {}, {}, {}}, tr("Report of the unit"), unit);
}

void MainWindow::exportFromStore(const StoreReportQuestion& question, const QString& title,
                                 const QString& name) {
  const QString path = QFileDialog::getSaveFileName(this, title, name + ".pdf", tr("PDF (*.pdf)"));
  if (path.isEmpty()) return;
  try {
    export_store_pdf(question, path);
    say(tr("Report written to %1").arg(path));
  } catch (const std::exception& error) {
    message_box(this, QMessageBox::Critical, tr("Not written"), QString::fromUtf8(error.what()));
  }
}

void MainWindow::exportHtml() {
  const QString path = QFileDialog::getSaveFileName(this, tr("Report as HTML"), {}, tr("HTML (*.html)"));
  if (path.isEmpty()) return;
  try {
    export_html(*results_of(document_.plan()), document_.path(), path);
    say(tr("Report written to %1").arg(path));
  } catch (const std::exception& error) {
    message_box(this, QMessageBox::Critical, tr("Not written"), QString::fromUtf8(error.what()));
  }
}

void MainWindow::printReport() {
  const ResultsPtr results = results_of(document_.plan());
  QPrinter printer(QPrinter::HighResolution);
  QPrintPreviewDialog preview(&printer, this);
  connect(&preview, &QPrintPreviewDialog::paintRequested, this,
          [&](QPrinter* to) { print_report(*results, document_.path(), *to); });
  preview.exec();
}

}  // namespace seamtakt::desk
