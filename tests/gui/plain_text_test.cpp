// Text from outside is shown unchanged: no id, serial or file name is taken for rich text, and no file named
// in one is opened.
#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QAbstractItemView>
#include <QAction>
#include <QHeaderView>
#include <QHelpEvent>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QMessageBox>
#include <QSet>
#include <QSettings>
#include <QTemporaryDir>
#include <QTextBlock>
#include <QTextBrowser>
#include <QTextDocument>
#include <QTimer>
#include <QToolTip>
#include <atomic>
#include <set>
#include <thread>

#include "app/report_export.hpp"
#include "base/files/atomic_save.hpp"
#include "pages/line_page.hpp"
#include "pages/records_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/plain_text.hpp"
#include "widgets/plan_data_dialog.hpp"
#include "widgets/store_dialog.hpp"

namespace seamtakt::desk {
namespace {

/// A named pipe that detects whether something opens it to read. The reader is released at once, where a pipe
/// without a writer would block it for ever.
class Bait {
 public:
  Bait() : path_(folder_.filePath("bait")) {
    EXPECT_EQ(mkfifo(path_.toUtf8().constData(), 0600), 0);
    watch_ = std::thread([this, path = path_.toStdString()] {
      // Opening it for writing waits for a reader.
      while (!done_) {
        const int pipe = open(path.c_str(), O_WRONLY);
        if (!done_) taken_ = true;
        if (pipe >= 0) close(pipe);
      }
    });
  }
  ~Bait() {
    done_ = true;
    const int pipe = open(path_.toUtf8().constData(), O_RDONLY | O_NONBLOCK);
    watch_.join();
    close(pipe);
  }
  /// `text` after a picture that names the pipe.
  QString on(const QString& text) const { return QStringLiteral("<img src=\"file:%1\">%2").arg(path_, text); }
  bool isTaken() const { return taken_; }

 private:
  QTemporaryDir folder_;
  QString path_;
  std::atomic<bool> done_ = false, taken_ = false;
  std::thread watch_;
};

const QSet<QString>& reference_keys() {
  static const QSet<QString> keys = {"id",     "after", "base_metals",  "gas",           "orientation",
                                     "robot",  "wire",  "power_source", "qualification", "rework_to",
                                     "robots", "seams", "schedule",     "schedules",     "where",
                                     "part",   "plates"};
  return keys;
}
const QSet<QString>& text_keys() {
  static const QSet<QString> keys = {"approved_by", "balance", "basis", "certificate", "classification",
                                     "designation", "drawing", "group", "notes",       "preparation",
                                     "standard",    "title",   "why"};
  return keys;
}

void gather_ids(const QJsonValue& node, QSet<QString>& ids) {
  if (node.isArray())
    for (const QJsonValue each : node.toArray()) gather_ids(each, ids);
  const QJsonObject object = node.toObject();
  if (object["id"].isString()) ids.insert(object["id"].toString());
  for (const QJsonValue each : object) gather_ids(each, ids);
}

/// The demo with markup in every id and in every text that a person wrote.
class Baited {
 public:
  explicit Baited(const Bait& bait) : bait_(bait) {
    QFile file(demo_path());
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    const QJsonDocument demo = QJsonDocument::fromJson(file.readAll());
    gather_ids(demo.object(), ids_);
    text_ = QJsonDocument(baited(demo.object(), {}).toObject()).toJson();
  }
  const QByteArray& text() const { return text_; }
  int changed() const { return changed_; }

 private:
  QJsonValue baited(const QJsonValue& node, const QString& key) {
    if (node.isArray()) {
      QJsonArray list;
      for (const QJsonValue each : node.toArray()) list.append(baited(each, key));
      return list;
    }
    if (node.isObject()) {
      QJsonObject object = node.toObject();
      for (auto member = object.begin(); member != object.end(); ++member)
        *member = baited(*member, member.key());
      return object;
    }
    if (!node.isString()) return node;
    const QString text = node.toString();
    if (text_keys().contains(key) || (key == "by" && text.contains(' '))) return bait(text);
    if (!reference_keys().contains(key)) return node;
    QStringList parts = text.split('/');
    for (QString& part : parts)
      if (ids_.contains(part)) part = bait(part);
    return parts.join('/');
  }
  QString bait(const QString& text) {
    ++changed_;
    return bait_.on(text);
  }

