// Times of the cell from the gaps between passes: records of a cell whose true times the test knows.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "actual_fixture.hpp"
#include "records/learn/learn.hpp"

namespace seamtakt::test {
namespace {

/// What a robot's log shows of its torch.
enum class TorchLog { motion_logged, not_logged };

class LearnFromGaps : public ::testing::Test {
 protected:
  /// One robot, ten seams of 160 mm (20 s at 8 mm/s) at different distances, five in each orientation. The
  /// positioner turns before S6; service falls before S5 and S9, where 85 s of arc would be passed.
  void SetUp() override {
    plan_ = weldable_plan();
    plan_.cell = Cell{};
    Cell& cell = *plan_.cell;
    cell.robots = {test_robot("R1", 0)};
    cell.orientation_change_s = 10;
    Orientation flat, upright;
    flat.id = "flat";
    upright.id = "upright";
    cell.orientations = {flat, upright};
    cell.torch_service = TorchService{};
    cell.torch_service->every_arc_s = 85;
    cell.torch_service->time_s = 20;
    Weldment& weldment = plan_.weldments[0];
    weldment.load_s = 60;
    const Seam like = weldment.seams[0];
    weldment.seams.clear();
    const double x_mm[] = {0, 700, 100, 1500, 400, 1900, 300, 1200, 600, 2200};
    const int points[] = {0, 0, 2, 0, 0, 0, 3, 0, 1, 0};
    for (int i = 0; i < 10; ++i) {
      Seam seam = like;
      seam.id = "S" + std::to_string(i + 1);
      seam.robots = {"R1"};
      seam.orientation = i < 5 ? "flat" : "upright";
      seam.sense_points = points[i];
      seam.path_mm = {{x_mm[i], 100.0 * i, 0}, {x_mm[i] + 160, 100.0 * i, 0}};
      weldment.seams.push_back(seam);
    }
    truth_ = plan_;
  }

  /// Records of units welded one after the other as the true plan has it, each gap with noise, and each
  /// `outlier_every`th gap longer by 40 s.
  std::vector<PassRecord> records(int units, double noise_s, TorchLog torch, int outlier_every = 0) const {
    const CycleResult cycle = planned_cycle(truth_);
    const bool is_logged = torch == TorchLog::motion_logged;
    // The crater is filled with the arc on.
    const double start_rest_s = is_logged ? 0.2 : 0, end_rest_s = is_logged ? 0.75 : 0;
    std::mt19937 random(7);
    std::normal_distribution<double> noise(0, std::max(noise_s, 1e-9));
    std::vector<PassRecord> made;
    double begin_s = 1000;
    int gap = 0;
    for (int unit = 0; unit < units; ++unit) {
      double late_s = 0;
      for (const Move& move : cycle.moves) {
        if (move.kind != MoveKind::arc) continue;
        late_s += noise_s > 0 ? noise(random) : 0;
        if (outlier_every > 0 && ++gap % outlier_every == 0) late_s += 40;
        PassRecord& record = made.emplace_back();
        record.unit_serial = "U" + std::to_string(unit);
        record.weldment = "W";
        record.seam = move.seam;
        record.pass = move.pass;
        record.schedule = "F";
        record.robot = move.robot;
        record.source = record.source_last = "log.csv";
        record.has_calendar_time = true;
        const double first_s = begin_s + late_s + move.start_s - start_rest_s,
                     last_s = begin_s + late_s + move.end_s + end_rest_s;
        record.first_ns = record.first_arc_ns = std::llround(first_s * 1e9);
        record.last_arc_ns = std::llround(last_s * 1e9);
        record.duration_s = record.arc_time_s = record.steady.time_s = last_s - first_s;
        record.arc_starts = 1;
        if (!is_logged) continue;
        record.start_stand_s = start_rest_s;
        record.end_stand_s = end_rest_s;
      }
      begin_s += late_s + cycle.cycle_time_s;
    }
    return made;
  }

