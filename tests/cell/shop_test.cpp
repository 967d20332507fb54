#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <map>
#include <numeric>
#include <sstream>

#include "cell/bound/lower_bound.hpp"
#include "cell/search/best_order.hpp"
#include "cell/search/seeded_draws.hpp"
#include "cell_plan.hpp"

// Shops as cells: a machine is a robot, an operation a seam that only it can weld, a job a chain of `after`;
// all seams begin and end at the robots' home, so that only the operations take time. The instances and their
// optima are those of the OR-Library (job shops) and of Taillard 1993 (flow shops).

namespace seamtakt::test {
namespace {

struct Operation {
  int machine;
  int time_s;
};
using Job = std::vector<Operation>;

struct Shop {
  std::vector<Job> jobs;
  int machines = 0;
};

Plan plan_of(const Shop& shop) {
  Plan plan = plain_plan();
  plan.cell->robots.clear();
  for (int i = 0; i < shop.machines; ++i) {
    Robot robot = robot_at("M" + std::to_string(i), {0, 0, 0});
    robot.wrist_s = robot.arc_start_s = robot.crater_fill_s = robot.post_flow_s = 0;
    plan.cell->robots.push_back(robot);
  }
  for (std::size_t job = 0; job < shop.jobs.size(); ++job)
    for (std::size_t i = 0; i < shop.jobs[job].size(); ++i) {
      const Operation& operation = shop.jobs[job][i];
      const std::string prefix = "J" + std::to_string(job) + "/";
      // Out and back at 10 mm/s.
      Seam seam =
          seam_along(prefix + std::to_string(i), {{0, 0, 0}, {operation.time_s * 5.0, 0, 0}, {0, 0, 0}});
      seam.robots = {"M" + std::to_string(operation.machine)};
      if (i > 0) seam.after = {prefix + std::to_string(i - 1)};
      plan.weldments[0].seams.push_back(seam);
    }
  return plan;
}

CellModel shop_model(const Shop& shop) {
  const Plan plan = plan_of(shop);
  return compile_cell(plan, plan.weldments[0], evaluation_of(plan)).model;
}

std::string data_folder() {
  const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
  return folder ? folder : "";
}

/// Column `value` of a table whose first column names the instance.
std::map<std::string, double> column(const std::string& path, std::size_t value) {
  std::ifstream file(path);
  std::map<std::string, double> values;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    std::vector<std::string> row;
    for (std::string cell; std::getline(cells, cell, ',');) row.push_back(cell);
    values[row.at(0)] = std::atof(row.at(value).c_str());
  }
  return values;
}

Shop job_shop(const std::string& path) {
  std::ifstream file(path);
  std::string line;
  while (std::getline(file, line) && line.find_first_of("#abcdefghijklmnopqrstuvwxyz") != std::string::npos) {
  }
  Shop shop;
  std::size_t jobs = 0;
  std::istringstream(line) >> jobs >> shop.machines;
  shop.jobs.resize(jobs);
  for (Job& job : shop.jobs) {
    job.resize(static_cast<std::size_t>(shop.machines));
    for (Operation& operation : job) file >> operation.machine >> operation.time_s;
  }
  return shop;
}

Shop flow_shop(const std::string& path) {
  std::ifstream file(path);
  std::string line;
  std::getline(file, line);
  std::getline(file, line);
  std::size_t jobs = 0;
  Shop shop;
  std::istringstream(line) >> jobs >> shop.machines;
  std::getline(file, line);
  shop.jobs.resize(jobs);
  for (int machine = 0; machine < shop.machines; ++machine)
    for (Job& job : shop.jobs) {
      job.push_back({machine, 0});
      file >> job.back().time_s;
    }
  return shop;
}

/// Each machine's completion, job by job.
double recurrence_s(const Shop& shop, const std::vector<int>& order) {
  std::vector<double> free_s(static_cast<std::size_t>(shop.machines), 0);
  for (const int job : order) {
    double ready_s = 0;
    for (const Operation& operation : shop.jobs[job])
      ready_s = free_s[operation.machine] = std::max(ready_s, free_s[operation.machine]) + operation.time_s;
  }
  return free_s.back();
}

/// The same as a product in max-plus algebra: a job is a matrix, (i, k) the time from machine k's being free
/// to machine i's completion.
double max_plus_s(const Shop& shop, const std::vector<int>& order) {
  const auto count = static_cast<std::size_t>(shop.machines);
  std::vector<double> state(count, 0);
  for (const int job : order) {
    std::vector<double> next(count, -INFINITY);
    for (std::size_t i = 0; i < count; ++i)
      for (std::size_t k = 0; k <= i; ++k) {
        double through = 0;
        for (std::size_t l = k; l <= i; ++l) through += shop.jobs[job][l].time_s;
        next[i] = std::max(next[i], state[k] + through);
      }
    state = next;
  }
  return state.back();
}

/// The timeline's makespan of a flow shop's order.
double timeline_s(const CellModel& model, const Shop& shop, const std::vector<int>& order) {
  Sequence sequence;
  for (const int job : order)
    for (int machine = 0; machine < shop.machines; ++machine)
      sequence.push_back({job * shop.machines + machine, static_cast<std::int16_t>(machine), false});
  return Scheduler(model).makespan_s(sequence);
}

/// Nawaz, Enscore and Ham (1983): the jobs by falling total time, each put where the makespan is least.
std::vector<int> neh_order(const Shop& shop) {
  std::vector<int> jobs(shop.jobs.size()), order;
  std::iota(jobs.begin(), jobs.end(), 0);
  const auto total = [&](int job) {
    int sum = 0;
    for (const Operation& operation : shop.jobs[job]) sum += operation.time_s;
    return sum;
  };
  std::stable_sort(jobs.begin(), jobs.end(), [&](int a, int b) { return total(a) > total(b); });
  for (const int job : jobs) {
    std::vector<int> best;
    for (std::size_t place = 0; place <= order.size(); ++place) {
      std::vector<int> tried = order;
      tried.insert(tried.begin() + static_cast<std::ptrdiff_t>(place), job);
      if (best.empty() || recurrence_s(shop, tried) < recurrence_s(shop, best)) best = tried;
    }
    order = best;
  }
  return order;
}

/// A job moved elsewhere, if the result isn't worse.
std::vector<int> improved(const Shop& shop, std::vector<int> order, int steps) {
  SeededDraws draws(1);
  const int jobs = static_cast<int>(order.size());
  double best_s = recurrence_s(shop, order);
  for (int step = 0; step < steps; ++step) {
    std::vector<int> tried = order;
    const int job = tried[draws.below(jobs)];
    tried.erase(std::find(tried.begin(), tried.end(), job));
    tried.insert(tried.begin() + draws.below(jobs), job);
    const double tried_s = recurrence_s(shop, tried);
    if (tried_s > best_s) continue;
    best_s = tried_s;
    order = tried;
  }
  return order;
}

TEST(Shops, TheTimelineOfTaillardsFlowShopsIsTheRecurrenceAndTheMaxPlusProduct) {
  if (data_folder().empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA doesn't name the open data's folder";
  const std::string folder = data_folder() + "/sequencing/flowshop/";
  const auto best_known = column(folder + "optima.csv", 7), neh = column(folder + "optima.csv", 8);
  ASSERT_EQ(best_known.size(), 5u);
  int reached = 0;
  for (const auto& [name, optimum_s] : best_known) {
    const Shop shop = flow_shop(folder + name);
    const CellModel model = shop_model(shop);
    ASSERT_EQ(model.seams.size(), 100u);
    EXPECT_LE(makespan_bound_s(model), optimum_s) << name;
    const std::vector<int> built = neh_order(shop), order = improved(shop, built, 60000);
    EXPECT_EQ(recurrence_s(shop, built), neh.at(name)) << name;
    for (const auto& tried : {built, order}) {
      EXPECT_EQ(timeline_s(model, shop, tried), recurrence_s(shop, tried)) << name;
      EXPECT_EQ(max_plus_s(shop, tried), recurrence_s(shop, tried)) << name;
    }
    EXPECT_GE(recurrence_s(shop, order), optimum_s) << name;
    reached += recurrence_s(shop, order) == optimum_s;
  }
  EXPECT_GE(reached, 1);
}

TEST(Shops, BestReachesThePublishedOptimaOfJobShopsAndNothingBelowThem) {
  if (data_folder().empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA doesn't name the open data's folder";
  const std::string folder = data_folder() + "/sequencing/jobshop/";
  const auto optima = column(folder + "optima.csv", 3);
  ASSERT_EQ(optima.size(), 6u);
  for (const auto& [name, optimum_s] : optima) {
    const CellModel model = shop_model(job_shop(folder + name));
    EXPECT_LE(makespan_bound_s(model), optimum_s) << name;
    BestOptions options;
#ifdef SEAMTAKT_SANITIZED
    options.steps = 20000;  // too few for the optima; the bounds hold all the same
    constexpr bool long_enough = false;
#else
    options.steps = 1000000;
    constexpr bool long_enough = true;
#endif
    const BestOrder best = best_order(model, options);
    EXPECT_GE(best.makespan_s, optimum_s) << name;
    EXPECT_EQ(Scheduler(model).makespan_s(best.sequence), best.makespan_s) << name;
    if (!long_enough) continue;
    if (name == "ft06" || name == "la01" || name == "la05") {
      EXPECT_EQ(best.makespan_s, optimum_s) << name;
    } else {
      EXPECT_LE(best.makespan_s, optimum_s * 1.06) << name;
    }
  }
}

/// Two jobs on two machines, all orders by hand: 3 then 2, and 1 then 4.
TEST(Shops, ATinyJobShopOfWhichEveryOrderIsKnown) {
  const Shop shop{{{{0, 3}, {1, 2}}, {{0, 1}, {1, 4}}}, 2};
  const CellModel model = shop_model(shop);
  EXPECT_EQ(timeline_s(model, shop, {0, 1}), 9);  // 3, 5; 4, 9
  EXPECT_EQ(timeline_s(model, shop, {1, 0}), 7);  // 1, 5; 4, 7
  BestOptions options;
  options.steps = 500;
  EXPECT_EQ(best_order(model, options).makespan_s, 7);
}

}  // namespace
}  // namespace seamtakt::test
