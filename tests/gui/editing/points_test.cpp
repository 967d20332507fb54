// The points of a seam are edited as a small table.
#include <QTableWidget>

#include "app/theme_choice.hpp"
#include "pages/seams_page.hpp"
#include "user_actions.hpp"
#include "widgets/field_form.hpp"
#include "widgets/points_dialog.hpp"
#include "widgets/quantity_edit.hpp"

namespace seamtakt::desk {
namespace {

class PointsTest : public DeskTest {
 protected:
  void TearDown() override {
    DeskTest::TearDown();
    choose_language("en");
  }
  const Seam& seam() const { return window->document().plan()->weldments[0].seams[0]; }
  PointsDialog* open() {
    window->showPage(DeskPage::seams);
    FieldForm& form = page_of<SeamsPage>(*window, DeskPage::seams).form();
    EXPECT_TRUE(form.focusField("path_mm"));
    QTest::keyClick(form.editorOf("path_mm"), Qt::Key_F2);
    return qobject_cast<PointsDialog*>(question());
  }
};

TEST_F(PointsTest, APointIsChangedInItsCellAsOneStep) {
  PointsDialog* dialog = open();
  ASSERT_NE(dialog, nullptr);
  ASSERT_EQ(static_cast<std::size_t>(dialog->points().rowCount()), seam().path_mm.size());
  EXPECT_EQ(dialog->points().horizontalHeaderItem(0)->text(), "x, mm");
  dialog->points().item(0, 1)->setText("12.5");
  const int steps = window->document().undo().count();
  const auto before = seam().path_mm;
  UserActions(*window).press(*dialog, "Take these points");
  ASSERT_EQ(seam().path_mm.size(), before.size());
  EXPECT_EQ(seam().path_mm[0][1], 12.5);
  EXPECT_EQ(seam().path_mm[0][0], before[0][0]);
  EXPECT_EQ(window->document().undo().count(), steps + 1);
}

TEST_F(PointsTest, PointsAreAddedInTheLanguagesDecimalSign) {
  choose_language("de");
  PointsDialog* dialog = open();
  ASSERT_NE(dialog, nullptr);
  const std::size_t count = seam().path_mm.size();
  dialog->points().setCurrentCell(static_cast<int>(count) - 1, 0);
  UserActions actions(*window);
  for (QPushButton* button : dialog->findChildren<QPushButton*>())
    if (button->accessibleName() == "Punkt hinzufügen") actions.click(button);
  const int row = dialog->points().currentRow();
  ASSERT_EQ(static_cast<std::size_t>(row), count);
  for (const auto& [column, text] : {std::pair(0, "900,5"), std::pair(1, "0"), std::pair(2, "10")})
    dialog->points().setItem(row, column, new QTableWidgetItem(text));
  dialog->accept();
  QApplication::processEvents();
  ASSERT_EQ(seam().path_mm.size(), count + 1);
  EXPECT_EQ(seam().path_mm.back()[0], 900.5);
  EXPECT_EQ(seam().path_mm.back()[2], 10);
}

TEST_F(PointsTest, APointThatIsNoneChangesNothing) {
  PointsDialog* dialog = open();
  ASSERT_NE(dialog, nullptr);
  const PlanPtr before = window->document().plan();
  dialog->points().item(0, 2)->setText("");
  dialog->accept();
  QApplication::processEvents();
  EXPECT_EQ(window->document().plan(), before);
  EXPECT_TRUE(dialog->isVisible()) << "what was typed isn't lost";
  EXPECT_FALSE(dialog->refusal().isEmpty());
  dialog->reject();
}

}  // namespace
}  // namespace seamtakt::desk
