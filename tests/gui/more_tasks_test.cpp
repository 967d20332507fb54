// The tasks of the line's planner and of the auditor at the desk, done with keys and clicks as a person would
// do them; the number of actions is printed and may not grow.
#include <QCheckBox>
#include <QComboBox>
#include <QFileDialog>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTimer>

#include "base/files/atomic_save.hpp"
#include "demo_store.hpp"
#include "jobs/store_report.hpp"
#include "line/line_result.hpp"
#include "pages/cell_page.hpp"
#include "pages/line_page.hpp"
#include "pages/record_browser.hpp"
#include "pages/record_forms.hpp"
#include "pages/records_page.hpp"
#include "pages/store_panel.hpp"
#include "records/keep/nonconformance.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/record_form.hpp"
#include "widgets/store_dialog.hpp"

namespace seamtakt::desk {
namespace {

template <class Wanted>
Wanted* named(QWidget& in, const QString& name) {
  for (Wanted* each : in.findChildren<Wanted*>())
    if (each->accessibleName() == name && each->isVisible()) return each;
  ADD_FAILURE() << "there is no " << name.toStdString();
  return nullptr;
}

class PlannersTask : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    actions = std::make_unique<UserActions>(*window);
  }
  LinePage& line() { return page_of<LinePage>(*window, DeskPage::line); }
  void waitForLine() {
    line().job().wait();
    QApplication::processEvents();
  }
  /// The next dialog for files gets this path and Enter.
  static void answerFileDialog(const QString& path) {
    QTimer::singleShot(50, qApp, [path] {
      auto* dialog = qobject_cast<QFileDialog*>(question());
      ASSERT_NE(dialog, nullptr);
      dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit"))->setText(path);
      QTest::keyClick(dialog->findChild<QLineEdit*>(QStringLiteral("fileNameEdit")), Qt::Key_Return);
    });
  }
  std::unique_ptr<UserActions> actions;
};

TEST_F(PlannersTask, ARobotThatIsOutGivesAnotherCycleAndTheSeamsThatNobodyReaches) {
  actions->page(DeskPage::cell);
  auto& page = page_of<CellPage>(*window, DeskPage::cell);
  auto* out = named<QComboBox>(page, "Robot that is out");
  ASSERT_NE(out, nullptr);
  out->setFocus();
  ++actions->clicks;
  actions->key(Qt::Key_Down);
  actions->key(Qt::Key_Down);
  ASSERT_TRUE(QTest::qWaitFor([&] { return page.withoutText().startsWith("Without R2:"); }, 10000))
      << page.withoutText().toStdString();
  EXPECT_FALSE(page.headline().text().isEmpty());
  actions->report("robot 2 out for the shift");
  EXPECT_LE(actions->keys + actions->clicks, 4);
}

TEST_F(PlannersTask, TheDaysOrdersAreLevelledAndSayWhatWouldHelp) {
  actions->page(DeskPage::line);
  actions->press(line(), "Demo orders");
  waitForLine();
  ASSERT_TRUE(line().line());
  actions->click(named<QCheckBox>(line(), "Level the sequence"));
  waitForLine();
  ASSERT_TRUE(line().line()->levelled);
  const QString said = line().summary().text();
  EXPECT_TRUE(said.contains("levelled:")) << said.toStdString();
  EXPECT_TRUE(said.contains("bottleneck")) << said.toStdString();
  EXPECT_FALSE(line().line()->cures.empty());
  actions->report("orders levelled, misses before and after, cures");
  EXPECT_LE(actions->keys + actions->clicks, 3);
}

TEST_F(PlannersTask, ACartThatIsShortOfAPartNamesTheUnitThatWaits) {
  actions->page(DeskPage::line);
  actions->press(line(), "Demo orders");
  waitForLine();
  ASSERT_TRUE(line().line());
  const std::size_t all = line().line()->units.size();
  answerFileDialog(QString::fromStdString(source_path("/reference/demo/carts")));
  actions->press(line(), "Carts …");
  actions->keys += 2;  // the folder is chosen and confirmed
  waitForLine();
  ASSERT_FALSE(line().line()->waiting.empty());
  EXPECT_LT(line().line()->units.size(), all) << "the complete ones are released";
  actions->report("a cart short of a part");
  EXPECT_LE(actions->keys + actions->clicks, 5);
}

