#include "formula/quantities/quantity.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "base/parallel/thread_pool.hpp"
#include "published/published_rows.hpp"

namespace seamtakt {
namespace {

QuantityAnswer ask(const char* name, const std::string& inputs) {
  const Quantity& quantity = *find_quantity(name);
  return answer(quantity, published::request_of(quantity, inputs));
}

InputError refusal(const char* name, const QuantityRequest& request) {
  try {
    answer(*find_quantity(name), request);
  } catch (const InputError& error) {
    return error;
  }
  ADD_FAILURE() << "taken as good";
  return {"", "", ""};
}

QuantityRequest good_heat_input() {
  return published::request_of(*find_quantity("heat-input"),
                               "voltage=25; current=200; travel-speed=5; process=135");
}

TEST(Answer, RefusesAnOptionThatTheQuantityDoesNotHave) {
  QuantityRequest request = good_heat_input();
  request.inputs.numbers["volts"] = 3;
  InputError error = refusal("heat-input", request);
  EXPECT_EQ(error.where(), "--volts");
  EXPECT_NE(error.expected().english().find("--voltage"), std::string::npos);
}

TEST(Answer, RefusesATextForANumberAndANumberForAText) {
  QuantityRequest text = good_heat_input();
  text.inputs.texts["time"] = "soon";
  EXPECT_EQ(refusal("heat-input", text).expected().english(), "a number");
  QuantityRequest number = good_heat_input();
  number.inputs.numbers["process"] = 135;
  EXPECT_EQ(refusal("heat-input", number).expected().english(), "a text");
}

TEST(Answer, NamesTheChoicesOfAText) {
  QuantityRequest request =
      published::request_of(*find_quantity("cooling-time"), "heat-input=1; thickness=10");
  request.inputs.texts["joint"] = "T";
  EXPECT_EQ(refusal("cooling-time", request).expected().english(), "plate, butt, corner, tee or lap");
}

TEST(Answer, RefusesNumbersThatAreNotFinite) {
  for (double bad : {std::nan(""), HUGE_VAL, -HUGE_VAL}) {
    QuantityRequest request = good_heat_input();
    request.inputs.numbers["voltage"] = bad;
    EXPECT_EQ(refusal("heat-input", request).where(), "--voltage");
  }
}

TEST(Answer, NamesTheOptionsWhoseResultIsNotFinite) {
  QuantityRequest request = good_heat_input();
  request.inputs.numbers["voltage"] = 1e200;
  request.inputs.numbers["current"] = 1e200;
  InputError error = refusal("heat-input", request);
  EXPECT_NE(error.found().english().find("--voltage 1e+200"), std::string::npos) << error.what();
  EXPECT_NE(error.found().english().find("arc_"), std::string::npos) << error.what();
}

TEST(Answer, FillsInDefaultsAndLetsThemBeGiven) {
  double at_20 = *ask("cooling-time", "heat-input=1; thickness=10").results.values["cooling_time_s"].number;
  EXPECT_EQ(at_20, *ask("cooling-time", "heat-input=1; thickness=10; preheat=20; joint=plate")
                        .results.values["cooling_time_s"]
                        .number);
  EXPECT_LT(at_20, *ask("cooling-time", "heat-input=1; thickness=10; preheat=100")
                        .results.values["cooling_time_s"]
                        .number);
}

TEST(Answer, LeavesAKeyNullWhoseOptionsAreMissing) {
  QuantityAnswer answered = ask("heat-input", "voltage=25; current=200");
  EXPECT_TRUE(answered.results.values.contains("arc_power_W"));
  EXPECT_FALSE(answered.results.values.contains("arc_energy_kJ_mm"));
}

TEST(Uncertainty, OfAProductAddsRelativePartsInSquares) {
  QuantityAnswer answered = ask(
      "heat-input",
      "voltage=25; current=200; travel-speed=5; process=135; u-voltage=2%; u-current=1%; u-travel-speed=3%");
  double relative = std::sqrt(0.02 * 0.02 + 0.01 * 0.01 + 0.03 * 0.03);
  EXPECT_NEAR(answered.u["arc_energy_kJ_mm"], 1.0 * relative, 1e-12);
  EXPECT_NEAR(answered.u["heat_input_kJ_mm"], 0.8 * relative, 1e-12);
  EXPECT_EQ(answered.u["thermal_efficiency"], 0);
}

TEST(Uncertainty, OfADefaultCounts) {
  QuantityRequest request =
      published::request_of(*find_quantity("cooling-time"), "heat-input=1; thickness=50");
  request.standard_uncertainty["preheat"] = 5;
  QuantityAnswer answered = answer(*find_quantity("cooling-time"), request);
  EXPECT_GT(answered.u["cooling_time_3d_s"], 0.01);
}

TEST(Uncertainty, IsNotAskedOfWhatWasNotGiven) {
  QuantityRequest request =
      published::request_of(*find_quantity("heat-input"), "voltage=25; current=200; travel-speed=5");
  request.standard_uncertainty["time"] = 1;
  EXPECT_EQ(refusal("heat-input", request).where(), "--u-time");
  request.standard_uncertainty = {{"voltage", -1}};
  EXPECT_EQ(refusal("heat-input", request).where(), "--u-voltage");
  request.standard_uncertainty = {{"process", 1}};
  EXPECT_EQ(refusal("heat-input", request).where(), "--u-process");
}

TEST(Uncertainty, WithoutASlopeIsLeftOutAndSaidSo) {
  QuantityAnswer answered = ask("move-time", "distance=0; speed=1000; acceleration=4000; u-distance=1");
  EXPECT_FALSE(answered.u.contains("time_s"));
  bool said = false;
  for (const auto& finding : answered.results.findings) said = said || finding.rule == "uncertainty.no-slope";
  EXPECT_TRUE(said);
}

TEST(MonteCarlo, DependsOnTheSeedAloneAndRepeatsToTheLastBit) {
  const Quantity& quantity = *find_quantity("heat-input");
  QuantityRequest request =
      published::request_of(quantity, "voltage=25; current=200; travel-speed=5; u-voltage=0.5; u-current=4");
  request.monte_carlo_samples = 5000;
  double first = answer(quantity, request).u_monte_carlo["arc_energy_kJ_mm"];
  EXPECT_EQ(first, answer(quantity, request).u_monte_carlo["arc_energy_kJ_mm"]);
  request.seed = 2;
  EXPECT_NE(first, answer(quantity, request).u_monte_carlo["arc_energy_kJ_mm"]);
}

TEST(MonteCarlo, DoesNotDependOnTheNumberOfThreads) {
  const Quantity& quantity = *find_quantity("cooling-time");
  QuantityRequest request =
      published::request_of(quantity, "heat-input=1.2; thickness=15; u-heat-input=3%; u-thickness=0.2");
  request.monte_carlo_samples = 7777;
  double pooled = answer(quantity, request).u_monte_carlo["cooling_time_s"];
  // Within a piece of a job the pool works on the calling thread alone.
  double alone = 0;
  ThreadPool::shared().parallel_for(1, 1, [&](std::size_t, std::size_t) {
    alone = answer(quantity, request).u_monte_carlo["cooling_time_s"];
  });
  EXPECT_EQ(pooled, alone);
}

TEST(MonteCarlo, NeedsSomethingToDrawAndTwoSamples) {
  QuantityRequest request = good_heat_input();
  request.monte_carlo_samples = 1000;
  EXPECT_EQ(refusal("heat-input", request).where(), "--monte-carlo");
  request.standard_uncertainty["voltage"] = 1;
  request.monte_carlo_samples = 1;
  EXPECT_EQ(refusal("heat-input", request).where(), "--monte-carlo");
  request.monte_carlo_samples = 1'000'000'000'000;
  EXPECT_EQ(refusal("heat-input", request).where(), "--monte-carlo");
}

TEST(MonteCarlo, CountsSamplesThatCannotBeComputed) {
  const Quantity& quantity = *find_quantity("cooling-time");
  QuantityRequest request = published::request_of(quantity, "heat-input=1; thickness=10; u-thickness=10");
  request.monte_carlo_samples = 4000;
  QuantityAnswer answered = answer(quantity, request);
  double left_out = 0;
  for (const auto& finding : answered.results.findings)
    if (finding.rule == "uncertainty.samples-left-out") left_out = *finding.value;
  // A tenth minus one standard deviation is below 0: 15.9 %.
  EXPECT_NEAR(left_out / 4000, 0.1587, 0.03);
}

TEST(MonteCarlo, SaysWhereTheFirstOrderMisleads) {
  const Quantity& quantity = *find_quantity("cooling-time");
  QuantityRequest request = published::request_of(quantity, "heat-input=1; thickness=10; u-thickness=2.5");
  request.monte_carlo_samples = 20000;
  QuantityAnswer answered = answer(quantity, request);
  bool said = false;
  for (const auto& finding : answered.results.findings)
    said = said || finding.rule == "uncertainty.not-linear";
  EXPECT_TRUE(said);
}

TEST(Dual, CarriesConstantsWithoutDerivatives) {
  Dual x = seeded(3, 5), two = Dual(2.0), sum = two * two + x * two;
  EXPECT_EQ(value_of(sum), 10);
  EXPECT_EQ(sum.derivatives()[5], 2);
  EXPECT_EQ(sum.derivatives()[0], 0);
  EXPECT_NEAR(arc_tangent(x).derivatives()[5], 0.1, 1e-15);
}

TEST(Dual, TakesOneBranchOfTheLargerAndTheSmaller) {
  Dual a = seeded(3, 0), b = seeded(3, 1);
  EXPECT_EQ(larger<Dual>(a, b).derivatives()[0], 1);
  EXPECT_EQ(larger<Dual>(a, b).derivatives()[1], 0);
  EXPECT_EQ(smaller<Dual>(a, b).derivatives()[0], 1);
  EXPECT_EQ(larger<Dual>(a + 1.0, b).derivatives()[0], 1);
}

}  // namespace
}  // namespace seamtakt
