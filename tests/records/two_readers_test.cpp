#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "plain_audit.hpp"
#include "records/log/kernel/row_kernel.hpp"
#include "records/passes/audit_json.hpp"
#include "support/sanitized.hpp"

namespace seamtakt::test {
namespace {

struct Dialect {
  char delimiter = ',';
  bool decimal_comma = false, carriage_returns = false, byte_order_mark = false, last_newline = true,
       quotes = false;
  double blanks = 0;  ///< share of the numbers and times with blanks around them
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
    // Passes that take turns row by row, or by stretches of rows.
    const double turns = std::array{1.0, 0.2, 0.01}[pick(3)];
    std::size_t at = 0;
    for (std::size_t row = 0; row < rows; ++row) {
      if (chance(turns)) at = pick(states.size());
      text += next_row(states[at]);
    }
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
    dialect_.quotes = chance(0.2);
    dialect_.blanks = std::array{0.0, 0.0, 0.02, 1.0}[pick(4)];
    decimals_ = 1 + static_cast<int>(pick(4));
  }

  std::string number(double value, int decimals) {
    std::string text = fixed(value, decimals);
    if (dialect_.decimal_comma) std::replace(text.begin(), text.end(), '.', ',');
    if (dialect_.blanks > 0 && chance(dialect_.blanks)) text = ' ' + text + (chance(0.2) ? "  " : "");
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
      state.current = state.on ? between(60, 300) : between(-1, 4.9);
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

/// Equal to within the last roundings of a quotient of sums: the sums themselves are exact.
void expect_same(double got, long double want, const char* what) {
  const double tolerance = 1.5e-15 * std::max(1e-3, std::fabs(static_cast<double>(want)));
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

/// Ways of reading that must all give the same, to the last bit.
struct Way {
  std::string kernel;
  unsigned threads;
  std::size_t block_bytes, chunk;
};

std::vector<Way> ways(unsigned seed) {
  std::vector<Way> all = {
      {"none", 1, 1u << 17, 0}, {"", 1, 1u << 17, 0}, {"", 2, 1 + seed % 5000, 1 + seed % 97}};
  const auto& kernels = row_kernels();
  all.push_back({kernels[seed % kernels.size()]->name, 1 + seed % 4, 200 + seed % 3000, 0});
  all.push_back({kernels[(seed + 1) % kernels.size()]->name, 3, 1 + seed % 700, 0});
  return all;
}

AuditOptions options_of(const Way& way) {
  AuditOptions options;
  options.reader.kernel = way.kernel;
  options.reader.threads = way.threads;
  options.reader.block_bytes = way.block_bytes;
  return options;
}

class TwoReaders : public ::testing::TestWithParam<unsigned> {};

TEST_P(TwoReaders, AgreeOnRandomLogsReadInAnyWay) {
  for (unsigned i = 0; i < 125; ++i) {
    const unsigned seed = GetParam() * 1000 + i;
    SCOPED_TRACE("seed " + std::to_string(seed));
    const std::string log = RandomLog(seed).text();
    const auto plain = plain_audit(log);
    std::string first;
    for (const Way& way : ways(seed)) {
      const auto result = audit_text(log, options_of(way), nullptr, way.chunk);
      if (first.empty()) {
        first = audit_json(result);
        EXPECT_EQ(result.rows.rejected, 0u);
        ASSERT_EQ(result.passes.size(), plain.size());
        for (std::size_t p = 0; p < plain.size(); ++p) expect_same(result.passes[p], plain[p]);
      }
      ASSERT_EQ(audit_json(result), first) << way.kernel << ' ' << way.threads << ' ' << way.block_bytes;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, TwoReaders, ::testing::Range(1u, 9u));

/// The outcome of an audit as text: its JSON, or what it refused the log for.
std::string outcome_read_in(const std::string& log, const Way& way, const Plan* plan) {
  AuditOptions options = options_of(way);
  options.max_rejected = 1'000'000;
  options.excursions.window_s = 0.1;
  try {
    const auto result = audit_text(log, options, plan, way.chunk);
    EXPECT_TRUE(result.rows.add_up());
    return audit_json(result);
  } catch (const InputError& error) {
    return error.what();
  }
}

/// A log of long stretches with what loggers get wrong strewn in.
std::string dirty_log(unsigned seed, std::mt19937& random) {
  std::string log =
      "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s,wire_feed_speed_m_min\n";
  const auto pick = [&](std::size_t below) {
    return std::uniform_int_distribution<std::size_t>(0, below - 1)(random);
  };
  std::int64_t ms = 0;
  int seam = 1;
  for (int row = 0; row < 1500; ++row) {
    ms += pick(200) == 0 ? 1500 : 1 + static_cast<std::int64_t>(pick(3));
    if (pick(300) == 0) seam = 1 + static_cast<int>(pick(3));
    const bool on = row % 500 > 20;
    log += fixed(static_cast<double>(ms) / 1000, 3) + ",U1,W,S" + std::to_string(seam) + ",1," +
           fixed(on ? 200 + static_cast<double>(pick(200)) / 10 : 0, 1) + "," +
           fixed(on ? 24 + static_cast<double>(pick(300)) / 100 : 0, 2) + ",8." + std::to_string(pick(10)) +
           "," + (pick(50) == 0 ? "" : "7." + std::to_string(pick(100))) + "\n";
  }
  const std::string specials = "\"\r\n,.;-+eE \t0x9\xff\xc3";
  const std::size_t faults = seed % 12;
  for (std::size_t i = 0; i < faults; ++i) {
    const std::size_t at = 90 + pick(log.size() - 90);
    switch (pick(3)) {
      case 0:
        log[at] = specials[pick(specials.size())];
        break;
      case 1:
        log.insert(at, 1, specials[pick(specials.size())]);
        break;
      default:
        log.erase(at, 1 + pick(30));
    }
  }
  return log;
}

TEST(TwoReadersDirty, EveryWayOfReadingADirtyLogComesToTheSame) {
  Plan plan = small_plan();
  plan.schedules[0].arc_start_s = 0.05;
  plan.schedules[0].crater_fill_s = 0.2;
  plan.schedules[0].limits.emplace();
  plan.schedules[0].limits->current_A = Interval{209, 211};
  plan.schedules[0].limits->travel_speed_mm_s = Interval{8.3, 8.6};
  for (unsigned seed = 0; seed < rounds(300u, 40u); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    const std::string log = dirty_log(seed, random);
    const Plan* const judged_by = seed % 2 == 0 ? &plan : nullptr;
    const std::string first = outcome_read_in(log, {"none", 1, 1u << 17, 0}, judged_by);
    for (const Way& way : ways(seed))
      ASSERT_EQ(outcome_read_in(log, way, judged_by), first) << way.kernel << ' ' << way.block_bytes;
  }
}

}  // namespace
}  // namespace seamtakt::test
