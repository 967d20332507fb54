// What every table of the desk can do: filter, frozen columns, choosing and moving columns, the arrow of a
// sorted column, numbers aligned at the decimal sign, its menu, and one value set in many rows.
#include <QCheckBox>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QHeaderView>
#include <QMenu>
#include <QMenuBar>
#include <QScrollBar>
#include <QSettings>
#include <QUndoView>

#include "models/tables/finding_model.hpp"
#include "pages/cell_page.hpp"
#include "pages/findings_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "user_actions.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/frozen_columns.hpp"
#include "widgets/grid_delegate.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/quantity_edit.hpp"
#include "widgets/set_dialog.hpp"
#include "widgets/table_filter.hpp"

namespace seamtakt::desk {
namespace {

class TableTools : public DeskTest {
 protected:
  void TearDown() override {
    DeskTest::TearDown();
    QSettings().remove("tables");
  }
  SeamsPage& seams() { return page_of<SeamsPage>(*window, DeskPage::seams); }
  GridView& table() { return seams().table(); }
  const std::vector<Seam>& drawn() { return window->document().plan()->weldments[0].seams; }
  QPoint centreOf(int row, const char* key) {
    return table().visualRect(table().proxy().index(row, table().grid().columnNamed(key))).center();
  }
  /// Clicks on a cell that can be seen.
  void clickCell(int row, const char* key, Qt::KeyboardModifiers modifiers = {}) {
    const QModelIndex at = table().proxy().index(row, table().grid().columnNamed(key));
    table().scrollTo(at);
    QTest::mouseClick(table().viewport(), Qt::LeftButton, modifiers, table().visualRect(at).center());
    QApplication::processEvents();
  }
  /// The entry of the menu that is open.
  static QAction* entry(const QString& beginning) {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    if (!menu) return nullptr;
    for (QAction* action : menu->actions())
      if (action->text().startsWith(beginning)) return action;
    return nullptr;
  }
  void openMenu(GridView& view, const QPoint& at) {
    QContextMenuEvent event(QContextMenuEvent::Mouse, at, view.viewport()->mapToGlobal(at));
    QApplication::sendEvent(view.viewport(), &event);
    QApplication::processEvents();
  }
};

TEST_F(TableTools, CtrlFFiltersTheRowsAndEscapeShowsAllAgain) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  const int all = table().proxy().rowCount();
  actions.key(Qt::Key_F, Qt::ControlModifier);
  auto* box = qobject_cast<TableFilter*>(QApplication::focusWidget());
  ASSERT_NE(box, nullptr);
  EXPECT_TRUE(table().viewport()->geometry().contains(box->geometry()));
  actions.type("S1");
  EXPECT_GT(table().proxy().rowCount(), 0);
  EXPECT_LT(table().proxy().rowCount(), all);
  for (int row = 0; row < table().proxy().rowCount(); ++row) {
    QString texts;
    for (int column = 0; column < table().grid().columnCount(); ++column)
      texts += table().proxy().index(row, column).data().toString() + '\n';
    EXPECT_TRUE(texts.contains("S1", Qt::CaseInsensitive)) << texts.toStdString();
  }
  actions.key(Qt::Key_Return);
  EXPECT_EQ(QApplication::focusWidget(), &table());
  actions.key(Qt::Key_F, Qt::ControlModifier);
  actions.key(Qt::Key_Escape);
  EXPECT_EQ(table().proxy().rowCount(), all);
  EXPECT_FALSE(box->isVisible());
}

TEST_F(TableTools, CtrlFOnTheFindingsGoesToTheirOwnBox) {
  UserActions actions(*window);
  actions.page(DeskPage::findings);
  actions.key(Qt::Key_F, Qt::ControlModifier);
  ASSERT_NE(QApplication::focusWidget(), nullptr);
  EXPECT_EQ(QApplication::focusWidget()->accessibleName(), "Filter findings");
}

TEST_F(TableTools, StateAndIdStayWhileTheOthersScroll) {
  window->showPage(DeskPage::seams);
  auto* frozen = table().findChild<FrozenColumns*>();
  ASSERT_NE(frozen, nullptr);
  EXPECT_FALSE(frozen->isVisible()) << "nothing is scrolled yet";
  table().horizontalScrollBar()->setValue(table().horizontalScrollBar()->maximum());
  ASSERT_TRUE(frozen->isVisible());
  const int id = table().grid().columnNamed("id");
  EXPECT_FALSE(frozen->isColumnHidden(id));
  EXPECT_TRUE(frozen->isColumnHidden(table().grid().columnNamed("joint")));
  EXPECT_EQ(frozen->rowAt(4), table().rowAt(4));
  // A cell that the cursor goes to isn't under them.
  ASSERT_TRUE(table().focusCell(0, "joint"));
  const QModelIndex at = table().currentIndex();
  EXPECT_GE(table().visualRect(at).left(), frozen->covered());
  photograph("table-frozen");
}

TEST_F(TableTools, ColumnsAreChosenMovedAndKept) {
  window->showPage(DeskPage::seams);
  const int gap = table().grid().columnNamed("gap_mm"), joint = table().grid().columnNamed("joint");
  std::unique_ptr<QMenu> menu(table().columnMenu());
  QAction* wanted = nullptr;
  for (QAction* action : menu->actions())
    if (action->text() == table().grid().headingText(gap)) wanted = action;
  ASSERT_NE(wanted, nullptr);
  wanted->trigger();
  EXPECT_TRUE(table().isColumnHidden(gap));
  QHeaderView& header = *table().horizontalHeader();
  header.moveSection(header.visualIndex(joint), header.visualIndex(joint) + 2);
  const int place = header.visualIndex(joint);
  // State and id stay in front.
  header.moveSection(header.visualIndex(joint), 0);
  EXPECT_EQ(header.logicalIndex(0), 0);
  EXPECT_EQ(header.visualIndex(joint), place);
  MainWindow other;
  GridView& again = page_of<SeamsPage>(other, DeskPage::seams).table();
  EXPECT_TRUE(again.isColumnHidden(gap));
  EXPECT_EQ(again.horizontalHeader()->visualIndex(joint), place);
}

TEST_F(TableTools, SmallTablesKeepOrderAndWidthOfTheirColumnsToo) {
  const auto losses = [](MainWindow& of) -> GridView& {
    return page_of<CellPage>(of, DeskPage::cell).losses();
  };
  window->showPage(DeskPage::cell);
  QApplication::processEvents();
  QHeaderView& header = *losses(*window).horizontalHeader();
  const int wide = losses(*window).columnWidth(1) + 57;
  header.resizeSection(1, wide);
  header.moveSection(0, 1);
  const int place = header.visualIndex(0);
  // What the table holds now no longer says how wide the column is.
  losses(*window).fitColumns();
  EXPECT_EQ(losses(*window).columnWidth(1), wide);
  MainWindow other;
  losses(other).fitColumns();
  EXPECT_EQ(losses(other).columnWidth(1), wide);
  EXPECT_EQ(losses(other).horizontalHeader()->visualIndex(0), place);
}

TEST_F(TableTools, AnArrowStandsBesideTheHeadingOfTheSortedColumn) {
  const int column = table().grid().columnNamed("gap_mm");
  table().sortByColumn(column, Qt::AscendingOrder);
  EXPECT_EQ(table().proxy().headerData(column, Qt::Horizontal).toString(), "Gap ▲\nmm");
  table().sortByColumn(column, Qt::DescendingOrder);
  EXPECT_EQ(table().proxy().headerData(column, Qt::Horizontal).toString(), "Gap ▼\nmm");
  EXPECT_EQ(table().grid().headingText(column), "Gap, mm") << "copied without the arrow";
}

TEST_F(TableTools, NumbersAreAlignedAtTheDecimalSign) {
  const QFontMetrics metrics(table().font());
  const auto from_sign = [&](const QString& number) {
    const QString text = GridDelegate::aligned(number, 3);
    const qsizetype sign = number.indexOf('.');
    return metrics.horizontalAdvance(text) -
           metrics.horizontalAdvance(text.left(sign < 0 ? number.size() : sign));
  };
  const int wanted = from_sign("12.345");
  for (const char* number : {"1.2", "0.45", "7", "-3.25"})
    EXPECT_NEAR(from_sign(number), wanted, 2) << number;
  EXPECT_EQ(GridDelegate::aligned("–", 3), "–");
  EXPECT_EQ(GridDelegate::aligned("none", 3), "none");
  EXPECT_EQ(GridDelegate::aligned("8,5; 12", 3), "8,5; 12") << "a list isn't a number";
  EXPECT_EQ(fraction_digits_of("-12,345"), 3);
  EXPECT_EQ(fraction_digits_of("12"), 0);
  EXPECT_FALSE(fraction_digits_of("12.5 mm"));
  EXPECT_FALSE(fraction_digits_of(""));
  const int column = table().grid().columnNamed("pass.heat_input_kJ_mm");
  EXPECT_GT(table().grid().fractionDigits(column), 0);
  EXPECT_EQ(table().grid().fractionDigits(table().grid().columnNamed("joint")), 0);
}

TEST_F(TableTools, AValueIsSetInRowsThatAreSelectedApartAsOneStep) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  clickCell(0, "gap_mm");
  clickCell(2, "gap_mm", Qt::ControlModifier);
  clickCell(5, "gap_mm", Qt::ControlModifier);
  EXPECT_EQ(table().selectedRows(), (std::vector<int>{0, 2, 5}));
  const int steps = window->document().undo().count();
  actions.key(Qt::Key_Return, Qt::ControlModifier);
  auto* dialog = qobject_cast<SetDialog*>(question());
  ASSERT_NE(dialog, nullptr);
  actions.typeOver("1.5");
  actions.key(Qt::Key_Return);
  bring_to_front(*window);
  for (const std::size_t row : {0u, 2u, 5u}) EXPECT_EQ(drawn()[row].gap_mm, 1.5);
  EXPECT_NE(drawn()[1].gap_mm, 1.5);
  EXPECT_EQ(window->document().undo().count(), steps + 1);
  EXPECT_EQ(window->document().undo().undoText(), "Set Gap");
  // A value that one row can't take changes none.
  const PlanPtr before = window->document().plan();
  QString why;
  QObject::connect(&table(), &GridView::refused, [&](const QString& reason) { why = reason; });
  table().setSelected(table().grid().columnNamed("gap_mm"), "wide");
  EXPECT_EQ(window->document().plan(), before);
  EXPECT_TRUE(why.startsWith("Nothing is changed.")) << why.toStdString();
}

