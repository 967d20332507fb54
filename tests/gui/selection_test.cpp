// One selection on all pages, and Explain follows it.
#include <QComboBox>
#include <QTemporaryDir>

#include "base/files/atomic_save.hpp"
#include "document/plan_address.hpp"
#include "models/tables/chain_figures.hpp"
#include "models/tables/seam_model.hpp"
#include "models/words/unit_view.hpp"
#include "pages/cell_page.hpp"
#include "pages/findings_page.hpp"
#include "pages/heat_page.hpp"
#include "pages/line_page.hpp"
#include "pages/records_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "pages/window_panel.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/seam_view.hpp"
#include "plots/timeline_view.hpp"
#include "plots/window_plot.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/field_form.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

class SelectionTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    actions = std::make_unique<UserActions>(*window);
  }
  SeamsPage& seams() { return page_of<SeamsPage>(*window, DeskPage::seams); }
  CellPage& cell() { return page_of<CellPage>(*window, DeskPage::cell); }
  SeamPlace at() { return window->selection().seam(); }
  std::string explained() { return window->explain().text().toStdString(); }
  bool is_empty() { return window->explain().text().startsWith("Choose a derived value"); }
  QComboBox* weldments(Page& page) {
    for (QComboBox* choice : page.findChildren<QComboBox*>())
      if (choice->accessibleName() == "Weldment") return choice;
    return nullptr;
  }
  void explainOpen() {
    actions->page(DeskPage::seams);
    actions->key(Qt::Key_F1);
    ASSERT_TRUE(window->explain().isVisible());
  }
  /// The row of the findings page with that rule; -1 where there is none.
  int findingRow(const char* rule) {
    const GridModel& grid = page_of<FindingsPage>(*window, DeskPage::findings).table().grid();
    for (int row = 0; row < grid.rowCount(); ++row)
      if (grid.index(row, grid.columnNamed("rule")).data() == rule) return row;
    return -1;
  }
  std::string weldmentOfTaktFinding() {
    for (const Finding& finding : window->evaluator().results()->findings)
      if (finding.rule == "cycle.takt.missed") return finding.where;
    return {};
  }
  std::string chosenWeldment() { return window->document().plan()->weldments[at().weldment].id; }
  /// Another plan than the demo: its second weldment alone, cut short.
  QString otherPlan() {
    Plan plan = load_plan(demo_path().toStdString());
    plan.weldments.erase(plan.weldments.begin());
    plan.weldments.resize(1);
    plan.cell->zones.clear();
    plan.accepted.clear();
    plan.title = "another";
    const QString path = folder.filePath("another.weldplan.json");
    save_atomically(path.toStdString(), write_plan(plan));
    return path;
  }
  QTemporaryDir folder;
  std::unique_ptr<UserActions> actions;
};

TEST_F(SelectionTest, ExplainIsEmptiedWhereTheCellHoldsNoDerivedValue) {
  explainOpen();
  ASSERT_TRUE(seams().table().focusCell(2, "pass.cooling_time_s"));
  QApplication::processEvents();
  EXPECT_NE(explained().find("BD/S03"), std::string::npos) << explained();
  ASSERT_TRUE(seams().table().focusCell(2, "gap_mm"));
  QApplication::processEvents();
  EXPECT_TRUE(is_empty()) << explained();
}

TEST_F(SelectionTest, ExplainFollowsKeysFromRowToRow) {
  explainOpen();
  ASSERT_TRUE(seams().table().focusCell(2, "pass.cooling_time_s"));
  actions->key(Qt::Key_Down);
  EXPECT_NE(explained().find("BD/S04"), std::string::npos) << explained();
  EXPECT_EQ(at().seam, 3u);
}

TEST_F(SelectionTest, ExplainShowsWhatMakesUpAState) {
  make_drafts(window->document());
  ASSERT_FALSE(window->document().setField("/schedules/2", "travel_speed_mm_s", "13"));
  settle();
  explainOpen();
  const Finding* failed = nullptr;
  for (const Finding& finding : window->evaluator().results()->findings)
    if (finding.rule == "fillet.leg.undersize" && finding.where.starts_with("BD/")) failed = &finding;
  ASSERT_NE(failed, nullptr);
  const auto place = find_seam(*window->document().plan(), "BD", failed->where.substr(3, 3));
  ASSERT_TRUE(place) << failed->where;
  ASSERT_TRUE(seams().table().focusCell(static_cast<int>(place->seam), "mark"));
  QApplication::processEvents();
  EXPECT_NE(explained().find(failed->text()), std::string::npos) << explained();
  EXPECT_NE(explained().find("Seams"), std::string::npos);
}

