#include <QComboBox>
#include <QLabel>
#include <QMouseEvent>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "base/files/atomic_save.hpp"
#include "cell/timeline/plan_order.hpp"
#include "models/pictures/palette.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/tables/cycle_rows.hpp"
#include "pages/cell_page.hpp"
#include "pages/order_bar.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/timeline_view.hpp"
#include "user_actions.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

class CellPageTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    actions = std::make_unique<UserActions>(*window);
    actions->page(DeskPage::cell);
  }
  CellPage& page() { return page_of<CellPage>(*window, DeskPage::cell); }
  OrderBar& bar() { return page().order(); }
  const CycleResult& cycle() { return window->evaluator().results()->cycles[0]; }
  const std::vector<OrderStep>& order() { return window->document().plan()->weldments[0].order; }
  QString now() {
    const SeamPlace at = window->selection().seam();
    return QString::fromStdString(window->document().plan()->weldments[at.weldment].seams[at.seam].id);
  }
  void choose(const std::string& seam) {
    window->selection().setSeam(*find_seam(*window->document().plan(), "BD", seam));
  }
  /// Searches as long as a person looks, and stops.
  void searchABit() {
    actions->key(Qt::Key_B, Qt::ControlModifier);
    ASSERT_TRUE(bar().job().isRunning());
    QSignalSpy told(&bar().job(), &BestJob::progress);
    ASSERT_TRUE(QTest::qWaitFor([&] { return told.count() >= 3; }, 20000));
    actions->key(Qt::Key_B, Qt::ControlModifier);
    bar().job().wait();
    QApplication::processEvents();
  }
  int pixelsOf(const QColor& color) {
    const QImage picture = page().timeline().grab().toImage();
    int count = 0;
    for (int y = 0; y < picture.height(); ++y)
      for (int x = 0; x < picture.width(); ++x) count += picture.pixelColor(x, y) == color;
    return count;
  }
  int widestArc(const std::string& robot, const std::string& but = {}) {
    int widest = -1;
    for (int i = 0; i < static_cast<int>(cycle().moves.size()); ++i) {
      const Move& move = cycle().moves[static_cast<std::size_t>(i)];
      if (move.kind == MoveKind::arc && move.robot == robot && move.seam != but &&
          (widest < 0 || page().timeline().barOf(i).width() > page().timeline().barOf(widest).width()))
        widest = i;
    }
    return widest;
  }
  std::unique_ptr<UserActions> actions;
};

TEST_F(CellPageTest, TheTimelineZoomsAndAClickOnABarChoosesTheSeam) {
  TimelineView& line = page().timeline();
  const double all = line.to() - line.from();
  line.setFocus();
  actions->key(Qt::Key_Plus);
  EXPECT_LT(line.to() - line.from(), all);
  actions->key(Qt::Key_Home);
  EXPECT_NEAR(line.to() - line.from(), all, 1e-9);
  const CycleResult& cycle = this->cycle();
  for (std::size_t i = 0; i < cycle.moves.size(); ++i) {
    if (cycle.moves[i].kind != MoveKind::arc || line.barOf(static_cast<int>(i)).width() < 4 ||
        cycle.moves[i].seam == "S01")
      continue;
    actions->clickAt(&line, line.barOf(static_cast<int>(i)).center().toPoint());
    const SeamPlace at = window->selection().seam();
    EXPECT_EQ(window->document().plan()->weldments[at.weldment].seams[at.seam].id, cycle.moves[i].seam);
    return;
  }
  FAIL() << "no bar wide enough to click";
}

