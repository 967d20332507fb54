#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "cell_plan.hpp"
#include "timeline_check.hpp"

namespace seamtakt::test {
namespace {

/// Two robots, zone, precedence, turn, interpass, service, sensing: something for each rule to be broken.
Plan full_plan() {
  Plan plan = plain_plan();
  plan.wires.resize(2);
  plan.wires[0].id = "W12";
  plan.wires[1].id = "W10";
  plan.schedules = {schedule_named("A", "W12"), schedule_named("B", "W10")};
  plan.cell->robots.push_back(robot_at("R2", {0, 1000, 0}));
  for (Robot& robot : plan.cell->robots) robot.loaded = Loaded{"W12", "", "", {}};
  plan.cell->robots[1].wire_change_s = 100;
  plan.cell->orientations = {{"up", {}, {}, {}}, {"down", {}, {}, {}}};
  plan.cell->orientation_change_s = 8;
  plan.cell->torch_service = TorchService{25, 7, {}, {}};
  auto& seams = plan.weldments[0].seams;
  seams = {seam_along("S1", {{250, 0, 0}, {350, 0, 0}}, 2),
           seam_along("S2", {{250, 1000, 0}, {350, 1000, 0}}), seam_along("S3", {{500, 0, 0}, {700, 0, 0}}),
           seam_along("S4", {{500, 1000, 0}, {700, 1000, 0}})};
  for (std::size_t i = 0; i < seams.size(); ++i) seams[i].robots = {i % 2 == 0 ? "R1" : "R2"};
  seams[0].sense_points = 2;
  seams[0].orientation = seams[1].orientation = "up";
  seams[2].orientation = "down";
  seams[3].schedules = {"B"};
  seams[3].after = {"S1"};
  plan.cell->zones = {{"Z", {"W/S1", "W/S2"}, {}, {}}};
  return plan;
}

Evaluation full_evaluation() {
  Evaluation evaluation = evaluation_of(full_plan());
  evaluation.seams[0].interpass_waits_s = {15};
  return evaluation;
}

struct Damage {
  const char* name;
  std::function<void(CycleResult&)> apply;
};

Move& first(CycleResult& cycle, MoveKind kind, const std::string& seam = "") {
  for (Move& move : cycle.moves)
    if (move.kind == kind && (seam.empty() || move.seam == seam)) return move;
  throw std::logic_error("no such move");
}

void remove(CycleResult& cycle, const Move& move) {
  cycle.moves.erase(cycle.moves.begin() + (&move - cycle.moves.data()));
}

void shift(CycleResult& cycle, const std::string& robot, double by_s) {
  for (Move& move : cycle.moves)
    if (move.robot == robot) {
      move.start_s += by_s;
      move.end_s += by_s;
    }
}

TEST(TimelineCheck, AcceptsTheScheduledCycle) {
  const Plan plan = full_plan();
  const Evaluation evaluation = full_evaluation();
  const CycleResult cycle = cycle_given(plan, plan.weldments[0], evaluation);
  for (const auto& sentence : check_timeline(plan, plan.weldments[0], evaluation, cycle))
    ADD_FAILURE() << sentence;
  EXPECT_GT(cycle.orientation_s, 0);
  EXPECT_GT(cycle.service_s, 0);
  EXPECT_GT(cycle.wire_change_s, 0);
  EXPECT_GT(cycle.wait_s, 0);
}

TEST(TimelineCheck, CatchesEachDamage) {
  const Plan plan = full_plan();
  const Evaluation evaluation = full_evaluation();
  const CycleResult sound = cycle_given(plan, plan.weldments[0], evaluation);
  const std::vector<Damage> damages{
      {"arc missing", [](CycleResult& c) { remove(c, first(c, MoveKind::arc, "S3")); }},
      {"sensing missing", [](CycleResult& c) { remove(c, first(c, MoveKind::sense)); }},
      {"service missing", [](CycleResult& c) { remove(c, first(c, MoveKind::service)); }},
      {"wire change missing", [](CycleResult& c) { remove(c, first(c, MoveKind::wire_change)); }},
      {"turn missing", [](CycleResult& c) { remove(c, first(c, MoveKind::orientation)); }},
      {"air move too fast", [](CycleResult& c) { first(c, MoveKind::air).end_s -= 0.1; }},
      {"arc too short", [](CycleResult& c) { first(c, MoveKind::arc).end_s -= 1; }},
      {"start missing", [](CycleResult& c) { remove(c, first(c, MoveKind::start)); }},
      {"wrong pass", [](CycleResult& c) { first(c, MoveKind::arc, "S1").pass = 2; }},
      {"wrong robot", [](CycleResult& c) { first(c, MoveKind::arc, "S1").robot = "R2"; }},
      {"sum wrong", [](CycleResult& c) { c.wait_s += 1; }},
      {"cycle wrong", [](CycleResult& c) { c.cycle_time_s += 1; }},
      {"bound above", [](CycleResult& c) { c.lower_bound_s = c.cycle_time_s + 1; }},
      {"ratio wrong", [](CycleResult& c) { c.arc_on_ratio = 0.5; }},
      {"not a number", [](CycleResult& c) { first(c, MoveKind::arc).end_s = NAN; }},
  };
  for (const Damage& damage : damages) {
    CycleResult cycle = sound;
    damage.apply(cycle);
    EXPECT_FALSE(check_timeline(plan, plan.weldments[0], evaluation, cycle).empty()) << damage.name;
  }
}

/// Whether a sentence of the check says `words`.
bool says(const std::vector<std::string>& sentences, const std::string& words) {
  for (const std::string& sentence : sentences)
    if (sentence.find(words) != std::string::npos) return true;
  return false;
}

TEST(TimelineCheck, CatchesRulesThatBindTwoRobots) {
  const Plan plan = full_plan();
  const Evaluation evaluation = full_evaluation();
  const CycleResult sound = cycle_given(plan, plan.weldments[0], evaluation);
  const auto shifted = [&](const std::string& robot, double by_s) {
    CycleResult cycle = sound;
    shift(cycle, robot, by_s);
    return check_timeline(plan, plan.weldments[0], evaluation, cycle);
  };
  EXPECT_TRUE(says(shifted("R2", -10), "in zone Z at once"));
  EXPECT_TRUE(says(shifted("R2", 5), "while the positioner turns"));
  EXPECT_TRUE(says(shifted("R2", 40), "S2 is welded in orientation down"));
  EXPECT_TRUE(says(shifted("R1", 200), "S4 is begun before S1 is done"));
}

TEST(TimelineCheck, CatchesAPassThatIsTooHot) {
  const Plan plan = full_plan();
  Evaluation evaluation = full_evaluation();
  const CycleResult cycle = cycle_given(plan, plan.weldments[0], evaluation);
  evaluation.seams[0].interpass_waits_s = {16};
  EXPECT_TRUE(says(check_timeline(plan, plan.weldments[0], evaluation, cycle), "too early"));
}

TEST(TimelineCheck, CatchesWhatThePlanNoLongerAllows) {
  const Evaluation evaluation = full_evaluation();
  const CycleResult cycle = cycle_given(full_plan(), full_plan().weldments[0], evaluation);
  const auto check_with = [&](const std::function<void(Plan&)>& change) {
    Plan plan = full_plan();
    change(plan);
    return check_timeline(plan, plan.weldments[0], evaluation, cycle);
  };
  EXPECT_TRUE(
      says(check_with([](Plan& p) { p.weldments[0].seams[0].position = "PF"; }), "against its direction"));
  EXPECT_TRUE(says(check_with([](Plan& p) { p.weldments[0].seams[0].robots = {"R2"}; }), "doesn't reach"));
  EXPECT_TRUE(says(check_with([](Plan& p) { p.weldments[0].seams[2].orientation = "up"; }),
                   "is welded in orientation") ||
              says(check_with([](Plan& p) { p.weldments[0].seams[1].orientation = "down"; }),
                   "is welded in orientation"));
  EXPECT_TRUE(
      says(check_with([](Plan& p) { p.cell->torch_service->every_arc_s = 15; }), "without a torch service"));
  EXPECT_TRUE(says(check_with([](Plan& p) { p.cell->torch_service->every_arc_s = 60; }), "too early, after"));
  EXPECT_TRUE(says(check_with([](Plan& p) { p.cell->robots[0].loaded->wire = "W10"; }), "wrong wire"));
  EXPECT_TRUE(says(check_with([](Plan& p) { p.weldments[0].seams[3].by = "manual"; }), "shouldn't be"));
}

}  // namespace
}  // namespace seamtakt::test
