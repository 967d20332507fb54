#include <QAccessible>
#include <QComboBox>
#include <QDir>
#include <QDropEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QToolButton>
#include <set>

#include "app/theme_choice.hpp"
#include "base/files/atomic_save.hpp"
#include "document/plan_address.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"
#include "pages/findings_page.hpp"
#include "pages/heat_page.hpp"
#include "pages/records_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "pages/window_panel.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/seam_view.hpp"
#include "plots/window_plot.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/field_form.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/quantity_edit.hpp"

namespace seamtakt::desk {
namespace {

TEST_F(DeskTest, TheChainShowsALiveFigureOfEachLink) {
  make_drafts(window->document());
  settle();
  for (const DeskPage page : desk_pages)
    EXPECT_EQ(window->chain().link(page).figure().isEmpty(), page == DeskPage::records) << page;
  const QString before = window->chain().link(DeskPage::heat).figure();
  for (std::size_t s = 0; s < window->document().plan()->schedules.size(); ++s)
    ASSERT_FALSE(window->document().setField(schedule_address(s), "travel_speed_mm_s", "20"));
  settle();
  EXPECT_NE(window->chain().link(DeskPage::heat).figure(), before);
}

TEST_F(DeskTest, EachLinkOpensByKeyAndByClick) {
  UserActions actions(*window);
  for (const DeskPage page : desk_pages) actions.page(page);
  for (const DeskPage page : desk_pages) {
    actions.click(&window->chain().link(page));
    EXPECT_EQ(window->currentPage(), page);
  }
}

TEST_F(DeskTest, EveryControlHasANameForScreenReaders) {
  window->setExplainShown(true);
  int seen = 0;
  for (const DeskPage page : desk_pages) {
    window->showPage(page);
    QApplication::processEvents();
    for (QWidget* widget : window->findChildren<QWidget*>()) {
      if (widget->focusPolicy() == Qt::NoFocus || !widget->isVisible() ||
          widget->objectName().startsWith("qt_"))
        continue;
      QAccessibleInterface* reader = QAccessible::queryAccessibleInterface(widget);
      ASSERT_NE(reader, nullptr) << widget->metaObject()->className();
      EXPECT_FALSE(reader->text(QAccessible::Name).isEmpty())
          << widget->metaObject()->className() << " on " << window->page(page).title().toStdString()
          << ", in " << widget->parentWidget()->metaObject()->className();
      EXPECT_NE(reader->role(), QAccessible::NoRole);
      ++seen;
    }
  }
  EXPECT_GT(seen, 150);
}

TEST_F(DeskTest, F1ExplainsTheDerivedValueInFocus) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  actions.key(Qt::Key_F1);
  ASSERT_TRUE(window->explain().isVisible());
  ASSERT_TRUE(page_of<SeamsPage>(*window, DeskPage::seams).table().focusCell(0, "pass.cooling_time_s"));
  QApplication::processEvents();
  EXPECT_TRUE(window->explain().text().contains("en-1011-2")) << window->explain().text().toStdString();
  actions.key(Qt::Key_F1);
  EXPECT_FALSE(window->explain().isVisible());
}

TEST_F(DeskTest, AClickOnTheDrawnSeamChoosesItEverywhere) {
  auto& page = page_of<SeamsPage>(*window, DeskPage::seams);
  UserActions actions(*window);
  page.showFlat(Projection::plan);
  QApplication::processEvents();
  actions.clickAt(&page.picture(), page.picture().pointOf(5).toPoint());
  const std::size_t picked = window->selection().seam().seam;
  EXPECT_EQ(page.table().currentRow(), static_cast<int>(picked));
  EXPECT_EQ(page.form().pointer(), seam_address(0, picked));
  EXPECT_NE(picked, 0u);
}

TEST_F(DeskTest, EnterOnAFindingGoesToItsField) {
  UserActions actions(*window);
  actions.page(DeskPage::findings);
  auto& page = page_of<FindingsPage>(*window, DeskPage::findings);
  page.table().setFocus();
  page.table().setCurrentIndex(page.table().proxy().index(0, 0));
  const std::string where =
      page.table().proxy().index(0, page.table().grid().columnNamed("where")).data().toString().toStdString();
  actions.key(Qt::Key_Return);
  EXPECT_EQ(window->currentPage(), DeskPage::seams);
  const SeamPlace at = window->selection().seam();
  const Weldment& weldment = window->document().plan()->weldments[at.weldment];
  EXPECT_EQ(where.rfind(weldment.id + "/" + weldment.seams[at.seam].id, 0), 0u) << where;
  EXPECT_TRUE(page_of<SeamsPage>(*window, DeskPage::seams).isAncestorOf(QApplication::focusWidget()));
}

TEST_F(DeskTest, AFindingIsAcceptedOnlyWithReasonAndName) {
  UserActions actions(*window);
  actions.page(DeskPage::findings);
  auto& page = page_of<FindingsPage>(*window, DeskPage::findings);
  page.table().setFocus();
  page.table().setCurrentIndex(page.table().proxy().index(0, 0));
  const std::size_t before = window->document().plan()->accepted.size();
  page.accept();
  EXPECT_EQ(window->document().plan()->accepted.size(), before);
  for (QLineEdit* line : page.findChildren<QLineEdit*>()) {
    if (line->accessibleName() != "Reason" && line->accessibleName() != "Accepted by") continue;
    line->setFocus();
    actions.type(line->accessibleName() == "Reason" ? "tried on a test piece" : "w. engineer");
  }
  page.accept();
  ASSERT_EQ(window->document().plan()->accepted.size(), before + 1);
  EXPECT_EQ(window->document().plan()->accepted.back().why, "tried on a test piece");
  settle();
  window->document().undo().undo();
  EXPECT_EQ(window->document().plan()->accepted.size(), before);
}

TEST_F(DeskTest, PlansAndLogsAreTakenByDragAndDrop) {
  QTemporaryDir folder;
  const QString copy = folder.filePath("dropped.weldplan.json");
  ASSERT_TRUE(QFile::copy(demo_path(), copy));
  const auto drop = [&](const QString& path) {
    QMimeData data;
    data.setUrls({QUrl::fromLocalFile(path)});
    // A drag enters before it drops.
    QDragEnterEvent enter(QPoint(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window.get(), &enter);
    QDropEvent event(QPointF(50, 50), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window.get(), &event);
  };
  drop(copy);
  EXPECT_EQ(window->document().path(), copy);
  drop(demo_log());
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
  page.job().wait();
  EXPECT_TRUE(page.logs());
}

TEST_F(DeskTest, AnEmptyDeskSaysTheFirstStepAndOpensTheDemo) {
  window->document().start(Plan());
  settle();
  for (const DeskPage page :
       {DeskPage::seams, DeskPage::schedules, DeskPage::heat, DeskPage::line, DeskPage::findings}) {
    window->showPage(page);
    bool offered = false;
    for (QPushButton* button : window->page(page).findChildren<QPushButton*>())
      offered = offered || (button->isVisible() && button->accessibleName() == "Open the demo");
    EXPECT_TRUE(offered) << page;
  }
  window->showPage(DeskPage::seams);
  UserActions actions(*window);
  for (QPushButton* button : window->page(DeskPage::seams).findChildren<QPushButton*>())
    if (button->isVisible() && button->accessibleName() == "Open the demo") {
      actions.click(button);
      break;
    }
  settle();
  EXPECT_GT(window->document().plan()->weldments.size(), 1u);
  EXPECT_TRUE(window->document().path().isEmpty());
}

TEST_F(DeskTest, AFindingOfTheCycleIsAcceptedToo) {
  const auto takt_missed = [&]() -> const Finding* {
    for (const Finding& finding : window->evaluator().results()->findings)
      if (finding.rule == "cycle.takt.missed") return &finding;
    return nullptr;
  };
  ASSERT_NE(takt_missed(), nullptr);
  ASSERT_EQ(takt_missed()->severity, Severity::fail);
  UserActions actions(*window);
  actions.page(DeskPage::findings);
  auto& page = page_of<FindingsPage>(*window, DeskPage::findings);
  for (int row = 0; row < page.table().grid().rowCount(); ++row)
    if (page.table().grid().index(row, page.table().grid().columnNamed("rule")).data() == "cycle.takt.missed")
      page.table().selectRow(row);
  for (QLineEdit* line : page.findChildren<QLineEdit*>()) {
    if (line->accessibleName() != "Reason" && line->accessibleName() != "Accepted by") continue;
    line->setFocus();
    line->selectAll();
    actions.type(line->accessibleName() == "Reason" ? "one shift more" : "p. engineer");
  }
  const std::size_t before = window->document().plan()->accepted.size();
  actions.press(page, "Accept with this reason");
  settle();
  ASSERT_EQ(window->document().plan()->accepted.size(), before + 1);
  ASSERT_NE(takt_missed(), nullptr);
  EXPECT_EQ(takt_missed()->severity, Severity::note) << "accepted, it is a note with its reason";
  EXPECT_NE(takt_missed()->text().find("one shift more"), std::string::npos);
}

TEST_F(DeskTest, AThemeThatChangesWhileItRunsIsFollowedWhereTheSystemsIsWanted) {
  choose_theme("dark");
  ASSERT_TRUE(Palette::current().dark);
  QSettings().setValue("view/theme", "dark");
  QEvent other(QEvent::ThemeChange);
  QApplication::sendEvent(window.get(), &other);
  EXPECT_TRUE(Palette::current().dark) << "who chose dark keeps it";
  QSettings().setValue("view/theme", "system");
  QEvent change(QEvent::ThemeChange);
  QApplication::sendEvent(window.get(), &change);
  EXPECT_FALSE(Palette::current().dark) << "the platform of the tests is light";
  QSettings().remove("view/theme");
  choose_theme("light");
}

TEST_F(DeskTest, DerivedValuesFollowTheLastKeyWithinAHundredMilliseconds) {
  make_drafts(window->document());
  settle();
  double slowest_ms = 0;
  for (int i = 0; i < 10; ++i) {
    QElapsedTimer timer;
    timer.start();
    ASSERT_FALSE(window->document().setField("/schedules/0", "travel_speed_mm_s", i % 2 ? "12" : "12.5"));
    QSignalSpy ready(&window->evaluator(), &Evaluator::ready);
    while (ready.isEmpty()) QApplication::processEvents(QEventLoop::AllEvents, 5);
    slowest_ms = std::max(slowest_ms, static_cast<double>(timer.nsecsElapsed()) / 1e6);
    settle();
  }
  std::printf("[ measured ] derived values after an edit, slowest of 10: %.0f ms\n", slowest_ms);
  EXPECT_LT(slowest_ms, 1000);  // an alarm for shared machines; the goal is 100
}

std::size_t colors_in(const QImage& picture) {
  std::set<QRgb> colors;
  for (int y = 0; y < picture.height(); y += 2)
    for (int x = 0; x < picture.width(); ++x) colors.insert(picture.pixel(x, y));
  return colors.size();
}

TEST_F(DeskTest, EveryPageIsPhotographedIntoTheBuildFolder) {
  const bool on_screen = QGuiApplication::platformName() == QStringLiteral("xcb");
  const QString folder = QString::fromStdString(build_path("/screenshots")) +
                         (on_screen ? QStringLiteral("/x-server") : QString());
  auto& records = page_of<RecordsPage>(*window, DeskPage::records);
  records.importLogs({demo_log()});
  records.job().wait();
  QDir().mkpath(folder);
  for (const DeskPage page : desk_pages) {
    window->showPage(page);
    // On an X server the screen is captured; elsewhere the window draws itself.
    QImage picture;
    EXPECT_TRUE(QTest::qWaitFor([&] {
      picture = (on_screen ? window->screen()->grabWindow(window->winId()) : window->grab()).toImage();
      return colors_in(picture) > 20;
    })) << page
        << " is empty";
    const QString path = QStringLiteral("%1/%2-%3.png")
                             .arg(folder)
                             .arg(position_of(page) + 1)
                             .arg(window->page(page).title().toLower());
    EXPECT_TRUE(picture.save(path));
    EXPECT_GE(picture.width(), 1280);
  }
}

}  // namespace
}  // namespace seamtakt::desk
