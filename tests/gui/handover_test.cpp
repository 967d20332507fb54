#include <QApplication>
#include <QClipboard>

#include "cell/timeline/timeline.hpp"
#include "models/tables/grid_model.hpp"
#include "pages/cell_page.hpp"
#include "pages/seams_page.hpp"
#include "user_actions.hpp"
#include "widgets/grid_view.hpp"

/// What a table of the desk hands to a spreadsheet or to whoever programs the robots.
namespace seamtakt::desk {
namespace {

class HandoverTest : public DeskTest {
 protected:
  const Plan& plan() { return *window->document().plan(); }
  GridView* tableNamed(const QString& name) {
    for (GridView* table : window->findChildren<GridView*>())
      if (table->accessibleName() == name) return table;
    return nullptr;
  }
};

TEST_F(HandoverTest, TheMovesHaveDirectionAndOrientationAfterTheColumnsOfBefore) {
  UserActions actions(*window);
  actions.page(DeskPage::cell);
  settle();
  GridView* table = tableNamed("Moves of the robots");
  ASSERT_TRUE(table);
  const GridModel& grid = table->grid();
  const int why = grid.columnNamed("why"), direction = grid.columnNamed("direction"),
            orientation = grid.columnNamed("orientation");
  EXPECT_EQ(direction, why + 1);
  EXPECT_EQ(orientation, why + 2);
  const CycleResult& cycle = window->evaluator().results()->cycles[0];
  ASSERT_EQ(grid.rowCount(), static_cast<int>(cycle.moves.size()));
  int reversed = 0;
  for (int row = 0; row < grid.rowCount(); ++row) {
    const Move& move = cycle.moves[static_cast<std::size_t>(row)];
    const QString shown = grid.index(row, direction).data().toString();
    if (move.kind == MoveKind::arc) {
      EXPECT_EQ(shown, move.reversed ? "reversed" : "as drawn") << row;
      reversed += move.reversed;
    } else {
      EXPECT_NE(shown, "reversed") << row;
      EXPECT_NE(shown, "as drawn") << row;
    }
    const Seam* seam = find_by_id(plan().weldments[0].seams, move.seam);
    if (!seam) continue;
    EXPECT_EQ(grid.index(row, orientation).data(Qt::EditRole).toString().toStdString(), seam->orientation)
        << row;
  }
  EXPECT_GT(reversed, 0);
}

TEST_F(HandoverTest, CopiedCellsHaveTheirHeadingsForASpreadsheetAndGoBackWithoutThem) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  GridView& table = page_of<SeamsPage>(*window, DeskPage::seams).table();
  ASSERT_TRUE(table.focusCell(2, "gap_mm"));
  ASSERT_TRUE(table.paste("1.5"));
  const double gap_mm = plan().weldments[0].seams[0].gap_mm;
  ASSERT_NE(gap_mm, 1.5);
  ASSERT_TRUE(table.focusCell(0, "gap_mm"));
  const int column = table.grid().columnNamed("gap_mm");
  table.selectionModel()->select(
      QItemSelection(table.proxy().index(0, column), table.proxy().index(1, column)),
      QItemSelectionModel::ClearAndSelect);
  actions.key(Qt::Key_C, Qt::ControlModifier);
  const QStringList lines = QApplication::clipboard()->text().split('\n');
  ASSERT_EQ(lines.size(), 3);
  EXPECT_TRUE(lines[0].startsWith("Gap")) << lines[0].toStdString();
  EXPECT_TRUE(lines[0].endsWith(", mm")) << lines[0].toStdString();
  EXPECT_EQ(lines[1], table.proxy().index(0, column).data(Qt::EditRole).toString());
  ASSERT_TRUE(table.focusCell(2, "gap_mm"));
  actions.key(Qt::Key_V, Qt::ControlModifier);
  EXPECT_DOUBLE_EQ(plan().weldments[0].seams[2].gap_mm, gap_mm);
}

TEST_F(HandoverTest, ASingleCellIsCopiedAsItsValueAlone) {
  UserActions actions(*window);
  actions.page(DeskPage::seams);
  GridView& table = page_of<SeamsPage>(*window, DeskPage::seams).table();
  ASSERT_TRUE(table.focusCell(0, "gap_mm"));
  table.selectionModel()->select(table.currentIndex(), QItemSelectionModel::ClearAndSelect);
  actions.key(Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(QApplication::clipboard()->text(), table.currentIndex().data(Qt::EditRole).toString());
}

}  // namespace
}  // namespace seamtakt::desk
