#include "formula/heat/waveform.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "published/published_rows.hpp"

namespace seamtakt {
namespace {

TEST(WaveformSums, IntegrateProductsOfLinearSignalsExactly) {
  // u from 20 to 30, i from 100 to 300 over 2 s: integral of (20+5t)(100+100t) = 40*100 + ... done by hand.
  WaveformSums sums;
  sums.add_span(2, 20, 100, 30, 300);
  // int (2000 + 2500 t + 500 t^2) from 0 to 2.
  EXPECT_DOUBLE_EQ(sums.energy_J(), 4000 + 5000 + 500 * 8.0 / 3);
  EXPECT_DOUBLE_EQ(sums.mean_voltage_V(), 25);
  EXPECT_DOUBLE_EQ(sums.mean_current_A(), 200);
  EXPECT_DOUBLE_EQ(sums.rms_current_A(), std::sqrt((100 * 100 + 100 * 300 + 300 * 300) / 3.0));
}

TEST(WaveformSums, DoNotChangeWhenASpanIsDivided) {
  WaveformSums whole, parts;
  whole.add_span(1, 18, 60, 30, 400);
  for (int i = 0; i < 7; ++i) {
    double a = i / 7.0, b = (i + 1) / 7.0;
    parts.add_span(b - a, 18 + 12 * a, 60 + 340 * a, 18 + 12 * b, 60 + 340 * b);
  }
  EXPECT_NEAR(parts.energy_J(), whole.energy_J(), 1e-11 * whole.energy_J());
  EXPECT_NEAR(parts.rms_current_A(), whole.rms_current_A(), 1e-12 * whole.rms_current_A());
}

TEST(WaveformSums, AgreeWithAFineSumOfAnArcAtWelding) {
  const int n = 20000;
  std::vector<double> time, voltage, current;
  double fine = 0;
  for (int i = 0; i <= n; ++i) {
    double t = i / static_cast<double>(n);
    time.push_back(t);
    current.push_back(200 + 80 * std::sin(2 * 3.14159 * 50 * t));
    voltage.push_back(24 + 0.03 * current.back() + std::cos(2 * 3.14159 * 130 * t));
    if (i > 0) fine += (voltage[i] * current[i] + voltage[i - 1] * current[i - 1]) / 2 / n;
  }
  EXPECT_NEAR(waveform_sums(time, voltage, current).energy_J(), fine, 1e-4 * fine);
}

TEST(WaveformSums, KeepTheirDigitsOverALongRecord) {
  WaveformSums sums;
  for (int i = 0; i < 3000000; ++i) sums.add_span(1e-4, 24.8, 205, 24.8, 205);
  EXPECT_NEAR(sums.duration_s(), 300, 1e-11);
  EXPECT_NEAR(sums.energy_J(), 24.8 * 205 * 300, 1e-6);
  EXPECT_NEAR(sums.waveform_factor(), 1, 1e-14);
}

QuantityRequest record(std::vector<double> time, std::vector<double> voltage, std::vector<double> current) {
  QuantityRequest request;
  request.inputs.series = {
      {"time", std::move(time)}, {"voltage", std::move(voltage)}, {"current", std::move(current)}};
  return request;
}

std::string refused(const QuantityRequest& request) {
  try {
    answer(*find_quantity("waveform"), request);
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "--file");
    return error.found().english();
  }
  return "taken as good";
}

TEST(Waveform, RefusesRecordsThatCannotBeIntegrated) {
  EXPECT_EQ(refused(record({0}, {20}, {200})), "1 samples");
  EXPECT_EQ(refused(record({}, {}, {})), "0 samples");
  EXPECT_EQ(refused(record({0, 1}, {20}, {200, 200})), "columns of different length");
  EXPECT_EQ(refused(record({0, 2, 1}, {20, 20, 20}, {200, 200, 200})), "time 1 s after 2 s in sample 3");
  EXPECT_EQ(refused(record({3, 3}, {20, 20}, {200, 200})), "a record of 0 s");
  EXPECT_EQ(refused(record({0, NAN}, {20, 20}, {200, 200})), "a value that isn't finite in sample 2");
  QuantityRequest no_current = record({0, 1}, {20, 20}, {1, 1});
  no_current.inputs.series.erase("current");
  EXPECT_EQ(refused(no_current), "no column current");
}

TEST(Waveform, SaysWhichWayTheProductOfTheMeansErrs) {
  auto text_of = [](const char* file) {
    const Quantity& quantity = *find_quantity("waveform");
    for (const auto& finding :
         answer(quantity, published::request_of(quantity, std::string("file=waveforms/") + file))
             .results.findings)
      if (finding.rule == "waveform.product-of-means") return finding.text;
    return std::string("nothing");
  };
  EXPECT_NE(text_of("pulse_rectangle.csv").find("reads low"), std::string::npos);
  EXPECT_NE(text_of("dip_transfer.csv").find("reads high"), std::string::npos);
  EXPECT_EQ(text_of("constant.csv"), "nothing");
}

}  // namespace
}  // namespace seamtakt
