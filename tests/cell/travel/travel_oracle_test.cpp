// The optima of small cells with a load orientation, tracks, ways over a clearance and torches that keep a
// distance, proved apart from the program by trying everything (oracle/travel_cells.py).
#include <gtest/gtest.h>

#include <cstdint>
#include <fstream>

#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "cell/cell_plan.hpp"
#include "cell/search/best_order.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {
namespace {

/// As the script's: the cells must be the same.
class TravelDraws {
 public:
  explicit TravelDraws(std::uint32_t seed) : state_(seed) {}
  int below(std::uint32_t count) {
    state_ = state_ * 1664525u + 1013904223u;
    return static_cast<int>((state_ >> 16) % count);
  }

 private:
  std::uint32_t state_;
};

Orientation at_axes(const std::string& id, std::vector<double> axes_deg) {
  Orientation orientation;
  orientation.id = id;
  orientation.axes_deg = std::move(axes_deg);
  return orientation;
}

void add_load_pose(Cell& cell) {
  cell.orientations = {at_axes("up", {0, 0}), at_axes("down", {180, 0}), at_axes("left", {90, 45})};
  cell.positioner = Positioner{};
  cell.positioner->load_orientation = "up";
  cell.positioner->axis_deg_s = {30, 20};
  cell.positioner->settle_s = 1;
}

void add_way(Robot& robot) {
  robot.approach_mm = 40;
  robot.clearance_mm = 500;
  robot.base_mm = Point_mm{0, -800, 0};
  robot.track = Track{"x", -500, 2000, 400, 400, {}};
}

Plan travel_plan(int number) {
  const int kind = number % 4;
  const bool is_alone = kind < 2, has_load = kind != 2, is_apart = kind >= 2;
  TravelDraws draws(static_cast<std::uint32_t>(7000 + number));
  Plan plan = plain_plan();
  Cell& cell = *plan.cell;
  cell.robots = {robot_at("R1", {-200, -300, 500})};
  if (!is_alone) cell.robots.push_back(robot_at("R2", {700, -300, 500}));
  if (kind == 1 || kind == 3)
    for (Robot& robot : cell.robots) add_way(robot);
  if (has_load) add_load_pose(cell);
  if (is_apart) cell.min_torch_distance_mm = 300;
  for (int i = 0; i < (is_alone ? 5 : 4); ++i) {
    Point_mm begin{};
    begin[0] = draws.below(is_apart ? 20 : 60) * 25.0;
    begin[1] = draws.below(is_apart ? 10 : 30) * 25.0;
    begin[2] = is_apart ? 0 : draws.below(10) * 25.0;
    Point_mm end = begin;
    const auto axis = static_cast<std::size_t>(draws.below(2));
    end[axis] += (4 + draws.below(20)) * 10.0;
    Seam seam = seam_along("S" + std::to_string(i), {begin, end});
    if (draws.below(4) == 0) seam.direction = "as-drawn";
    const int pose = draws.below(is_alone ? 3 : 2), who = draws.below(3);
    if (has_load) seam.orientation = cell.orientations[static_cast<std::size_t>(pose)].id;
    if (!is_alone && who < 2) seam.robots = {who == 0 ? "R1" : "R2"};
    plan.weldments[0].seams.push_back(seam);
  }
  return plan;
}

TEST(TravelOracle, BestReachesTheProvenOptimumOfEachCell) {
  std::ifstream file(source_path("/tests/cell/oracle/travel_optima.csv"));
  std::string line;
  std::getline(file, line);
  ASSERT_EQ(line, "cell,robots,seams,optimum_s");
  int cells = 0;
  while (std::getline(file, line)) {
    const int number = std::stoi(line.substr(0, line.find(',')));
    const double optimum_s =
        parse_quantity(line.substr(line.rfind(',') + 1), *find_unit("s"), "travel_optima.csv");
    const Plan plan = travel_plan(number);
    const CellModel model = compile_cell(plan, plan.weldments[0], evaluation_of(plan)).model;
    BestOptions options;
    options.steps = 30000;
    const BestOrder best = best_order(model, options);
    EXPECT_NEAR(best.makespan_s, optimum_s, 2e-6) << "cell " << number;
    EXPECT_LE(best.bound_s, optimum_s + 2e-6) << "cell " << number;
    if (model.robot_count() == 1) {
      EXPECT_GT(best.bound_s, optimum_s / 2) << "cell " << number;
    }
    ++cells;
  }
  EXPECT_EQ(cells, 12);
}

}  // namespace
}  // namespace seamtakt::test
