#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "audit_fixture.hpp"
#include "plain_audit.hpp"

namespace seamtakt::test {
namespace {

struct Dialect {
  char delimiter = ',';
  bool decimal_comma = false, carriage_returns = false, byte_order_mark = false, last_newline = true,
       quotes = false;
};

/// A log made by chance: passes that take turns, gaps, uneven steps, stuck values, blank lines.
class RandomLog {
 public:
  explicit RandomLog(unsigned seed) : random_(seed) {}

  std::string text() {
    choose_dialect();
    order_ = {"time_s", "unit_serial", "weldment",  "seam",
              "pass",   "current_A",   "voltage_V", "travel_speed_mm_s"};
    std::shuffle(order_.begin(), order_.end(), random_);
    std::string text = dialect_.byte_order_mark ? "\xef\xbb\xbf" : "";
    text += line_of(order_);
    std::vector<State> states(1 + pick(4));
    for (std::size_t i = 0; i < states.size(); ++i) states[i].seam = "S" + std::to_string(i + 1);
    const std::size_t rows = 50 + pick(800);
    for (std::size_t row = 0; row < rows; ++row) text += next_row(states[pick(states.size())]);
    if (!dialect_.last_newline) text.erase(text.find_last_not_of("\r\n") + 1);
    return text;
  }

 private:
  struct State {
    std::string seam;
    std::int64_t ms = 0;
    bool on = false;
    std::size_t stuck = 0;
    double current = 0, voltage = 0;
  };

  std::size_t pick(std::size_t below) {
    return std::uniform_int_distribution<std::size_t>(0, below - 1)(random_);
  }
  bool chance(double probability) { return std::bernoulli_distribution(probability)(random_); }
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }

  void choose_dialect() {
    dialect_.delimiter = ",;\t"[pick(3)];
    dialect_.decimal_comma = dialect_.delimiter != ',' && chance(0.5);
    dialect_.carriage_returns = chance(0.5);
    dialect_.byte_order_mark = chance(0.3);
    dialect_.last_newline = chance(0.7);
    dialect_.quotes = chance(0.3);
    decimals_ = 1 + static_cast<int>(pick(4));
  }

  std::string number(double value, int decimals) {
    std::string text = fixed(value, decimals);
    if (dialect_.decimal_comma) std::replace(text.begin(), text.end(), '.', ',');
    return text;
  }

  std::string line_of(const std::vector<std::string>& cells) {
    std::string line;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (i > 0) line += dialect_.delimiter;
      line += dialect_.quotes && chance(0.3) ? '"' + cells[i] + '"' : cells[i];
    }
    line += dialect_.carriage_returns ? "\r\n" : "\n";
    return chance(0.02) ? line + (dialect_.carriage_returns ? "\r\n" : "\n") : line;
  }

  std::string next_row(State& state) {
    state.ms += static_cast<std::int64_t>(chance(0.03) ? 0 : 3 + pick(200));
    if (chance(0.04)) state.on = !state.on;
    if (state.stuck > 0) {
      --state.stuck;
    } else {
      if (state.on && chance(0.02)) state.stuck = pick(80);
      state.current = state.on ? between(60, 300) : between(-1, 5);
      state.voltage = state.on ? between(14, 32) : between(0, 60);
    }
    if (!state.on) state.stuck = 0, state.current = std::min(state.current, 4.9);
    std::vector<std::string> cells;
    for (const auto& name : order_) {
      if (name == "time_s")
        cells.push_back(number(static_cast<double>(state.ms) / 1000, 3));
      else if (name == "unit_serial")
        cells.push_back("U 7");
      else if (name == "weldment")
        cells.push_back("W");
      else if (name == "seam")
        cells.push_back(state.seam);
      else if (name == "pass")
        cells.push_back("1");
      else if (name == "current_A")
        cells.push_back(number(state.current, decimals_));
      else if (name == "voltage_V")
        cells.push_back(number(state.voltage, decimals_));
      else
        cells.push_back(number(between(0, 15), 2));
    }
    return line_of(cells);
  }

  std::mt19937 random_;
  Dialect dialect_;
  int decimals_ = 2;
  std::vector<std::string> order_;
};

/// Equal to within the rounding of a sum of thousands of doubles read from decimal text.
void expect_same(double got, long double want, const char* what) {
  const double tolerance = 1e-12 * std::max(1.0, std::fabs(static_cast<double>(want)));
  EXPECT_NEAR(got, static_cast<double>(want), tolerance) << what;
}

void expect_same(const PassRecord& got, const PlainPass& want) {
  EXPECT_EQ(got.seam, want.seam);
  EXPECT_EQ(got.samples, want.samples);
  EXPECT_EQ(got.arc_starts, want.arc_starts);
  expect_same(got.duration_s, want.last_s - want.first_s, "duration");
  expect_same(got.arc_time_s, want.arc_time_s, "arc time");
  expect_same(got.frozen_s, want.frozen_s, "frozen");
  if (want.arc_time_s <= 0) {
    EXPECT_FALSE(got.mean_current_A);
    return;
  }
  expect_same(*got.mean_current_A, want.current, "mean current");
  expect_same(*got.mean_voltage_V, want.voltage, "mean voltage");
  expect_same(*got.mean_power_W, want.power, "mean power");
  expect_same(*got.product_power_W, want.current * want.voltage, "product power");
  expect_same(*got.energy_J, want.energy_J, "energy");
  if (want.travelled_mm > 0) expect_same(*got.length_mm, want.travelled_mm, "length");
}

class TwoReaders : public ::testing::TestWithParam<unsigned> {};

TEST_P(TwoReaders, AgreeOnRandomLogsInAnyChunks) {
  for (unsigned i = 0; i < 25; ++i) {
    const unsigned seed = GetParam() * 1000 + i;
    SCOPED_TRACE("seed " + std::to_string(seed));
    const std::string log = RandomLog(seed).text();
    const auto plain = plain_audit(log);
    AuditOptions options;
    options.reader.block_bytes = 1 + seed % 5000;
    const auto whole = audit_text(log);
    const auto chunked = audit_text(log, options, nullptr, 1 + seed % 97);
    EXPECT_EQ(whole.rows.rejected, 0u);
    ASSERT_EQ(whole.passes.size(), plain.size());
    ASSERT_EQ(chunked.passes.size(), plain.size());
    for (std::size_t p = 0; p < plain.size(); ++p) {
      expect_same(whole.passes[p], plain[p]);
      // The same bits, however the bytes come.
      EXPECT_EQ(whole.passes[p].energy_J, chunked.passes[p].energy_J);
      EXPECT_EQ(whole.passes[p].mean_current_A, chunked.passes[p].mean_current_A);
      EXPECT_EQ(whole.passes[p].source_line_last, chunked.passes[p].source_line_last);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, TwoReaders, ::testing::Range(1u, 9u));

}  // namespace
}  // namespace seamtakt::test
