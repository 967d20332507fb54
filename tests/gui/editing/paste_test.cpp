#include <QClipboard>
#include <QLabel>
#include <QListWidget>
#include <QSignalSpy>

#include "models/tables/seam_model.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "plan/fields/plan_file.hpp"
#include "user_actions.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/paste_dialog.hpp"

/// A range from a spreadsheet is shown before it is taken, and taken whole or not at all.
namespace seamtakt::desk {
namespace {

class PasteTest : public DeskTest {
 protected:
  void SetUp() override {
    DeskTest::SetUp();
    actions = std::make_unique<UserActions>(*window);
    actions->page(DeskPage::seams);
  }
  const Plan& plan() const { return *window->document().plan(); }
  const std::vector<Seam>& seams() const { return plan().weldments[0].seams; }
  std::string text() const { return write_plan(plan()); }
  GridView& table() { return page_of<SeamsPage>(*window, DeskPage::seams).table(); }
  /// Ctrl+V of that text with the cursor in that cell.
  void paste(int row, const char* key, const QString& cells) {
    ASSERT_TRUE(table().focusCell(row, key));
    QApplication::clipboard()->setText(cells);
    actions->key(Qt::Key_V, Qt::ControlModifier);
  }
  PasteDialog* preview() { return qobject_cast<PasteDialog*>(question()); }
  static bool hasButton(QDialog& dialog, const QString& name) {
    for (QPushButton* button : dialog.findChildren<QPushButton*>())
      if (button->text().remove('&') == name) return true;
    return false;
  }
  static QString all(PasteDialog& dialog) {
    QStringList lines;
    for (int row = 0; row < dialog.lines().count(); ++row) lines << dialog.lines().item(row)->text();
    return lines.join('\n');
  }
  void answer(QDialog* dialog, Qt::Key key) {
    QTest::keyClick(dialog, key);
    QApplication::processEvents();
    bring_to_front(*window);
    settle();
  }
  std::unique_ptr<UserActions> actions;
};

TEST_F(PasteTest, ARangeIsShownBeforeAndTakenByEnterAsOneStep) {
  const std::string before = text();
  // S05 and S06 are drawn with a leg of 6 mm and a gap of 0.3 mm.
  paste(4, "leg_mm", "7\t0.5\n6\t0.5");
  PasteDialog* dialog = preview();
  ASSERT_NE(dialog, nullptr);
  EXPECT_EQ(text(), before) << "nothing is done yet";
  EXPECT_EQ(
      PasteDialog::summary(read_pasted(table().grid(), {{4, table().grid().columnNamed("leg_mm"), "7"}})),
      "Rows: 1. Cells: 1.");
  bool said = false;
  for (QLabel* label : dialog->findChildren<QLabel*>()) said = said || label->text() == "Rows: 2. Cells: 3.";
  EXPECT_TRUE(said) << "the leg of the second is the same";
  EXPECT_TRUE(all(*dialog).contains("S05, Leg drawn: 6 → 7")) << all(*dialog).toStdString();
  answer(dialog, Qt::Key_Escape);
  EXPECT_EQ(text(), before);
  paste(4, "leg_mm", "7\t0.5\n6\t0.5");
  answer(preview(), Qt::Key_Return);
  EXPECT_EQ(seams()[4].leg_mm, 7);
  EXPECT_EQ(seams()[4].gap_mm, 0.5);
  EXPECT_EQ(seams()[5].gap_mm, 0.5);
  EXPECT_EQ(window->document().undo().count(), 1);
  actions->key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(text(), before);
}

TEST_F(PasteTest, WithOneRefusedCellNothingCanBePastedAndTheCellIsNamed) {
  const std::string before = text();
  paste(0, "gap_mm", "1.5\nwide\n1.5");
  PasteDialog* dialog = preview();
  ASSERT_NE(dialog, nullptr);
  EXPECT_FALSE(hasButton(*dialog, "Paste"));
  EXPECT_TRUE(dialog->lines().item(0)->text().startsWith("Refused. S02, Gap: "))
      << all(*dialog).toStdString();
  answer(dialog, Qt::Key_Return);
  EXPECT_EQ(text(), before);
  paste(0, "schedules", "F6S\nNOPE");
  dialog = preview();
  ASSERT_NE(dialog, nullptr);
  EXPECT_TRUE(all(*dialog).contains("NOPE")) << all(*dialog).toStdString();
  EXPECT_TRUE(dialog->lines().item(0)->text().startsWith("Refused. S02, ")) << all(*dialog).toStdString();
  answer(dialog, Qt::Key_Escape);
  EXPECT_EQ(text(), before);
  EXPECT_EQ(window->document().undo().count(), 0);
}

TEST_F(PasteTest, ARangeOneColumnOffIsSeenAndTakesNothing) {
  const std::string before = text();
  // Leg, gap and position, put down from the thickness on.
  paste(4, "thickness_mm", "6\t0.5\tPB\n6\t0.5\tPB");
  PasteDialog* dialog = preview();
  ASSERT_NE(dialog, nullptr);
  EXPECT_FALSE(hasButton(*dialog, "Paste"));
  answer(dialog, Qt::Key_Escape);
  EXPECT_EQ(text(), before);
}

TEST_F(PasteTest, MoreRowsThanThereAreAddSeams) {
  const std::size_t count = seams().size();
  const QString last = QString::fromStdString(seams().back().id);
  const std::string before = text();
  paste(static_cast<int>(count) - 1, "id", last + "\nN01\ttee\t8, 10\t6\nN02\ttee\t10, 10\t7");
  PasteDialog* dialog = preview();
  ASSERT_NE(dialog, nullptr);
  bool said = false;
  for (QLabel* label : dialog->findChildren<QLabel*>()) said = said || label->text().contains("New rows: 2.");
  EXPECT_TRUE(said);
  answer(dialog, Qt::Key_Return);
  ASSERT_EQ(seams().size(), count + 2);
  EXPECT_EQ(seams()[count].id, "N01");
  EXPECT_EQ(seams()[count].thickness_mm, (std::vector<double>{8, 10}));
  EXPECT_EQ(seams()[count].leg_mm, 6);
  EXPECT_EQ(seams()[count + 1].id, "N02");
  EXPECT_EQ(seams()[count + 1].leg_mm, 7);
  EXPECT_EQ(window->document().undo().count(), 1);
  actions->key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(text(), before);
}

TEST_F(PasteTest, AnIdThatDiffersOrIsThereTwiceIsRefused) {
  const std::string before = text();
  paste(0, "id", "S01\nS99");
  PasteDialog* dialog = preview();
  ASSERT_NE(dialog, nullptr);
  EXPECT_TRUE(all(*dialog).contains("Rename")) << all(*dialog).toStdString();
  answer(dialog, Qt::Key_Escape);
  paste(static_cast<int>(seams().size()) - 1, "id", QString::fromStdString(seams().back().id) + "\nS01");
  dialog = preview();
  ASSERT_NE(dialog, nullptr);
  EXPECT_FALSE(hasButton(*dialog, "Paste"));
  answer(dialog, Qt::Key_Escape);
  EXPECT_EQ(text(), before);
}

TEST_F(PasteTest, OneColumnGoesWhereTheCursorIsAtOnceAndSaysWhatChanged) {
  QSignalSpy said(&window->page(DeskPage::seams), &Page::message);
  paste(0, "gap_mm", "1.5\n1.5\n0.3");
  EXPECT_EQ(question(100), nullptr);
  EXPECT_EQ(seams()[0].gap_mm, 1.5);
  EXPECT_EQ(seams()[1].gap_mm, 1.5);
  ASSERT_EQ(said.count(), 1);
  EXPECT_TRUE(said[0][0].toString().contains("Rows: 2. Cells: 2.")) << said[0][0].toString().toStdString();
}

TEST_F(PasteTest, TheHeadingsOfTheColumnsAreNoCells) {
  const GridModel& grid = table().grid();
  const QString headings =
      grid.headingText(grid.columnNamed("leg_mm")) + "\t" + grid.headingText(grid.columnNamed("gap_mm"));
  paste(4, "leg_mm", headings + "\r\n7\t0.5\r\n");
  answer(preview(), Qt::Key_Return);
  EXPECT_EQ(seams()[4].leg_mm, 7);
  EXPECT_EQ(seams()[4].gap_mm, 0.5);
  EXPECT_EQ(seams()[5].leg_mm, 6);
}

TEST_F(PasteTest, DerivedValuesInTheRangeAreLeftOutAndCounted) {
  const GridModel& grid = table().grid();
  const PastedRange range =
      read_pasted(grid, {{4, grid.columnNamed("leg_mm"), "7"}, {4, grid.columnNamed("seam.leg_mm"), "7"}});
  EXPECT_EQ(range.cells, 1);
  EXPECT_EQ(range.left_out, 1);
  EXPECT_EQ(range.refused, 0);
}

TEST_F(PasteTest, ARowMoreInTheTableOfSchedulesIsADraft) {
  actions->page(DeskPage::schedules);
  GridView& schedules = page_of<SchedulesPage>(*window, DeskPage::schedules).table();
  const std::size_t count = plan().schedules.size();
  const QString last = QString::fromStdString(plan().schedules.back().id);
  ASSERT_TRUE(schedules.focusCell(static_cast<int>(count) - 1, "id"));
  QApplication::clipboard()->setText(last + "\nNEW");
  actions->key(Qt::Key_V, Qt::ControlModifier);
  answer(preview(), Qt::Key_Return);
  ASSERT_EQ(plan().schedules.size(), count + 1);
  EXPECT_EQ(plan().schedules.back().id, "NEW");
  EXPECT_EQ(plan().schedules.back().status, "draft");
  EXPECT_TRUE(plan().schedules.back().approved_by.empty());
}

}  // namespace
}  // namespace seamtakt::desk
