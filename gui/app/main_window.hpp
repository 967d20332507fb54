#pragma once

#include <QDialog>
#include <QMainWindow>
#include <QPointer>
#include <array>
#include <functional>

#include "document/document.hpp"
#include "document/recovery.hpp"
#include "document/selection.hpp"
#include "jobs/drawing_reading.hpp"
#include "jobs/evaluator.hpp"
#include "jobs/list_reading.hpp"
#include "widgets/desk_page.hpp"

class QLabel;
class QMenu;
class QSplitter;
class QStackedWidget;

namespace seamtakt::desk {

class ChainStrip;
class ExplainPanel;
class Page;
enum class FirstStep;
class PlanDataDialog;
class LinePage;
class RecordsPage;
struct StoreReportQuestion;

/// What a window hands to the one that takes its place.
struct OpenPlan {
  PlanPtr plan;
  QString path;
  bool is_modified = false;
  DeskPage page = DeskPage::seams;
};

/// One window over one plan file. It wires document, evaluation and pages together and computes nothing.
class MainWindow : public QMainWindow {
  Q_OBJECT

 public:
  /// `recovery_folder`: where unsaved edits are kept; empty: they aren't (pictures, exports).
  explicit MainWindow(const QString& recovery_folder = {}, QWidget* parent = nullptr);
  ~MainWindow() override;

  Document& document() { return document_; }
  Evaluator& evaluator() { return evaluator_; }
  Selection& selection() { return selection_; }
  ChainStrip& chain() { return *chain_; }
  ExplainPanel& explain() { return *explain_; }
  Page& page(DeskPage page) { return *pages_[position_of(page)]; }
  DeskPage currentPage() const;

  /// Opens a plan; a message box says what is wrong with the file. False where it couldn't be opened.
  bool openPlan(const QString& path);
  void openDemo();
  void newPlan();
  bool savePlan();
  void importLog(const QString& path);
  /// Shows what a list of seams or schedules would change, and takes it where a person says so.
  void importList(const QString& path);
  /// Shows the seams that a drawing proposes, and takes them where a person says so.
  void importDrawing(const QString& path);
  void showPage(DeskPage page);
  void setExplainShown(bool shown);
  /// Offers the recovery file of a desk that crashed.
  void offerRecovery();
  void readSettings();
  void writeSettings() const;
  OpenPlan openPlanNow() const;
  /// Goes on with what another window had open; its steps of undo are gone.
  void takeUp(const OpenPlan& open);

 signals:
  /// The window speaks the language only once it is made again.
  void languageChosen(const QString& code);

 protected:
  bool event(QEvent* event) override;
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  /// The selection follows the plan before any page does.
  void followPlan();
  void makePages();
  void makeMenus();
  void makeFileMenu();
  void makeEditMenu();
  void makeViewMenu();
  void makeLanguageMenu(QMenu& menu);
  void makeHelpMenu();
  void connectParts();
  void showResults(const ResultsPtr& results);
  void showTitle();
  /// Redraws everything in other colours.
  void restyle();
  /// The next part of the window: chain, table, picture, findings, Explain.
  void nextPart();
  void goTo(const QString& address, const QString& key);
  /// A click on a link of the chain: its page, on what its figure is about.
  void openLink(DeskPage page);
  /// What an empty page offers was chosen.
  void takeStep(FirstStep step);
  void open();
  void openOther();
  void saveAs();
  void exportReport();
  void exportSchedules(const QStringList& schedules);
  void exportHtml();
  void exportUnit(const QString& store, const QString& unit);
  void exportFromStore(const StoreReportQuestion& question, const QString& title, const QString& name);
  void printReport();
  void askForList();
  void askForDrawing();
  void takeDrawing(const ReadDrawingPtr& drawing);
  void takeList(const ReadListPtr& list);
  void exportList();
  void fileChangedOnDisk();
  void fillRecent();
  void showPlanData();
  void showHistory();
  void renameChosen();
  void addStarterCell();
  void remember(const QString& path);
  /// Asks what to do with unsaved edits; false: stay.
  bool mayLeave();
  void say(const QString& text);
  void focusPage();
  void askAboutLock(const LockedEdit& edit);
  void offerRevision(const LockedEdit& edit);
  void offerToWithdraw(const LockedEdit& edit);
  void offerCopy(const LockedEdit& edit);
  void ask(QDialog* question, const std::function<void()>& then);
  void replacePlan(const QString& what, const LockedEdit& edit, const Plan& plan, WhenLocked when_locked);

  Document document_;
  Evaluator evaluator_;
  Selection selection_;
  PlanPtr followed_;                           ///< the plan that the selection refers to
  std::optional<std::size_t> cell_figure_of_;  ///< the weldment that the cell's figure is of
  std::unique_ptr<Recovery> recovery_;
  ChainStrip* chain_;
  QStackedWidget* stack_;
  QSplitter* across_;
  ExplainPanel* explain_;
  QAction* explain_action_ = nullptr;
  QMenu* recent_ = nullptr;
  QLabel *state_, *disk_note_;
  std::array<Page*, desk_pages.size()> pages_{};  ///< in the order of DeskPage
  LinePage* line_ = nullptr;
  RecordsPage* records_ = nullptr;
  PlanDataDialog* data_ = nullptr;
  QDialog* history_ = nullptr;
  QPointer<QDialog> lock_question_;
};

}  // namespace seamtakt::desk
