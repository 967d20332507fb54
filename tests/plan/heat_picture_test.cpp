#include "plan/evaluate/heat_picture.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>
#include <utility>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

constexpr double lambda = handbook_conductivity_W_mmK, rho_c = handbook_heat_capacity_J_mm3K;
constexpr double thick_mm = 300;

MovingSource<double> source_of(double power_W, double speed_mm_s, double preheat_C = 20) {
  return {power_W, speed_mm_s, lambda, rho_c, preheat_C};
}

double on_the_surface_C(const MovingSource<double>& source, double thickness_mm, double ahead_mm,
                        double aside_mm) {
  return plate_temperature_C(source, FieldPoint<double>{ahead_mm, aside_mm, 0.0}, thickness_mm);
}

/// The hottest of many points along a line beside the seam.
double hottest_C(const MovingSource<double>& source, double thickness_mm, double aside_mm) {
  double hottest = 0;
  for (double behind = 0; behind < 300; behind += 0.02)
    hottest = std::max(hottest, on_the_surface_C(source, thickness_mm, -behind, aside_mm));
  return hottest;
}

TEST(SourceOfPass, BringsTheArcsPowerTimesTheEfficiencyOfTheProcess) {
  const Plan plan = load_plan(source_path("/reference/demo/ground-equipment.weldplan.json"));
  const PassEvaluation pass = evaluate(plan).passes.front();
  const Schedule& schedule = *find_by_id(plan.schedules, pass.schedule);
  const MovingSource<double> source = source_of_pass(pass, schedule.travel_speed_mm_s, 45);
  EXPECT_EQ(source.preheat_C, 45);
  // Power over speed is the heat input: W/(mm/s) = J/mm.
  EXPECT_NEAR(source.net_power_W / source.travel_speed_mm_s, 1000 * pass.heat_input_kJ_mm, 1e-9);
}

TEST(ThermalCycle, CoolsOnTheCentreLineOfThickPlateAsRosenthalsFormulaSays) {
  // Behind the arc T - T0 = q/(2 pi lambda x), so the time between two temperatures is known.
  for (const double preheat : {20.0, 120.0})
    for (const auto& [power, speed] : {std::pair(2500.0, 4.0), std::pair(6000.0, 10.0)}) {
      const MovingSource<double> source = source_of(power, speed, preheat);
      const ThermalCycle cycle = thermal_cycle(source, thick_mm, 0, 200, 50);
      ASSERT_TRUE(cycle.at_800_s && cycle.at_500_s);
      const double wanted =
          power / speed / (2 * std::numbers::pi * lambda) * (1 / (500 - preheat) - 1 / (800 - preheat));
      EXPECT_NEAR(*cycle.at_500_s - *cycle.at_800_s, wanted, 1e-6 * wanted);
      EXPECT_NEAR(*cycle.at_800_s, power / (2 * std::numbers::pi * lambda * (800 - preheat)) / speed, 1e-6);
    }
}

TEST(ThermalCycle, OfAFastArcOnASheetTendsToTheThinPlatesClosedForm) {
  // Far behind, K0 tends to its exponential: t = (q/(v d))^2/(4 pi lambda rho c) (1/dT5^2 - 1/dT8^2).
  const double d = 2;
  double off_before = 1;
  for (const double speed : {10.0, 40.0, 160.0}) {
    const double power = 60 * d * speed;
    const ThermalCycle cycle = thermal_cycle(source_of(power, speed), d, 0, 200, 10);
    ASSERT_TRUE(cycle.at_800_s && cycle.at_500_s);
    const double wanted = std::pow(power / speed / d, 2) / (4 * std::numbers::pi * lambda * rho_c) *
                          (1 / (480.0 * 480) - 1 / (780.0 * 780));
    const double off = std::abs((*cycle.at_500_s - *cycle.at_800_s) / wanted - 1);
    EXPECT_LT(off, off_before);
    off_before = off;
  }
  EXPECT_LT(off_before, 0.01);
}

TEST(ThermalCycle, PeaksWhereAFineSearchFindsThePeak) {
  const MovingSource<double> source = source_of(4000, 8);
  for (const double thickness : {4.0, 12.0, thick_mm})
    for (const double aside : {6.0, 8.0, 15.0}) {
      const ThermalCycle cycle = thermal_cycle(source, thickness, aside, 100, 400);
      EXPECT_NEAR(cycle.peak_C, std::min(hottest_C(source, thickness, aside), steel_melting_C), 0.01)
          << thickness << " " << aside;
      EXPECT_LE(*std::max_element(cycle.temperature_C.begin(), cycle.temperature_C.end()),
                cycle.peak_C + 1e-9);
      EXPECT_EQ(cycle.at_800_s.has_value(), cycle.peak_C > 800);
      EXPECT_EQ(cycle.at_500_s.has_value(), cycle.peak_C > 500);
    }
}

TEST(ThermalCycle, OfAStrongFastArcPeaksAsTheLineSourceOfThickPlate) {
  // Tp - T0 = 2 (q/v)/(pi e rho c r^2): the limit of a fast source (half space).
  const MovingSource<double> source = source_of(80000, 400);
  for (const double aside : {3.0, 4.0, 5.0}) {
    const double wanted = 2 * (80000 / 400.0) / (std::numbers::pi * std::numbers::e * rho_c * aside * aside);
    EXPECT_NEAR(thermal_cycle(source, thick_mm, aside, 60, 10).peak_C - 20, wanted, 0.02 * wanted) << aside;
  }
}

