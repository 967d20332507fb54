// How many sequences a second the cell's scheduler lays out in time: 60 seams, 2 robots, one core.
// Prints one JSON line a case; the median of the rounds counts.

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <random>
#include <string>
#include <vector>

#include "base/units/units.hpp"
#include "cell/timeline/scheduler.hpp"

namespace {

using namespace seamtakt;

struct Case {
  const char* name;
  int seams;
  bool full;  ///< with zones, precedence, orientations, torch service and intermittent seams
};

Seam seam_of(int number, bool full, std::mt19937& random) {
  std::uniform_real_distribution<double> place(0, 3000);
  Seam seam;
  seam.id = "S" + std::to_string(number);
  seam.position = "PB";
  seam.schedules = {"A"};
  seam.path_mm = {{place(random), place(random), 0}, {place(random), place(random), 300}};
  if (!full) return seam;
  seam.sense_points = 2;
  seam.orientation = number % 4 == 0 ? "down" : "";
  if (number % 5 == 0) seam.intermittent = Intermittent{60, 90, {}};
  if (number % 6 == 5) seam.after = {"S" + std::to_string(number - 5)};
  return seam;
}

Plan plan_of(const Case& bench) {
  std::mt19937 random(1);
  Plan plan;
  Schedule schedule;
  schedule.id = "A";
  schedule.travel_speed_mm_s = 7;
  plan.schedules = {schedule};
  plan.weldments.resize(1);
  plan.weldments[0].id = "W";
  for (int i = 0; i < bench.seams; ++i) plan.weldments[0].seams.push_back(seam_of(i, bench.full, random));
  plan.cell = Cell{};
  for (const char* id : {"R1", "R2"}) {
    Robot robot;
    robot.id = id;
    robot.home_mm = {id[1] == '1' ? 0.0 : 3000.0, -500, 800};
    robot.wrist_s = 0.2;
    robot.sense_point_s = 2;
    plan.cell->robots.push_back(robot);
  }
  plan.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
  plan.cell->orientation_change_s = 8;
  if (!bench.full) return plan;
  plan.cell->torch_service = TorchService{400, 10, {}, {}};
  plan.cell->zones = {{"Z1", {}, {}, {}}, {"Z2", {}, {}, {}}};
  for (int i = 0; i < bench.seams; i += 3) plan.cell->zones[i % 2].seams.push_back("W/S" + std::to_string(i));
  return plan;
}

Evaluation evaluation_of(const Plan& plan) {
  Evaluation evaluation;
  for (const Seam& seam : plan.weldments[0].seams) {
    PassEvaluation pass;
    pass.weldment = "W";
    pass.seam = seam.id;
    pass.arc_time_s = 30;
    evaluation.passes.push_back(pass);
  }
  return evaluation;
}

void run(const Case& bench) {
  using Clock = std::chrono::steady_clock;
  const Plan plan = plan_of(bench);
  const CellModel model = compile_cell(plan, plan.weldments[0], evaluation_of(plan)).model;
  Scheduler scheduler(model);
  Sequence sequence = sequence_given(model);
  std::mt19937 random(2);
  std::uniform_int_distribution<std::size_t> place(0, sequence.size() - 1);
  constexpr int calls = 20000;
  std::vector<double> rates;
  double sum_s = 0;  // printed, so that no call can be left out
  for (int round = 0; round < 11; ++round) {
    const auto begin = Clock::now();
    for (int call = 0; call < calls; ++call) {
      // A local search's step: two seams change places, and stay so where the sequence can be welded.
      const std::size_t a = place(random), b = place(random);
      std::swap(sequence[a], sequence[b]);
      const double makespan_s = scheduler.makespan_s(sequence);
      if (makespan_s == Scheduler::impossible)
        std::swap(sequence[a], sequence[b]);
      else
        sum_s += makespan_s;
    }
    rates.push_back(calls / std::chrono::duration<double>(Clock::now() - begin).count());
  }
  std::sort(rates.begin(), rates.end());
  std::printf(
      "{\"bench\": \"cell\", \"case\": \"%s\", \"seams\": %d, \"makespans_per_s\": %s, \"sum_s\": %s}\n",
      bench.name, bench.seams, rounded_text(rates[rates.size() / 2], 4).c_str(),
      rounded_text(sum_s, 6).c_str());
}

}  // namespace

int main() {
  for (const Case& bench : {Case{"plain", 40, false}, Case{"plain", 60, false}, Case{"full", 60, true}})
    run(bench);
  return 0;
}
