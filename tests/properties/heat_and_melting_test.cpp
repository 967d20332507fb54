#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "formula/heat/heat_input.hpp"
#include "formula/heat/waveform.hpp"
#include "formula/size/penetration.hpp"
#include "formula/wire/deposition.hpp"
#include "formula/wire/melting.hpp"
#include "properties/numbers.hpp"

namespace seamtakt::properties {
namespace {

RC_GTEST_PROP(ArcEnergy, FallsAsTheTravelSpeedRises, ()) {
  double power = between(500, 20000), speed = between(0.5, 40), factor = between(1, 10);
  assert_near(arc_energy_kJ_mm(power, speed * factor), arc_energy_kJ_mm(power, speed) / factor);
}

RC_GTEST_PROP(ArcEnergy, IsTheSameByPowerAndByEnergyOfTheWeld, ()) {
  double power = between(500, 20000), speed = between(0.5, 40), length = between(1, 5000);
  assert_near(arc_energy_of_weld_kJ_mm(power * length / speed, length), arc_energy_kJ_mm(power, speed));
}

RC_GTEST_PROP(HeatInput, NeverExceedsTheArcEnergy, ()) {
  double energy = between(0.01, 10);
  for (const auto& process : process_efficiencies())
    RC_ASSERT(heat_input_kJ_mm(energy, process.thermal_efficiency) <= energy);
}

/// A waveform of linear pieces: positive spans, any positive voltages and currents.
struct Signal {
  std::vector<double> time, voltage, current;
};

Signal any_signal() {
  Signal signal;
  double now = 0;
  int samples = *rc::gen::inRange(2, 40);
  for (int i = 0; i < samples; ++i) {
    signal.time.push_back(now);
    signal.voltage.push_back(between(5, 45));
    signal.current.push_back(between(1, 600));
    now += between(1e-4, 0.1);
  }
  return signal;
}

RC_GTEST_PROP(Waveform, HasAnEffectiveCurrentNotBelowItsMean, ()) {
  Signal signal = any_signal();
  WaveformSums sums = waveform_sums(signal.time, signal.voltage, signal.current);
  RC_ASSERT(sums.rms_current_A() >= sums.mean_current_A() * (1 - 1e-12));
}

RC_GTEST_PROP(Waveform, HasTheSameEnergyHoweverItsRecordIsDivided, ()) {
  Signal signal = any_signal();
  std::size_t cut = *rc::gen::inRange<std::size_t>(0, signal.time.size());
  auto part = [&](std::size_t begin, std::size_t end) {
    auto of = [&](const std::vector<double>& column) {
      return std::span(column).subspan(begin, end - begin);
    };
    return waveform_sums(of(signal.time), of(signal.voltage), of(signal.current)).energy_J();
  };
  std::size_t n = signal.time.size();
  assert_near(part(0, cut + 1) + part(cut, n), part(0, n), 1e-11);
}

RC_GTEST_PROP(Waveform, ErrsByTheCovarianceWhereTheMeansAreMultiplied, ()) {
  // A linear arc U = U0 + R*I: mean(U*I) - mean U * mean I = R*(Irms^2 - Imean^2).
  Signal signal = any_signal();
  double u0 = between(10, 25), resistance = between(0.005, 0.06);
  for (std::size_t i = 0; i < signal.time.size(); ++i)
    signal.voltage[i] = u0 + resistance * signal.current[i];
  WaveformSums sums = waveform_sums(signal.time, signal.voltage, signal.current);
  double variance =
      sums.rms_current_A() * sums.rms_current_A() - sums.mean_current_A() * sums.mean_current_A();
  RC_ASSERT(std::abs(sums.mean_power_W() - sums.product_power_W() - resistance * variance) <=
            1e-9 * sums.mean_power_W());
}

RC_GTEST_PROP(Waveform, HasFactorOneWhereTheSignalsAreConstant, ()) {
  Signal signal = any_signal();
  std::fill(signal.voltage.begin(), signal.voltage.end(), 24.8);
  std::fill(signal.current.begin(), signal.current.end(), 205.0);
  assert_near(waveform_sums(signal.time, signal.voltage, signal.current).waveform_factor(), 1);
}

RC_GTEST_PROP(MeltingLaw, IsUndoneByItsInverse, ()) {
  double current = between(1, 800), extension = between(1, 50), alpha = between(0.05, 1),
         beta = between(0, 5e-4);
  double feed = wire_feed_speed_mm_s(current, extension, alpha, beta);
  assert_near(melting_current_A(feed, extension, alpha, beta), current, 1e-10);
}

RC_GTEST_PROP(MeltingLaw, IsUndoneWithoutCancellationWhereTheResistanceTermVanishes, ()) {
  double current = between(1, 800), alpha = between(0.05, 1), beta = std::pow(10, between(-30, -8));
  double feed = wire_feed_speed_mm_s(current, 15.0, alpha, beta);
  assert_near(melting_current_A(feed, 15.0, alpha, beta), current, 1e-12);
  assert_near(melting_current_A(alpha * current, 15.0, alpha, 0.0), current, 1e-12);
}

RC_GTEST_PROP(MeltingLaw, FeedsMoreAtMoreCurrentAndAtALongerExtension, ()) {
  double current = between(1, 800), extension = between(1, 50), alpha = between(0.05, 1),
         beta = between(1e-6, 5e-4);
  double feed = wire_feed_speed_mm_s(current, extension, alpha, beta);
  RC_ASSERT(wire_feed_speed_mm_s(current * 1.01, extension, alpha, beta) > feed);
  RC_ASSERT(wire_feed_speed_mm_s(current, extension * 1.01, alpha, beta) > feed);
  RC_ASSERT(melting_current_A(feed, extension * 1.01, alpha, beta) < current);
}

RC_GTEST_PROP(MeltingLaw, OfASteadyCurrentIsTheWaveformsLaw, ()) {
  double current = between(1, 800), extension = between(1, 50), alpha = between(0.05, 1),
         beta = between(0, 5e-4);
  assert_near(wire_feed_speed_of_waveform_mm_s(current, current, extension, alpha, beta),
              wire_feed_speed_mm_s(current, extension, alpha, beta));
}

RC_GTEST_PROP(MeltingLaw, OfAPulseIsTheMeanOfItsParts, ()) {
  double peak = between(250, 600), base = between(20, 200), duty = between(0.05, 0.95),
         extension = between(5, 30);
  double alpha = 0.3, beta = 5e-5, mean = duty * peak + (1 - duty) * base;
  double rms = std::sqrt(duty * peak * peak + (1 - duty) * base * base);
  assert_near(wire_feed_speed_of_waveform_mm_s(mean, rms, extension, alpha, beta),
              duty * wire_feed_speed_mm_s(peak, extension, alpha, beta) +
                  (1 - duty) * wire_feed_speed_mm_s(base, extension, alpha, beta));
  assert_near(melting_mean_current_A(wire_feed_speed_of_waveform_mm_s(mean, rms, extension, alpha, beta), rms,
                                     extension, alpha, beta),
              mean, 1e-10);
}

RC_GTEST_PROP(MeltingLaw, OfAScaledWireMeltsTheSamePowerIntoTheSameVolume, ()) {
  // alpha*area is diameter-free, and so is beta*area^2.
  double d = between(0.6, 3);
  assert_near(scaled_alpha_mm_s_A(0.3, d) * wire_area_mm2(d), 0.3 * wire_area_mm2(1.2));
  assert_near(scaled_beta_per_s_A2(5e-5, d) * std::pow(wire_area_mm2(d), 2),
              5e-5 * std::pow(wire_area_mm2(1.2), 2));
}

RC_GTEST_PROP(Deposit, HasTheVolumeOfTheWireThatMelted, ()) {
  // Wire and weld metal of one density: area * travel = wire area * feed * efficiency.
  double d = between(0.6, 3), feed = between(1, 30), speed = between(1, 30), density = between(2, 9),
         efficiency = between(0.5, 1);
  double deposited = deposition_rate_kg_h(melting_rate_kg_h(wire_area_mm2(d), feed, density), efficiency);
  assert_near(deposit_area_mm2(deposited, speed, density) * speed,
              wire_area_mm2(d) * feed_mm_s_from_m_min(feed) * efficiency);
}

RC_GTEST_PROP(Penetration, FollowsItsPowersOfCurrentSpeedAndVoltage, ()) {
  double current = between(100, 800), voltage = between(15, 45), speed = between(1, 30),
         factor = between(1, 8);
  double here = penetration_mm(current, voltage, speed, 0.0012);
  assert_near(penetration_mm(current * factor, voltage, speed, 0.0012), here * std::pow(factor, 4.0 / 3),
              1e-11);
  assert_near(penetration_mm(current, voltage, speed * factor, 0.0012), here * std::pow(factor, -1.0 / 3),
              1e-11);
  assert_near(penetration_mm(current, voltage * factor, speed, 0.0012), here * std::pow(factor, -2.0 / 3),
              1e-11);
}

}  // namespace
}  // namespace seamtakt::properties