TEST_F(TableTools, CellsThatAreSelectedApartAreCopiedWithBlanksBetween) {
  window->showPage(DeskPage::seams);
  clickCell(0, "id");
  clickCell(2, "joint", Qt::ControlModifier);
  EXPECT_EQ(table().copyText(),
            QString("%1\t\n\t%2")
                .arg(QString::fromStdString(drawn()[0].id), QString::fromStdString(drawn()[2].joint)));
}

TEST_F(TableTools, RobotsOrientationAndOrderAreSetForManySeams) {
  window->showPage(DeskPage::seams);
  for (const auto& [key, text] :
       {std::pair("robots", "R1; R2"), std::pair("orientation", "tilt-left"), std::pair("by", "manual")}) {
    ASSERT_GE(table().grid().columnNamed(key), 0) << key;
    clickCell(0, key);
    clickCell(1, key, Qt::ControlModifier);
    table().setSelected(table().grid().columnNamed(key), text);
  }
  for (const std::size_t row : {0u, 1u}) {
    EXPECT_EQ(drawn()[row].robots, (std::vector<std::string>{"R1", "R2"}));
    EXPECT_EQ(drawn()[row].orientation, "tilt-left");
    EXPECT_EQ(drawn()[row].by, "manual");
  }
  clickCell(3, "after");
  table().setSelected(table().grid().columnNamed("after"), "S01; S03");
  EXPECT_EQ(drawn()[3].after, (std::vector<std::string>{"S01", "S03"}));
}

