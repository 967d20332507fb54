#include <gtest/gtest.h>

#include "cell_plan.hpp"
#include "timeline_check.hpp"

namespace seamtakt::test {
namespace {

/// Three seams, one robot, two stations: continuous, intermittent and a groove of three passes.
Plan worked_example() {
  Plan plan;
  plan.wires.resize(1);
  plan.wires[0].id = "W12";
  plan.gases.resize(1);
  plan.gases[0].id = "G";
  plan.power_sources.resize(1);
  plan.power_sources[0].id = "P";
  for (const auto& [id, travel_speed_mm_s] : {std::pair{"F6", 7.5}, {"R", 4.0}, {"C", 5.5}}) {
    Schedule schedule = schedule_named(id, "W12");
    schedule.gas = "G";
    schedule.power_source = "P";
    schedule.travel_speed_mm_s = travel_speed_mm_s;
    plan.schedules.push_back(schedule);
  }
  Weldment weldment;
  weldment.id = "X";
  weldment.load_s = 60;
  weldment.unload_s = 30;
  weldment.seams = {seam_along("S1", {{0, 0, 0}, {400, 0, 0}, {400, 150, 0}}),
                    seam_along("S2", {{0, 200, 0}, {500, 200, 0}}),
                    seam_along("S3", {{600, 0, 0}, {600, 300, 0}})};
  weldment.seams[0].sense_points = 2;
  weldment.seams[1].intermittent = Intermittent{60, 90, {}};
  weldment.seams[2].position = "PA";
  weldment.seams[0].schedules = weldment.seams[1].schedules = {"F6"};
  weldment.seams[2].schedules = {"R", "C", "C"};
  plan.weldments = {weldment};
  Robot robot = robot_at("R1", {0, -600, 600});
  robot.loaded = Loaded{"W12", "G", "P", {}};
  robot.wrist_s = 0.2;
  robot.arc_start_s = 0.4;
  robot.crater_fill_s = 0.6;
  robot.post_flow_s = 0.5;
  plan.cell = Cell{};
  plan.cell->robots = {robot};
  plan.cell->torch_service = TorchService{200, 10, {}, {}};
  plan.cell->stations = 2;
  plan.cell->index_s = 4;
  return plan;
}

TEST(WorkedExample, GivesThePrintedFiguresToTheirLastDigit) {
  const CycleResult cycle = cycle_of_plan(worked_example());
  EXPECT_NEAR(cycle.cycle_time_s, 315.5252, 0.00005);
  EXPECT_NEAR(cycle.weld_s, 311.5252, 0.00005);
  EXPECT_NEAR(cycle.arc_on_s, 281.4242, 0.00005);
  EXPECT_NEAR(cycle.air_s, 5.600983, 0.0000005);
  EXPECT_NEAR(cycle.sense_s, 4.0, 0.00005);
  EXPECT_NEAR(cycle.start_end_s, 10.5, 0.00005);
  EXPECT_NEAR(cycle.service_s, 10.0, 0.00005);
  EXPECT_EQ(cycle.wire_change_s, 0);
  EXPECT_NEAR(cycle.wait_s, 0, 1e-9);
  EXPECT_EQ(cycle.load_unload_s, 90);
  EXPECT_NEAR(cycle.arc_on_ratio, 281.4242 / 315.5252, 1e-6);
  EXPECT_TRUE(cycle.findings.empty());
}

TEST(WorkedExample, BreaksNoRule) {
  const Plan plan = worked_example();
  const auto broken = check_timeline(plan, plan.weldments[0], evaluation_of(plan), cycle_of_plan(plan));
  EXPECT_TRUE(broken.empty()) << broken.front();
}

TEST(WorkedExample, ServicesTheTorchBeforeTheSecondPassOfTheGroove) {
  const CycleResult cycle = cycle_of_plan(worked_example());
  const auto services = moves_of(cycle, MoveKind::service);
  ASSERT_EQ(services.size(), 1u);
  EXPECT_EQ(services[0].seam, "S3");
  EXPECT_EQ(services[0].pass, 2);
  const std::vector<std::string> order{"S1/1", "S2/1", "S2/1", "S2/1", "S3/1", "S3/2 reversed", "S3/3"};
  EXPECT_EQ(arcs_of(cycle, "R1"), order);
}

TEST(WorkedExample, FollowsTheSeamRoundItsCorner) {
  const auto arcs = moves_of(cycle_of_plan(worked_example()), MoveKind::arc, "S1");
  ASSERT_EQ(arcs.size(), 1u);
  const std::vector<Point_mm> path{{0, 0, 0}, {400, 0, 0}, {400, 150, 0}};
  EXPECT_EQ(arcs[0].points, path);
}

}  // namespace
}  // namespace seamtakt::test
