#include <QClipboard>
#include <QComboBox>
#include <QPushButton>
#include <QTemporaryDir>

#include "document/plan_address.hpp"
#include "pages/cell_page.hpp"
#include "pages/order_bar.hpp"
#include "pages/records_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/trace_view.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/grid_view.hpp"

/// Tasks of every week, done with keys and clicks as a person would; the number of actions is printed.
namespace seamtakt::desk {
namespace {

class TaskTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    path = folder.filePath("work.weldplan.json");
    ASSERT_TRUE(QFile::copy(demo_path(), path));
    QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
    window->document().open(path);
    settle();
  }
  SeamsPage& seams() { return dynamic_cast<SeamsPage&>(window->page(DeskPage::seams)); }
  SchedulesPage& schedules() { return dynamic_cast<SchedulesPage&>(window->page(DeskPage::schedules)); }
  /// Tab until the field has the focus: as a person does who knows the form.
  void tab_to(UserActions& actions, FieldForm& form, const char* field) {
    for (int i = 0; i < 60 && QApplication::focusWidget() != form.editorOf(field); ++i)
      actions.key(Qt::Key_Tab);
    ASSERT_EQ(QApplication::focusWidget(), form.editorOf(field)) << field;
  }
  std::vector<std::string> fails(const std::string& where) const {
    std::vector<std::string> rules;
    for (const Finding& finding : window->evaluator().results()->findings)
      if (finding.severity == Severity::fail && finding.where.rfind(where, 0) == 0)
        rules.push_back(finding.rule);
    return rules;
  }
  QTemporaryDir folder;
  QString path;
};

TEST_F(TaskTest, WeldEngineerAddsATeeSeamWithAScheduleAndSaves) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  const std::size_t before = window->document().plan()->weldments[0].seams.size();
  actions.key(Qt::Key_Insert, Qt::AltModifier);
  ASSERT_EQ(window->document().plan()->weldments[0].seams.size(), before + 1);
  FieldForm& form = seams().form();
  actions.typeOver("S90");
  tab_to(actions, form, "thickness_mm");
  actions.typeOver("8, 12");
  tab_to(actions, form, "leg_mm");
  actions.typeOver("6");
  tab_to(actions, form, "schedules");
  actions.typeOver("F6S");
  actions.key(Qt::Key_Tab);
  settle();
  const Seam& seam = window->document().plan()->weldments[0].seams.back();
  EXPECT_EQ(seam.id, "S90");
  EXPECT_EQ(seam.joint, "tee");
  EXPECT_EQ(seam.leg_mm, 6);
  EXPECT_EQ(seam.schedules, std::vector<std::string>{"F6S"});
  EXPECT_EQ(fails("BD/S90"), std::vector<std::string>{});
  actions.key(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(load_plan(path.toStdString()).weldments[0].seams.back().id, "S90");
  actions.report("a tee seam added and saved");
  EXPECT_LE(actions.keys, 60);
}

