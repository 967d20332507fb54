// First start: the tour, by keys alone; the handbook, without a browser.
#include <QLabel>
#include <QMenuBar>
#include <QSettings>
#include <QTextBrowser>

#include "app/handbook_window.hpp"
#include "app/theme_choice.hpp"
#include "app/tour_panel.hpp"
#include "user_actions.hpp"
#include "widgets/explain_panel.hpp"

namespace seamtakt::desk {
namespace {

class TourTest : public testing::TestWithParam<const char*> {
 protected:
  void SetUp() override {
    QSettings().remove("tour/seen");
    choose_language(GetParam());
    window = std::make_unique<MainWindow>();
    window->resize(1280, 800);
    window->show();
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
  }
  void TearDown() override {
    window->document().undo().setClean();
    window.reset();
    choose_language("en");
    QSettings().remove("tour/seen");
  }
  void key(Qt::Key key) {
    ASSERT_NE(QApplication::focusWidget(), nullptr);
    QTest::keyClick(QApplication::focusWidget(), key);
    QApplication::processEvents();
  }
  TourPanel* tour() const { return window->findChild<TourPanel*>(); }
  /// Help's entry by the action's place: texts differ by language.
  void chooseInHelp(int place) {
    window->menuBar()->actions().last()->menu()->actions().at(place)->trigger();
    QApplication::processEvents();
  }
  std::unique_ptr<MainWindow> window;
};

TEST_P(TourTest, GoesByEnterThroughSixPagesOfTheDemoAndIsThenSeen) {
  EXPECT_TRUE(TourPanel::isNew());
  TourPanel::start(*window);
  QApplication::processEvents();
  EXPECT_EQ(window->document().plan()->weldments.size(), 3u);
  const PlanPtr plan = window->document().plan();
  std::set<DeskPage> pages;
  std::set<QString> texts;
  for (int step = 0; step < 6; ++step) {
    ASSERT_NE(tour(), nullptr);
    EXPECT_EQ(tour()->step(), step);
    EXPECT_TRUE(tour()->isAncestorOf(QApplication::focusWidget()));
    pages.insert(window->currentPage());
    texts.insert(tour()->text());
    for (QLabel* label : tour()->findChildren<QLabel*>())
      EXPECT_GE(label->height(), label->heightForWidth(label->width())) << label->text().toStdString();
    EXPECT_EQ(window->explain().isVisible(), window->currentPage() == DeskPage::heat);
    key(Qt::Key_Return);
  }
  EXPECT_EQ(pages.size(), 6u);
  EXPECT_EQ(texts.size(), 6u);
  EXPECT_EQ(tour(), nullptr);
  EXPECT_FALSE(TourPanel::isNew());
  EXPECT_FALSE(window->explain().isVisible());
  EXPECT_EQ(window->document().plan(), plan) << "the tour changed the plan";
  EXPECT_TRUE(window->page(DeskPage::findings).isAncestorOf(QApplication::focusWidget()));
}

TEST_P(TourTest, IsSkippedByEscapeAndFoundAgainInHelp) {
  TourPanel::start(*window);
  QApplication::processEvents();
  key(Qt::Key_Return);
  key(Qt::Key_Escape);
  EXPECT_EQ(tour(), nullptr);
  EXPECT_FALSE(TourPanel::isNew());
  chooseInHelp(2);
  ASSERT_NE(tour(), nullptr);
  EXPECT_EQ(tour()->step(), 0);
  key(Qt::Key_Space);
  EXPECT_EQ(tour()->step(), 1);
  key(Qt::Key_Backtab);
  key(Qt::Key_Return);
  EXPECT_EQ(tour()->step(), 0) << "Enter on Back";
}

TEST_P(TourTest, LeavesAnOpenPlanAsItIs) {
  window->document().start(Plan());
  window->newPlan();
  QApplication::processEvents();
  const PlanPtr plan = window->document().plan();
  TourPanel::start(*window);
  QApplication::processEvents();
  EXPECT_EQ(window->document().plan(), plan);
}

TEST_P(TourTest, TheHandbookOpensInTheLanguageAndFollowsItsLinks) {
  const QString first = HandbookWindow::firstPage(GetParam());
  if (first.isEmpty()) GTEST_SKIP() << "no handbook was built: cmark-gfm isn't here";
  QTest::keyClick(window.get(), Qt::Key_F1, Qt::ShiftModifier);
  QApplication::processEvents();
  auto* handbook = window->findChild<HandbookWindow*>();
  ASSERT_NE(handbook, nullptr);
  ASSERT_TRUE(QTest::qWaitForWindowActive(handbook));
  QTextBrowser& browser = handbook->browser();
  EXPECT_EQ(browser.source(), QUrl::fromLocalFile(first));
  const QString start = browser.toPlainText();
  EXPECT_TRUE(start.contains(QStringLiteral("Seamtakt")));
  // Tab to the first link and Enter, as with any page.
  key(Qt::Key_Tab);
  key(Qt::Key_Return);
  EXPECT_TRUE(browser.source().toString().endsWith(QStringLiteral("weld-engineer.html")))
      << browser.source().toString().toStdString();
  EXPECT_TRUE(browser.toPlainText().contains(QStringLiteral("seamtakt")));
  QTest::keyClick(handbook, Qt::Key_Left, Qt::AltModifier);
  EXPECT_EQ(browser.toPlainText(), start);
}

INSTANTIATE_TEST_SUITE_P(InEachLanguage, TourTest, testing::Values("en", "de"),
                         [](const auto& info) { return std::string(info.param); });

}  // namespace
}  // namespace seamtakt::desk
