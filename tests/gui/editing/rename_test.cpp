#include <QLineEdit>
#include <QListWidget>

#include "document/plan_address.hpp"
#include "document/rename.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/rename_dialog.hpp"

/// An id is changed by one command, which shows and renames what refers to it.
namespace seamtakt::desk {
namespace {

class RenameTest : public DeskTest {
 protected:
  const Plan& plan() const { return *window->document().plan(); }
  std::string text() const { return write_plan(plan()); }
  SeamsPage& page() { return page_of<SeamsPage>(*window, DeskPage::seams); }
  std::size_t seam(const std::string& id) const {
    return static_cast<std::size_t>(find_by_id(plan().weldments[0].seams, id) -
                                    plan().weldments[0].seams.data());
  }
  RenameDialog* dialog() { return qobject_cast<RenameDialog*>(question()); }
  void enter(RenameDialog* dialog, const QString& id) {
    ASSERT_NE(dialog, nullptr);
    QTest::keyClicks(&dialog->line(), id);
    QTest::keyClick(&dialog->line(), Qt::Key_Return);
    QApplication::processEvents();
  }
};

TEST_F(RenameTest, ATypedIdInTheFormOrTheTableChangesNothing) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  const std::string before = text();
  ASSERT_TRUE(page().form().focusField("id"));
  actions.typeOver("28,5");
  actions.key(Qt::Key_Return);
  EXPECT_EQ(text(), before);
  ASSERT_TRUE(page().table().focusCell(2, "id"));
  actions.type("X");
  actions.key(Qt::Key_Return);
  EXPECT_EQ(text(), before);
}

TEST_F(RenameTest, ItListsWhatRefersToASeamAndRenamesItInOneStep) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  ASSERT_FALSE(window->document().edit("order", {}, [&](Plan& changed) {
    changed.weldments[0].seams[seam("S04")].after = {"S03"};
    changed.cell->zones.resize(1);
    changed.cell->zones[0].id = "Z9";
    changed.cell->zones[0].seams = {"BD/S03", "BD/S04"};
    changed.accepted.push_back({"fillet.leg.undersize", "BD/S03", "w. e.", "2026-11-25", "tried", {}});
  }));
  window->document().undo().clear();
  const std::string before = text();
  ASSERT_TRUE(page().table().focusCell(static_cast<int>(seam("S03")), "id"));
  actions.key(Qt::Key_F2);
  RenameDialog* asks = dialog();
  ASSERT_NE(asks, nullptr);
  QStringList lines;
  for (int row = 0; row < asks->references().count(); ++row) lines << asks->references().item(row)->text();
  EXPECT_TRUE(lines.contains("BD/S04: After")) << lines.join('\n').toStdString();
  EXPECT_TRUE(lines.contains("Z9: Seams")) << lines.join('\n').toStdString();
  EXPECT_TRUE(lines.contains("fillet.leg.undersize: Where")) << lines.join('\n').toStdString();
  enter(asks, "S03A");
  settle();
  EXPECT_NE(find_by_id(plan().weldments[0].seams, "S03A"), nullptr);
  EXPECT_EQ(plan().weldments[0].seams[seam("S04")].after, std::vector<std::string>{"S03A"});
  EXPECT_EQ(plan().cell->zones[0].seams, (std::vector<std::string>{"BD/S03A", "BD/S04"}));
  EXPECT_EQ(plan().accepted.back().where, "BD/S03A");
  EXPECT_EQ(window->document().undo().count(), 1);
  bring_to_front(*window);
  actions.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(text(), before);
}

TEST_F(RenameTest, AnIdThatIsTakenIsRefusedAndEscapeLeavesThePlan) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  const std::string before = text();
  ASSERT_TRUE(page().form().focusField("id"));
  actions.key(Qt::Key_F2);
  RenameDialog* asks = dialog();
  enter(asks, QString::fromStdString(plan().weldments[0].seams[5].id));
  EXPECT_TRUE(asks->isVisible());
  EXPECT_EQ(text(), before);
  QTest::keyClick(asks, Qt::Key_Escape);
  EXPECT_EQ(text(), before);
  EXPECT_EQ(window->document().undo().count(), 0);
}

TEST_F(RenameTest, AWeldmentsPlacesFollowIt) {
  Plan changed = plan();
  ASSERT_FALSE(changed.cell->zones.empty());
  changed.cell->zones[0].seams = {"BD/S03"};
  rename_item(changed, "/weldments/0", "BD2");
  EXPECT_EQ(changed.weldments[0].id, "BD2");
  EXPECT_EQ(changed.cell->zones[0].seams, std::vector<std::string>{"BD2/S03"});
  EXPECT_NO_THROW(check_plan(changed, "changed"));
}

TEST_F(RenameTest, WhatAnotherKindOfThingIsCalledDoesNotFollow) {
  Plan changed = plan();
  const std::string robot = changed.cell->robots[0].id;
  const auto references = references_to(changed, "/cell/robots/0");
  ASSERT_FALSE(references.empty());
  changed.title = robot;
  changed.weldments[0].drawing = robot;
  rename_item(changed, "/cell/robots/0", "ROB");
  EXPECT_EQ(changed.title, robot);
  EXPECT_EQ(changed.weldments[0].drawing, robot);
  EXPECT_EQ(references_to(changed, "/cell/robots/0"), references);
  EXPECT_NO_THROW(check_plan(changed, "changed"));
}

TEST_F(RenameTest, TheRevisionsOfASchedulesFamilyFollowItsFirst) {
  make_drafts(window->document());
  Plan changed = plan();
  changed.schedules.push_back(changed.schedules[1]);
  changed.schedules.back().id = "F5S-r4";
  changed.schedules.back().revision_of = "F5S";
  rename_item(changed, "/schedules/1", "F5");
  EXPECT_EQ(changed.schedules.back().revision_of, "F5");
  EXPECT_NO_THROW(check_plan(changed, "changed"));
}

}  // namespace
}  // namespace seamtakt::desk