TEST_F(SelectionTest, ExplainIsOfThePageInFrontAndNotOfOnesBehindIt) {
  explainOpen();
  ASSERT_TRUE(seams().table().focusCell(0, "seam.leg_mm"));
  seams().showFlat(Projection::plan);
  QApplication::processEvents();
  actions->clickAt(&seams().picture(), seams().picture().pointOf(5).toPoint());
  ASSERT_GT(at().seam, 0u);
  const std::string place = "BD/" + window->document().plan()->weldments[0].seams[at().seam].id + "\n";
  EXPECT_NE(explained().find(place), std::string::npos)
      << "the seam's leg, as in the table; the table of passes behind it said this: " << explained();
  actions->page(DeskPage::cell);
  EXPECT_TRUE(is_empty()) << "nothing on Cell is derived by a formula: " << explained();
  actions->page(DeskPage::seams);
  EXPECT_NE(explained().find(place), std::string::npos) << explained();
}

TEST_F(SelectionTest, ExplainKeepsTheViewsUnits) {
  explainOpen();
  ASSERT_TRUE(seams().table().focusCell(2, "pass.heat_input_kJ_mm"));
  QApplication::processEvents();
  EXPECT_EQ(explained().find("kJ/in"), std::string::npos);
  actions->key(Qt::Key_F8);
  double kJ_mm = 0;
  for (const PassEvaluation& pass : window->evaluator().results()->evaluation.passes)
    if (pass.weldment == "BD" && pass.seam == "S03" && pass.pass == 1) kJ_mm = pass.heat_input_kJ_mm;
  const std::string shown = UnitView::shared().numberText(kJ_mm, "kJ/mm", 4).toStdString() + " kJ/in";
  EXPECT_NE(explained().find(shown), std::string::npos) << shown << "\n" << explained();
  actions->key(Qt::Key_F8);
}

TEST_F(SelectionTest, AnotherPlanIsLookedAtFromItsBeginning) {
  explainOpen();
  seams().table().focusCell(7, "pass.cooling_time_s");
  window->selection().setSeam({2, 9});
  window->selection().setSchedule(6);
  actions->page(DeskPage::cell);
  cell().setWithout("R2");
  actions->page(DeskPage::seams);
  ASSERT_TRUE(window->openPlan(otherPlan()));
  EXPECT_TRUE(is_empty()) << "at once, not when the results are there: " << explained();
  settle();
  EXPECT_EQ(at(), (SeamPlace{0, 0}));
  const Plan& plan = *window->document().plan();
  EXPECT_EQ(plan.schedules[window->selection().schedule()].id, plan.weldments[0].seams[0].schedules[0])
      << "the seam's own";
  EXPECT_EQ(seams().table().currentRow(), 0);
  EXPECT_EQ(seams().form().pointer(), seam_address(0, 0));
  EXPECT_EQ(explained().find("BD/"), std::string::npos) << explained();
  EXPECT_EQ(page_of<HeatPage>(*window, DeskPage::heat).table().currentRow(), 0);
  EXPECT_EQ(page_of<SchedulesPage>(*window, DeskPage::schedules).table().currentRow(),
            static_cast<int>(window->selection().schedule()));
  actions->page(DeskPage::cell);
  settle();
  EXPECT_EQ(weldments(cell())->currentText(), "TT");
  EXPECT_EQ(at(), (SeamPlace{0, 0}));
  EXPECT_TRUE(cell().withoutText().isEmpty()) << "the robot that was out belongs to the other plan";
}

TEST_F(SelectionTest, FiguresOfTheLineAndTheLogsGoWithTheirPlan) {
  auto& records = page_of<RecordsPage>(*window, DeskPage::records);
  records.importLogs({demo_log()});
  records.job().wait();
  auto& line = page_of<LinePage>(*window, DeskPage::line);
  line.readOrders(QString::fromStdString(source_path("/reference/demo/orders.csv")));
  line.job().wait();
  ASSERT_TRUE(records.logs() && line.line());
  ASSERT_TRUE(window->openPlan(otherPlan()));
  settle();
  EXPECT_FALSE(records.logs());
  EXPECT_FALSE(line.line());
  EXPECT_TRUE(window->chain().link(DeskPage::records).figure().isEmpty())
      << window->chain().link(DeskPage::records).figure().toStdString();
  EXPECT_FALSE(window->chain().link(DeskPage::line).figure().contains("units/h"));
  EXPECT_EQ(records.units().grid().rowCount(), 0);
}

