// The start page and pages without data: their headline is whole, and Enter presses the default button.
#include <QLabel>
#include <QSettings>

#include "app/theme_choice.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {
namespace {

constexpr DeskPage empty_pages[] = {DeskPage::seams, DeskPage::schedules, DeskPage::heat,
                                    DeskPage::cell,  DeskPage::line,      DeskPage::findings};

/// The label that says the first step; nullptr where the page shows none.
QLabel* headline(Page& page) {
  for (QLabel* label : page.findChildren<QLabel*>())
    if (label->isVisible() && label->property("role") == "figure" && !label->text().isEmpty()) return label;
  return nullptr;
}

QPushButton* button(Page& page, const QString& name) {
  for (QPushButton* each : page.findChildren<QPushButton*>())
    if (each->isVisible() && each->accessibleName() == name) return each;
  return nullptr;
}

struct Look {
  const char* language;
  QSize size;
  double scale;
};

class FirstStepLook : public testing::TestWithParam<Look> {
 protected:
  void SetUp() override {
    font = QApplication::font();
    QFont scaled = font;
    scaled.setPointSizeF(font.pointSizeF() * GetParam().scale);
    QApplication::setFont(scaled);
    choose_language(GetParam().language);
    choose_theme("light");
    window = std::make_unique<MainWindow>();
    window->resize(GetParam().size);
    window->show();
    QApplication::processEvents();
  }
  void TearDown() override {
    window.reset();
    choose_language("en");
    QApplication::setFont(font);
    choose_theme("light");
  }
  /// A picture of the page in its present state, in the build folder, for a person to look at.
  void photograph(DeskPage page) {
    const QString folder = QString::fromStdString(build_path("/screenshots/first-step"));
    QDir().mkpath(folder);
    EXPECT_TRUE(window->grab().save(QStringLiteral("%1/%2-%3-%4-%5.png")
                                        .arg(folder, GetParam().language)
                                        .arg(GetParam().size.width())
                                        .arg(GetParam().scale * 100)
                                        .arg(position_of(page) + 1)));
  }
  QFont font;
  std::unique_ptr<MainWindow> window;
};

TEST_P(FirstStepLook, HasItsWholeHeadline) {
  for (const DeskPage index : empty_pages) {
    window->showPage(index);
    QApplication::processEvents();
    Page& page = window->page(index);
    const QLabel* label = headline(page);
    ASSERT_NE(label, nullptr) << page.title().toStdString();
    const std::string where = page.title().toStdString() + ": " + label->text().toStdString();
    const QRect text = label->fontMetrics().boundingRect(QRect(0, 0, label->contentsRect().width(), 10000),
                                                         Qt::TextWordWrap | Qt::AlignHCenter, label->text());
    EXPECT_GE(label->contentsRect().height(), text.height()) << where;
    EXPECT_GE(label->contentsRect().width(), text.width()) << where;
    EXPECT_TRUE(page.rect().contains(QRect(label->mapTo(&page, QPoint()), label->size()))) << where;
    EXPECT_LE(label->width(), page.width() * 9 / 10) << where;
    QPushButton* first = page.firstStep();
    ASSERT_NE(first, nullptr);
    EXPECT_GE(first->width(), first->sizeHint().width());
    EXPECT_GT(first->mapTo(&page, QPoint()).y(), label->mapTo(&page, QPoint()).y() + label->height());
    photograph(index);
  }
}

INSTANTIATE_TEST_SUITE_P(InEachSize, FirstStepLook,
                         testing::Values(Look{"en", {1280, 800}, 1}, Look{"de", {1280, 800}, 1},
                                         Look{"en", {1000, 700}, 1}, Look{"de", {1000, 700}, 1},
                                         Look{"en", {1280, 800}, 1.5}, Look{"de", {1280, 800}, 1.5},
                                         Look{"de", {1000, 700}, 1.5}),
                         [](const auto& info) {
                           return std::string(info.param.language) + std::to_string(info.param.size.width()) +
                                  (info.param.scale > 1 ? "Large" : "");
                         });

class FirstStepTest : public testing::Test {
 protected:
  void SetUp() override {
    window = std::make_unique<MainWindow>();
    window->readSettings();
    window->resize(1280, 800);
    window->show();
    window->activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(window.get()));
    QApplication::processEvents();
  }
  void TearDown() override {
    if (window) window->document().undo().setClean();
    window.reset();
  }
  std::unique_ptr<MainWindow> window;
};

TEST_F(FirstStepTest, EnterOnTheStartPageOpensTheDemo) {
  UserActions actions(*window);
  ASSERT_EQ(window->currentPage(), DeskPage::seams);
  ASSERT_TRUE(window->document().isEmpty());
  actions.key(Qt::Key_Return);
  EXPECT_FALSE(window->document().isEmpty());
  EXPECT_EQ(window->document().plan()->weldments.size(), 3u);
}

