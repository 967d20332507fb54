// Random cells with all that robots share and how they travel: no order breaks a rule, none is below the
// bound.
#include <gtest/gtest.h>

#include "cell/bound/lower_bound.hpp"
#include "cell/random_cell.hpp"
#include "cell/search/best_order.hpp"
#include "cell/timeline/cycle_result.hpp"
#include "cell/timeline_check.hpp"

namespace seamtakt::test {
namespace {

struct TravelCell {
  RandomCell random;
  Plan plan;
  Evaluation evaluation;
  CompiledCell compiled;
};

TravelCell travel_cell(unsigned seed, int seams, int robots) {
  RandomCell random(seed);
  Plan plan = random.plan(seams, robots);
  random.add_travel(plan);
  Evaluation evaluation = random.evaluation(plan);
  CompiledCell compiled = compile_cell(plan, plan.weldments[0], evaluation);
  return {random, std::move(plan), std::move(evaluation), std::move(compiled)};
}

Sequence any_sequence(const CellModel& model, RandomCell& random) {
  Scheduler scheduler(model);
  Sequence sequence;
  std::vector<int> robot_of(model.seams.size(), -1);
  while (sequence.size() < model.passes.size()) {
    const int seam = random.integer(0, static_cast<int>(model.seams.size()) - 1);
    const CellSeam& at = model.seams[seam];
    const int drawn = model.robots_of[at.first_robot + random.integer(0, at.robot_count - 1)];
    const int robot = robot_of[seam] < 0 ? drawn : robot_of[seam];
    const Step step{seam, static_cast<std::int16_t>(robot), random.chance(0.5)};
    if (!scheduler.append(step)) continue;
    robot_of[seam] = robot;
    sequence.push_back(step);
  }
  return sequence;
}

void expect_kept(const TravelCell& cell, const CycleResult& cycle, unsigned seed) {
  for (const auto& sentence :
       check_timeline(cell.plan, cell.plan.weldments[0], cell.evaluation, cycle, seams_left_out(cell.plan)))
    ADD_FAILURE() << "seed " << seed << ": " << sentence;
}

TEST(RandomTravel, NoOrderBreaksARule) {
  for (unsigned seed = 1; seed <= 300 && !::testing::Test::HasFailure(); ++seed) {
    TravelCell cell = travel_cell(seed, 3 + static_cast<int>(seed % 14), 1 + static_cast<int>(seed % 3));
    expect_kept(cell, cycle_given(cell.plan, cell.plan.weldments[0], cell.evaluation), seed);
    for (int i = 0; i < 3; ++i)
      expect_kept(cell,
                  cycle_of(cell.plan, cell.plan.weldments[0], cell.compiled,
                           any_sequence(cell.compiled.model, cell.random)),
                  seed);
  }
}

TEST(RandomTravel, TheBestOrderIsKeptAndNotBelowTheBound) {
  for (unsigned seed = 1; seed <= 150 && !::testing::Test::HasFailure(); ++seed) {
    const TravelCell cell =
        travel_cell(seed + 5000, 2 + static_cast<int>(seed % 7), 1 + static_cast<int>(seed % 3));
    BestOptions options;
    options.steps = 400;
    const BestOrder best = best_order(cell.compiled.model, options);
    ASSERT_LT(best.makespan_s, Scheduler::impossible) << "seed " << seed;
    ASSERT_LE(best.bound_s, best.makespan_s * (1 + 1e-12)) << "seed " << seed;
    expect_kept(
        cell, cycle_of(cell.plan, cell.plan.weldments[0], cell.compiled, best.sequence, Balance::kept), seed);
  }
}

TEST(RandomTravel, TheBoundHoldsForThousandsOfSmallCells) {
  for (unsigned seed = 0; seed < 3000; ++seed) {
    TravelCell cell =
        travel_cell(seed + 90000, 1 + static_cast<int>(seed % 5), 1 + static_cast<int>(seed / 5 % 3));
    Scheduler scheduler(cell.compiled.model);
    double best_s = Scheduler::impossible;
    for (int i = 0; i < 40; ++i)
      best_s = std::min(best_s, scheduler.makespan_s(any_sequence(cell.compiled.model, cell.random)));
    ASSERT_LE(makespan_bound_s(cell.compiled.model), best_s * (1 + 1e-12)) << "seed " << seed;
  }
}

TEST(RandomTravel, TheMakespanIsTheSameWithAndWithoutMovesAndTables) {
  for (unsigned seed = 0; seed < 300; ++seed) {
    TravelCell cell =
        travel_cell(seed + 40000, 1 + static_cast<int>(seed % 12), 1 + static_cast<int>(seed % 3));
    CellModel& model = cell.compiled.model;
    const Sequence sequence = any_sequence(model, cell.random);
    Scheduler scheduler(model);
    std::vector<BareMove> moves;
    const double with_moves_s = scheduler.makespan_s(sequence, moves);
    ASSERT_EQ(with_moves_s, scheduler.makespan_s(sequence)) << "seed " << seed;
    for (Motion& motion : model.motions) motion.air_s.clear();
    ASSERT_EQ(with_moves_s, Scheduler(model).makespan_s(sequence)) << "seed " << seed;
  }
}

}  // namespace
}  // namespace seamtakt::test