TEST_F(CellPageTest, WithoutARobotThereIsNoMarginWhereSeamsStayUnwelded) {
  EXPECT_TRUE(page().headline().text().contains("takt")) << page().headline().text().toStdString();
  EXPECT_EQ(page().headline().property("role").toString(), "");
  EXPECT_GT(pixelsOf(Palette::current().ok), 0) << "the takt is drawn as kept";
  QComboBox* out = nullptr;
  for (QComboBox* each : page().findChildren<QComboBox*>())
    if (each->accessibleName() == "Robot that is out") out = each;
  ASSERT_TRUE(out);
  out->setFocus();
  actions->key(Qt::Key_Down);
  ASSERT_TRUE(QTest::qWaitFor([&] { return !page().withoutText().isEmpty(); }, 5000));
  ASSERT_TRUE(QTest::qWaitFor([&] { return page().headline().text().contains("unwelded"); }, 5000))
      << page().headline().text().toStdString();
  photograph("cell-without-robot");
  const QString said = page().headline().text();
  EXPECT_FALSE(said.contains("under takt")) << said.toStdString();
  EXPECT_FALSE(said.contains("over takt")) << said.toStdString();
  EXPECT_TRUE(said.contains("14 of 24 robot seams unwelded: no margin")) << said.toStdString();
  EXPECT_TRUE(page().withoutText().startsWith("Without R1:")) << page().withoutText().toStdString();
  EXPECT_EQ(page().headline().property("role").toString(), "refusal");
  EXPECT_EQ(pixelsOf(Palette::current().ok), 0) << "the takt is drawn as kept";
  out->setFocus();
  actions->key(Qt::Key_Up);
  settle();
  EXPECT_TRUE(page().headline().text().contains("takt"));
  EXPECT_EQ(page().headline().property("role").toString(), "");
}

TEST_F(CellPageTest, TheChainSaysHowManySeamsAreUnwelded) {
  EXPECT_TRUE(window->chain().link(DeskPage::cell).figure().contains(":")) << "a time";
  // R2 has another wire than its seams want, and can't change it.
  window->document().edit("wire", {}, [](Plan& plan) {
    plan.wires.push_back(plan.wires.front());
    plan.wires.back().id = "X1";
    plan.cell->robots[1].wire_change_s.reset();
    plan.cell->robots[1].loaded->wire = "X1";
  });
  settle();
  const CycleResult& tractor = window->evaluator().results()->cycles[1];
  ASSERT_EQ(tractor.unwelded.size(), 29u);
  EXPECT_EQ(window->chain().link(DeskPage::cell).figure(), "29 unwelded");
  EXPECT_FALSE(tractor.takt_margin_s);
}

TEST_F(CellPageTest, TheBestOrderIsSearchedWatchedStoppedAndTakenOverAsOneStep) {
  const double given_s = cycle().cycle_time_s;
  searchABit();
  ASSERT_TRUE(bar().comparison());
  const double best_s = bar().comparison()->cycle.cycle_time_s;
  EXPECT_LT(best_s, given_s);
  EXPECT_TRUE(page().otherTimeline().isVisible());
  EXPECT_TRUE(order().empty()) << "nothing is taken over unasked";
  const int steps = window->document().undo().count();
  actions->key(Qt::Key_T, Qt::ControlModifier);
  settle();
  EXPECT_EQ(window->document().undo().count(), steps + 1);
  EXPECT_FALSE(order().empty());
  EXPECT_EQ(cycle().cycle_time_s, best_s) << "the plan's cycle is the one that was found";
  actions->key(Qt::Key_Z, Qt::ControlModifier);
  settle();
  EXPECT_EQ(cycle().cycle_time_s, given_s);
  actions->report("the best order taken");
}

TEST_F(CellPageTest, ASearchIsDroppedWhenAnotherPlanIsOpened) {
  actions->key(Qt::Key_B, Qt::ControlModifier);
  ASSERT_TRUE(bar().job().isRunning());
  window->document().open(demo_path());
  EXPECT_FALSE(bar().job().isRunning());
  settle();
  EXPECT_FALSE(bar().comparison());
}

TEST_F(CellPageTest, AnOrderThatWasFoundForAnotherPlanIsNotTakenOver) {
  make_drafts(window->document());
  settle();
  searchABit();
  ASSERT_TRUE(bar().comparison());
  window->document().setField("/schedules/0", "travel_speed_mm_s", "12");
  settle();
  bar().take();
  EXPECT_TRUE(order().empty());
}

