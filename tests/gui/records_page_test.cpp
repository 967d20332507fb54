#include <QPushButton>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <cmath>

#include "pages/actual_panel.hpp"
#include "pages/records_page.hpp"
#include "plan/seam_geometry.hpp"
#include "plots/individuals_plot.hpp"
#include "plots/trace_view.hpp"
#include "user_actions.hpp"
#include "widgets/explain_panel.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

TEST_F(DeskTest, ALogIsImportedStoppedAndImportedAgain) {
  UserActions actions(*window);
  actions.page(DeskPage::records);
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
  QSignalSpy stopped(&page.job(), &LogImport::cancelled);
  page.importLogs({demo_log()});
  page.job().cancel();
  page.job().wait();
  EXPECT_EQ(stopped.count(), 1);
  EXPECT_FALSE(page.logs());
  for (QPushButton* button : page.findChildren<QPushButton*>())
    if (button->accessibleName() == "Demo log") actions.click(button);
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
  actions.key(Qt::Key_Plus);
  EXPECT_LT(page.trace().to() - page.trace().from(), all);
}

TEST_F(DeskTest, EveryPassOfTheDemoLogHasItsSamples) {
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
  page.importLogs({demo_log()});
  page.job().wait();
  ASSERT_TRUE(page.logs());
  for (const PassRecord& record : page.logs()->audit.passes) {
    std::size_t begin = 0, end = 0;
    ASSERT_NE(trace_of(*page.logs(), record, begin, end), nullptr) << record.place();
    EXPECT_EQ(end - begin, record.samples) << record.place();
  }
}

/// The demo's fault: 30 % less current in the middle third of a pass.
TEST_F(DeskTest, TheTraceMarksWhereALimitWasLeft) {
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
  page.importLogs({demo_log()});
  page.job().wait();
  ASSERT_TRUE(page.logs());
  const AuditResult& audit = page.logs()->audit;
  int unit = 0, row = 0;
  while (audit.units.at(static_cast<std::size_t>(unit)).unit_serial != "AE-26-0102") ++unit;
  for (const PassRecord& record : audit.passes) {
    if (record.unit_serial != "AE-26-0102") continue;
    if (record.seam == "S03") break;
    ++row;
  }
  page.units().selectRow(unit);
  page.passes().selectRow(row);
  ASSERT_EQ(page.trace().marks().size(), 1u);
  const TraceMark& mark = page.trace().marks()[0];
  EXPECT_EQ(mark.channel, Trace::current);
  EXPECT_GT(mark.to_s - mark.from_s, 15);
  EXPECT_LT(mark.value, 271);
  EXPECT_TRUE(TraceView::markText(mark).startsWith("outside for "))
      << TraceView::markText(mark).toStdString();
  page.passes().selectRow(0);
  EXPECT_TRUE(page.trace().marks().empty());
}

/// Four seconds of the demo's first seam, from its beginning on.
QString short_log(const QTemporaryDir& folder, const Plan& plan) {
  const Weldment& weldment = plan.weldments.at(0);
  const Seam& seam = weldment.seams.at(0);
  const Point_mm from = seam.path_mm.at(0), to = seam.path_mm.at(1);
  QString text = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,x_mm,y_mm,z_mm\n";
  for (int i = 0; i <= 40; ++i) {
    const double share = i * 0.5 / distance_mm(from, to);
    text += QString("%1,U1,%2,%3,1,%4,25.%5").arg(i / 10.0).arg(weldment.id.c_str(), seam.id.c_str());
    text = text.arg(i < 40 ? 200 + i % 2 : 0).arg(i % 3);
    for (std::size_t k = 0; k < 3; ++k) text += QString(",%1").arg(from[k] + share * (to[k] - from[k]));
    text += "\n";
  }
  QFile file(folder.filePath("short.csv"));
  EXPECT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(text.toUtf8());
  return file.fileName();
}

