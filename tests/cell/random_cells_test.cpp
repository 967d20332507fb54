#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>

#include "cell/bound/lower_bound.hpp"
#include "cell/timeline/cycle_result.hpp"
#include "random_cell.hpp"
#include "timeline_check.hpp"

namespace seamtakt::test {
namespace {

void hold_rules_kept(const Plan& plan, const Evaluation& evaluation, const CycleResult& cycle) {
  for (const auto& sentence :
       check_timeline(plan, plan.weldments[0], evaluation, cycle, seams_left_out(plan)))
    RC_FAIL(sentence);
}

/// Any sequence that can be welded: pass after pass drawn at random, so that robots interleave the passes of
/// seams.
Sequence random_sequence(const CellModel& model, RandomCell& random) {
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

struct DrawnPlan {
  RandomCell random;
  Plan plan;
  Evaluation evaluation;
};

DrawnPlan draw(int least_seams, int most_seams) {
  // Not gen::arbitrary: it draws the same few values again and again, and four cases of five would be
  // repeats.
  RandomCell random(*rc::gen::inRange<unsigned>(0u, 2000000000u));
  const int seams = *rc::gen::inRange(least_seams, most_seams + 1);
  const int robots = *rc::gen::inRange(1, 4);
  Plan plan = random.plan(seams, robots);
  Evaluation evaluation = random.evaluation(plan);
  return {random, std::move(plan), std::move(evaluation)};
}

RC_GTEST_PROP(RandomCells, TheGivenOrderBreaksNoRule, ()) {
  const DrawnPlan drawn = draw(5, 30);
  hold_rules_kept(drawn.plan, drawn.evaluation,
                  cycle_given(drawn.plan, drawn.plan.weldments[0], drawn.evaluation));
}

RC_GTEST_PROP(RandomCells, NoOrderBreaksARule, ()) {
  DrawnPlan drawn = draw(5, 30);
  const CompiledCell compiled = compile_cell(drawn.plan, drawn.plan.weldments[0], drawn.evaluation);
  for (int i = 0; i < 5; ++i)
    hold_rules_kept(drawn.plan, drawn.evaluation,
                    cycle_of(drawn.plan, drawn.plan.weldments[0], compiled,
                             random_sequence(compiled.model, drawn.random)));
}

RC_GTEST_PROP(RandomCells, TheMakespanIsTheSameWithAndWithoutMoves, ()) {
  DrawnPlan drawn = draw(1, 20);
  const CellModel model = compile_cell(drawn.plan, drawn.plan.weldments[0], drawn.evaluation).model;
  Scheduler scheduler(model);
  for (int i = 0; i < 5; ++i) {
    const Sequence sequence = random_sequence(model, drawn.random);
    std::vector<BareMove> moves;
    const double with_moves_s = scheduler.makespan_s(sequence, moves);
    RC_ASSERT(with_moves_s == scheduler.makespan_s(sequence));
    double last_s = 0;
    for (const BareMove& move : moves) last_s = std::max(last_s, move.end_s);
    RC_ASSERT(std::abs(last_s - with_moves_s) < 1e-6);
  }
}

RC_GTEST_PROP(RandomCells, NoOrderIsFasterThanTheBound, ()) {
  DrawnPlan drawn = draw(1, 6);
  const CellModel model = compile_cell(drawn.plan, drawn.plan.weldments[0], drawn.evaluation).model;
  const double bound_s = makespan_bound_s(model);
  Scheduler scheduler(model);
  double best_s = Scheduler::impossible;
  for (int i = 0; i < 200; ++i)
    best_s = std::min(best_s, scheduler.makespan_s(random_sequence(model, drawn.random)));
  RC_ASSERT(bound_s <= best_s * (1 + 1e-12));
}

RC_GTEST_PROP(RandomCells, ATableOfAirMovesChangesNothing, ()) {
  DrawnPlan drawn = draw(1, 12);
  CellModel model = compile_cell(drawn.plan, drawn.plan.weldments[0], drawn.evaluation).model;
  const Sequence sequence = random_sequence(model, drawn.random);
  const double with_table_s = Scheduler(model).makespan_s(sequence);
  for (Motion& motion : model.motions) motion.air_s.clear();
  RC_ASSERT(Scheduler(model).makespan_s(sequence) == with_table_s);
}

}  // namespace
}  // namespace seamtakt::test
