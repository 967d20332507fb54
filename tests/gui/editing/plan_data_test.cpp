#include <QMenu>
#include <QTreeWidget>

#include "document/plan_address.hpp"
#include "document/plan_items.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/plan_data_dialog.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/rename_dialog.hpp"

/// Everything that a plan can hold is made, copied and removed in the plan's data.
namespace seamtakt::desk {
namespace {

class PlanDataTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    window->document().start(starting_plan());
    settle();
    UserActions actions(*window);
    actions.key(Qt::Key_M, Qt::ControlModifier);
    data = window->findChild<PlanDataDialog*>();
    ASSERT_NE(data, nullptr);
    bring_to_front(*data);
  }
  const Plan& plan() const { return *window->document().plan(); }
  void press(const QString& name) {
    for (QPushButton* button : data->findChildren<QPushButton*>())
      if (button->accessibleName() == name) {
        ASSERT_TRUE(button->isEnabled()) << name.toStdString();
        QTest::mouseClick(button, Qt::LeftButton);
        return QApplication::processEvents();
      }
    FAIL() << "no button " << name.toStdString();
  }
  /// Chooses a way of adding in the menu that Add shows.
  void pick(const QString& way) {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    ASSERT_NE(menu, nullptr);
    for (QAction* action : menu->actions())
      if (action->text() == way) {
        menu->setActiveAction(action);
        QTest::keyClick(menu, Qt::Key_Return);
        QApplication::processEvents();
        return bring_to_front(*data);
      }
    FAIL() << "no way " << way.toStdString();
  }
  /// Adds to what is at the pointer; what has more than one way, blank.
  void add(const std::string& pointer) {
    ASSERT_TRUE(data->choose(pointer)) << pointer;
    press("Add");
    if (QApplication::activePopupWidget()) pick("Blank");
  }
  PlanDataDialog* data = nullptr;
};

TEST_F(PlanDataTest, OpensOnItsTree) {
  EXPECT_EQ(QApplication::focusWidget(), &data->tree());
  const std::string before = write_plan(plan());
  QTest::keyClicks(QApplication::focusWidget(), "28,5");
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
  EXPECT_EQ(write_plan(plan()), before);
}

TEST_F(PlanDataTest, EachKindOfListTakesANewItemACopyAndLosesBoth) {
  add("/cell");
  add("/cell/positioner");
  add("/line");
  add("/costs");
  for (const char* list :
       {"/base_metals", "/wires", "/gases", "/power_sources", "/schedules", "/qualifications", "/weldments",
        "/weldments/0/seams", "/weldments/0/parts", "/weldments/0/features", "/weldments/0/plates",
        "/weldments/0/tubes", "/instruments", "/cell/robots", "/cell/orientations", "/cell/zones",
        "/line/stages"}) {
    const std::size_t before = items_of(plan(), list).size();
    add(list);
    ASSERT_EQ(items_of(plan(), list).size(), before + 1) << list;
    // What was made can be written and read.
    EXPECT_EQ(write_plan(parse_plan(write_plan(plan()), "again")), write_plan(plan())) << list;
    const std::string made = items_of(plan(), list).back().first;
    ASSERT_TRUE(data->choose(made)) << list;
    press("Duplicate");
    ASSERT_EQ(items_of(plan(), list).size(), before + 2) << list;
    EXPECT_NE(items_of(plan(), list)[before].second, items_of(plan(), list)[before + 1].second) << list;
    ASSERT_TRUE(data->choose(items_of(plan(), list).back().first)) << list;
    press("Remove");
    EXPECT_EQ(items_of(plan(), list).size(), before + 1) << list;
  }
}

TEST_F(PlanDataTest, WhatNamesOthersIsMadeOnceTheyAreThere) {
  add("/cell");
  add("/cell/orientations");
  add("/cell/orientations");
  add("/cell/positioner");
  add("/cell/positioner/turns");
  ASSERT_EQ(plan().cell->positioner->turns.size(), 1u);
  EXPECT_EQ(plan().cell->positioner->turns[0].from, "O1");
  EXPECT_EQ(plan().cell->positioner->turns[0].to, "O2");
  add("/line");
  add("/line/operators");
  EXPECT_TRUE(plan().line->operators.empty()) << "there is no stage yet";
  add("/line/stages");
  add("/line/operators");
  ASSERT_EQ(plan().line->operators.size(), 1u);
  add("/line/calendar");
  ASSERT_TRUE(plan().line->calendar);
  ASSERT_EQ(plan().line->calendar->shifts.size(), 1u);
  add("/line/calendar/shifts");
  ASSERT_EQ(plan().line->calendar->shifts.size(), 2u);
  EXPECT_EQ(plan().line->calendar->shifts[1].from, "14:00");
  EXPECT_EQ(plan().line->calendar->shifts[1].to, "22:00");
  ASSERT_TRUE(data->choose("/line/calendar"));
  press("Remove");
  EXPECT_FALSE(plan().line->calendar);
}