TEST_F(CellPageTest, TwoTimelinesShareTheirAxis) {
  searchABit();
  TimelineView &mine = page().timeline(), &other = page().otherTimeline();
  ASSERT_TRUE(other.isVisible());
  photograph("cell-compared");
  EXPECT_DOUBLE_EQ(mine.to(), other.to());
  mine.setFocus();
  actions->key(Qt::Key_Plus);
  EXPECT_DOUBLE_EQ(mine.from(), other.from());
  EXPECT_DOUBLE_EQ(mine.to(), other.to());
  other.setFocus();
  actions->key(Qt::Key_Right);
  EXPECT_DOUBLE_EQ(mine.from(), other.from());
  GridView& losses = page().losses();
  EXPECT_FALSE(losses.isColumnHidden(loss_other_column));
  bar().close();
  EXPECT_FALSE(other.isVisible());
  EXPECT_TRUE(losses.isColumnHidden(loss_other_column));
}

TEST_F(CellPageTest, ASeamIsCarriedToAnotherPlaceWithTheMouseAndUndoneInOneStep) {
  const double before_s = cycle().cycle_time_s;
  TimelineView& line = page().timeline();
  const auto visits = visits_of(cycle(), "R1");
  const int bar_at = widestArc("R1", visits.back().seam);
  const std::string seam = cycle().moves[static_cast<std::size_t>(bar_at)].seam;
  QSignalSpy carried(&line, &TimelineView::carried);
  const QPoint from = line.barOf(bar_at).center().toPoint();
  actions->drag(&line, from, {line.width() - 30, from.y()});
  EXPECT_GE(carried.count(), 1);
  ASSERT_FALSE(order().empty());
  EXPECT_EQ(order().back().seam, seam) << "dropped behind all others of its robot";
  settle();
  EXPECT_EQ(visits_of(cycle(), "R1").back().seam, seam);
  EXPECT_EQ(now().toStdString(), seam);
  actions->key(Qt::Key_Z, Qt::ControlModifier);
  settle();
  EXPECT_TRUE(order().empty());
  EXPECT_EQ(cycle().cycle_time_s, before_s);
}

