// Waits between passes on plates of finite size, and which plates a seam has.
#include "plan/evaluate/plate_waits.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

/// Four passes of 0.55 kJ/mm (250 A x 27.5 V x 0.8 / 10 mm/s) on a tee, 100 mm long, of plates 20 mm thick,
/// with an interpass limit of 120 C. Without plate_mm: endless plates.
Plan four_passes() {
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  plan.weldments.resize(1);
  plan.weldments[0].seams.resize(1);
  Seam& seam = plan.weldments[0].seams[0];
  seam.joint = "tee";
  seam.groove.reset();
  seam.leg_mm = 10;
  seam.throat_mm.reset();
  seam.thickness_mm = {20, 20};
  seam.path_mm = {{0, 0, 0}, {100, 0, 0}};
  seam.intermittent.reset();
  seam.position = "PB";
  seam.direction.clear();
  seam.schedules.assign(4, plan.schedules[0].id);
  Schedule& schedule = plan.schedules[0];
  schedule.process = "135";
  schedule.current_A = 250;
  schedule.arc_voltage_V = 27.5;
  schedule.travel_speed_mm_s = 10;
  schedule.waveform_factor = 1;
  schedule.preheat_C = 20;
  schedule.limits.emplace();
  schedule.limits->interpass_C = Interval{{}, 120};
  return plan;
}

Plan on_small_plates() {
  Plan plan = four_passes();
  plan.weldments[0].seams[0].plate_mm = {{60, 100}, {60, 100}};
  return plan;
}

Findings of_rule(const Evaluation& evaluation, const std::string& rule) {
  Findings found;
  std::copy_if(evaluation.findings.begin(), evaluation.findings.end(), std::back_inserter(found),
               [&](const Finding& finding) { return finding.rule == rule; });
  return found;
}

/// K that Q = 55 kJ a pass leaves in two plates of 60 x 100 x 20 mm as one lumped body: Q/(rho_c*V) =
/// 55000/(0.0044*240000) = 52.083 K, lost at h*A/(rho_c*V) = 1e-5*32800/1056 = 3.106e-4 1/s. A pass takes 10
/// s.
double lumped_before_last_K(const std::vector<double>& waits_s) {
  double sum_K = 0, since_s = 0;
  for (std::size_t k = waits_s.size(); k-- > 0;) {
    since_s += waits_s[k];
    sum_K += 52.0833 * std::exp(-3.10606e-4 * (since_s + 5));
    since_s += 10;
  }
  return sum_K;
}

TEST(PlateWaits, OfEndlessPlatesAreTooShortForSmallOnes) {
  const Evaluation endless = evaluate(four_passes());
  ASSERT_NEAR(endless.passes[0].heat_input_kJ_mm, 0.55, 1e-12);
  ASSERT_NEAR(endless.passes[0].arc_time_s, 10, 1e-12);
  // (550/20)^2*0.67/(4*pi*0.028*0.0044*100^2) = 32.73 s each, as if the plates were cold again.
  for (const double wait_s : endless.seams[0].interpass_waits_s) EXPECT_NEAR(wait_s, 32.728, 5e-4);
  // 20 + 152.4 = 172.4 C before pass 4, by hand: 52 C above the limit of 120.
  EXPECT_NEAR(20 + lumped_before_last_K(endless.seams[0].interpass_waits_s), 172.4, 0.05);
}

TEST(PlateWaits, OnSmallPlatesLastUntilTheyHaveCooled) {
  const Evaluation small = evaluate(on_small_plates());
  const std::vector<double>& waits_s = small.seams[0].interpass_waits_s;
  ASSERT_EQ(waits_s.size(), 3u);
  // Computed by a script of its own, which integrates in other pieces.
  EXPECT_NEAR(waits_s[0], 25.7, 0.3);
  EXPECT_NEAR(waits_s[1], 253.2, 2);
  EXPECT_NEAR(waits_s[2], 1247.4, 6);
  EXPECT_EQ(small.seams[0].interpass_wait_s, waits_s[2]);
  // After so long a wait the body is lumped: 100 K above its own 20 C.
  EXPECT_NEAR(lumped_before_last_K(waits_s), 100, 0.5);
  EXPECT_TRUE(of_rule(small, "interpass.never").empty());
  EXPECT_TRUE(of_rule(small, "interpass.plates").empty());
}

