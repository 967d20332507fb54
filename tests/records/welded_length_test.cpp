#include <gtest/gtest.h>

#include <cmath>

#include "audit_fixture.hpp"
#include "records/passes/seam_progress.hpp"

namespace seamtakt::test {
namespace {

constexpr const char* with_positions =
    "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,x_mm,y_mm,z_mm\n";
constexpr double pi = 3.14159265358979323846;

struct Torch {
  double x, y, z;
};

/// 100 samples a second; `at` says where the torch is, `on` whether it welds.
template <class At, class On>
std::string positions(const std::string& identity, double duration_s, const At& at, const On& on) {
  std::string text;
  const int rows = static_cast<int>(std::lround(duration_s * 100));
  for (int i = 0; i <= rows; ++i) {
    const double t = i / 100.0;
    const Torch torch = at(t);
    text += fixed(t, 2) + "," + identity + "," + (on(t) ? fixed(200 + i % 2, 0) : "0") + "," +
            fixed(25 + 0.1 * (i % 3), 1) + "," + fixed(torch.x, 3) + "," + fixed(torch.y, 3) + "," +
            fixed(torch.z, 3) + "\n";
  }
  return text;
}

bool until_50(double t) {
  return t < 50;
}

TEST(WeldedLength, FollowsThePlansPath) {
  const Plan plan = small_plan();
  const auto straight = [](double t) { return Torch{8 * t, 0, 0}; };
  const auto result = audit_text(with_positions + positions("U1,W,S1,1", 50, straight, until_50), {}, &plan);
  const PassRecord& pass = result.passes[0];
  EXPECT_EQ(pass.length_source, "positions");
  EXPECT_NEAR(*pass.length_mm, 400, 0.01);
  EXPECT_NEAR(*pass.travel_speed_mm_s, 8, 0.001);
  EXPECT_DOUBLE_EQ(*pass.overlap_mm, 0);
  EXPECT_FALSE(has_finding(result, "record.length.short"));
}

TEST(WeldedLength, OfAWeavingTorchIsTheSeamsNotTheTorchsWay) {
  const Plan plan = small_plan();
  const auto weaving = [](double t) { return Torch{8 * t, 3 * std::sin(2 * pi * 2.5 * t), 0}; };
  const std::string log = with_positions + positions("U1,W,S1,1", 50, weaving, until_50);
  const auto planned = audit_text(log, {}, &plan);
  EXPECT_NEAR(*planned.passes[0].length_mm, 400, 0.3);
  EXPECT_NEAR(*planned.passes[0].steady.travel_speed_mm_s, 8, 0.05);

  const auto without_plan = audit_text(log);
  EXPECT_FALSE(without_plan.passes[0].length_mm);
  EXPECT_FALSE(without_plan.passes[0].arc_energy_kJ_mm);
  EXPECT_TRUE(has_finding(without_plan, "record.position.weave"));
}

TEST(WeldedLength, WithoutPlanOfASteadyTorchIsItsWay) {
  // A quarter of a ring of 100 mm radius, then straight on.
  const auto bend = [](double t) {
    const double s = 8 * t, quarter = 50 * pi;
    return s < quarter ? Torch{100 * std::sin(s / 100), 100 - 100 * std::cos(s / 100), 0}
                       : Torch{100, 100 + s - quarter, 0};
  };
  const auto result = audit_text(with_positions + positions("U1,W,S1,1", 50, bend, until_50));
  EXPECT_NEAR(*result.passes[0].length_mm, 400, 1);
  EXPECT_EQ(result.passes[0].length_source, "positions");
}

TEST(WeldedLength, RoundACornerIsThePathsLength) {
  Plan plan = small_plan();
  plan.weldments[0].seams[0].path_mm = {{0, 0, 0}, {250, 0, 0}, {250, 150, 0}};
  const auto corner = [](double t) { return 8 * t < 250 ? Torch{8 * t, 0, 0} : Torch{250, 8 * t - 250, 0}; };
  EXPECT_NEAR(*audit_text(with_positions + positions("U1,W,S1,1", 50, corner, until_50), {}, &plan)
                   .passes[0]
                   .length_mm,
              400, 0.1);
  EXPECT_NEAR(*audit_text(with_positions + positions("U1,W,S1,1", 50, corner, until_50)).passes[0].length_mm,
              400, 2);
}

TEST(WeldedLength, ARestartOverWhatIsWeldedCountsOnce) {
  const Plan plan = small_plan();
  // 0 to 200 mm, arc out, back to 190 mm, on to 400 mm.
  const auto restart = [](double t) {
    if (t < 25) return Torch{8 * t, 0, 0};
    if (t < 27) return Torch{200 - 5 * (t - 25), 0, 0};
    return Torch{190 + 8 * (t - 27), 0, 0};
  };
  const auto on = [](double t) { return t < 25 || (t >= 27 && t < 53.25); };
  const auto result = audit_text(with_positions + positions("U1,W,S1,1", 53.5, restart, on), {}, &plan);
  EXPECT_NEAR(*result.passes[0].length_mm, 400, 0.1);
  EXPECT_NEAR(*result.passes[0].overlap_mm, 10, 0.1);
  EXPECT_EQ(result.passes[0].arc_starts, 2u);
}

TEST(WeldedLength, AgainstThePathsDirectionIsTheSame) {
  const Plan plan = small_plan();
  const auto back = [](double t) { return Torch{400 - 8 * t, 0, 0}; };
  EXPECT_NEAR(
      *audit_text(with_positions + positions("U1,W,S1,1", 50, back, until_50), {}, &plan).passes[0].length_mm,
      400, 0.01);
}

TEST(WeldedLength, OfAClosedSeamReportsItsOverlapApart) {
  Plan plan = small_plan();
  plan.weldments[0].seams[0].path_mm = {{0, 0, 0}, {100, 0, 0}, {100, 100, 0}, {0, 100, 0}, {0, 0, 0}};
  plan.weldments[0].seams[0].overlap_mm = 16;
  const auto round = [](double t) {
    const double s = std::fmod(8 * t, 400);
    if (s < 100) return Torch{s, 0, 0};
    if (s < 200) return Torch{100, s - 100, 0};
    if (s < 300) return Torch{300 - s, 100, 0};
    return Torch{0, 400 - s, 0};
  };
  const auto result = audit_text(
      with_positions + positions("U1,W,S1,1", 52, round, [](double t) { return t < 52; }), {}, &plan);
  EXPECT_NEAR(*result.passes[0].length_mm, 400, 0.01);
  EXPECT_NEAR(*result.passes[0].overlap_mm, 16, 0.05);
  EXPECT_FALSE(has_finding(result, "record.length.long"));
}

TEST(WeldedLength, OfAnIntermittentSeamIsThatOfItsRuns) {
  const Plan plan = small_plan();
  // 60 mm runs every 150 mm at 8 mm/s, between them through the air at 100 mm/s.
  const auto runs = [](double t) {
    const double cycle = 60 / 8.0 + 90 / 100.0, phase = std::fmod(t, cycle), n = std::floor(t / cycle);
    return Torch{150 * n + (phase < 7.5 ? 8 * phase : 60 + 100 * (phase - 7.5)), 0, 0};
  };
  const auto on = [](double t) { return std::fmod(t, 8.4) < 7.5 && t < 24.3; };
  const auto result = audit_text(with_positions + positions("U1,W,S2,1", 24.5, runs, on), {}, &plan);
  EXPECT_NEAR(*result.passes[0].length_mm, 180, 0.5);
  EXPECT_EQ(result.passes[0].arc_starts, 3u);
}

TEST(WeldedLength, DoesNotTakeTheWayThroughTheAirForWeld) {
  // Ten samples a second and the robot gone by 50 mm in the first sample after the arc.
  const Plan plan = small_plan();
  std::string log = with_positions;
  for (int i = 0; i <= 500; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + (i < 250 ? fixed(200 + i % 2, 0) : "0") + ",25," +
           fixed(i < 250 ? 0.8 * i : 250.0, 2) + ",0,0\n";
  EXPECT_NEAR(*audit_text(log, {}, &plan).passes[0].length_mm, 0.8 * 249, 0.01);
  EXPECT_NEAR(*audit_text(log).passes[0].length_mm, 0.8 * 249, 0.01);
}

TEST(WeldedLength, PositionsInAnotherFrameAreNotUsed) {
  const Plan plan = small_plan();
  const auto elsewhere = [](double t) { return Torch{8 * t, 500, 900}; };
  const auto result = audit_text(with_positions + positions("U1,W,S1,1", 50, elsewhere, until_50), {}, &plan);
  EXPECT_TRUE(has_finding(result, "record.position.off-seam"));
  EXPECT_EQ(result.passes[0].length_source, "plan") << "arc time and planned speed still agree";
}

TEST(WeldedLength, IsElseTheIntegralOfTheTravelSpeed) {
  std::string log = "time_s,current_A,voltage_V,travel_speed_mm_s\n";
  // The air move that follows isn't welding, even in the interval in which the arc goes out.
  log += "0,200,25,8\n1,201,25,10\n2,200,25,10\n3,0,0,900\n4,0,0,900\n";
  const auto result = audit_text(log);
  EXPECT_DOUBLE_EQ(*result.passes[0].length_mm, 9 + 10 + 10);
  EXPECT_EQ(result.passes[0].length_source, "travel speed");
}

TEST(WeldedLength, IsElseThePlansWhereArcTimeAgrees) {
  const Plan plan = small_plan();
  const std::string header = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V\n";
  const auto agrees = audit_text(header + arc_rows("U1,W,S1,1", 0, 46) + "46.0,U1,W,S1,1,0,0\n", {}, &plan);
  EXPECT_EQ(agrees.passes[0].length_source, "plan");
  EXPECT_DOUBLE_EQ(*agrees.passes[0].length_mm, 400);
  EXPECT_EQ(agrees.passes[0].verdict, Verdict::pass);

  const auto on_the_limit =
      audit_text(header + arc_rows("U1,W,S1,1", 0, 45) + "45.0,U1,W,S1,1,0,0\n", {}, &plan);
  EXPECT_EQ(on_the_limit.passes[0].length_source, "plan");

  const auto differs = audit_text(header + arc_rows("U1,W,S1,1", 0, 44) + "44.0,U1,W,S1,1,0,0\n", {}, &plan);
  EXPECT_FALSE(differs.passes[0].length_mm);
  EXPECT_FALSE(differs.passes[0].heat_input_kJ_mm);
  EXPECT_TRUE(differs.passes[0].energy_J);
  EXPECT_EQ(differs.passes[0].verdict, Verdict::undecided);
  ASSERT_TRUE(has_finding(differs, "record.length.disagrees"));
  EXPECT_EQ(findings_of(differs, "record.length.disagrees")[0].severity, Severity::warn);

  AuditOptions options;
  options.length_tolerance_pct = 15;
  EXPECT_TRUE(audit_text(header + arc_rows("U1,W,S1,1", 0, 44) + "44.0,U1,W,S1,1,0,0\n", options, &plan)
                  .passes[0]
                  .length_mm);
}

TEST(WeldedLength, WithoutAnySourceThereIsEnergyAndAFindingThatSaysWhy) {
  AuditOptions options;
  options.process = "135";
  const auto result = audit_text("time_s,current_A,voltage_V\n0,200,25\n1,201,25\n2,0,0\n", options);
  EXPECT_TRUE(result.passes[0].energy_J);
  EXPECT_FALSE(result.passes[0].heat_input_kJ_mm);
  ASSERT_TRUE(has_finding(result, "record.length.unknown"));
}

TEST(WeldedLength, ShorterThanThePlansIsFound) {
  const Plan plan = small_plan();
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";
  for (int i = 0; i <= 200; ++i)
    log += fixed(i / 10.0, 1) + ",U1,W,S1,1," + fixed(200 + i % 2, 0) + ",25,8\n";
  const auto result = audit_text(log, {}, &plan);
  const auto found = findings_of(result, "record.length.part");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(result.passes[0].verdict, Verdict::undecided) << "another log may go on with it";
  EXPECT_NEAR(*found[0].value, 160, 1e-6);
  EXPECT_DOUBLE_EQ(*found[0].limit, 400);
}

TEST(HeatInput, NeedsAProcessFromPlanOrOption) {
  const std::string log =
      "time_s,current_A,voltage_V,travel_speed_mm_s\n0,200,25,10\n1,200.5,25,10\n2,0,0,10\n";
  const auto unknown = audit_text(log);
  EXPECT_NEAR(*unknown.passes[0].arc_energy_kJ_mm, *unknown.passes[0].energy_J / 20 / 1000, 1e-12);
  EXPECT_FALSE(unknown.passes[0].heat_input_kJ_mm);
  AuditOptions options;
  options.process = "141";
  const auto known = audit_text(log, options);
  EXPECT_NEAR(*known.passes[0].heat_input_kJ_mm, 0.6 * *unknown.passes[0].arc_energy_kJ_mm, 1e-12);
}

// Coverage alone, so that each way in which spans can meet is seen.
TEST(SeamCoverage, CountsEverySpanOnce) {
  SeamCoverage coverage(1000, false);
  const auto lay = [&](double low, double high) {
    coverage.pass(low, high);
    coverage.finish_piece();
  };
  lay(100, 200);
  lay(300, 400);
  lay(250, 260);
  EXPECT_DOUBLE_EQ(coverage.covered_mm(), 210);
  EXPECT_DOUBLE_EQ(coverage.overlap_mm(), 0);
  lay(150, 350);  // bridges all three
  EXPECT_DOUBLE_EQ(coverage.covered_mm(), 300);
  EXPECT_DOUBLE_EQ(coverage.overlap_mm(), 110);
  lay(100, 400);
  EXPECT_DOUBLE_EQ(coverage.covered_mm(), 300);
  EXPECT_DOUBLE_EQ(coverage.overlap_mm(), 410);
}

TEST(SeamCoverage, GoesRoundOnAClosedSeam) {
  SeamCoverage ring(400, true);
  ring.pass(350, 450);
  ring.finish_piece();
  EXPECT_DOUBLE_EQ(ring.covered_mm(), 100);
  ring.pass(-10, 20);
  ring.finish_piece();
  EXPECT_DOUBLE_EQ(ring.covered_mm(), 100) << "-10 to 20 lies within 350 to 450";
  EXPECT_DOUBLE_EQ(ring.overlap_mm(), 30);
  ring.pass(0, 430);
  ring.finish_piece();
  EXPECT_DOUBLE_EQ(ring.covered_mm(), 400);
}

TEST(SeamCoverage, StaysSmallHoweverManySpans) {
  SeamCoverage coverage(1e6, false);
  for (int i = 0; i < 5000; ++i) {
    coverage.pass(i * 100.0, i * 100.0 + 10);
    coverage.finish_piece();
  }
  EXPECT_GE(coverage.covered_mm(), 50'000);
  EXPECT_LE(coverage.covered_mm(), 500'000);
}

}  // namespace
}  // namespace seamtakt::test