TEST_F(FirstStepTest, EnterOnAnyEmptyPageOpensTheDemo) {
  UserActions actions(*window);
  for (const DeskPage index : empty_pages) {
    window->document().start(Plan());
    window->evaluator().wait();
    QApplication::processEvents();
    actions.page(index);
    ASSERT_NE(window->page(index).firstStep(), nullptr) << index;
    EXPECT_TRUE(window->page(index).firstStep()->isDefault());
    actions.key(position_of(index) % 2 ? Qt::Key_Enter : Qt::Key_Return);
    EXPECT_FALSE(window->document().isEmpty()) << index;
    window->document().undo().setClean();
  }
}

TEST_F(FirstStepTest, EnterWhereNothingHasTheFocusDoesToo) {
  UserActions actions(*window);
  if (QApplication::focusWidget()) QApplication::focusWidget()->clearFocus();
  actions.key(Qt::Key_Return);
  EXPECT_FALSE(window->document().isEmpty());
}

TEST_F(FirstStepTest, EnterPressesTheOtherButtonWhereThatHasTheFocus) {
  UserActions actions(*window);
  actions.key(Qt::Key_Tab);
  ASSERT_EQ(QApplication::focusWidget(), button(window->page(DeskPage::seams), "New plan"));
  actions.key(Qt::Key_Return);
  EXPECT_EQ(window->document().plan()->weldments.size(), 1u) << "a new plan, not the demo";
  EXPECT_TRUE(window->document().plan()->weldments[0].seams.size() <= 1);
}

TEST_F(FirstStepTest, ANewPlanOffersWhatItLacksAndCallsNothingOk) {
  UserActions actions(*window);
  window->newPlan();
  const auto settle = [&] {
    window->evaluator().wait();
    QApplication::processEvents();
  };
  settle();
  for (const DeskPage link : {DeskPage::seams, DeskPage::schedules}) {
    EXPECT_TRUE(window->chain().link(link).isNotJudged()) << link;
    EXPECT_TRUE(window->chain().link(link).toolTip().contains("not judged"))
        << window->chain().link(link).toolTip().toStdString();
  }
  actions.page(DeskPage::seams);
  Page& seams = window->page(DeskPage::seams);
  ASSERT_NE(seams.firstStep(), nullptr);
  EXPECT_EQ(seams.firstStep()->accessibleName(), "Add seam");
  EXPECT_NE(button(seams, "Import …"), nullptr);
  EXPECT_EQ(button(seams, "Open the demo"), nullptr);
  actions.key(Qt::Key_Return);
  settle();
  ASSERT_EQ(window->document().plan()->weldments[0].seams.size(), 1u);
  EXPECT_EQ(seams.firstStep(), nullptr);
  EXPECT_FALSE(window->chain().link(DeskPage::seams).isNotJudged());
  EXPECT_FALSE(window->chain().link(DeskPage::schedules).isNotJudged());
  actions.page(DeskPage::cell);
  ASSERT_NE(window->page(DeskPage::cell).firstStep(), nullptr);
  EXPECT_EQ(window->page(DeskPage::cell).firstStep()->accessibleName(), "Starter cell");
  actions.key(Qt::Key_Return);
  settle();
  EXPECT_TRUE(window->document().plan()->cell);
  EXPECT_EQ(window->page(DeskPage::cell).firstStep(), nullptr);
}

TEST_F(FirstStepTest, AWeldmentsFieldsAreFilledInBeforeItsFirstSeam) {
  window->newPlan();
  UserActions actions(*window);
  actions.press(window->page(DeskPage::seams), "Fields of the weldment");
  EXPECT_EQ(window->page(DeskPage::seams).firstStep(), nullptr);
  EXPECT_EQ(window->document().plan()->weldments[0].id, "W1");
}

TEST_F(FirstStepTest, EnterOnAPageWithDataOpensNothing) {
  window->document().open(demo_path());
  window->evaluator().wait();
  QApplication::processEvents();
  const PlanPtr plan = window->document().plan();
  UserActions actions(*window);
  for (const DeskPage index : desk_pages) {
    actions.page(index);
    EXPECT_EQ(window->page(index).firstStep(), nullptr) << index;
    actions.key(Qt::Key_Return);
    EXPECT_EQ(window->document().plan(), plan) << index;
    for (QWidget* open : QApplication::topLevelWidgets())
      if (open != window.get() && open->isWindow() && open->inherits("QComboBoxPrivateContainer"))
        open->hide();
  }
}

}  // namespace
}  // namespace seamtakt::desk