class AuditorsTask : public PlannersTask {
 protected:
  void SetUp() override {
    PlannersTask::SetUp();
    qputenv("SOURCE_DATE_EPOCH", "1795737600");  // after the store's newest record
    uri = "sqlite:" + folder.filePath("records.db");
    ASSERT_TRUE(QDir(folder.path()).mkdir("keys"));
    key_file = folder.filePath("keys/store.pem");
    fill_demo_store(uri.toStdString(), &anchor, key_file.toStdString());
  }
  void TearDown() override {
    qunsetenv("SOURCE_DATE_EPOCH");
    PlannersTask::TearDown();
  }
  RecordsPage& records() { return page_of<RecordsPage>(*window, DeskPage::records); }
  /// The store was opened before, as it is on an auditor's desk.
  void openStore() {
    records().store().openStore({uri, {}});
    records().store().job().wait();
    QApplication::processEvents();
  }
  void chooseTab(QWidget& tab) {
    records().tabs().setCurrentWidget(&tab);
    ++actions->clicks;
    QApplication::processEvents();
  }
  /// A field of a form that has a path or a name in it already on a desk that is used daily: one click and
  /// one paste.
  void put(QWidget& form, const QString& name, const QString& text) {
    auto* at = named<QLineEdit>(form, name);
    ASSERT_NE(at, nullptr);
    at->setText(text);
    ++actions->clicks;
    ++actions->keys;
  }
  QTemporaryDir folder;
  QString uri, key_file;
  std::string anchor;
};

TEST_F(AuditorsTask, ASerialNumberGivesOnePdf) {
  actions->page(DeskPage::records);
  openStore();
  chooseTab(records().store());
  QSignalSpy asked(&records(), &RecordsPage::unitReportAsked);
  records().store().units().setFocus();
  ++actions->clicks;
  records().store().units().selectRow(1);
  const QString unit = records().store().chosenUnit();
  ASSERT_FALSE(unit.isEmpty());
  const QString file = folder.filePath("unit.pdf");
  answerFileDialog(file);
  actions->press(records().store(), "Report of the unit …");
  ++actions->keys;
  ASSERT_EQ(asked.count(), 1);
  EXPECT_EQ(asked[0][1].toString(), unit);
  QFile pdf(file);
  ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
  EXPECT_TRUE(pdf.read(5) == "%PDF-");
  actions->report("a serial number's PDF");
  EXPECT_LE(actions->keys + actions->clicks, 5);
}

TEST_F(AuditorsTask, AFailedPassIsDisposedOfWithAReason) {
  actions->page(DeskPage::records);
  openStore();
  auto& browser = records().browser();
  chooseTab(browser);
  put(browser, "Serial number", "AE-26-0102");
  actions->press(browser, "Show");
  browser.job().wait();
  QApplication::processEvents();
  ASSERT_TRUE(browser.answer());
  const auto& found = browser.answer()->page.records;
  const auto failed = std::ranges::find(found, "fail", &BrowsedRecord::verdict);
  ASSERT_NE(failed, found.end());
  browser.table().selectRow(static_cast<int>(failed - found.begin()));
  ++actions->clicks;
  actions->press(browser, "Disposition …");
  auto* form = qobject_cast<RecordForm*>(question());
  ASSERT_NE(form, nullptr);
  put(*form, "Who", "bea");
  put(*form, "Why", "within the drawing");
  put(*form, "Store's key (optional)", key_file);
  auto* decision = named<QComboBox>(*form, "Decision");
  ASSERT_NE(decision, nullptr);
  decision->setCurrentIndex(decision->findData("use-as-is"));
  actions->clicks += 2;
  actions->press(*form, "Write the disposition");
  browser.forms().job().wait();
  QApplication::processEvents();
  EXPECT_EQ(unit_status(Ledger::open(uri.toStdString(), {}), "AE-26-0102").open_nonconformances(), 0u);
  actions->report("a failed pass disposed of");
  EXPECT_LE(actions->keys + actions->clicks, 17);
}

TEST_F(AuditorsTask, AnOldStoreIsProvenAgainstAnAnchorThatWasKept) {
  const QString kept = folder.filePath("anchors.txt");
  save_atomically(kept.toStdString(), anchor + "\n");
  actions->page(DeskPage::records);
  chooseTab(records().store());
  QTimer::singleShot(50, qApp, [&] {
    auto* dialog = qobject_cast<StoreDialog*>(question());
    ASSERT_NE(dialog, nullptr);
    put(*dialog, "Store", uri);
    put(*dialog, "Anchors (optional)", kept);
    actions->key(Qt::Key_Return);
  });
  actions->key(Qt::Key_L, Qt::ControlModifier | Qt::ShiftModifier);
  records().store().job().wait();
  QApplication::processEvents();
  EXPECT_TRUE(records().store().verdict().startsWith("Trusted: "))
      << records().store().verdict().toStdString();
  actions->report("a store proven against an anchor");
  EXPECT_LE(actions->keys + actions->clicks, 8);
}

}  // namespace
}  // namespace seamtakt::desk
