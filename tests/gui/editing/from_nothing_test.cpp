#include <QMenu>
#include <QTreeWidget>

#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/plan_data_dialog.hpp"

/// From nothing to a plan with a cycle against takt, by hand. A committed value, a command or a click counts
/// as one action; a path is one value.
namespace seamtakt::desk {
namespace {

class FromNothingTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    window->document().start(Plan());
    settle();
  }
  const Plan& plan() const { return *window->document().plan(); }
  void command(UserActions& by, Qt::Key key, Qt::KeyboardModifiers modifiers) {
    ++actions;
    by.key(key, modifiers);
  }
  void value(UserActions& by, FieldForm& form, const char* key, const QString& typed) {
    ++actions;
    ASSERT_TRUE(form.focusField(key)) << key;
    by.typeOver(typed);
    by.key(Qt::Key_Return);
  }
  void click(QWidget& in, const QString& name) {
    ++actions;
    for (QPushButton* button : in.findChildren<QPushButton*>())
      if (button->accessibleName() == name && button->isVisible()) {
        QTest::mouseClick(button, Qt::LeftButton);
        return QApplication::processEvents();
      }
    FAIL() << "no button " << name.toStdString();
  }
  void choose(PlanDataDialog& data, const char* pointer) {
    ++actions;
    ASSERT_TRUE(data.choose(pointer)) << pointer;
  }
  /// The first way that the menu of Add offers.
  void pickFirst(QWidget& back) {
    ++actions;
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    menu->setActiveAction(menu->actions().first());
    QTest::keyClick(menu, Qt::Key_Return);
    QApplication::processEvents();
    bring_to_front(back);
  }
  int actions = 0;
};

TEST_F(FromNothingTest, TwelveSeamsTwoSchedulesAQualificationTwoRobotsAndACycleTakeAtMostSixtyActions) {
  UserActions by(*window);
  click(window->page(DeskPage::seams), "New plan");
  FieldForm& seam = page_of<SeamsPage>(*window, DeskPage::seams).form();
  for (int i = 0; i < 12; ++i) {
    command(by, Qt::Key_Insert, Qt::AltModifier);
    ASSERT_EQ(plan().weldments[0].seams.size(), static_cast<std::size_t>(i + 1));
    value(by, seam, "leg_mm", i < 6 ? "4" : "5");
    value(by, seam, "path_mm", QStringLiteral("0 %1 0; 300 %1 0").arg(i * 50));
  }
  command(by, Qt::Key_2, Qt::ControlModifier);
  FieldForm& schedule = page_of<SchedulesPage>(*window, DeskPage::schedules).form();
  command(by, Qt::Key_Insert, Qt::AltModifier);
  value(by, schedule, "travel_speed_mm_s", "9");
  command(by, Qt::Key_1, Qt::ControlModifier);
  value(by, seam, "schedules", QString::fromStdString(plan().schedules.back().id));
  command(by, Qt::Key_M, Qt::ControlModifier);
  auto* data = window->findChild<PlanDataDialog*>();
  ASSERT_NE(data, nullptr);
  bring_to_front(*data);
  choose(*data, "/qualifications");
  click(*data, "Add");
  value(by, data->form(), "basis", "ISO 15614-1:2017");
  choose(*data, "/cell");
  click(*data, "Add");
  pickFirst(*data);
  choose(*data, "/line");
  click(*data, "Add");
  value(by, data->form(), "takt_s", "1200");
  data->close();
  bring_to_front(*window);
  command(by, Qt::Key_4, Qt::ControlModifier);
  settle();
  ASSERT_EQ(plan().weldments.size(), 1u);
  EXPECT_EQ(plan().weldments[0].seams.size(), 12u);
  EXPECT_EQ(plan().weldments[0].seams[11].path_mm[1], (Point_mm{300, 550, 0}));
  EXPECT_EQ(plan().schedules.size(), 2u);
  EXPECT_EQ(plan().weldments[0].seams[11].schedules, std::vector<std::string>{plan().schedules[1].id});
  ASSERT_EQ(plan().qualifications.size(), 1u);
  EXPECT_EQ(plan().qualifications[0].basis, "ISO 15614-1:2017");
  ASSERT_TRUE(plan().cell);
  EXPECT_EQ(plan().cell->robots.size(), 2u);
  ASSERT_EQ(window->evaluator().results()->cycles.size(), 1u);
  EXPECT_TRUE(window->evaluator().results()->cycles[0].takt_margin_s) << "judged against takt";
  EXPECT_LE(actions, 60);
  std::printf("[ actions  ] from nothing to a cycle against takt: %d\n", actions);
}

}  // namespace
}  // namespace seamtakt::desk
