#include <QAccessible>
#include <QComboBox>
#include <QDir>
#include <QDropEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QToolButton>
#include <set>

#include "app/theme_choice.hpp"
#include "base/files/atomic_save.hpp"
#include "document/plan_address.hpp"
#include "models/pictures/palette.hpp"
#include "models/words/unit_view.hpp"
#include "pages/findings_page.hpp"
#include "pages/heat_page.hpp"
#include "pages/records_page.hpp"
#include "pages/schedules_page.hpp"
#include "pages/seams_page.hpp"
#include "pages/window_panel.hpp"
#include "plan/fields/plan_file.hpp"
#include "plots/seam_view.hpp"
#include "plots/window_plot.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/field_form.hpp"
#include "widgets/finding_list.hpp"
#include "widgets/grid_view.hpp"
#include "widgets/quantity_edit.hpp"

namespace seamtakt::desk {
namespace {

TEST_F(DeskTest, TypingInAFormIsLiveUndoneAsOneStepAndTakesUnits) {
  make_drafts(window->document());
  settle();
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  auto& page = page_of<SchedulesPage>(*window, DeskPage::schedules);
  ASSERT_TRUE(page.form().focusField("travel_speed_mm_s"));
  const double before = window->document().plan()->schedules[0].travel_speed_mm_s;
  actions.typeOver("45 cm/min");
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[0].travel_speed_mm_s, 7.5);
  actions.key(Qt::Key_Tab);
  auto* edit = qobject_cast<QuantityEdit*>(page.form().editorOf("travel_speed_mm_s"));
  EXPECT_EQ(edit->text(), "7.5");
  actions.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[0].travel_speed_mm_s, before);
}

TEST_F(DeskTest, ARefusedValueSaysWhyBesideTheFieldAndGoesBack) {
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  auto& page = page_of<SchedulesPage>(*window, DeskPage::schedules);
  ASSERT_TRUE(page.form().focusField("arc_voltage_V"));
  auto* edit = qobject_cast<QuantityEdit*>(page.form().editorOf("arc_voltage_V"));
  const QString before = edit->text();
  actions.typeOver("28 mm");
  EXPECT_TRUE(edit->refusal().contains("V")) << edit->refusal().toStdString();
  bool shown = false;
  for (QLabel* label : edit->parentWidget()->findChildren<QLabel*>())
    shown = shown || (label->isVisible() && label->text() == edit->refusal());
  EXPECT_TRUE(shown);
  actions.key(Qt::Key_Escape);
  EXPECT_EQ(edit->text(), before);
  EXPECT_TRUE(edit->refusal().isEmpty());
}

TEST_F(DeskTest, ArrowKeysStepANumber) {
  make_drafts(window->document());
  settle();
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  auto& page = page_of<SchedulesPage>(*window, DeskPage::schedules);
  ASSERT_TRUE(page.form().focusField("arc_voltage_V"));
  const double before = window->document().plan()->schedules[0].arc_voltage_V;
  actions.key(Qt::Key_Up);
  actions.key(Qt::Key_Up);
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[0].arc_voltage_V, before + 2);
  actions.key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[0].arc_voltage_V, before);
}

TEST_F(DeskTest, ACellIsEditedInPlaceAndARangeGoesToASpreadsheetAndBack) {
  make_drafts(window->document());
  settle();
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  GridView& table = page_of<SchedulesPage>(*window, DeskPage::schedules).table();
  ASSERT_TRUE(table.focusCell(0, "travel_speed_mm_s"));
  actions.type("11");
  actions.key(Qt::Key_Return);
  EXPECT_TRUE(
      QTest::qWaitFor([&] { return window->document().plan()->schedules[0].travel_speed_mm_s == 11; }, 3000));
  const int column = table.grid().columnNamed("travel_speed_mm_s");
  table.selectionModel()->select(
      QItemSelection(table.proxy().index(0, column - 1), table.proxy().index(1, column)),
      QItemSelectionModel::ClearAndSelect);
  const QString copied = table.copyText();
  EXPECT_EQ(copied.count('\n'), 1);
  EXPECT_EQ(copied.count('\t'), 2);
  EXPECT_TRUE(copied.split('\n')[0].endsWith("\t11"));
  table.setCurrentIndex(table.proxy().index(1, column));
  EXPECT_TRUE(table.paste("9.5\n18 in/min"));
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[1].travel_speed_mm_s, 9.5);
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[2].travel_speed_mm_s, 7.62);
}

TEST_F(DeskTest, ASchedulesDifferenceToTheSameOneOfAnotherPlanIsShown) {
  QTemporaryDir folder;
  const QString path = folder.filePath("older.weldplan.json");
  Plan older = *window->document().plan();
  older.schedules[2].arc_voltage_V += 1;
  save_atomically(path.toStdString(), write_plan(older));
  UserActions actions(*window);
  actions.page(DeskPage::schedules);
  auto& page = page_of<SchedulesPage>(*window, DeskPage::schedules);
  page.compareWith(path);
  window->selection().setSchedule(1);
  EXPECT_EQ(page.difference().grid().rowCount(), 0) << "the same in both plans";
  window->selection().setSchedule(2);
  ASSERT_EQ(page.difference().grid().rowCount(), 1);
  EXPECT_EQ(page.difference().grid().index(0, 0).data().toString(), "Arc voltage, V");
}

TEST_F(DeskTest, SortingGoesByTheNumberAndNotByItsText) {
  GridView& table = page_of<SeamsPage>(*window, DeskPage::seams).table();
  const int column = table.grid().columnNamed("pass.heat_input_kJ_mm");
  table.sortByColumn(column, Qt::DescendingOrder);
  double last = 1e9;
  for (int row = 0; row < table.proxy().rowCount(); ++row) {
    const QVariant value = table.proxy().index(row, column).data(1 + Qt::UserRole);
    if (value.typeId() != QMetaType::Double) continue;
    EXPECT_LE(value.toDouble(), last);
    last = value.toDouble();
  }
}

}  // namespace
}  // namespace seamtakt::desk