TEST_F(SelectionTest, OpeningPagesAndTabbingThroughThemLeavesTheSeam) {
  actions->page(DeskPage::seams);
  window->selection().setSeam({0, 12});
  for (const DeskPage page : desk_pages) {
    actions->page(page);
    // The pages' own controls, the tables among them.
    for (int i = 0; i < 14; ++i) {
      actions->key(Qt::Key_Tab);
      ASSERT_EQ(at(), (SeamPlace{0, 12})) << window->page(page).title().toStdString() << ", "
                                          << QApplication::focusWidget()->accessibleName().toStdString();
    }
  }
}

TEST_F(SelectionTest, TheMovesOfTheCellStandOnTheChosenSeam) {
  window->selection().setSeam({0, 12});
  actions->page(DeskPage::cell);
  GridView* moves = nullptr;
  for (GridView* table : cell().findChildren<GridView*>())
    if (table->accessibleName() == "Moves of the robots") moves = table;
  ASSERT_NE(moves, nullptr);
  const QString seam = QString::fromStdString(window->document().plan()->weldments[0].seams[12].id);
  ASSERT_GE(moves->currentRow(), 0);
  EXPECT_EQ(moves->grid().index(moves->currentRow(), moves->grid().columnNamed("seam")).data(), seam);
}

TEST_F(SelectionTest, AScheduleThatIsChosenStaysWhenNewResultsCome) {
  window->selection().setSeam({0, 12});
  actions->page(DeskPage::schedules);
  auto& schedules = page_of<SchedulesPage>(*window, DeskPage::schedules);
  schedules.table().setFocus();
  schedules.table().selectRow(6);
  ASSERT_EQ(window->selection().schedule(), 6u);
  ASSERT_FALSE(window->document().edit("title", {}, [](Plan& plan) { plan.title = "changed"; }));
  settle();
  actions->page(DeskPage::heat);
  actions->page(DeskPage::schedules);
  EXPECT_EQ(window->selection().schedule(), 6u);
  EXPECT_EQ(schedules.table().currentRow(), 6);
  EXPECT_EQ(at(), (SeamPlace{0, 12}));
}

TEST_F(SelectionTest, AllWeldmentsKeepsTheSeamThatIsChosen) {
  actions->page(DeskPage::seams);
  window->selection().setSeam({1, 4});
  EXPECT_EQ(weldments(seams())->currentIndex(), 2);
  window->selection().setSeam({0, 7});
  ASSERT_EQ(weldments(seams())->currentIndex(), 1);
  weldments(seams())->setFocus();
  actions->key(Qt::Key_Up);
  ASSERT_EQ(weldments(seams())->currentIndex(), 0);
  EXPECT_EQ(at(), (SeamPlace{0, 7}));
  EXPECT_EQ(seams().table().currentRow(), 7);
  actions->key(Qt::Key_Down);
  EXPECT_EQ(at(), (SeamPlace{0, 7})) << "it lies in the weldment that is chosen";
}

TEST_F(SelectionTest, ItStaysOnItsSeamWhenSeamsBeforeItGoAndComeBack) {
  actions->page(DeskPage::seams);
  window->selection().setSeam({0, 12});
  const std::string id = window->document().plan()->weldments[0].seams[12].id;
  const auto chosen = [&] { return window->document().plan()->weldments[at().weldment].seams[at().seam].id; };
  ASSERT_FALSE(window->document().edit("remove", {}, [](Plan& plan) {
    auto& all = plan.weldments[0].seams;
    all.erase(std::find_if(all.begin(), all.end(), [](const Seam& seam) { return seam.id == "S03"; }));
    for (Seam& seam : all) std::erase(seam.after, "S03");
    for (Zone& zone : plan.cell->zones) std::erase(zone.seams, "BD/S03");
  }));
  EXPECT_EQ(chosen(), id);
  EXPECT_EQ(at().seam, 11u);
  EXPECT_EQ(seams().table().currentRow(), 11);
  settle();
  actions->key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(chosen(), id);
  EXPECT_EQ(at().seam, 12u);
}

