// One pass is moved, a search ends by itself, and what is gained keeps its sign.
#include <QSignalSpy>
#include <QSpinBox>

#include "document/pass_step.hpp"
#include "models/tables/cycle_rows.hpp"
#include "pages/cell_page.hpp"
#include "pages/findings_page.hpp"
#include "pages/order_bar.hpp"
#include "plots/timeline_view.hpp"
#include "user_actions.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

CycleResult ordered(std::initializer_list<std::pair<const char*, const char*>> steps) {
  CycleResult cycle;
  for (const auto& [seam, robot] : steps) {
    OrderStep step;
    step.seam = seam;
    step.robot = robot;
    cycle.order.push_back(step);
  }
  return cycle;
}

std::string order_of(const std::optional<MovedPass>& moved) {
  if (!moved) return "none";
  std::string text;
  for (const OrderStep& step : moved->order) text += (text.empty() ? "" : " ") + step.seam;
  return text;
}

TEST(PassOrder, OnePassGoesPastWhatTheRobotWeldsNext) {
  const CycleResult cycle =
      ordered({{"A", "R1"}, {"A", "R1"}, {"X", "R2"}, {"B", "R1"}, {"B", "R1"}, {"C", "R1"}});
  const auto later = moved_pass(cycle, "A", 1, true);
  EXPECT_EQ(order_of(later), "A X B B A C") << "the last of the passes in a row, past the whole of B";
  EXPECT_EQ(later->pass, 2);
  const auto earlier = moved_pass(cycle, "B", 2, false);
  EXPECT_EQ(order_of(earlier), "B A A X B C");
  EXPECT_EQ(earlier->pass, 1);
  EXPECT_EQ(order_of(moved_pass(cycle, "C", 1, true)), "none") << "nothing is welded after it";
  EXPECT_EQ(order_of(moved_pass(cycle, "A", 1, false)), "none");
  EXPECT_EQ(order_of(moved_pass(cycle, "X", 1, true)), "none") << "R2 welds nothing else";
  EXPECT_EQ(order_of(moved_pass(cycle, "D", 1, true)), "none");
}

TEST(PassOrder, MovingThereAndBackIsTheOrderAsItWas) {
  const CycleResult cycle = ordered({{"A", "R1"}, {"B", "R1"}, {"B", "R1"}, {"C", "R2"}, {"D", "R1"}});
  const auto there = moved_pass(cycle, "A", 1, true);
  ASSERT_TRUE(there);
  CycleResult then;
  then.order = there->order;
  EXPECT_EQ(order_of(moved_pass(then, "A", there->pass, false)), "A B B C D");
}

class PassOrderAtTheDesk : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    actions = std::make_unique<UserActions>(*window);
    actions->page(DeskPage::cell);
  }
  CellPage& page() { return page_of<CellPage>(*window, DeskPage::cell); }
  OrderBar& bar() { return page().order(); }
  const CycleResult& cycle() { return window->evaluator().results()->cycles[0]; }
  std::unique_ptr<UserActions> actions;
};

TEST_F(PassOrderAtTheDesk, LaterMovesOnePassOfASeamWithThree) {
  const auto passes_of = [&](const CycleResult& of) {
    // Places among what its robot welds: another robot's steps may lie between.
    const auto robot = std::ranges::find(of.order, "S09", &OrderStep::seam)->robot;
    std::vector<std::size_t> at;
    std::size_t place = 0;
    for (const OrderStep& step : of.order) {
      if (step.robot != robot) continue;
      if (step.seam == "S09") at.push_back(place);
      ++place;
    }
    return at;
  };
  ASSERT_EQ(passes_of(cycle()).size(), 3u);
  window->selection().setSeam(*find_seam(*window->document().plan(), "BD", "S09"));
  page().timeline().setFocus();
  actions->key(Qt::Key_Right, Qt::AltModifier);
  settle();
  const auto after = passes_of(cycle());
  ASSERT_EQ(after.size(), 3u);
  EXPECT_EQ(after[1], after[0] + 1) << "two passes stay together";
  EXPECT_GT(after[2], after[1] + 1) << "the third one is later";
  EXPECT_EQ(bar().pass(), 3);
  actions->key(Qt::Key_Z, Qt::ControlModifier);
  settle();
  EXPECT_TRUE(window->document().plan()->weldments[0].order.empty());
}

TEST_F(PassOrderAtTheDesk, ASearchEndsByItselfAfterItsTime) {
  bar().seconds().setValue(1);
  QSignalSpy found(&bar().job(), &BestJob::found);
  actions->key(Qt::Key_B, Qt::ControlModifier);
  ASSERT_TRUE(bar().job().isRunning());
  EXPECT_FALSE(bar().seconds().isVisible());
  EXPECT_TRUE(QTest::qWaitFor([&] { return found.count() == 1; }, 20000)) << "nobody stopped it";
  EXPECT_TRUE(bar().comparison());
  bar().seconds().setValue(60);
}

TEST_F(PassOrderAtTheDesk, WhatIsGainedKeepsItsSignWhenTheOrderIsTakenOver) {
  bar().seconds().setValue(1);
  QSignalSpy found(&bar().job(), &BestJob::found);
  actions->key(Qt::Key_B, Qt::ControlModifier);
  ASSERT_TRUE(QTest::qWaitFor([&] { return found.count() == 1; }, 20000));
  const GridModel& losses = page().losses().grid();
  const int change = losses.columnNamed("change");
  const double before = losses.index(0, change).data(SortRole).toDouble();
  ASSERT_LT(before, 0) << "the cycle found is shorter";
  actions->key(Qt::Key_T, Qt::ControlModifier);
  settle();
  EXPECT_NEAR(losses.index(0, change).data(SortRole).toDouble(), before, 1e-6);
  bar().seconds().setValue(60);
}

TEST_F(PassOrderAtTheDesk, EnterOnATaktFindingOpensTheCellOnItsWeldment) {
  window->showPage(DeskPage::findings);
  const auto& findings = window->evaluator().results()->findings;
  const auto missed = std::find_if(findings.begin(), findings.end(),
                                   [](const Finding& each) { return each.rule == "cycle.takt.missed"; });
  ASSERT_NE(missed, findings.end());
  GridView& table = page_of<FindingsPage>(*window, DeskPage::findings).table();
  table.selectRow(static_cast<int>(missed - findings.begin()));
  table.setFocus();
  actions->key(Qt::Key_Return);
  EXPECT_EQ(window->currentPage(), DeskPage::cell);
  const auto& weldments = window->document().plan()->weldments;
  EXPECT_EQ(weldments[window->selection().seam().weldment].id, missed->where);
}

}  // namespace
}  // namespace seamtakt::desk
