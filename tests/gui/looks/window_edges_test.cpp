// The operating window names the limit on each edge of its region, draws the edge without stairs, and keeps
// its texts off the working point.
#include <QFont>
#include <cmath>

#include "pages/heat_page.hpp"
#include "pages/window_panel.hpp"
#include "plots/window_edges.hpp"
#include "plots/window_plot.hpp"
#include "user_actions.hpp"
#include "widgets/grid_view.hpp"

namespace seamtakt::desk {
namespace {

constexpr std::size_t points = 101;

/// Limits as functions of the axes, which go from 0 to 100: limit k is broken where its function is above 0.
template <class... Limit>
WindowMap map_of(const Limit&... limits) {
  WindowMap map;
  for (std::size_t i = 0; i < points; ++i) {
    map.wire_feed_speed_m_min.push_back(static_cast<double>(i));
    map.travel_speed_mm_s.push_back(static_cast<double>(i));
  }
  map.limits.resize(sizeof...(limits));
  map.cutting = (1u << sizeof...(limits)) - 1;
  for (std::size_t feed = 0; feed < points; ++feed)
    for (std::size_t speed = 0; speed < points; ++speed) {
      std::uint32_t broken = 0, bit = 1;
      ((broken |= limits(static_cast<double>(feed), static_cast<double>(speed)) > 0 ? bit : 0, bit <<= 1),
       ...);
      map.broken.push_back(broken);
    }
  return map;
}

TEST(WindowEdges, EachLimitIsNamedInTheMiddleOfItsEdge) {
  const WindowMap map =
      map_of([](double, double speed) { return speed - 60.5; },
             [](double feed, double) { return 20.5 - feed; }, [](double feed, double) { return feed - 90.5; },
             [](double feed, double speed) { return 0 * feed + speed - 80.5; });
  const auto edges = window_edges(map);
  ASSERT_EQ(edges.size(), 3u) << "the last limit lies behind the first one";
  EXPECT_EQ(edges[0].limit, 0u);
  EXPECT_NEAR(edges[0].travel_speed_mm_s, 61, 1);
  EXPECT_NEAR(edges[0].wire_feed_speed_m_min, 55, 2);
  EXPECT_EQ(edges[1].limit, 1u);
  EXPECT_NEAR(edges[1].wire_feed_speed_m_min, 20, 1);
  EXPECT_EQ(edges[2].limit, 2u);
}

TEST(WindowEdges, ALimitThatDoesNotCutHasNoEdge) {
  WindowMap map = map_of([](double, double speed) { return speed - 60.5; });
  map.cutting = 0;
  EXPECT_TRUE(window_edges(map).empty());
}

TEST(WindowEdges, ASlantedEdgeHasNoStairs) {
  // One to four: a stair of four points' tread.
  const WindowMap map = map_of([](double feed, double speed) { return speed - 20 - feed / 4; });
  const ContourLines lines = feasible_outline(map);
  ASSERT_GT(lines.x.size(), 50u);
  double worst = 0;
  int seen = 0;
  for (std::size_t i = 0; i < lines.x.size(); ++i) {
    if (std::isnan(lines.x[i]) || lines.y[i] < 8 || lines.y[i] > 92) continue;
    ++seen;
    // The map's points put the edge half a point behind the last one inside: 1/8 beyond on the mean.
    worst = std::max(worst, std::abs(lines.x[i] - 20.125 - lines.y[i] / 4) / std::hypot(1, 0.25));
  }
  EXPECT_GT(seen, 50);
  EXPECT_LT(worst, 0.2) << "in points of the map; a stair is off by up to 0.36";
}

TEST_F(DeskTest, AtOneAndAHalfTimesTheSizeNoTextIsOnTheWorkingPointOrOnAnother) {
  const QFont font = QApplication::font();
  QFont large = font;
  large.setPointSizeF(font.pointSizeF() * 1.5);
  QApplication::setFont(large);
  UserActions actions(*window);
  actions.page(DeskPage::heat);
  auto& page = page_of<HeatPage>(*window, DeskPage::heat);
  WindowPlot& plot = page.window().plot();
  int seen = 0;
  for (const int row : {0, 3, 9, 20}) {
    page.table().selectRow(row);
    ASSERT_TRUE(QTest::qWaitFor([&] { return !plot.map().broken.empty(); }));
    QApplication::processEvents();
    plot.restyle();
    QRectF point(0, 0, 28, 28);
    point.moveCenter(plot.pointPixel());
    for (std::size_t i = 0; i < plot.labels().size(); ++i) {
      ++seen;
      EXPECT_FALSE(plot.labels()[i].intersects(point)) << "row " << row;
      for (std::size_t k = 0; k < i; ++k) EXPECT_FALSE(plot.labels()[i].intersects(plot.labels()[k]));
    }
  }
  EXPECT_GT(seen, 8);
  photograph("window-large");
  QApplication::setFont(font);
}

}  // namespace
}  // namespace seamtakt::desk