TEST_F(SelectionTest, AfterAnAddedSeamIsUndoneASeamThatIsThereIsChosen) {
  actions->page(DeskPage::seams);
  actions->key(Qt::Key_Insert, Qt::AltModifier);
  const std::size_t added = at().seam;
  ASSERT_EQ(added + 1, window->document().plan()->weldments[0].seams.size());
  actions->key(Qt::Key_Z, Qt::ControlModifier);
  ASSERT_LT(at().seam, window->document().plan()->weldments[0].seams.size());
  EXPECT_EQ(seams().form().pointer(), seam_address(0, at().seam));
  EXPECT_EQ(seams().table().currentRow(), static_cast<int>(at().seam));
}

TEST_F(SelectionTest, ASeamWithoutAScheduleShowsNobodyElsesHeat) {
  actions->page(DeskPage::heat);
  auto& heat = page_of<HeatPage>(*window, DeskPage::heat);
  ASSERT_TRUE(heat.window().plot().isVisible());
  ASSERT_FALSE(
      window->document().edit("bare", {}, [](Plan& plan) { plan.weldments[0].seams[4].schedules.clear(); }));
  settle();
  window->selection().setSeam({0, 4});
  EXPECT_EQ(heat.table().currentRow(), -1);
  EXPECT_FALSE(heat.window().plot().isVisible());
  window->selection().setSeam({0, 5});
  EXPECT_GE(heat.table().currentRow(), 0);
  EXPECT_TRUE(heat.window().plot().isVisible());
}

TEST_F(SelectionTest, EnterOnATaktFindingOpensTheCellOnItsWeldment) {
  const std::string missed = weldmentOfTaktFinding();
  ASSERT_FALSE(missed.empty());
  ASSERT_NE(missed, chosenWeldment()) << "the demo's first weldment keeps its takt";
  actions->page(DeskPage::findings);
  auto& page = page_of<FindingsPage>(*window, DeskPage::findings);
  page.table().setFocus();
  page.table().selectRow(findingRow("cycle.takt.missed"));
  actions->key(Qt::Key_Return);
  EXPECT_EQ(window->currentPage(), DeskPage::cell);
  EXPECT_EQ(chosenWeldment(), missed);
  EXPECT_EQ(weldments(cell())->currentText().toStdString(), missed);
  EXPECT_TRUE(cell().isAncestorOf(QApplication::focusWidget()));
}

TEST_F(SelectionTest, EnterInTheListOfTheCellGoesThereToo) {
  const std::string missed = weldmentOfTaktFinding();
  actions->page(DeskPage::cell);
  ASSERT_NE(missed, chosenWeldment());
  GridView& list = cell().findings().view();
  ASSERT_TRUE(list.isVisible());
  const GridModel& grid = list.grid();
  for (int row = 0; row < grid.rowCount(); ++row)
    if (grid.index(row, grid.columnNamed("rule")).data() == "cycle.takt.missed") list.selectRow(row);
  list.setFocus();
  actions->key(Qt::Key_Return);
  EXPECT_EQ(window->currentPage(), DeskPage::cell);
  EXPECT_EQ(chosenWeldment(), missed);
}

TEST_F(SelectionTest, AClickOnTheCellsTileOpensTheWeldmentThatItShows) {
  const auto figure = chain_figures(*window->evaluator().results())[position_of(DeskPage::cell)];
  ASSERT_TRUE(figure.weldment);
  const std::string missed = window->document().plan()->weldments[*figure.weldment].id;
  actions->page(DeskPage::seams);
  ASSERT_NE(missed, chosenWeldment());
  actions->page(DeskPage::cell);
  EXPECT_NE(missed, chosenWeldment()) << "its key alone keeps the selection";
  actions->page(DeskPage::seams);
  actions->click(&window->chain().link(DeskPage::cell));
  EXPECT_EQ(window->currentPage(), DeskPage::cell);
  EXPECT_EQ(chosenWeldment(), missed);
  EXPECT_EQ(weldments(cell())->currentText().toStdString(), missed);
  // A seam of it that is chosen already stays.
  window->selection().setSeam({at().weldment, 7});
  actions->click(&window->chain().link(DeskPage::cell));
  EXPECT_EQ(at().seam, 7u);
}

}  // namespace
}  // namespace seamtakt::desk