TEST(PlateWaits, AboveAnHourFail) {
  Plan plan = on_small_plates();
  plan.weldments[0].seams[0].schedules.resize(2);
  plan.schedules[0].limits->interpass_C->upper = 28;
  const Evaluation evaluation = evaluate(plan);
  // 52.083 K fall to 8 K in ln(52.083/8)/3.106e-4 = 6031 s from the middle of pass 1, 5 s before its end.
  const Findings never = of_rule(evaluation, "interpass.never");
  ASSERT_EQ(never.size(), 1u);
  EXPECT_EQ(never[0].severity, Severity::fail);
  EXPECT_EQ(never[0].where, plan.weldments[0].id + "/" + plan.weldments[0].seams[0].id + "/pass 2");
  EXPECT_NEAR(*never[0].value, 6026, 6);
  EXPECT_EQ(never[0].limit, 3600);
  EXPECT_NE(never[0].text().find("28 C"), std::string::npos) << never[0].text();
}

TEST(PlateWaits, ThatDontEndWithinADayAreGivenUp) {
  Plan plan = on_small_plates();
  plan.heat_loss_W_m2K = 0.01;  // a thousandth: it takes days
  const Evaluation evaluation = evaluate(plan);
  EXPECT_EQ(evaluation.seams[0].interpass_waits_s[2], 86400);
  const Findings never = of_rule(evaluation, "interpass.never");
  ASSERT_FALSE(never.empty());
  EXPECT_NE(never.back().text().find("24 h"), std::string::npos) << never.back().text();
}

TEST(PlateWaits, AreNoneWithoutALimit) {
  Plan plan = on_small_plates();
  plan.schedules[0].limits.reset();
  const Evaluation evaluation = evaluate(plan);
  EXPECT_EQ(evaluation.seams[0].interpass_waits_s, (std::vector<double>{0, 0, 0}));
  EXPECT_TRUE(of_rule(evaluation, "interpass.never").empty());
}

TEST(PlateWaits, AreExplainedByTheTemperatureAtTheirEnd) {
  const Plan plan = on_small_plates();
  const std::string place = plan.weldments[0].id + "/" + plan.weldments[0].seams[0].id;
  const std::vector<Explanation> explained = explain(plan, place, "interpass_wait_s");
  ASSERT_EQ(explained.size(), 1u);
  EXPECT_STREQ(explained[0].note->id, "interpass.plates");
  for (const SymbolValue& input : explained[0].inputs)
    if (input.symbol == "dT") {
      EXPECT_NEAR(input.value, 100, 0.05);
    }
  EXPECT_NEAR(explained[0].result, evaluate(plan).seams[0].interpass_wait_s, 1e-9);
}

TEST(PlateWaits, SizesThatCannotBeUsedAreSaidAndLeaveEndlessPlates) {
  const Evaluation endless = evaluate(four_passes());
  Plan shorter = on_small_plates();
  shorter.weldments[0].seams[0].plate_mm[1][1] = 80;
  Plan bent = on_small_plates();
  bent.weldments[0].seams[0].path_mm = {{0, 0, 0}, {50, 0, 0}, {50, 50, 0}};
  for (const Plan& plan : {shorter, bent}) {
    const Evaluation evaluation = evaluate(plan);
    const Findings notes = of_rule(evaluation, "interpass.plates");
    ASSERT_EQ(notes.size(), 1u);
    EXPECT_EQ(notes[0].severity, Severity::note);
    EXPECT_EQ(evaluation.seams[0].interpass_waits_s, endless.seams[0].interpass_waits_s);
  }
}

/// The tee of four_passes(): plate 1 lies below z = 0 from y = -20 to 40, plate 2 stands on it from y = 0 to
/// 20.
std::vector<Plate> tee_of_plates() {
  Plate lying, upright;
  lying.id = "lying";
  lying.origin_mm = {0, -20, -20};
  lying.outline_mm = {{0, 0}, {100, 0}, {100, 60}, {0, 60}};
  lying.thickness_mm = 20;
  upright.id = "upright";
  upright.origin_mm = {0, 20, 0};
  upright.v = {0, 0, 1};  // u x v points to -y
  upright.outline_mm = lying.outline_mm;
  upright.thickness_mm = 20;
  return {lying, upright};
}