  static const LearnedParameter* find(const Learned& learned, const std::string& name) {
    for (const LearnedParameter& parameter : learned.parameters)
      if (parameter.name == name) return &parameter;
    return nullptr;
  }
  static bool is_undetermined(const Learned& learned, const std::string& name) {
    return std::any_of(learned.undetermined.begin(), learned.undetermined.end(),
                       [&](const Undetermined& each) { return each.name == name; });
  }
  static void expect_learned(const Learned& learned, const std::string& name, double truth, double within) {
    const LearnedParameter* found = find(learned, name);
    std::string why;
    for (const Undetermined& each : learned.undetermined)
      why += "; " + each.name + ": " + std::string(each.why.english());
    ASSERT_NE(found, nullptr) << name << why;
    EXPECT_NEAR(found->new_value, truth, within) << name;
    EXPECT_LE(found->low_95, truth + within / 2) << name;
    EXPECT_GE(found->high_95, truth - within / 2) << name;
    EXPECT_TRUE(found->proposed) << name;
  }

  Plan plan_, truth_;
};

TEST_F(LearnFromGaps, TurnsServiceSensingAndLoadingAreFoundThroughNoiseAndOutliers) {
  Cell& cell = *truth_.cell;
  cell.orientation_change_s = 14;
  cell.torch_service->time_s = 25;
  cell.robots[0].sense_point_s = 2.4;
  cell.robots[0].arc_start_s = 0.7;
  truth_.weldments[0].load_s = 90;
  const Learned learned = learn(records(24, 0.03, TorchLog::motion_logged, 29), plan_);
  expect_learned(learned, "cell/robots/R1/sense_point_s", 2.4, 0.1);
  expect_learned(learned, "cell/robots/R1/arc_start_s", 0.7, 0.1);
  expect_learned(learned, "cell/orientation_change_s", 14, 0.2);
  expect_learned(learned, "cell/torch_service/time_s", 25, 0.2);
  expect_learned(learned, "weldments/W/load_s", 90, 0.3);
  const LearnedParameter* turn = find(learned, "cell/orientation_change_s");
  ASSERT_NE(turn, nullptr);
  EXPECT_EQ(learned.proposal.cell->orientation_change_s, turn->new_value);
  EXPECT_EQ(plan_.cell->orientation_change_s, 10) << "the plan stays as it is";
  ASSERT_EQ(learned.gaps.size(), 1u);
  EXPECT_EQ(learned.gaps[0].gaps, 24u * 9);
  EXPECT_EQ(learned.gaps[0].used, 24u * 9) << "one robot: nothing to wait for";
  EXPECT_TRUE(learned.gaps[0].left_out.empty());
}

TEST_F(LearnFromGaps, WithoutTheTorchsMotionGapsStillTellThem) {
  truth_.cell->orientation_change_s = 14;
  truth_.cell->torch_service->time_s = 25;
  truth_.cell->robots[0].sense_point_s = 2.4;
  const Learned learned = learn(records(24, 0.03, TorchLog::not_logged, 31), plan_);
  expect_learned(learned, "cell/robots/R1/sense_point_s", 2.4, 0.1);
  expect_learned(learned, "cell/orientation_change_s", 14, 0.2);
  expect_learned(learned, "cell/torch_service/time_s", 25, 0.2);
  EXPECT_EQ(find(learned, "cell/robots/R1/arc_start_s"), nullptr) << "where a start ends isn't logged";
}

/// Turned by axes: a quarter before S5, where service falls too, and half a turn before S8.
void turn_by_axes(Plan& plan) {
  Cell& cell = *plan.cell;
  cell.orientations.resize(3);
  cell.orientations[0].axes_deg = {0, 0};
  cell.orientations[1].axes_deg = {90, 10};
  cell.orientations[2].id = "over";
  cell.orientations[2].axes_deg = {-90, 10};
  cell.positioner = Positioner{};
  cell.positioner->axis_deg_s = {30, 45};
  cell.positioner->settle_s = 2;
  for (std::size_t i = 4; i < 10; ++i) plan.weldments[0].seams[i].orientation = i < 7 ? "upright" : "over";
}

TEST_F(LearnFromGaps, AxesAreToldFromSettlingByTurnsOfDifferentAngles) {
  turn_by_axes(plan_);
  turn_by_axes(truth_);
  truth_.cell->positioner->axis_deg_s[0] = 22;
  truth_.cell->positioner->settle_s = 3.5;
  truth_.cell->torch_service->time_s = 25;
  const Learned learned = learn(records(24, 0.03, TorchLog::motion_logged, 29), plan_);
  expect_learned(learned, "cell/positioner/axis_deg_s/0", 22, 0.5);
  expect_learned(learned, "cell/positioner/settle_s", 3.5, 0.2);
  expect_learned(learned, "cell/torch_service/time_s", 25, 0.2);
  const LearnedParameter* axis = find(learned, "cell/positioner/axis_deg_s/0");
  ASSERT_NE(axis, nullptr);
  EXPECT_EQ(axis->unit, "deg/s");
  EXPECT_EQ(axis->records, 48u) << "two turns a unit";
  EXPECT_LE(axis->leave_one_out_low, axis->new_value);
  EXPECT_GE(axis->leave_one_out_high, axis->new_value);
  EXPECT_EQ(learned.proposal.cell->positioner->axis_deg_s[0], axis->new_value);
  EXPECT_EQ(learned.proposal.cell->positioner->axis_deg_s[1], 45) << "never the slower one";
  ASSERT_EQ(learned.gaps.size(), 1u);
  EXPECT_EQ(learned.gaps[0].used, learned.gaps[0].gaps);
}

TEST_F(LearnFromGaps, AxesThatAreRightStayAsTheyAre) {
  turn_by_axes(plan_);
  turn_by_axes(truth_);
  const Learned learned = learn(records(24, 0.03, TorchLog::motion_logged), plan_);
  const LearnedParameter* axis = find(learned, "cell/positioner/axis_deg_s/0");
  ASSERT_NE(axis, nullptr);
  EXPECT_NEAR(axis->new_value, 30, 0.5);
  EXPECT_LE(axis->low_95, 30);
  EXPECT_GE(axis->high_95, 30);
  EXPECT_FALSE(axis->proposed);
}

TEST_F(LearnFromGaps, TurnsOfOneAngleDoNotTellAxesFromSettling) {
  turn_by_axes(plan_);
  plan_.cell->orientations[2].axes_deg = {0, 10};  // a quarter back
  truth_ = plan_;
  truth_.cell->positioner->settle_s = 3.5;
  const Learned learned = learn(records(12, 0.03, TorchLog::motion_logged), plan_);
  for (const char* name : {"cell/positioner/axis_deg_s/0", "cell/positioner/settle_s"}) {
    EXPECT_TRUE(is_undetermined(learned, name)) << name;
    EXPECT_EQ(find(learned, name), nullptr) << name;
  }
  EXPECT_EQ(learned.proposal.cell->positioner->settle_s, 2);
  ASSERT_EQ(learned.gaps.size(), 1u);
  ASSERT_EQ(learned.gaps[0].left_out.size(), 1u);
  EXPECT_EQ(learned.gaps[0].left_out[0].first.english(), "times that can't be told apart");
  EXPECT_EQ(learned.gaps[0].left_out[0].second, 24u);
}

TEST_F(LearnFromGaps, OfTwoAxesNearlyAsSlowNeitherIsLearned) {
  turn_by_axes(plan_);
  plan_.cell->positioner->axis_deg_s[1] = 5;  // 2 s, where the other takes 3 s
  truth_ = plan_;
  const Learned learned = learn(records(12, 0.03, TorchLog::motion_logged), plan_);
  EXPECT_TRUE(is_undetermined(learned, "cell/positioner/axis_deg_s/1"));
  EXPECT_EQ(find(learned, "cell/positioner/axis_deg_s/1"), nullptr);
}

TEST_F(LearnFromGaps, TimesThatAlwaysComeTogetherAreNotTorn) {
  // A service after 110 s of arc falls before S6, where the positioner turns, in every unit.
  plan_.cell->torch_service->every_arc_s = truth_.cell->torch_service->every_arc_s = 110;
  truth_.cell->orientation_change_s = 14;
  truth_.cell->torch_service->time_s = 25;
  const Learned learned = learn(records(12, 0.03, TorchLog::motion_logged), plan_);
  for (const char* name : {"cell/orientation_change_s", "cell/torch_service/time_s"}) {
    EXPECT_TRUE(is_undetermined(learned, name)) << name;
    EXPECT_EQ(find(learned, name), nullptr) << name;
  }
  EXPECT_EQ(learned.proposal.cell->orientation_change_s, 10);
  EXPECT_EQ(learned.proposal.cell->torch_service->time_s, 20);
  ASSERT_EQ(learned.gaps.size(), 1u);
  EXPECT_EQ(learned.gaps[0].used, 12u * 8);
  ASSERT_EQ(learned.gaps[0].left_out.size(), 1u);
  EXPECT_EQ(learned.gaps[0].left_out[0].second, 12u);
}

TEST_F(LearnFromGaps, ASeamTheLogLacksLeavesItsGapOut) {
  std::vector<PassRecord> welded = records(12, 0.02, TorchLog::motion_logged);
  std::erase_if(welded, [](const PassRecord& each) { return each.unit_serial == "U3" && each.seam == "S3"; });
  const Learned learned = learn(welded, plan_);
  ASSERT_EQ(learned.gaps.size(), 1u);
  EXPECT_EQ(learned.gaps[0].gaps, 12u * 9 - 1);
  EXPECT_EQ(learned.gaps[0].used, 12u * 9 - 2);
  ASSERT_EQ(learned.gaps[0].left_out.size(), 1u);
  EXPECT_EQ(learned.gaps[0].left_out[0].first.english(), "another pass than the next planned one");
  const LearnedParameter* turn = find(learned, "cell/orientation_change_s");
  ASSERT_NE(turn, nullptr);
  EXPECT_NEAR(turn->new_value, 10, 0.1) << "the plan is right";
}

TEST_F(LearnFromGaps, APauseOfItsOwnBetweenPassesTeachesNothing) {
  std::vector<PassRecord> welded = records(12, 0, TorchLog::not_logged);
  std::int64_t at_ns = 0;
  for (PassRecord& each : welded) {
    const std::int64_t time_ns = each.last_arc_ns - each.first_arc_ns;
    each.first_ns = each.first_arc_ns = at_ns;
    each.last_arc_ns = at_ns + time_ns;
    at_ns = each.last_arc_ns + 5'000'000'000;
  }
  const Learned learned = learn(welded, plan_);
  EXPECT_TRUE(std::none_of(learned.parameters.begin(), learned.parameters.end(),
                           [](const LearnedParameter& each) { return each.name.starts_with("cell/"); }));
  ASSERT_EQ(learned.gaps.size(), 1u);
  EXPECT_EQ(learned.gaps[0].used, 0u);
}

TEST_F(LearnFromGaps, TwoStationsTellTheirIndex) {
  plan_.cell->stations = truth_.cell->stations = 2;
  plan_.cell->index_s = 8;
  truth_.cell->index_s = 11;
  const Learned learned = learn(records(16, 0.03, TorchLog::motion_logged), plan_);
  expect_learned(learned, "cell/index_s", 11, 0.2);
  EXPECT_EQ(find(learned, "weldments/W/load_s"), nullptr) << "loaded beside the welding";
}

TEST_F(LearnFromGaps, LoadingIsNotTornFromUnloading) {
  plan_.weldments[0].unload_s = truth_.weldments[0].unload_s = 30;
  const Learned learned = learn(records(12, 0.03, TorchLog::motion_logged), plan_);
  EXPECT_TRUE(is_undetermined(learned, "weldments/W/load_s"));
  EXPECT_EQ(learned.proposal.weldments[0].load_s, 60);
}

}  // namespace
}  // namespace seamtakt::test