TEST_F(PlanDataTest, ASteelOfTheCatalogueHasTheStandardsGreatestShares) {
  ASSERT_TRUE(data->choose("/base_metals"));
  press("Add");
  pick("S460N");
  ASSERT_EQ(plan().base_metals.size(), 2u);
  const BaseMetal& metal = plan().base_metals.back();
  EXPECT_EQ(metal.id, "S460N");
  EXPECT_EQ(metal.standard, "EN 10025-3 S460N");
  EXPECT_EQ(metal.composition_basis, "standard-maximum");
  EXPECT_FALSE(metal.composition_pct.empty());
  ASSERT_TRUE(data->choose("/wires"));
  press("Add");
  pick("metal-cored-1.2");
  EXPECT_EQ(plan().wires.back().classification, "ISO 17632-A T 46 4 M M21 1 H5");
  // reference/deposition_efficiency.csv: metal-cored under argon with carbon dioxide.
  EXPECT_EQ(plan().wires.back().deposition_efficiency, 0.93);
  ASSERT_TRUE(data->choose("/gases"));
  press("Add");
  pick("M21");
  EXPECT_EQ(plan().gases.back().designation, "ISO 14175 M21");
}

TEST_F(PlanDataTest, AStarterCellHasTwoRobotsAPositionerAndTwoStations) {
  ASSERT_TRUE(data->choose("/cell"));
  press("Add");
  pick("Two robots, a positioner, two stations");
  ASSERT_TRUE(plan().cell);
  EXPECT_EQ(plan().cell->robots.size(), 2u);
  EXPECT_EQ(plan().cell->orientations.size(), 2u);
  EXPECT_EQ(plan().cell->stations, 2);
  ASSERT_TRUE(plan().cell->positioner);
  ASSERT_TRUE(plan().cell->robots[1].loaded);
  EXPECT_EQ(plan().cell->robots[1].loaded->wire, plan().wires[0].id);
  ASSERT_TRUE(data->choose("/weldments/0/seams"));
  press("Add");
  settle();
  EXPECT_EQ(window->evaluator().results()->cycles.size(), 1u) << "the cell is timed";
  EXPECT_EQ(window->document().undo().count(), 2);
}

TEST_F(PlanDataTest, WhatIsNewIsNamedByTypingAndThenByRenameAlone) {
  add("/power_sources");
  auto* id = qobject_cast<QuantityEdit*>(data->form().editorOf("id"));
  ASSERT_EQ(QApplication::focusWidget(), id);
  QTest::keyClicks(id, "PS500");
  QTest::keyClick(id, Qt::Key_Tab);
  QApplication::processEvents();
  EXPECT_EQ(plan().power_sources[0].id, "PS500");
  id->setFocus();
  QTest::keyClicks(id, "28,5");
  EXPECT_EQ(plan().power_sources[0].id, "PS500");
  EXPECT_EQ(id->text(), "PS500");
  press("Rename …");
  auto* dialog = qobject_cast<RenameDialog*>(question());
  ASSERT_NE(dialog, nullptr);
  QTest::keyClicks(&dialog->line(), "PS400");
  QTest::keyClick(&dialog->line(), Qt::Key_Return);
  EXPECT_EQ(plan().power_sources[0].id, "PS400");
}

TEST_F(PlanDataTest, ACopyOfAnApprovedScheduleIsADraftThatNobodyApproved) {
  window->document().open(demo_path());
  settle();
  ASSERT_EQ(plan().schedules[1].status, "approved");
  ASSERT_TRUE(data->choose("/schedules/1"));
  press("Duplicate");
  EXPECT_EQ(plan().schedules.back().status, "draft");
  EXPECT_TRUE(plan().schedules.back().approved_by.empty());
  EXPECT_TRUE(plan().schedules.back().effective_from.empty());
  EXPECT_EQ(plan().schedules.back().revision, 1);
}

TEST_F(PlanDataTest, WhatOthersNeedIsNotRemoved) {
  ASSERT_TRUE(data->choose("/wires/0"));
  press("Remove");
  EXPECT_EQ(plan().wires.size(), 1u);
}

}  // namespace
}  // namespace seamtakt::desk