  const Bait& bait_;
  QSet<QString> ids_;
  QByteArray text_;
  int changed_ = 0;
};

/// A short log of one pass, with markup in its serial.
QByteArray baited_log(const Bait& bait) {
  const auto quoted = [](QString text) { return '"' + text.replace('"', QStringLiteral("\"\"")) + '"'; };
  QByteArray log =
      "timestamp,unit_serial,weldment,seam,pass,robot,schedule_revision,current_A,voltage_V,"
      "wire_feed_speed_m_min,travel_speed_mm_s,arc_on\n";
  for (int i = 0; i < 80; ++i)
    log += QStringLiteral("2026-03-02T06:00:%1.%2Z,%3,%4,%5,1,%6,2,%7,28,9,10,%8\n")
               .arg(i / 10, 2, 10, QLatin1Char('0'))
               .arg(i % 10 * 100, 3, 10, QLatin1Char('0'))
               .arg(quoted(bait.on("AE-1001")), quoted(bait.on("BD")), quoted(bait.on("S01")),
                    quoted(bait.on("R1")))
               .arg(i < 2 || i > 77 ? 0 : 250)
               .arg(i < 2 || i > 77 ? 0 : 1)
               .toUtf8();
  return log;
}

/// The tooltip on the screen; nullptr where there is none.
QLabel* tip() {
  for (QWidget* widget : QApplication::topLevelWidgets())
    if (widget->inherits("QTipLabel") && widget->isVisible()) return qobject_cast<QLabel*>(widget);
  return nullptr;
}

class PlainTextTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    const Baited plan(bait);
    ASSERT_GT(plan.changed(), 700);
    path = folder.filePath("<b>baited<b> & more.weldplan.json");
    save_atomically(path.toStdString(), plan.text().toStdString());
    ASSERT_TRUE(window->openPlan(path));
    settle();
    window->setExplainShown(true);
  }
  void TearDown() override {
    QToolTip::hideText();
    DeskTest::TearDown();
  }
  void readLogAndOrders() {
    const QString log = folder.filePath("log.csv"), orders = folder.filePath("orders.csv");
    save_atomically(log.toStdString(), baited_log(bait).toStdString());
    auto& records = page_of<RecordsPage>(*window, DeskPage::records);
    records.importLogs({log});
    records.job().wait();
    ASSERT_TRUE(records.logs());
    ASSERT_EQ(records.logs()->audit.passes.size(), 1u);
    const auto quoted = [](QString text) { return '"' + text.replace('"', QStringLiteral("\"\"")) + '"'; };
    QString table = "unit_serial,weldment,due\n";
    for (int i = 0; i < 4; ++i)
      table += quoted(bait.on(QStringLiteral("AE-%1").arg(2000 + i))) + ',' + quoted(bait.on("BD")) +
               ",2026-03-02\n";
    save_atomically(orders.toStdString(), table.toStdString());
    auto& line = page_of<LinePage>(*window, DeskPage::line);
    line.readOrders(orders);
    line.job().wait();
    ASSERT_TRUE(line.line());
  }

  /// Every existing label, whatever created it.
  void expectPlainLabels(QWidget& within) {
    for (QLabel* label : within.findChildren<QLabel*>()) {
      label->ensurePolished();
      EXPECT_EQ(label->textFormat(), Qt::PlainText) << label->text().toStdString();
      if (label->text().contains("<img")) foreign.insert(label->text());
    }
    for (QTextEdit* edit : within.findChildren<QTextEdit*>()) expectNoPicture(*edit->document());
  }
  void expectNoPicture(const QTextDocument& document) {
    for (QTextBlock block = document.begin(); block.isValid(); block = block.next())
      for (auto piece = block.begin(); !piece.atEnd(); ++piece)
        EXPECT_FALSE(piece.fragment().charFormat().isImageFormat()) << block.text().toStdString();
  }
  void expectPlainTip(QWidget& widget, const QPoint& at) {
    QToolTip::hideText();
    QHelpEvent help(QEvent::ToolTip, at, widget.mapToGlobal(at));
    QApplication::sendEvent(&widget, &help);
    const QLabel* shown = tip();
    if (!shown) return;
    ++tips;
    EXPECT_EQ(shown->textFormat(), Qt::PlainText) << shown->text().toStdString();
    if (shown->text().contains("<img")) foreign.insert(shown->text());
  }
  /// Tips of all widgets, and of the first rows of all tables, cell by cell.
  void expectPlainTips(QWidget& within) {
    for (QWidget* widget : within.findChildren<QWidget*>())
      if (widget->isVisible() && !widget->toolTip().isEmpty()) expectPlainTip(*widget, {2, 2});
    for (QAbstractItemView* view : within.findChildren<QAbstractItemView*>()) {
      if (!view->isVisible() || !view->model() || qobject_cast<QHeaderView*>(view)) continue;
      for (int row = 0; row < std::min(3, view->model()->rowCount()); ++row)
        for (int column = 0; column < view->model()->columnCount(); ++column) {
          const QModelIndex index = view->model()->index(row, column);
          view->scrollTo(index);
          const QRect cell = view->visualRect(index);
          if (!cell.isEmpty()) expectPlainTip(*view->viewport(), cell.center());
        }
    }
  }
  /// Does `act` while the dialog that it opens is looked at and closed.
  void lookAtDialog(const std::function<void()>& act) {
    bool seen = false;
    QTimer::singleShot(0, window.get(), [&] {
      QWidget* dialog = QApplication::activeModalWidget();
      ASSERT_NE(dialog, nullptr);
      seen = true;
      QApplication::processEvents();
      expectPlainLabels(*dialog);
      expectPlainTips(*dialog);
      dialog->close();
    });
    act();
    EXPECT_TRUE(seen);
  }

  Bait bait;
  QTemporaryDir folder;
  QString path;
  std::set<QString> foreign;  ///< texts of strangers that were seen
  int tips = 0;
};

