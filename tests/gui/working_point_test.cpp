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

TEST_F(DeskTest, TheWorkingPointIsDraggedWithTheMouseAndUndoneInOneStep) {
  make_drafts(window->document());
  settle();
  UserActions actions(*window);
  actions.page(DeskPage::heat);
  auto& page = page_of<HeatPage>(*window, DeskPage::heat);
  page.table().selectRow(3);
  WindowPlot& plot = page.window().plot();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !plot.map().broken.empty(); }));
  QApplication::processEvents();  // laid out and painted: the point has its place
  const std::string schedule = plot.map().schedule;
  const auto at = *find_schedule(*window->document().plan(), schedule);
  const double before = window->document().plan()->schedules[at].travel_speed_mm_s;
  QWidget* canvas = plot.findChild<QWidget*>();
  const QPoint from = plot.pointPixel().toPoint(), to = from + QPoint(40, -25);
  QTest::mousePress(canvas, Qt::LeftButton, {}, from);
  for (int step = 1; step <= 5; ++step) QTest::mouseMove(canvas, from + (to - from) * step / 5);
  QTest::mouseRelease(canvas, Qt::LeftButton, {}, to);
  QApplication::processEvents();
  EXPECT_GT(window->document().plan()->schedules[at].travel_speed_mm_s, before);
  settle();
  window->document().undo().undo();
  EXPECT_DOUBLE_EQ(window->document().plan()->schedules[at].travel_speed_mm_s, before);
}

TEST_F(DeskTest, AWindowOnStainlessSteelHasNoCoolingTimesAndSaysSo) {
  ASSERT_FALSE(window->document().edit("metals", {}, [](Plan& plan) {
    for (BaseMetal& metal : plan.base_metals)
      metal.composition_pct = {{"C", 0.04}, {"Cr", 18.1}, {"Ni", 8.1}};
  }));
  settle();
  UserActions actions(*window);
  actions.page(DeskPage::heat);
  auto& page = page_of<HeatPage>(*window, DeskPage::heat);
  page.table().selectRow(3);
  WindowPlot& plot = page.window().plot();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !plot.map().broken.empty(); }));
  QApplication::processEvents();  // laid out and painted: the point has its place
  EXPECT_TRUE(plot.map().cooling_time_s.empty());
  QString read_out;
  QObject::connect(&plot, &WindowPlot::readOut, [&](const QString& text) { read_out = text; });
  QTest::mouseMove(plot.findChild<QWidget*>(), plot.pointPixel().toPoint() + QPoint(30, 20));
  QApplication::processEvents();
  EXPECT_TRUE(read_out.contains("Heat input")) << read_out.toStdString();
  EXPECT_FALSE(read_out.contains("t8/5")) << read_out.toStdString();
  const QModelIndex cell = page.table().proxy().index(3, page.table().grid().columnNamed("cooling_time_s"));
  EXPECT_EQ(cell.data().toString(), "–");
}

TEST_F(DeskTest, TheWorkingPointIsMovedWithArrowKeysToo) {
  make_drafts(window->document());
  settle();
  UserActions actions(*window);
  actions.page(DeskPage::heat);
  auto& page = page_of<HeatPage>(*window, DeskPage::heat);
  page.table().selectRow(0);
  WindowPlot& plot = page.window().plot();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !plot.map().broken.empty(); }));
  QApplication::processEvents();  // laid out and painted: the point has its place
  const auto at = *find_schedule(*window->document().plan(), plot.map().schedule);
  const double before = window->document().plan()->schedules[at].wire_feed_speed_m_min;
  plot.setFocus();
  actions.key(Qt::Key_Up);
  EXPECT_NEAR(window->document().plan()->schedules[at].wire_feed_speed_m_min, before + 0.1, 1e-9);
}

}  // namespace
}  // namespace seamtakt::desk