TEST(SeamPlatesOfWeldment, AreThoseWhoseFacesHoldItsLine) {
  Plan plan = on_small_plates();
  Weldment& weldment = plan.weldments[0];
  const SeamPlates by_sizes = plates_of(weldment, weldment.seams[0]);
  ASSERT_TRUE(by_sizes.shape);
  EXPECT_EQ(by_sizes.shape->plates[0].reach_mm, (std::vector<double>{20, 40}));
  const std::vector<double> waits_s = evaluate(plan).seams[0].interpass_waits_s;
  // Plates win over plate_mm, wherever they are in the list.
  weldment.seams[0].plate_mm = {{1000, 1000}, {1000, 1000}};
  weldment.plates = tee_of_plates();
  Plate elsewhere = weldment.plates[0];
  elsewhere.id = "elsewhere";
  elsewhere.origin_mm[2] -= 50;
  weldment.plates.insert(weldment.plates.begin(), elsewhere);
  const SeamPlates found = plates_of(weldment, weldment.seams[0]);
  ASSERT_TRUE(found.shape);
  EXPECT_EQ(found.shape->plates[0].reach_mm, (std::vector<double>{20, 40}));
  EXPECT_EQ(found.shape->plates[1].reach_mm, (std::vector<double>{60}));
  EXPECT_EQ(found.shape->plates[0].length_mm, 100);
  const std::vector<double> by_plates_s = evaluate(plan).seams[0].interpass_waits_s;
  for (std::size_t i = 0; i < waits_s.size(); ++i) EXPECT_NEAR(by_plates_s[i], waits_s[i], 2e-3);
  // A line 2 mm above the plate is in no face of it: plate_mm is left.
  for (Point_mm& point : weldment.seams[0].path_mm) point[2] += 2;
  EXPECT_EQ(plates_of(weldment, weldment.seams[0]).shape->plates[0].length_mm, 1000);
  weldment.seams[0].plate_mm.clear();
  EXPECT_EQ(plates_of(weldment, weldment.seams[0]).missing, PlatesMissing::unmatched);
  EXPECT_EQ(of_rule(evaluate(plan), "interpass.plates").size(), 1u);
}

TEST(SeamPlatesOfWeldment, GoOnBeforeTheSeam) {
  Plan plan = on_small_plates();
  Weldment& weldment = plan.weldments[0];
  weldment.seams[0].plate_mm.clear();
  weldment.plates = tee_of_plates();
  weldment.plates[0].origin_mm[0] = -250;
  weldment.plates[0].outline_mm = {{0, 0}, {600, 0}, {600, 60}, {0, 60}};
  const SeamPlates found = plates_of(weldment, weldment.seams[0]);
  ASSERT_TRUE(found.shape);
  EXPECT_EQ(found.shape->plates[0].length_mm, 600);
  EXPECT_EQ(found.shape->plates[0].before_mm, 250);
  EXPECT_EQ(found.shape->plates[1].before_mm, 0);
}

TEST(SeamPlatesOfWeldment, AreSharedByTheSeamsOnBothSidesOfAPlate) {
  Plan plan = on_small_plates();
  const Weldment& weldment = plan.weldments[0];
  const Seam near = weldment.seams[0];
  Seam far = near, elsewhere = near;
  far.path_mm = {{100, 20, 0}, {0, 20, 0}};
  elsewhere.path_mm = {{0, 200, 0}, {100, 200, 0}};
  const auto plates = [&](const Seam& seam) { return plates_of(weldment, seam); };
  EXPECT_TRUE(same_joint(near, plates(near), far, plates(far)));
  EXPECT_FALSE(same_joint(near, plates(near), elsewhere, plates(elsewhere)));
  const AlongLine back = along_line(near, far);
  EXPECT_EQ(back.offset_mm, 100);
  EXPECT_EQ(back.sign, -1);
}

}  // namespace
}  // namespace seamtakt