TEST_F(TableTools, TheMenuOfACellLeadsToExplainFindingsAndSchedules) {
  window->showPage(DeskPage::seams);
  ASSERT_TRUE(table().focusCell(0, "pass.heat_input_kJ_mm"));
  openMenu(table(), centreOf(0, "pass.heat_input_kJ_mm"));
  for (const char* text : {"Copy", "Paste", "Set for all selected", "Filter", "Explain", "Go to finding"})
    EXPECT_NE(entry(text), nullptr) << text;
  QAction* explain = entry("Explain");
  ASSERT_TRUE(explain && explain->isEnabled());
  explain->trigger();
  EXPECT_TRUE(window->explain().isVisible());
  QApplication::activePopupWidget()->close();
  QApplication::processEvents();
  openMenu(table(), centreOf(0, "pass.heat_input_kJ_mm"));
  QAction* schedule = entry(QString("Open schedule ") + QString::fromStdString(drawn()[0].schedules[0]));
  ASSERT_NE(schedule, nullptr);
  schedule->trigger();
  EXPECT_EQ(window->currentPage(), DeskPage::schedules);
  EXPECT_EQ(window->document().plan()->schedules[window->selection().schedule()].id, drawn()[0].schedules[0]);
  if (QWidget* open = QApplication::activePopupWidget()) open->close();
}

