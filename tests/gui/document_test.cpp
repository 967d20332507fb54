#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <csignal>

#include "base/error.hpp"
#include "document/document.hpp"
#include "document/new_item.hpp"
#include "document/plan_address.hpp"
#include "document/recovery.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {
namespace {

class DocumentTest : public ::testing::Test {
 protected:
  void SetUp() override {
    ASSERT_TRUE(folder.isValid());
    path = folder.filePath("demo.weldplan.json");
    ASSERT_TRUE(QFile::copy(demo_path(), path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    document.open(path);
    make_drafts(document);
    document.save();
  }
  std::string text() const { return write_plan(*document.plan()); }
  QTemporaryDir folder;
  QString path;
  Document document;
};

TEST_F(DocumentTest, TypingInOneFieldUndoesAsOneStep) {
  const std::string before = text();
  for (const char* typed : {"1", "12", "12.5"})
    EXPECT_FALSE(document.setField("/schedules/0", "travel_speed_mm_s", typed));
  EXPECT_EQ(document.plan()->schedules[0].travel_speed_mm_s, 12.5);
  EXPECT_EQ(document.undo().count(), 1);
  document.endTyping();
  EXPECT_FALSE(document.setField("/schedules/0", "travel_speed_mm_s", "11"));
  EXPECT_EQ(document.undo().count(), 2);
  document.undo().undo();
  EXPECT_EQ(document.plan()->schedules[0].travel_speed_mm_s, 12.5);
  document.undo().undo();
  EXPECT_EQ(text(), before);
}

TEST_F(DocumentTest, RefusesWhatNoPlanMayHoldAndKeepsThePlan) {
  const std::string before = text();
  for (const auto& [key, typed] :
       {std::pair("travel_speed_mm_s", "-3"), std::pair("travel_speed_mm_s", "fast"),
        std::pair("wire", "NOPE"), std::pair("process", "999")}) {
    const auto refusal = document.setField("/schedules/0", key, typed);
    ASSERT_TRUE(refusal) << key;
    EXPECT_TRUE(refusal->text.contains("expected")) << refusal->text.toStdString();
  }
  EXPECT_EQ(text(), before);
  EXPECT_EQ(document.undo().count(), 0);
}

TEST_F(DocumentTest, RenamingAScheduleTakesItsSeamsAlong) {
  const std::string before = text();
  ASSERT_EQ(document.plan()->schedules[1].id, "F5S");
  EXPECT_FALSE(document.setField("/schedules/1", "id", "F5X"));
  EXPECT_EQ(text().find("\"F5S\""), std::string::npos);
  document.undo().undo();
  EXPECT_EQ(text(), before);
}

TEST_F(DocumentTest, SavesWholeKeepsTheFileBeforeAndReopensTheSame) {
  document.setField("/schedules/0", "travel_speed_mm_s", "12.25");
  EXPECT_TRUE(document.isModified());
  document.save();
  EXPECT_FALSE(document.isModified());
  EXPECT_TRUE(QFile::exists(path + "~"));
  Document again;
  again.open(path);
  EXPECT_EQ(write_plan(*again.plan()), text());
  EXPECT_EQ(load_plan((path + "~").toStdString()).schedules[0].travel_speed_mm_s, 13);
}

TEST_F(DocumentTest, NoticesAFileThatSomeoneElseChangedAndAsksBeforeItIsOverwritten) {
  QSignalSpy noticed(&document, &Document::changedOnDisk);
  QFile other(path);
  ASSERT_TRUE(other.open(QIODevice::Append));
  other.write("\n");
  other.close();
  EXPECT_TRUE(noticed.wait(3000));
  EXPECT_TRUE(document.isChangedOnDisk());
  document.setField("/schedules/0", "travel_speed_mm_s", "12");
  EXPECT_THROW(document.save(), InputError);
  document.save(true);
  EXPECT_EQ(load_plan(path.toStdString()).schedules[0].travel_speed_mm_s, 12);
}

TEST_F(DocumentTest, ItsOwnSaveIsNoChangeOnDisk) {
  QSignalSpy noticed(&document, &Document::changedOnDisk);
  document.setField("/schedules/0", "travel_speed_mm_s", "12");
  document.save();
  EXPECT_FALSE(noticed.wait(300));
}

TEST_F(DocumentTest, AFileThatCannotBeReadLeavesThePlanOnTheDesk) {
  const std::string before = text();
  QFile bad(folder.filePath("bad.weldplan.json"));
  ASSERT_TRUE(bad.open(QIODevice::WriteOnly));
  bad.write("{ \"format\": \"weldplan\", \"version\": 1, \"shedules\": [] }");
  bad.close();
  EXPECT_THROW(document.open(bad.fileName()), InputError);
  EXPECT_EQ(text(), before);
}

TEST_F(DocumentTest, EditsSurviveAKillAndAreOfferedOnce) {
  QTemporaryDir kept;
  QProcess victim;
  victim.start(QCoreApplication::applicationFilePath(), {"--victim", kept.path(), path});
  ASSERT_TRUE(victim.waitForStarted());
  ASSERT_TRUE(victim.waitForReadyRead(15000));
  ASSERT_EQ(::kill(static_cast<pid_t>(victim.processId()), SIGKILL), 0);
  ASSERT_TRUE(victim.waitForFinished());
  Document next;
  Recovery recovery(next, kept.path());
  const auto found = recovery.leftovers();
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].origin, path);
  recovery.recover(found[0]);
  EXPECT_EQ(next.plan()->title, "changed before the kill");
  EXPECT_TRUE(next.isModified());
  EXPECT_TRUE(recovery.leftovers().empty());
  next.save();
  EXPECT_EQ(load_plan(path.toStdString()).title, "changed before the kill");
}

TEST_F(DocumentTest, ARunningDeskIsNoLeftover) {
  QTemporaryDir kept;
  Recovery running(document, kept.path());
  document.setField("/schedules/0", "travel_speed_mm_s", "12");
  running.keep();
  Document other;
  Recovery second(other, kept.path());
  EXPECT_TRUE(second.leftovers().empty());
}

TEST(PlanAddress, ReachesEveryNestedObjectAndNoOther) {
  Plan plan = load_plan(demo_path().toStdString());
  for (const char* pointer :
       {"", "/schedules/0", "/schedules/0/limits", "/schedules/2/weave", "/weldments/0/seams/0", "/cell",
        "/cell/robots/1", "/cell/robots/0/loaded", "/line/stages/0"})
    EXPECT_TRUE(object_at(plan, pointer)) << pointer;
  for (const char* pointer :
       {"/schedules/999", "/schedules/x", "/nothing", "/weldments/0/seams/0/none", "/schedules/0/limits/0"})
    EXPECT_FALSE(object_at(plan, pointer)) << pointer;
}

TEST(NewItem, CountsOn) {
  EXPECT_EQ(id_after("S09"), "S10");
  EXPECT_EQ(id_after("W99"), "W100");
  EXPECT_EQ(id_after("frame"), "frame-2");
  EXPECT_EQ(id_after("7"), "8");
}

TEST(StartingPlan, HoldsAndTakesASeamAtOnce) {
  Plan plan = starting_plan();
  check_plan(plan, "new plan");
  plan.weldments[0].seams.push_back(new_seam(plan, plan.weldments[0]));
  check_plan(plan, "new plan");
  EXPECT_EQ(write_plan(parse_plan(write_plan(plan), "again")), write_plan(plan));
}

}  // namespace
}  // namespace seamtakt::desk
