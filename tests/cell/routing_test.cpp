#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <numeric>

#include "cell/search/best_order.hpp"
#include "cell/search/seeded_draws.hpp"
#include "cell/timeline/assignment.hpp"
#include "cell/timeline/robot_travel.hpp"
#include "cell_plan.hpp"
#include "routing_instance.hpp"
#include "support/folder_test.hpp"

namespace seamtakt::test {
namespace {

RoutingProblem random_problem(unsigned seed, int clusters, int widest, bool symmetric, double precedence) {
  SeededDraws draws(seed);
  RoutingProblem problem;
  for (int i = 0; i < clusters; ++i)
    problem.first_node.push_back(problem.first_node.back() + (i == 0 ? 1 : 1 + draws.below(widest)));
  const int nodes = problem.node_count();
  problem.cost.resize(static_cast<std::size_t>(nodes * nodes));
  for (int i = 0; i < nodes; ++i)
    for (int k = 0; k < nodes; ++k)
      problem.cost[static_cast<std::size_t>(i * nodes + k)] =
          symmetric && k < i ? problem.between(k, i) : draws.below(100);
  for (int i = 1; i < clusters; ++i)
    for (int k = i + 1; k < clusters; ++k)
      if (draws.chance(precedence)) problem.before.emplace_back(i, k);
  return problem;
}

/// The shortest trip by trying every order and node.
double exhaustive(const RoutingProblem& problem) {
  std::vector<int> order(static_cast<std::size_t>(problem.cluster_count()) - 1);
  std::iota(order.begin(), order.end(), 1);
  double best = INFINITY;
  do {
    bool allowed = true;
    for (const auto& [a, b] : problem.before)
      allowed =
          allowed && std::find(order.begin(), order.end(), a) < std::find(order.begin(), order.end(), b);
    if (!allowed) continue;
    const auto go = [&](const auto& self, std::size_t at, int node, double length) -> void {
      if (length >= best) return;
      if (at == order.size()) {
        best = std::min(best, length + problem.between(node, 0));
        return;
      }
      for (int next = problem.first_node[order[at]]; next < problem.first_node[order[at] + 1]; ++next)
        self(self, at + 1, next, length + problem.between(node, next));
    };
    go(go, 0, 0, 0);
  } while (std::next_permutation(order.begin(), order.end()));
  return best;
}

RoutingOptions trials(std::uint64_t count, std::uint64_t seed = 1) {
  RoutingOptions options;
  options.steps = count;
  options.seed = seed;
  return options;
}

TEST(Routing, FindsTheShortestOfAllTripsOfSmallProblems) {
  for (unsigned seed = 0; seed < 60; ++seed) {
    const int clusters = 3 + static_cast<int>(seed % 5), widest = 1 + static_cast<int>(seed % 3);
    const RoutingProblem problem = random_problem(seed, clusters, widest, false, seed % 2 ? 0.2 : 0);
    const double least = exhaustive(problem);
    const Route route = shortest_route(problem, trials(20000));
    EXPECT_EQ(route.length, least) << "seed " << seed;
    EXPECT_EQ(length_of(problem, route.nodes), least) << "seed " << seed;
    EXPECT_LE(route_bound(problem), least + 1e-9) << "seed " << seed;
  }
}

TEST(Routing, FindsTheShortestSymmetricTripOfEightPoints) {
  for (unsigned seed = 0; seed < 12; ++seed) {
    const RoutingProblem problem = random_problem(seed, 8, 1, true, 0);
    ASSERT_TRUE(is_reversible(problem));
    const Route route = shortest_route(problem, trials(2000));
    EXPECT_EQ(route.length, exhaustive(problem)) << "seed " << seed;
    EXPECT_LE(route_bound(problem), route.length + 1e-9) << "seed " << seed;
  }
}

/// Points on a circle: the shortest trip goes round it, the 1-tree bound is that trip.
TEST(Routing, GoesRoundACircle) {
  constexpr int count = 60;
  RoutingProblem problem;
  for (int i = 1; i <= count; ++i) problem.first_node.push_back(i);
  for (int i = 0; i < count; ++i)
    for (int k = 0; k < count; ++k) {
      const double angle = 2 * M_PI * (i * 23 % count - k * 23 % count) / count;
      problem.cost.push_back(2 * std::abs(std::sin(angle / 2)));
    }
  const double round = count * 2 * std::sin(M_PI / count);
  const Route route = shortest_route(problem, trials(500));
  EXPECT_NEAR(route.length, round, 1e-9);
  EXPECT_NEAR(route_bound(problem), round, 1e-6 * round);
}

RC_GTEST_PROP(Routing, TheBoundIsNeverAboveARoute, ()) {
  const unsigned seed = *rc::gen::inRange<unsigned>(0u, 2000000000u);
  const int clusters = *rc::gen::inRange(2, 25);
  const RoutingProblem problem = random_problem(seed, clusters, *rc::gen::inRange(1, 4),
                                                *rc::gen::inRange(0, 2) == 1, seed % 3 ? 0 : 0.1);
  const Route route = shortest_route(problem, trials(2000, seed));
  RC_ASSERT(length_of(problem, route.nodes) == route.length);
  RC_ASSERT(route_bound(problem) <= route.length * (1 + 1e-9));
}

TEST(Routing, TheSameSeedAndTrialsGiveTheSameRoute) {
  for (const bool symmetric : {false, true}) {
    const RoutingProblem problem = random_problem(5, 40, symmetric ? 1 : 2, symmetric, 0);
    EXPECT_EQ(shortest_route(problem, trials(3000, 4)).nodes, shortest_route(problem, trials(3000, 4)).nodes);
  }
}

TEST(Routing, RefusesACircularPrecedence) {
  RoutingProblem problem = random_problem(1, 4, 1, false, 0);
  problem.before = {{1, 2}, {2, 3}, {3, 1}};
  EXPECT_THROW(shortest_route(problem, trials(10)), std::invalid_argument);
}

TEST(Assignment, IsTheLeastOfAllPermutations) {
  SeededDraws draws(3);
  for (int round = 0; round < 50; ++round) {
    const int count = 1 + round % 6;
    std::vector<double> cost(static_cast<std::size_t>(count * count));
    for (double& at : cost) at = draws.below(30);
    std::vector<int> columns(static_cast<std::size_t>(count));
    std::iota(columns.begin(), columns.end(), 0);
    double least = INFINITY;
    do {
      double sum = 0;
      for (int i = 0; i < count; ++i) sum += cost[static_cast<std::size_t>(i * count + columns[i])];
      least = std::min(least, sum);
    } while (std::next_permutation(columns.begin(), columns.end()));
    EXPECT_EQ(assignment_cost(cost, count), least);
  }
}

/// Seams along x and y, some of them fixed: the route's length is what the scheduler takes for the air moves.
TEST(RobotTravel, IsTheAirTimeOfTheTimeline) {
  SeededDraws draws(2);
  Plan plan = plain_plan();
  for (int i = 0; i < 30; ++i) {
    const double x = draws.below(3000), y = draws.below(1500);
    plan.weldments[0].seams.push_back(seam_along("S" + std::to_string(i),
                                                 {{x, y, 0}, {x + 10 * draws.below(30), y + 50, 0}},
                                                 static_cast<std::size_t>(1 + draws.below(3))));
  }
  const CellModel model = compile_cell(plan, plan.weldments[0], evaluation_of(plan)).model;
  ASSERT_TRUE(travel_decides(model));
  std::vector<int> seams(model.seams.size());
  std::iota(seams.begin(), seams.end(), 0);
  const RoutingProblem problem = travel_of(model, 0, seams);
  const Route route = shortest_route(problem, trials(3000));
  double work_s = 0;
  for (std::size_t pass = 0; pass < model.passes.size(); ++pass) work_s += model.weld_s[pass];
  const double makespan_s = Scheduler(model).makespan_s(steps_of(model, 0, seams, route));
  EXPECT_NEAR(makespan_s, work_s + route.length, 1e-9);
  BestOptions options;
  options.steps = 20000;
  EXPECT_LE(best_order(model, options).makespan_s, makespan_s + 1e-9);
}

/// Published instances as cells: seams shrunk to points, the air table replaced by the library's distances,
/// so that `best` itself gives the tour's length as its makespan.
CellModel cell_of_points(const RoutingProblem& problem) {
  Plan plan = plain_plan();
  Robot& robot = plan.cell->robots[0];
  robot.wrist_s = robot.arc_start_s = robot.crater_fill_s = robot.post_flow_s = 0;
  for (int i = 1; i < problem.node_count(); ++i) {
    plan.weldments[0].seams.push_back(seam_along("S" + std::to_string(i), {{0, 0, 0}, {5, 0, 0}, {0, 0, 0}}));
    plan.weldments[0].seams.back().direction = "as-drawn";
  }
  Evaluation evaluation = evaluation_of(plan);
  for (PassEvaluation& pass : evaluation.passes) pass.arc_time_s = 0;
  CellModel model = compile_cell(plan, plan.weldments[0], evaluation).model;
  const auto node_of = [&](std::size_t point) {
    return point == static_cast<std::size_t>(model.home_point(0)) ? 0 : static_cast<int>(point / 2) + 1;
  };
  const std::size_t points = model.points.size();
  model.motions[0].air_s.resize(points * points);
  for (std::size_t a = 0; a < points; ++a)
    for (std::size_t b = 0; b < points; ++b)
      model.motions[0].air_s[a * points + b] = problem.between(node_of(a), node_of(b));
  return model;
}

std::string sequencing_folder() {
  const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
  return folder ? folder + std::string("/sequencing/") : "";
}

TEST(PublishedRoutes, BestFindsTheOptimaOfSeamsShrunkToPoints) {
  if (sequencing_folder().empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA doesn't name the open data's folder";
  const std::pair<const char*, double> optima[] = {
      {"eil51.tsp", 426}, {"st70.tsp", 675}, {"kroA100.tsp", 21282}};
  for (const auto& [file, optimum] : optima) {
    const RoutingInstance instance = read_routing_instance(sequencing_folder() + "tsplib/" + file);
    const CellModel model = cell_of_points(instance.problem);
    ASSERT_TRUE(travel_decides(model));
    BestOptions options;
    options.steps = 20000;
    const BestOrder best = best_order(model, options);
    EXPECT_EQ(best.makespan_s, optimum) << file;
    EXPECT_LE(best.bound_s, optimum) << file;
    EXPECT_GE(best.bound_s, 0.98 * optimum) << file;
  }
}

TEST(PublishedRoutes, PublishedToursHaveTheirPublishedLengths) {
  if (sequencing_folder().empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA doesn't name the open data's folder";
  const std::pair<const char*, double> optima[] = {{"eil51", 426},  {"st70", 675},  {"kroA100", 21282},
                                                   {"ch150", 6528}, {"a280", 2579}, {"pr1002", 259045}};
  for (const auto& [name, optimum] : optima) {
    const std::string path = sequencing_folder() + "tsplib/" + name;
    const RoutingInstance instance = read_routing_instance(path + ".tsp");
    std::vector<int> nodes = read_tour(path + ".opt.tour");
    for (int& node : nodes) --node;
    std::rotate(nodes.begin(), std::find(nodes.begin(), nodes.end(), 0), nodes.end());
    EXPECT_EQ(length_of(instance.problem, nodes), optimum) << name;
  }
}

TEST(PublishedRoutes, AsymmetricOrderedAndGeneralisedInstancesReachTheirOptima) {
  if (sequencing_folder().empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA doesn't name the open data's folder";
  const std::pair<const char*, double> optima[] = {
      {"tsplib/br17.atsp", 39},      {"tsplib/ftv33.atsp", 1286},   {"tsplib/ry48p.atsp", 14422},
      {"tsplib/ESC07.sop", 2125},    {"tsplib/br17.10.sop", 55},    {"pcgtsp/ESC07.pcglns", 1730},
      {"pcgtsp/ESC12.pcglns", 1390}, {"pcgtsp/br17.12.pcglns", 43}, {"pcgtsp/cutting-e1x_6.pcglns", 1513}};
  for (const auto& [file, optimum] : optima) {
    const RoutingInstance instance = read_routing_instance(sequencing_folder() + file);
    RoutingOptions options = trials(1500000);
    options.bound = optimum;
    const Route route = shortest_route(instance.problem, options);
    EXPECT_EQ(length_of(instance.problem, route.nodes), route.length) << file;
    EXPECT_GE(route.length, optimum) << file;
    EXPECT_LE(route.length, optimum * 1.01) << file;
    EXPECT_LE(route_bound(instance.problem), optimum) << file;
  }
}

class RoutingFiles : public FolderTest {
 protected:
  RoutingProblem read(const std::string& text) {
    std::ofstream(folder / "x") << text;
    return read_routing_instance(folder / "x").problem;
  }
};

TEST_F(RoutingFiles, MatrixFormatsSayTheSame) {
  const std::string head =
      "NAME : x\nTYPE: TSP\nDIMENSION: 3\nEDGE_WEIGHT_TYPE: EXPLICIT\nEDGE_WEIGHT_FORMAT: ";
  const std::pair<const char*, const char*> forms[] = {{"FULL_MATRIX", "0 1 2\n1 0 3\n2 3 0"},
                                                       {"UPPER_ROW", "1 2 3"},
                                                       {"LOWER_ROW", "1 2 3"},
                                                       {"UPPER_DIAG_ROW", "0 1 2 0 3 0"},
                                                       {"LOWER_DIAG_ROW", "0 1 0 2 3 0"},
                                                       {"UPPER_COL", "1 2 3"},
                                                       {"LOWER_COL", "1 2 3"},
                                                       {"UPPER_DIAG_COL", "0 1 0 2 3 0"},
                                                       {"LOWER_DIAG_COL", "0 1 2 0 3 0"}};
  for (const auto& [format, numbers] : forms) {
    const RoutingProblem problem = read(head + format + "\nEDGE_WEIGHT_SECTION\n" + numbers + "\nEOF\n");
    EXPECT_EQ(problem.cost, (std::vector<double>{0, 1, 2, 1, 0, 3, 2, 3, 0})) << format;
  }
}

TEST_F(RoutingFiles, DistancesAreTheLibrarys) {
  const auto between = [&](const char* type, const char* a, const char* b) {
    return read(std::string("NAME: x\nTYPE: TSP\nDIMENSION: 2\nEDGE_WEIGHT_TYPE: ") + type +
                "\nNODE_COORD_SECTION\n1 " + a + "\n2 " + b + "\nEOF\n")
        .between(0, 1);
  };
  EXPECT_EQ(between("EUC_2D", "0 0", "1 1"), 1);
  EXPECT_EQ(between("CEIL_2D", "0 0", "1 1"), 2);
  EXPECT_EQ(between("ATT", "0 0", "10 10"), 5);  // sqrt(200/10) = 4.47 goes up
  EXPECT_EQ(between("MAN_2D", "0 0", "3.2 4.4"), 8);
  EXPECT_EQ(between("MAX_2D", "0 0", "3.2 4.4"), 4);
  // burma14, first two towns: 153 km (the library's own note on GEO distances).
  EXPECT_EQ(between("GEO", "16.47 96.10", "16.47 94.44"), 153);
}

TEST_F(RoutingFiles, WhatIsNotAnInstanceIsRefusedInASentence) {
  EXPECT_THROW(read(""), std::runtime_error);
  EXPECT_THROW(read("NAME: x\nTYPE: TSP\nDIMENSION: 3\nEDGE_WEIGHT_TYPE: XRAY1\nNODE_COORD_SECTION\n1 0 0\n2 "
                    "0 0\n3 0 0\n"),
               std::runtime_error);
  EXPECT_THROW(read("NAME: x\nTYPE: TSP\nDIMENSION: 3\nEDGE_WEIGHT_TYPE: EXPLICIT\nEDGE_WEIGHT_FORMAT: "
                    "UPPER_ROW\nEDGE_WEIGHT_SECTION\n1 2\n"),
               std::runtime_error);
}

}  // namespace
}  // namespace seamtakt::test