TEST_F(TableTools, ASeamsMenuGoesToItsFindings) {
  window->showPage(DeskPage::seams);
  const auto& findings = window->evaluator().results()->findings;
  const auto found = std::find_if(findings.begin(), findings.end(),
                                  [](const Finding& each) { return each.where.starts_with("BD/S"); });
  ASSERT_NE(found, findings.end());
  const std::string place = found->where.substr(0, found->where.find('/', 3));
  int row = 0;
  while (place != "BD/" + drawn()[static_cast<std::size_t>(row)].id) ++row;
  ASSERT_TRUE(table().focusCell(row, "id"));
  openMenu(table(), centreOf(row, "id"));
  QAction* go = entry("Go to finding");
  ASSERT_TRUE(go && go->isEnabled());
  go->trigger();
  EXPECT_EQ(window->currentPage(), DeskPage::findings);
  auto& page = page_of<FindingsPage>(*window, DeskPage::findings);
  const auto& model = static_cast<const FindingModel&>(page.table().grid());
  EXPECT_TRUE(model.finding(page.table().currentRow()).where.starts_with(place));
  if (QWidget* open = QApplication::activePopupWidget()) open->close();
}

TEST_F(TableTools, FindingsOfOneCauseAreOneRowThatOpens) {
  UserActions actions(*window);
  actions.page(DeskPage::findings);
  auto& page = page_of<FindingsPage>(*window, DeskPage::findings);
  const auto& model = static_cast<const FindingModel&>(page.table().grid());
  const int all = model.rowCount();
  for (QCheckBox* box : page.findChildren<QCheckBox*>())
    if (box->accessibleName() == "By cause") actions.click(box);
  ASSERT_TRUE(model.isGrouped());
  const int groups = model.rowCount();
  EXPECT_LT(groups, all);
  int row = 0;
  while (row < groups && !model.isGroup(row)) ++row;
  ASSERT_LT(row, groups) << "the demo has two findings of one cause";
  page.table().selectRow(row);
  page.table().setFocus();
  photograph("findings-by-cause");
  actions.key(Qt::Key_Return);
  EXPECT_GT(model.rowCount(), groups) << "opened";
  EXPECT_TRUE(model.isGroup(row));
  EXPECT_FALSE(model.isGroup(row + 1));
  EXPECT_EQ(model.finding(row + 1).rule, model.finding(row).rule);
  actions.key(Qt::Key_Return);
  EXPECT_EQ(model.rowCount(), groups) << "closed";
}

TEST_F(TableTools, TheHistoryListsTheStepsAndGoesBackToOne) {
  ASSERT_FALSE(window->document().setField("/weldments/0/seams/0", "gap_mm", "0.7"));
  window->document().endTyping();
  ASSERT_FALSE(window->document().setField("/weldments/0/seams/0", "gap_mm", "0.8"));
  for (QAction* top : window->menuBar()->actions())
    for (QAction* each : top->menu()->actions())
      if (each->text() == "&History …") each->trigger();
  auto* steps = window->findChild<QUndoView*>();
  ASSERT_NE(steps, nullptr);
  ASSERT_TRUE(steps->isVisible());
  ASSERT_EQ(steps->model()->rowCount(), 3);
  EXPECT_EQ(steps->model()->index(1, 0).data().toString(), "Change gap");
  steps->setCurrentIndex(steps->model()->index(1, 0));
  EXPECT_EQ(drawn()[0].gap_mm, 0.7);
}

}  // namespace
}  // namespace seamtakt::desk