TEST_F(TaskTest, WeldEngineerFindsALegalTravelSpeedForAnUndersizedLeg) {
  // The seam that is undersized: F6S, made so fast that its legs are too small.
  make_drafts(window->document());
  const auto at = *find_schedule(*window->document().plan(), "F6S");
  window->document().setField(schedule_address(at), "travel_speed_mm_s", "11");
  settle();
  ASSERT_FALSE(window->evaluator().results()->findings.empty());
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  window->selection().setSchedule(at);
  ASSERT_TRUE(schedules().form().focusField("travel_speed_mm_s"));
  const auto undersized = [&] {
    for (const Finding& finding : window->evaluator().results()->findings)
      if (finding.rule == "fillet.leg.undersize")
        for (const PassEvaluation& pass : window->evaluator().results()->evaluation.passes)
          if (pass.schedule == "F6S" && finding.where.rfind(pass.weldment + "/" + pass.seam, 0) == 0)
            return true;
    return false;
  };
  ASSERT_TRUE(undersized());
  for (int i = 0; i < 60 && undersized(); ++i) {
    actions.key(Qt::Key_Down);
    settle();
  }
  EXPECT_FALSE(undersized());
  const Schedule& found = window->document().plan()->schedules[at];
  ASSERT_TRUE(found.limits && found.limits->travel_speed_mm_s);
  const Interval& legal = *found.limits->travel_speed_mm_s;
  ASSERT_TRUE(legal.lower && legal.upper);
  EXPECT_GE(found.travel_speed_mm_s, *legal.lower);
  EXPECT_LE(found.travel_speed_mm_s, *legal.upper);
  // The other seams on the schedule are listed beside it with their state.
  int uses = 0;
  for (const PassEvaluation& pass : window->evaluator().results()->evaluation.passes)
    uses += pass.schedule == "F6S";
  bool listed = false;
  for (GridView* table : schedules().findChildren<GridView*>())
    listed = listed ||
             (table->accessibleName() == "Passes welded by the schedule" && table->grid().rowCount() == uses);
  EXPECT_TRUE(listed);
  actions.report("a legal travel speed found");
  EXPECT_LE(actions.keys, 30);
}

TEST_F(TaskTest, WeldEngineerJudgesSixSeamsAtALargerGapAndMovesTheFailingOnes) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  GridView& table = seams().table();
  ASSERT_TRUE(table.focusCell(0, "gap_mm"));
  // One column of a spreadsheet, pasted: six gaps at once.
  QApplication::clipboard()->setText("1.5\n1.5\n1.5\n1.5\n1.5\n1.5");
  actions.key(Qt::Key_V, Qt::ControlModifier);
  settle();
  for (int i = 0; i < 6; ++i)
    EXPECT_EQ(window->document().plan()->weldments[0].seams[static_cast<std::size_t>(i)].gap_mm, 1.5);
  std::vector<int> failing;
  for (int i = 0; i < 6; ++i)
    if (has_fail("BD/" + window->document().plan()->weldments[0].seams[static_cast<std::size_t>(i)].id +
                 "/") ||
        has_fail("BD/" + window->document().plan()->weldments[0].seams[static_cast<std::size_t>(i)].id))
      failing.push_back(i);
  ASSERT_FALSE(failing.empty());
  for (const int row : failing) {
    ASSERT_TRUE(table.focusCell(row, "schedules"));
    actions.type("F6S");
    actions.key(Qt::Key_Return);
    EXPECT_TRUE(QTest::qWaitFor([&] {
      return window->document().plan()->weldments[0].seams[static_cast<std::size_t>(row)].schedules ==
             std::vector<std::string>{"F6S"};
    })) << row;
  }
  actions.report("six seams at 1.5 mm gap");
  EXPECT_LE(actions.keys + actions.clicks, 26);
}

TEST_F(TaskTest, WeldEngineerDraftsTheNextRevisionAndKeepsTheOneThatHolds) {
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  const Schedule held = window->document().plan()->schedules[0];
  ASSERT_EQ(held.status, "approved");
  schedules().table().setFocus();
  schedules().table().selectRow(0);
  actions.key(Qt::Key_D, Qt::ControlModifier);
  const Schedule& draft = window->document().plan()->schedules.back();
  EXPECT_EQ(draft.revision, held.revision + 1);
  EXPECT_EQ(draft.status, "draft");
  EXPECT_TRUE(draft.approved_by.empty());
  actions.typeOver("9");
  settle();
  EXPECT_EQ(window->document().plan()->schedules[0].wire_feed_speed_m_min, held.wire_feed_speed_m_min);
  const QAbstractItemModel& difference = schedules().difference().proxy();
  bool shown = false;
  for (int row = 0; row < difference.rowCount(); ++row)
    shown = shown || (difference.index(row, 0).data().toString().startsWith("Wire feed speed") &&
                      difference.index(row, 1).data().toString() == "9" &&
                      difference.index(row, 2).data().toString() == "8.6");
  EXPECT_TRUE(shown);
  actions.key(Qt::Key_S, Qt::ControlModifier);
  EXPECT_FALSE(window->document().isModified());
  actions.report("the next revision as a draft");
  EXPECT_LE(actions.keys, 8);
}