TEST_F(DeskTest, WhatKeepsAUnitIncompleteIsInItsRowWithTheReason) {
  const QTemporaryDir folder;
  UserActions actions(*window);
  actions.page(DeskPage::records);
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
  page.importLogs({short_log(folder, *window->document().plan())});
  page.job().wait();
  ASSERT_TRUE(page.logs());
  const GridModel& units = page.units().grid();
  ASSERT_EQ(units.rowCount(), 1);
  const auto cell = [&](const char* key) { return units.index(0, units.columnNamed(key)); };
  EXPECT_EQ(cell("complete").data().toString(), "no");
  EXPECT_TRUE(cell("open").data().toString().contains("1 × a part of its seam"))
      << cell("open").data().toString().toStdString();
  const QString tip = cell("open").data(Qt::ToolTipRole).toString();
  EXPECT_TRUE(tip.contains("mm (runs: 1) where the seam needs")) << tip.toStdString();
  EXPECT_TRUE(page.figure().startsWith("0 of 1")) << page.figure().toStdString();
}

TEST_F(DeskTest, EachScheduleHasItsControlChartAndCapability) {
  UserActions actions(*window);
  actions.page(DeskPage::records);
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
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
  actions.key(Qt::Key_Down);
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

TEST_F(DeskTest, UnitsAreShownBesideTheirPlannedCycles) {
  UserActions actions(*window);
  actions.page(DeskPage::records);
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
  page.importLogs({demo_log()});
  page.job().wait();
  ASSERT_TRUE(page.logs());
  ActualPanel& panel = page.actual();
  page.tabs().setCurrentWidget(&panel);
  GridView& units = panel.units();
  ASSERT_EQ(units.grid().rowCount(), 3);
  EXPECT_EQ(units.grid().index(1, units.grid().columnNamed("weldment")).data().toString(), "TT");
  // From 06:19:26.4 to 07:15:53.5 in the log.
  EXPECT_NEAR(units.grid().index(1, units.grid().columnNamed("logged_s")).data().toString().toDouble(),
              3387.1, 0.1);
  units.setFocus();
  units.selectRow(1);
  const GridModel& steps = panel.steps().grid();
  std::size_t expected = 0;
  for (const RobotActual& robot : page.logs()->cycles.units[1].robots) expected += robot.steps.size();
  ASSERT_EQ(steps.rowCount(), static_cast<int>(expected));
  EXPECT_EQ(steps.index(0, steps.columnNamed("unit_serial")).data().toString(), "AE-26-0102");
  const QString kind = steps.index(0, steps.columnNamed("kind")).data().toString();
  EXPECT_TRUE(kind == "arc" || kind == "gap") << kind.toStdString();
  photograph("records-actual");
  window->document().open(demo_path());
  EXPECT_EQ(units.grid().rowCount(), 0) << "another plan: the comparison was with the last one";
}

TEST_F(DeskTest, F1OnALoggedNumberExplainsIt) {
  UserActions actions(*window);
  actions.page(DeskPage::records);
  auto& page = page_of<RecordsPage>(*window, DeskPage::records);
  page.importLogs({demo_log()});
  page.job().wait();
  ASSERT_TRUE(page.logs());
  actions.key(Qt::Key_F1);
  ASSERT_TRUE(window->explain().isVisible());
  const auto explained = [&](const char* key) {
    page.passes().setFocus();
    page.passes().setCurrentIndex(page.passes().proxy().index(0, page.passes().grid().columnNamed(key)));
    return window->explain().text();
  };
  const QString heat = explained("heat_input_kJ_mm");
  for (const char* part :
       {"en-1011-1, Table 1", "k = 0.8 of EN 1011-1", "mean product", "arc-log.csv.gz", "certificate "})
    EXPECT_TRUE(heat.contains(part)) << part << "\n" << heat.toStdString();
  EXPECT_TRUE(explained("U_heat_input_kJ_mm").contains("of the variance"))
      << window->explain().text().toStdString();
  EXPECT_TRUE(explained("mean_current_A").contains("What was logged"))
      << window->explain().text().toStdString();
  EXPECT_FALSE(explained("mean_current_A").contains("en-1011-1"));
  EXPECT_TRUE(explained("seam").startsWith("Choose a number of the pass"))
      << window->explain().text().toStdString();
  actions.page(DeskPage::seams);
  EXPECT_FALSE(window->explain().text().contains("What was logged"))
      << "another page explains its own values";
}

}  // namespace
}  // namespace seamtakt::desk
