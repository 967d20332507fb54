#include <QPushButton>
#include <QSignalSpy>
#include <QTabWidget>
#include <cmath>

#include "hands.hpp"
#include "pages/records_page.hpp"
#include "plots/individuals_plot.hpp"
#include "plots/trace_view.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

TEST_F(DeskTest, ALogIsImportedStoppedAndImportedAgain) {
  Hands hands(*window);
  hands.page(5);
  auto& page = page_of<RecordsPage>(*window, 5);
  QSignalSpy stopped(&page.job(), &LogImport::cancelled);
  page.importLogs({demo_log()});
  page.job().cancel();
  page.job().wait();
  EXPECT_EQ(stopped.count(), 1);
  EXPECT_FALSE(page.logs());
  for (QPushButton* button : page.findChildren<QPushButton*>())
    if (button->accessibleName() == "Demo log") hands.click(button);
  page.job().wait();
  ASSERT_TRUE(page.logs());
  EXPECT_GT(page.logs()->audit.passes.size(), 10u);
  EXPECT_TRUE(page.logs()->audit.rows.add_up());
  EXPECT_EQ(page.units().grid().rowCount(), static_cast<int>(page.logs()->audit.units.size()));
  EXPECT_FALSE(page.figure().isEmpty());
  page.passes().setFocus();
  page.passes().setCurrentIndex(page.passes().proxy().index(0, 0));
  EXPECT_GT(page.trace().to(), page.trace().from());
  const double all = page.trace().to() - page.trace().from();
  page.trace().setFocus();
  hands.key(Qt::Key_Plus);
  EXPECT_LT(page.trace().to() - page.trace().from(), all);
}

TEST_F(DeskTest, EveryPassOfTheDemoLogHasItsSamples) {
  auto& page = page_of<RecordsPage>(*window, 5);
  page.importLogs({demo_log()});
  page.job().wait();
  ASSERT_TRUE(page.logs());
  for (const PassRecord& record : page.logs()->audit.passes) {
    std::size_t begin = 0, end = 0;
    ASSERT_NE(trace_of(*page.logs(), record, begin, end), nullptr) << record.place();
    EXPECT_EQ(end - begin, record.samples) << record.place();
  }
}

TEST_F(DeskTest, EachScheduleHasItsControlChartAndCapability) {
  Hands hands(*window);
  hands.page(5);
  auto& page = page_of<RecordsPage>(*window, 5);
  page.importLogs({demo_log()});
  page.job().wait();
  ASSERT_TRUE(page.logs());
  const auto& statistics = page.logs()->audit.statistics.quantities;
  ASSERT_GT(statistics.size(), 3u);
  page.tabs().setCurrentIndex(1);
  GridView& table = page.statistics();
  ASSERT_EQ(table.grid().rowCount(), static_cast<int>(statistics.size()));
  table.setFocus();
  table.setCurrentIndex(table.proxy().index(0, 0));
  hands.key(Qt::Key_Down);
  const QuantityStatistics& of = statistics[static_cast<std::size_t>(table.currentRow())];
  const IndividualsChart& chart = page.chart().chart();
  ASSERT_TRUE(chart.chart);
  EXPECT_EQ(chart.chart->upper, of.chart.upper);
  EXPECT_EQ(chart.points.size(), of.values.size());
  EXPECT_EQ(chart.runs.size(), of.chart_signals.size());
  ASSERT_TRUE(of.capability);
  const QString shown =
      table.grid().index(table.currentRow(), table.grid().columnNamed("Ppk")).data().toString();
  photograph("records-charts");
  EXPECT_NEAR(shown.toDouble(), *of.capability->Ppk, 0.01 * std::abs(*of.capability->Ppk));
}

}  // namespace
}  // namespace seamtakt::desk