TEST_F(CellPageTest, ASeamThatIsCarriedSaysWhatWouldFollowAndEscapeGivesItUp) {
  TimelineView& line = page().timeline();
  const int bar_at = widestArc("R1");
  const QString seam = QString::fromStdString(cycle().moves[static_cast<std::size_t>(bar_at)].seam);
  const QPoint from = line.barOf(bar_at).center().toPoint(), way = from + QPoint(160, 4);
  QTest::mousePress(&line, Qt::LeftButton, {}, from);
  QMouseEvent move(QEvent::MouseMove, QPointF(way), line.mapToGlobal(QPointF(way)), Qt::NoButton,
                   Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(&line, &move);
  photograph("cell-carried");
  const QString note = bar().preview(seam, {"R1", {}});
  EXPECT_TRUE(note.contains("last on R1; cycle")) << note.toStdString();
  EXPECT_TRUE(bar().preview(seam, {"R2", {}}).contains("refused")) << "R2 doesn't reach it";
  QTest::keyClick(&line, Qt::Key_Escape);
  QTest::mouseRelease(&line, Qt::LeftButton, {}, way);
  EXPECT_TRUE(order().empty());
}

TEST_F(CellPageTest, ASeamThatIsPutDownWhereItWasIsNoEdit) {
  TimelineView& line = page().timeline();
  const int bar_at = widestArc("R1");
  const QPoint from = line.barOf(bar_at).center().toPoint();
  const PlanPtr before = window->document().plan();
  actions->drag(&line, from, from + QPoint(2, 9));
  EXPECT_EQ(window->document().plan(), before);
  EXPECT_EQ(window->document().undo().count(), 0);
}

TEST_F(CellPageTest, ARobotThatDoesNotReachASeamRefusesIt) {
  TimelineView& line = page().timeline();
  const int bar_at = widestArc("R1");
  const std::string seam = cycle().moves[static_cast<std::size_t>(bar_at)].seam;
  const PlanPtr before = window->document().plan();
  ASSERT_EQ(find_by_id(before->weldments[0].seams, seam)->robots, std::vector<std::string>{"R1"});
  QSignalSpy said(&page(), &Page::message);
  const QPoint from = line.barOf(bar_at).center().toPoint();
  actions->drag(&line, from, {from.x(), static_cast<int>(line.rowOf("R2"))});
  EXPECT_EQ(window->document().plan(), before);
  ASSERT_EQ(said.count(), 1);
  EXPECT_TRUE(said[0][0].toString().contains("R1")) << said[0][0].toString().toStdString();
}

TEST_F(CellPageTest, ASeamGoesToAnotherRobotWithTheMouse) {
  window->document().edit("reach", {}, [](Plan& plan) {
    for (Seam& seam : plan.weldments[0].seams) seam.robots.clear();
  });
  settle();
  ASSERT_TRUE(visits_of(cycle(), "R2").empty()) << "all by the first robot";
  TimelineView& line = page().timeline();
  const int bar_at = widestArc("R1");
  const std::string seam = cycle().moves[static_cast<std::size_t>(bar_at)].seam;
  const QPoint from = line.barOf(bar_at).center().toPoint();
  actions->drag(&line, from, {from.x(), static_cast<int>(line.rowOf("R2"))});
  settle();
  ASSERT_FALSE(order().empty());
  for (const OrderStep& step : order()) EXPECT_EQ(step.robot, step.seam == seam ? "R2" : "R1");
  EXPECT_FALSE(cycle().findings.empty());
}

TEST_F(CellPageTest, ASeamIsMovedByKeysToo) {
  const auto visits = visits_of(cycle(), "R1");
  ASSERT_GT(visits.size(), 3u);
  choose(visits[2].seam);
  page().timeline().setFocus();
  actions->key(Qt::Key_Left, Qt::AltModifier);
  settle();
  EXPECT_EQ(visits_of(cycle(), "R1")[1].seam, visits[2].seam);
  EXPECT_EQ(visits_of(cycle(), "R1")[2].seam, visits[1].seam);
  actions->key(Qt::Key_Right, Qt::AltModifier);
  // Two keys before the evaluation of the first: none is lost.
  actions->key(Qt::Key_Right, Qt::AltModifier);
  settle();
  EXPECT_EQ(visits_of(cycle(), "R1")[3].seam, visits[2].seam);
  EXPECT_EQ(window->document().undo().count(), 3);
}

TEST_F(CellPageTest, TheOtherRobotTakesASeamByKey) {
  const std::string seam = visits_of(cycle(), "R2").front().seam;
  window->document().edit("reach", {}, [&](Plan& plan) {
    find_by_id(plan.weldments[0].seams, seam)->robots = {"R2", "R1"};
  });
  settle();
  choose(seam);
  page().timeline().setFocus();
  actions->key(Qt::Key_R, Qt::AltModifier);
  settle();
  EXPECT_EQ(robot_of(cycle(), seam), "R1");
}

TEST_F(CellPageTest, AnotherPlanIsComparedBarByBar) {
  QTemporaryDir folder;
  const std::string path = folder.filePath("faster.weldplan.json").toStdString();
  Plan plan = *window->document().plan();
  for (Schedule& schedule : plan.schedules) schedule.travel_speed_mm_s *= 1.2;
  save_atomically(path, write_plan(plan));
  bar().compareWith(QString::fromStdString(path));
  bar().otherPlan().wait();
  ASSERT_TRUE(bar().comparison());
  EXPECT_EQ(bar().comparison()->name, "faster.weldplan.json");
  EXPECT_LT(bar().comparison()->cycle.arc_on_s, cycle().arc_on_s);
  EXPECT_TRUE(page().otherTimeline().isVisible());
  window->selection().setSeam({1, 0});
  ASSERT_TRUE(bar().comparison());
  EXPECT_EQ(bar().comparison()->cycle.weldment, window->document().plan()->weldments[1].id);
  QSignalSpy said(&page(), &Page::message);
  bar().compareWith(folder.filePath("absent.weldplan.json"));
  EXPECT_EQ(said.count(), 1);
}

}  // namespace
}  // namespace seamtakt::desk