TEST(ThermalCycle, FartherOffIsColderAndLater) {
  const MovingSource<double> source = source_of(4000, 8);
  double peak_before = 1e9, time_before = -1e9;
  for (const double aside : {7.0, 9.0, 12.0, 18.0, 30.0}) {
    const ThermalCycle cycle = thermal_cycle(source, 10, aside, 60, 4000);
    const auto at = std::max_element(cycle.temperature_C.begin(), cycle.temperature_C.end());
    const double time = cycle.time_s[static_cast<std::size_t>(at - cycle.temperature_C.begin())];
    EXPECT_LT(cycle.peak_C, peak_before);
    EXPECT_GT(time, time_before);
    peak_before = cycle.peak_C;
    time_before = time;
  }
}

TEST(ThermalCycle, TheTimesOfCoolingAreWhereItsOwnCurveCrosses) {
  const ThermalCycle cycle = thermal_cycle(source_of(5000, 6), 10, 4, 200, 20000);
  const auto crossing_s = [&](double to_C) {
    for (std::size_t i = cycle.time_s.size() - 1; i > 0; --i)
      if (cycle.temperature_C[i - 1] > to_C && cycle.temperature_C[i] <= to_C) return cycle.time_s[i];
    return -1.0;
  };
  const double step = cycle.time_s[1] - cycle.time_s[0];
  EXPECT_NEAR(crossing_s(800), *cycle.at_800_s, step);
  EXPECT_NEAR(crossing_s(500), *cycle.at_500_s, step);
}

TEST(MoltenHalfWidth, IsWhereThePeakFallsToMelting) {
  for (const double thickness : {3.0, 10.0, thick_mm})
    for (const double power : {2000.0, 5000.0}) {
      const MovingSource<double> source = source_of(power, 7);
      const double half = molten_half_width_mm(source, thickness);
      ASSERT_GT(half, 0.3);
      EXPECT_NEAR(hottest_C(source, thickness, half), steel_melting_C, 2) << thickness << " " << power;
      EXPECT_GT(hottest_C(source, thickness, 0.98 * half), steel_melting_C);
      EXPECT_LT(hottest_C(source, thickness, 1.02 * half), steel_melting_C);
      EXPECT_LT(half, molten_half_width_mm(source_of(1.2 * power, 7), thickness));
      EXPECT_LT(half, molten_half_width_mm(source_of(power, 7, 150), thickness));
    }
}

TEST(MoltenHalfWidth, IsNothingWhereNothingMelts) {
  EXPECT_EQ(molten_half_width_mm(source_of(0.5, 20), 10), 0);
}

TEST(SurfaceField, HoldsThePlatesTemperaturesCappedAtMeltingAndAlikeOnBothSides) {
  const MovingSource<double> source = source_of(4500, 7, 60);
  const double thickness = 9, coldest = 150;
  const SurfaceField field = surface_field(source, thickness, coldest, 81, 31);
  ASSERT_EQ(field.ahead_mm.size(), 81u);
  ASSERT_EQ(field.aside_mm.size(), 31u);
  ASSERT_EQ(field.temperature_C.size(), 81u * 31u);
  EXPECT_TRUE(std::is_sorted(field.ahead_mm.begin(), field.ahead_mm.end()));
  EXPECT_TRUE(std::is_sorted(field.aside_mm.begin(), field.aside_mm.end()));
  bool any_capped = false;
  for (std::size_t i = 0; i < field.aside_mm.size(); ++i)
    for (std::size_t j = 0; j < field.ahead_mm.size(); ++j) {
      const double shown = field.temperature_C[i * 81 + j];
      EXPECT_NEAR(shown, field.temperature_C[(30 - i) * 81 + j], 1e-9);
      if (std::hypot(field.ahead_mm[j], field.aside_mm[i]) < 0.01) continue;
      EXPECT_EQ(shown, std::min(on_the_surface_C(source, thickness, field.ahead_mm[j], field.aside_mm[i]),
                                steel_melting_C));
      EXPECT_GT(shown, 60 - 1e-9);
      any_capped = any_capped || shown == steel_melting_C;
    }
  EXPECT_TRUE(any_capped);
  // It begins where the centre line behind the arc has cooled to the coldest asked for.
  EXPECT_NEAR(field.temperature_C[15 * 81], coldest, 0.01);
  EXPECT_GE(field.aside_mm.back(), 3 * molten_half_width_mm(source, thickness) - 1e-9);
}

TEST(SurfaceField, GivesAtLeastTwoPointsEitherWayAndNoNaNForOddInputs) {
  for (const auto& [power, speed, thickness, preheat, coldest] :
       {std::tuple(4000.0, 8.0, 10.0, 20.0, 20.0), std::tuple(1e-3, 1.0, 1.0, 20.0, 100.0),
        std::tuple(1e5, 0.2, 50.0, 400.0, 300.0), std::tuple(100.0, 500.0, 0.5, -20.0, 21.0)}) {
    const MovingSource<double> source = source_of(power, speed, preheat);
    const SurfaceField field = surface_field(source, thickness, coldest, 0, 1);
    EXPECT_EQ(field.temperature_C.size(), 4u);
    const ThermalCycle cycle = thermal_cycle(source, thickness, 3, coldest, 0);
    EXPECT_EQ(cycle.temperature_C.size(), 2u);
    for (const auto* values :
         {&field.temperature_C, &field.ahead_mm, &field.aside_mm, &cycle.temperature_C, &cycle.time_s})
      for (const double value : *values) EXPECT_TRUE(std::isfinite(value)) << power << " " << speed;
  }
}

}  // namespace
}  // namespace seamtakt