TEST(Bait, SeesAPictureThatIsLoadedAndLetsItGo) {
  const Bait bait;
  QLabel label(bait.on("S01"));
  label.setTextFormat(Qt::RichText);
  label.show();
  EXPECT_TRUE(QTest::qWaitFor([&] { return bait.isTaken(); })) << "a test that can't fail proves nothing";
}

TEST_F(PlainTextTest, EveryLabelTipAndCellOfEveryPageShowsMarkupAsItStands) {
  readLogAndOrders();
  for (const DeskPage page : desk_pages) {
    window->showPage(page);
    QApplication::processEvents();
    expectPlainLabels(*window);
    expectPlainTips(*window);
  }
  EXPECT_GT(tips, 300);
  EXPECT_GT(foreign.size(), 20u) << "the markup stands on the pages at all";
  EXPECT_FALSE(bait.isTaken());
}

TEST_F(PlainTextTest, ExplainEscapesWhatIsntItsOwn) {
  window->showPage(DeskPage::seams);
  auto& seams = page_of<SeamsPage>(*window, DeskPage::seams);
  for (const char* key : {"pass.cooling_time_s", "seam.leg_mm", "pass.heat_input_kJ_mm", "mark"}) {
    ASSERT_TRUE(seams.table().focusCell(1, key));
    QApplication::processEvents();
    EXPECT_TRUE(window->explain().text().contains("<img src=")) << window->explain().text().toStdString();
    expectPlainLabels(*window);
  }
  window->showPage(DeskPage::schedules);
  ASSERT_TRUE(page_of<SchedulesPage>(*window, DeskPage::schedules).table().focusCell(1, "mark"));
  QApplication::processEvents();
  EXPECT_TRUE(window->explain().text().contains("<img src="));
  QTextBrowser* browser = window->explain().findChild<QTextBrowser*>();
  ASSERT_NE(browser, nullptr);
  browser->setHtml(bait.on("even if it slipped through"));
  EXPECT_FALSE(QTest::qWaitFor([&] { return bait.isTaken(); }, 50));
}

TEST_F(PlainTextTest, DialogsAndMessageBoxesShowMarkupAsItStands) {
  PlanDataDialog data(window->document());
  data.show();
  QApplication::processEvents();
  expectPlainLabels(data);
  expectPlainTips(data);
  StoreQuestion question;
  question.uri = "sqlite:" + bait.on("store");
  StoreDialog store(question);
  store.show();
  QApplication::processEvents();
  expectPlainLabels(store);
  expectPlainTips(store);
  data.close();
  store.close();

  const QString broken = folder.filePath("broken.weldplan.json");
  const QByteArray key =
      QJsonDocument(QJsonObject{{bait.on("key"), 1}, {"format", "weldplan"}, {"version", 1}}).toJson();
  save_atomically(broken.toStdString(), key.toStdString());
  foreign.clear();
  lookAtDialog([&] { window->openPlan(broken); });
  EXPECT_FALSE(foreign.empty()) << "the box names the key";
  ASSERT_FALSE(window->document().setField("/base_metals/0", "standard", "another"));
  lookAtDialog([&] { window->close(); });
  lookAtDialog([&] { QMessageBox::question(window.get(), bait.on("title"), bait.on("any box")); });
  lookAtDialog([&] { message_box(window.get(), QMessageBox::Critical, bait.on("title"), bait.on("box")); });
  EXPECT_FALSE(bait.isTaken());
}

TEST_F(PlainTextTest, MenusAndTitleTakeSignsAsTheyStand) {
  EXPECT_EQ(window->windowTitle(), "<b>baited<b> & more.weldplan.json[*] – Seamtakt");
  const QString starred = folder.filePath("odd[*]name.weldplan.json");
  ASSERT_TRUE(QFile::copy(demo_path(), starred));
  ASSERT_TRUE(window->openPlan(starred));
  EXPECT_EQ(window->windowTitle(), "odd[*][*]name.weldplan.json[*] – Seamtakt");
  QStringList entries;
  for (QMenu* menu : window->findChildren<QMenu*>())
    if (menu->title() == "&Recent plans") {
      emit menu->aboutToShow();
      for (QAction* action : menu->actions()) entries << action->text();
    }
  EXPECT_TRUE(entries.contains("<b>baited<b> && more.weldplan.json")) << entries.join(", ").toStdString();
  ASSERT_FALSE(window->document().edit("Move A&B", {}, [](Plan& plan) { plan.title = "changed"; }));
  bool offered = false;
  for (QAction* action : window->findChildren<QAction*>())
    offered = offered || action->text() == "Undo Move A&&B";
  EXPECT_TRUE(offered);
  QSettings().remove("recent");
}

TEST_F(PlainTextTest, AReportOpensNoFileThatThePlanNames) {
  const QString pdf = folder.filePath("report.pdf");
  export_pdf(*window->evaluator().results(), window->document().path(), pdf);
  EXPECT_GT(QFileInfo(pdf).size(), 1000);
  EXPECT_FALSE(bait.isTaken());
}

}  // namespace
}  // namespace seamtakt::desk