TEST_F(TaskTest, CellProgrammerNamesTheThreeLargestLosses) {
  UserActions actions(*window);
  actions.page(DeskPage::cell);
  GridView& losses = dynamic_cast<CellPage&>(window->page(DeskPage::cell)).losses();
  double last = 1e12;
  for (int row = 0; row < 4; ++row) {
    const double seconds = losses.proxy().index(row, 1).data(Qt::UserRole + 1).toDouble();
    EXPECT_LE(seconds, last);
    last = seconds;
  }
  actions.report("the largest losses of a cycle");
  EXPECT_LE(actions.keys + actions.clicks, 2);
}

TEST_F(TaskTest, CellProgrammerTakesTheBestOrderOfTheWeldmentThatMissesTakt) {
  UserActions actions(*window);
  actions.page(DeskPage::cell);
  auto& page = dynamic_cast<CellPage&>(window->page(DeskPage::cell));
  for (QComboBox* choice : page.findChildren<QComboBox*>())
    if (choice->accessibleName() == "Weldment") choice->setFocus();
  actions.key(Qt::Key_Down);
  ASSERT_EQ(window->selection().seam().weldment, 1u);
  ASSERT_LT(window->evaluator().results()->cycles[1].takt_margin_s.value_or(0), 0);
  const double takt_s = *window->evaluator().results()->cycles[1].takt_s;
  double best_s = 1e9;
  QObject::connect(&page.order().job(), &BestJob::progress,
                   [&](const SearchState& state) { best_s = state.best_s; });
  actions.key(Qt::Key_B, Qt::ControlModifier);
  ASSERT_TRUE(QTest::qWaitFor([&] { return best_s < takt_s; }, 30000));
  actions.key(Qt::Key_B, Qt::ControlModifier);
  page.order().job().wait();
  actions.key(Qt::Key_T, Qt::ControlModifier);
  settle();
  EXPECT_GE(window->evaluator().results()->cycles[1].takt_margin_s.value_or(-1), 0);
  actions.key(Qt::Key_S, Qt::ControlModifier);
  EXPECT_FALSE(load_plan(path.toStdString()).weldments[1].order.empty());
  actions.report("the best order taken, takt kept, saved");
  EXPECT_LE(actions.keys, 6);
}

TEST_F(TaskTest, AuditorReadsALogAndSeesOneVerdictAPassAndTheTraceOfAFailedOne) {
  UserActions actions(*window);
  actions.page(DeskPage::records);
  auto& records = dynamic_cast<RecordsPage&>(window->page(DeskPage::records));
  for (QPushButton* button : records.findChildren<QPushButton*>())
    if (button->accessibleName() == "Demo log") actions.click(button);
  records.job().wait();
  ASSERT_TRUE(records.logs());
  const AuditResult& audit = records.logs()->audit;
  EXPECT_TRUE(audit.rows.add_up());
  for (const PassRecord& record : audit.passes) EXPECT_TRUE(record.verdict) << record.place();
  // The failed pass: its unit, then its row.
  for (int unit = 0; unit < records.units().grid().rowCount(); ++unit) {
    records.units().setFocus();
    actions.key(Qt::Key_Down);
    for (int row = 0; row < records.passes().grid().rowCount(); ++row) {
      if (records.passes().grid().index(row, 0).data().toString() != "fail") continue;
      records.passes().selectRow(row);
      ++actions.clicks;
      EXPECT_GT(records.trace().to() - records.trace().from(), 1.0);
      actions.report("a log read, a failed pass's trace on the screen");
      EXPECT_LE(actions.keys + actions.clicks, 5);
      return;
    }
  }
  FAIL() << "the demo log has a failed pass";
}

}  // namespace
}  // namespace seamtakt::desk
