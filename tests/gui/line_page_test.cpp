// The line's headline at the desk: the mean of the runs, and which draw the tables are of.
#include "pages/line_page.hpp"
#include <QAbstractItemModel>
#include <QLabel>
#include "plots/line_view.hpp"

#include "base/units/units.hpp"
#include "line/line_result.hpp"
#include "user_actions.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

class LinePageTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    actions = std::make_unique<UserActions>(*window);
    actions->page(DeskPage::line);
  }
  LinePage& page() { return page_of<LinePage>(*window, DeskPage::line); }
  QString asked() {
    actions->press(page(), "Demo orders");
    page().job().wait();
    QApplication::processEvents();
    return page().summary().text();
  }
  std::unique_ptr<UserActions> actions;
};

QString rounded(double value) {
  return QString::fromStdString(rounded_text(value, 3));
}

TEST_F(LinePageTest, LeadsWithTheMeanOfTheRunsAndNamesTheDrawOfItsTables) {
  const QString said = asked();
  ASSERT_TRUE(page().line());
  const LineResult& line = *page().line();
  photograph("line-mean");
  EXPECT_EQ(line.figures.runs, 200);
  EXPECT_TRUE(said.contains(rounded(line.figures.throughput_per_h) +
                            " units/h (mean of 200 runs, 8 of 10 from " +
                            rounded(*line.figures.throughput_p10_per_h) + " to " +
                            rounded(*line.figures.throughput_p90_per_h) + ")"))
      << said.toStdString();
  EXPECT_TRUE(said.contains(", " + rounded(line.figures.takt_misses) + " takt misses")) << said.toStdString();
  EXPECT_EQ(page().findChild<LineView*>()->drawText(),
            QString("one draw of 200, seed %1").arg(line.draw_seed));
  EXPECT_TRUE(page().summary().toolTip().contains(
      QString("one draw of 200, the one in the middle by throughput: seed %1.").arg(line.draw_seed)))
      << page().summary().toolTip().toStdString();
  EXPECT_LE(page().summary().fontMetrics().horizontalAdvance(said), page().summary().width()) << "cut";
  EXPECT_EQ(window->chain().link(DeskPage::line).figure(),
            rounded(line.figures.throughput_per_h) + " units/h");
  EXPECT_EQ(page().figureDetail(), rounded(line.figures.takt_misses) + " missed");
}

TEST_F(LinePageTest, SaysThatNothingIsLeftToChance) {
  window->document().edit("no chance", {}, [](Plan& plan) {
    for (Stage& stage : plan.line->stages) {
      stage.availability = 1;
      stage.yield_pct = 100;
    }
  });
  settle();
  const QString said = asked();
  EXPECT_TRUE(said.contains("(nothing is left to chance)")) << said.toStdString();
  EXPECT_FALSE(said.contains("mean of")) << said.toStdString();
  EXPECT_EQ(page().findChild<LineView*>()->drawText(), "");
}

TEST_F(LinePageTest, WithACalendarUnitsAreOnTheClockAndLateOnesAreMarked) {
  // The demo's first orders are due on Monday 2026-03-02; four hours a day finish few of them.
  window->document().edit("calendar", {}, [](Plan& plan) {
    plan.line->calendar = Calendar{};
    plan.line->calendar->start = "2026-03-02T05:30";
    plan.line->calendar->shifts.resize(1);
    Shift& shift = plan.line->calendar->shifts[0];
    shift.days = {"mon", "tue", "wed", "thu", "fri"};
    shift.from = "06:00";
    shift.to = "10:00";
  });
  settle();
  const QString said = asked();
  ASSERT_TRUE(page().line());
  const LineResult& line = *page().line();
  photograph("line-clock");
  EXPECT_GT(line.figures.late_orders, 0);
  EXPECT_TRUE(said.contains(", " + rounded(line.figures.late_orders) + " orders late, " +
                            rounded(line.figures.finished_first_day) + " done on 2026-03-02"))
      << said.toStdString();
  EXPECT_EQ(page().figureDetail(), rounded(line.figures.late_orders) + " orders late");
  EXPECT_TRUE(page().summary().toolTip().contains("Not finished on 2026-03-02: "));
  const QAbstractItemModel& units = *page().units().model();
  EXPECT_EQ(units.index(0, 4).data().toString(), "2026-03-02 06:00");
  bool overdue = false;
  for (int row = 0; row < units.rowCount(); ++row)
    overdue = overdue || units.index(row, 0).data().toString() == "overdue";
  EXPECT_TRUE(overdue);
}

TEST_F(LinePageTest, UnitsWithUnweldedSeamsAreNotRun) {
  window->document().edit("wire", {}, [](Plan& plan) {
    plan.wires.push_back(plan.wires.front());
    plan.wires.back().id = "X1";
    plan.cell->robots[1].wire_change_s.reset();
    plan.cell->robots[1].loaded->wire = "X1";
  });
  settle();
  const QString said = asked();
  photograph("line-not-run");
  EXPECT_TRUE(said.startsWith("24 of 24 units aren't run: seams of theirs are unwelded. No unit is run."))
      << said.toStdString();
  EXPECT_EQ(page().summary().property("role").toString(), "refusal");
  EXPECT_EQ(page().figureDetail(), "24 of 24 not run");
  EXPECT_EQ(page().worst(), Severity::fail);
  const QAbstractItemModel& units = *page().units().model();
  ASSERT_EQ(units.rowCount(), 24);
  EXPECT_EQ(units.index(0, 0).data().toString(), "not run");
}

}  // namespace
}  // namespace seamtakt::desk
