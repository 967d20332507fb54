#include <QFile>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>

#include "base/files/atomic_save.hpp"
#include "demo_store.hpp"
#include "ledger/postgres_server.hpp"
#include "pages/records_page.hpp"
#include "pages/store_panel.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/store_dialog.hpp"

namespace seamtakt::desk {
namespace {

class StoreTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    window->showPage(DeskPage::records);
    page().tabs().setCurrentIndex(2);
    QApplication::processEvents();
  }
  RecordsPage& page() { return page_of<RecordsPage>(*window, DeskPage::records); }
  StorePanel& panel() { return page().store(); }
  void open(const StoreQuestion& question) {
    panel().openStore(question);
    panel().job().wait();
    QApplication::processEvents();
  }
  QString file() { return folder.filePath("records.db"); }
  QTemporaryDir folder;
};

TEST_F(StoreTest, IsVerifiedAndItsUnitsShownWithWhatIsMissing) {
  const QString uri = make_demo_store(file());
  QSignalSpy told(&panel().job(), &StoreJob::progress);
  open({uri, {}});
  EXPECT_TRUE(panel().verdict().startsWith("Trusted, but unanchored")) << panel().verdict().toStdString();
  EXPECT_GE(told.count(), 1);
  const GridModel& units = panel().units().grid();
  ASSERT_EQ(units.rowCount(), 3);
  const auto at = [&](int row, const char* key) {
    return units.index(row, units.columnNamed(key)).data().toString();
  };
  EXPECT_EQ(at(0, "unit"), "AE-26-0101");
  EXPECT_EQ(at(0, "mark"), "complete");
  EXPECT_EQ(at(1, "failed"), "1");
  EXPECT_TRUE(at(1, "missing").contains("S65/pass 1")) << at(1, "missing").toStdString();
  EXPECT_EQ(at(1, "open"), "1");
  EXPECT_EQ(page().figure(), "1 of 3");
  photograph("records-store");
}

TEST_F(StoreTest, AgreesWithAnAnchorThatWasKeptOutside) {
  std::string anchor;
  const QString uri = make_demo_store(file(), &anchor);
  const QString kept = folder.filePath("anchors.txt");
  save_atomically(kept.toStdString(), anchor + "\n");
  open({uri, kept});
  EXPECT_TRUE(panel().verdict().startsWith("Trusted: ")) << panel().verdict().toStdString();
}

TEST_F(StoreTest, ThatWasAlteredIsNotTrustedAndSaysWhere) {
  const QString uri = make_demo_store(file());
  QFile store(file());
  ASSERT_TRUE(store.open(QIODevice::ReadWrite));
  QByteArray bytes = store.readAll();
  const QByteArray was = "\"mean_current_A\":2", is = "\"mean_current_A\":3";
  const qsizetype at = bytes.lastIndexOf(was);
  ASSERT_GT(at, 0);
  store.seek(at);
  store.write(is);
  store.close();
  open({uri, {}});
  EXPECT_TRUE(panel().verdict().startsWith("Not trusted")) << panel().verdict().toStdString();
  EXPECT_TRUE(panel().problems().isVisible());
  EXPECT_GE(panel().problems().grid().rowCount(), 1);
  EXPECT_EQ(page().worst(), Severity::fail);
  photograph("records-store-altered");
}

TEST_F(StoreTest, VerifyingIsStoppedAtAnyTime) {
  const QString uri = make_demo_store(file());
  QSignalSpy answered(&panel().job(), &StoreJob::answered), stopped(&panel().job(), &StoreJob::cancelled);
  panel().openStore({uri, {}});
  UserActions actions(*window);
  actions.press(panel(), "Stop");
  panel().job().wait();
  ASSERT_EQ(answered.count() + stopped.count(), 1);
  if (stopped.count() == 1) {
    EXPECT_TRUE(panel().verdict().startsWith("Stopped"));
    EXPECT_FALSE(panel().answer());
  }
  actions.press(panel(), "Verify again");
  panel().job().wait();
  EXPECT_EQ(answered.count(), stopped.count() == 1 ? 1 : 2);
}

TEST_F(StoreTest, ThatIsNotThereIsSaidInWords) {
  QSignalSpy said(&page(), &Page::message);
  open({"sqlite:" + folder.filePath("absent.db"), {}});
  EXPECT_EQ(said.count(), 1);
  EXPECT_FALSE(panel().answer());
  EXPECT_TRUE(panel().verdict().contains("no such store")) << panel().verdict().toStdString();
}

TEST_F(StoreTest, OnAPostgresServerIsVerifiedAndItsUnitsShown) {
  std::string why;
  const auto server = test::PostgresServer::start(why);
  if (!server) GTEST_SKIP() << "PostgreSQL isn't tested: " << why;
  const std::string uri = server->make_database("desk");
  std::string anchor;
  fill_demo_store(uri, &anchor);
  const QString kept = folder.filePath("anchors.txt");
  save_atomically(kept.toStdString(), anchor + "\n");
  open({QString::fromStdString(uri), kept});
  EXPECT_TRUE(panel().verdict().startsWith("Trusted: ")) << panel().verdict().toStdString();
  EXPECT_EQ(panel().units().grid().rowCount(), 3);
  photograph("records-store-postgres");

  server->stop_immediately();
  QSignalSpy said(&page(), &Page::message);
  open({QString::fromStdString(uri), {}});
  EXPECT_EQ(said.count(), 1);
  EXPECT_FALSE(panel().answer());
}

TEST_F(StoreTest, IsAskedForWithAPathOrAUri) {
  StoreDialog dialog({}, window.get());
  dialog.show();
  QLineEdit* line = nullptr;
  for (QLineEdit* each : dialog.findChildren<QLineEdit*>())
    if (each->accessibleName() == "Store") line = each;
  ASSERT_NE(line, nullptr);
  QTest::keyClicks(line, "/records/plant.db");
  EXPECT_EQ(dialog.question().uri, "sqlite:/records/plant.db");
  line->clear();
  QTest::keyClicks(line, "postgresql://plant/records");
  EXPECT_EQ(dialog.question().uri, "postgresql://plant/records");
}

}  // namespace
}  // namespace seamtakt::desk
