#include <QComboBox>
#include <QTemporaryDir>

#include "base/files/atomic_save.hpp"
#include "document/plan_address.hpp"
#include "pages/schedules_page.hpp"
#include "plan/approval.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"

/// Who approves a schedule at the desk approves what it holds: a change by another way is found.
namespace seamtakt::desk {
namespace {

class ApprovingTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    make_drafts(window->document());
    ASSERT_FALSE(window->document().edit("blank", {}, [](Plan& changed) {
      changed.schedules[1].approved_by.clear();
      changed.schedules[1].effective_from.clear();
    }));
    actions = std::make_unique<UserActions>(*window);
    actions->page(DeskPage::schedules);
    window->selection().setSchedule(1);
    QApplication::processEvents();
  }
  const Plan& plan() const { return *window->document().plan(); }
  const Schedule& schedule() const { return plan().schedules[1]; }
  FieldForm& form() { return page_of<SchedulesPage>(*window, DeskPage::schedules).form(); }
  void chooseStatus(Qt::Key key) {
    form().editorOf("status")->setFocus();
    actions->key(key);
  }
  void enter(const char* key, const QString& typed) {
    ASSERT_TRUE(form().focusField(key));
    actions->typeOver(typed);
    actions->key(Qt::Key_Tab);
  }
  bool is_found() {
    settle();
    for (const Finding& finding : window->evaluator().results()->findings)
      if (finding.rule == "plan.approved.changed" && finding.where == schedule().id) return true;
    return false;
  }
  std::unique_ptr<UserActions> actions;
};

TEST_F(ApprovingTest, StatesTheDigestOfWhatIsApprovedAndFollowsWhoAndWhen) {
  EXPECT_TRUE(schedule().approved_sha256.empty());
  chooseStatus(Qt::Key_End);
  ASSERT_EQ(schedule().status, "approved");
  EXPECT_EQ(schedule().approved_sha256, approval_sha256(plan(), schedule()));
  const std::string first = schedule().approved_sha256;
  enter("approved_by", "w. engineer");
  enter("effective_from", "2026-12-01");
  EXPECT_EQ(schedule().effective_from, "2026-12-01");
  EXPECT_NE(schedule().approved_sha256, first);
  EXPECT_EQ(schedule().approved_sha256, approval_sha256(plan(), schedule()));
  EXPECT_FALSE(is_found());
  EXPECT_EQ(question(100), nullptr);
}

TEST_F(ApprovingTest, AChangeFromOutsideIsFoundAndNothingAtTheDeskCoversItUp) {
  chooseStatus(Qt::Key_End);
  QTemporaryDir folder;
  const QString path = folder.filePath("plan.weldplan.json");
  Plan outside = plan();
  outside.schedules[1].travel_speed_mm_s += 0.5;
  save_atomically(path.toStdString(), write_plan(outside));
  window->document().undo().setClean();
  window->document().open(path);
  window->selection().setSchedule(1);
  EXPECT_TRUE(is_found());
  enter("approved_by", "w. engineer");
  EXPECT_EQ(schedule().approved_by, "w. engineer");
  EXPECT_TRUE(is_found());
}

TEST_F(ApprovingTest, AWithdrawnApprovalStatesNone) {
  chooseStatus(Qt::Key_End);
  ASSERT_FALSE(schedule().approved_sha256.empty());
  ASSERT_FALSE(window->document().setField(schedule_address(1), "status", "draft", WhenLocked::withdraw));
  EXPECT_TRUE(schedule().approved_sha256.empty());
}

TEST_F(ApprovingTest, ThePriceOfTheWireIsNoChange) {
  chooseStatus(Qt::Key_End);
  const std::string held = schedule().approved_sha256;
  ASSERT_FALSE(window->document().edit("price", {}, [](Plan& changed) {
    for (Wire& wire : changed.wires) wire.price_per_kg += 1;
  }));
  EXPECT_EQ(schedule().approved_sha256, held);
  EXPECT_FALSE(is_found());
}

}  // namespace
}  // namespace seamtakt::desk
