// Excursions come out the same however a log is read, and as a second, plain reckoning has them.
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <random>

#include "audit_fixture.hpp"
#include "records/log/kernel/row_kernel.hpp"
#include "records/passes/audit_json.hpp"
#include "support/sanitized.hpp"

namespace seamtakt::test {
namespace {

__extension__ typedef __int128 Whole;

/// A sample as whole numbers: ms, 0.1 A, 0.01 V, 0.01 mm/s.
struct MilliSample {
  std::int64_t ms = 0, current = 0, voltage = 0, speed = 0;
  bool on() const { return current > 50; }
};

struct Case {
  std::vector<MilliSample> samples;
  std::int64_t window_ms = 1000, start_ms = 0, crater_ms = 0;
};

/// Arcs of some seconds with gaps; the levels change now and then, no sample repeats the one before.
Case random_case(unsigned seed) {
  std::mt19937 random(seed);
  const auto pick = [&](std::int64_t low, std::int64_t high) {
    return std::uniform_int_distribution<std::int64_t>(low, high)(random);
  };
  Case made;
  made.window_ms = std::array{20, 100, 333, 1000, 3000}[seed % 5];
  if (seed % 3 != 0) made.start_ms = pick(0, 400);
  if (seed % 3 != 1) made.crater_ms = pick(0, 400);
  const std::int64_t longest_step = std::array{1, 1, 3, 20, 300}[seed / 5 % 5];
  std::int64_t ms = 0, level = 3000, volts = 2500;
  for (int arc = 0; arc < 3; ++arc) {
    const auto rows = static_cast<int>(pick(100, 2500));
    for (int i = 0; i < rows; ++i) {
      if (pick(0, 150) == 0) level = pick(2300, 3700);
      if (pick(0, 150) == 0) volts = pick(2300, 2700);
      made.samples.push_back({ms, level + 2 * pick(0, 40) + i % 2, volts + pick(0, 30), 800 + pick(0, 50)});
      ms += pick(1, longest_step);
    }
    for (int i = 0; i < 20; ++i) {
      made.samples.push_back({ms, pick(0, 40), 0, 0});
      ms += pick(1, longest_step);
    }
  }
  return made;
}

std::string text_of(const Case& made) {
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";
  for (const MilliSample& s : made.samples)
    log += fixed(static_cast<double>(s.ms) / 1000, 3) + ",U1,W,S1,1," +
           fixed(static_cast<double>(s.current) / 10, 1) + "," +
           fixed(static_cast<double>(s.voltage) / 100, 2) + "," +
           fixed(static_cast<double>(s.speed) / 100, 2) + "\n";
  return log;
}

constexpr std::int64_t lower_A = 271, upper_A = 331, lower_V = 24, upper_V = 26;

struct PlainBin {
  std::int64_t begin_ms = 0, end_ms = 0, ms = 0;
  Whole current = 0, voltage = 0, travelled = 0;  ///< times ms
};

struct PlainExcursion {
  std::string quantity;
  std::int64_t begin_ms, end_ms;
  double length_mm, value, limit;
};

/// The intervals of the steady part: of each arc, those wholly between start and crater.
std::vector<std::size_t> steady_intervals(const Case& made) {
  const std::vector<MilliSample>& all = made.samples;
  std::vector<std::size_t> steady;
  for (std::size_t first = 0; first < all.size();) {
    std::size_t end = first;
    while (end < all.size() && all[end].on()) ++end;
    for (std::size_t i = first; i < end && i + 1 < all.size(); ++i)
      if (all[i].ms >= all[first].ms + made.start_ms && all[i + 1].ms <= all[end].ms - made.crater_ms)
        steady.push_back(i);
    first = end + 1;
  }
  return steady;
}

std::vector<PlainBin> bins_of(const Case& made) {
  std::vector<PlainBin> bins;
  PlainBin bin;
  for (const std::size_t i : steady_intervals(made)) {
    const MilliSample& s = made.samples[i];
    const std::int64_t dt = made.samples[i + 1].ms - s.ms;
    if (bin.ms == 0) bin.begin_ms = s.ms;
    bin.end_ms = s.ms + dt;
    bin.ms += dt;
    bin.current += static_cast<Whole>(s.current) * dt;
    bin.voltage += static_cast<Whole>(s.voltage) * dt;
    bin.travelled += static_cast<Whole>(s.speed) * dt;
    if (bin.ms < made.window_ms) continue;
    bins.push_back(bin);
    bin = {};
  }
  if (bins.empty() || bin.ms == 0) return bins;
  if (2 * bin.ms >= made.window_ms) {
    bins.push_back(bin);
    return bins;
  }
  PlainBin& last = bins.back();
  last.end_ms = bin.end_ms;
  last.ms += bin.ms;
  last.current += bin.current;
  last.voltage += bin.voltage;
  last.travelled += bin.travelled;
  return bins;
}

/// unit: of the quantity's whole numbers.
void add_excursions(const std::vector<PlainBin>& bins, const char* quantity, Whole PlainBin::*sum,
                    std::int64_t unit, std::int64_t lower, std::int64_t upper,
                    std::vector<PlainExcursion>& found) {
  int side = 0;
  for (const PlainBin& bin : bins) {
    const int now = bin.*sum < static_cast<Whole>(lower * unit) * bin.ms   ? -1
                    : bin.*sum > static_cast<Whole>(upper * unit) * bin.ms ? 1
                                                                           : 0;
    const double value =
        static_cast<double>(bin.*sum) / static_cast<double>(bin.ms) / static_cast<double>(unit);
    const double length_mm = static_cast<double>(bin.travelled) / 100 / 1000;
    if (now != 0 && now == side) {
      PlainExcursion& last = found.back();
      last.end_ms = bin.end_ms;
      last.length_mm += length_mm;
      last.value = now > 0 ? std::max(last.value, value) : std::min(last.value, value);
    } else if (now != 0) {
      found.push_back({quantity, bin.begin_ms, bin.end_ms, length_mm, value,
                       static_cast<double>(now > 0 ? upper : lower)});
    }
    side = now;
  }
}

TEST(ExcursionsReadInAnyWay, AreThoseOfAPlainReckoningToTheLastBit) {
  std::size_t seen = 0;
  for (unsigned seed = 0; seed < rounds(60u, 10u); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const Case made = random_case(seed);
    const std::string log = text_of(made);
    Plan plan = small_plan();
    plan.schedules[0].arc_start_s = static_cast<double>(made.start_ms) / 1000;
    plan.schedules[0].crater_fill_s = static_cast<double>(made.crater_ms) / 1000;
    plan.schedules[0].limits.emplace();
    plan.schedules[0].limits->current_A = Interval{lower_A, upper_A};
    plan.schedules[0].limits->voltage_V = Interval{lower_V, upper_V};
    std::vector<PlainExcursion> want;
    const auto bins = bins_of(made);
    add_excursions(bins, "current_A", &PlainBin::current, 10, lower_A, upper_A, want);
    add_excursions(bins, "voltage_V", &PlainBin::voltage, 100, lower_V, upper_V, want);
    seen += want.size();
    std::string first;
    const auto check = [&](const std::string& kernel, unsigned threads, std::size_t block_bytes) {
      AuditOptions options;
      options.excursions.window_s = static_cast<double>(made.window_ms) / 1000;
      options.reader.kernel = kernel;
      options.reader.threads = threads;
      options.reader.block_bytes = block_bytes;
      options.reader.limits.listed_interruptions = 100'000;
      const auto result = audit_text(log, options, &plan);
      const std::string json = audit_json(result);
      if (!first.empty()) {
        EXPECT_EQ(json, first) << kernel << ' ' << threads << ' ' << block_bytes;
        return;
      }
      first = json;
      const auto& got = result.passes.at(0).excursions;
      ASSERT_EQ(got.size(), want.size());
      for (std::size_t i = 0; i < want.size(); ++i) {
        SCOPED_TRACE(i);
        EXPECT_EQ(got[i].quantity, want[i].quantity);
        EXPECT_DOUBLE_EQ(got[i].start_s, static_cast<double>(want[i].begin_ms) / 1000);
        EXPECT_DOUBLE_EQ(got[i].end_s, static_cast<double>(want[i].end_ms) / 1000);
        EXPECT_NEAR(got[i].length_mm, want[i].length_mm, 1e-9);
        EXPECT_NEAR(got[i].value, want[i].value, 1e-9);
        EXPECT_EQ(got[i].limit, want[i].limit);
      }
    };
    check("none", 1, 1u << 17);
    for (const RowKernel* kernel : row_kernels()) {
      check(kernel->name, 1, 1u << 17);
      check(kernel->name, 1 + seed % 4, 300 + 97 * seed);
    }
    check("", 3, 1u << 12);
  }
  EXPECT_GT(seen, rounds(500u, 50u));
}

TEST(ExcursionsReadInAnyWay, MoreThanAreKeptAreCountedAndTheLongestAreJudged) {
  // Every other bin is hot, 2500 times; the only long stretch comes in the middle.
  std::string log = "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s\n";
  for (int i = 0; i <= 5000; ++i) {
    const bool hot = i % 2 == 0 || (i > 2500 && i < 2520);
    log += std::to_string(i) + ",U1,W,S1,1," + (i < 5000 ? (hot ? "340" : "290") : "0") + "." +
           std::to_string(i % 7) + ",25,0.60\n";
  }
  Plan plan = small_plan();
  plan.weldments[0].seams[0].path_mm = {{0, 0, 0}, {3000, 0, 0}};
  plan.schedules[0].limits.emplace();
  plan.schedules[0].limits->current_A = Interval{271, 331};
  AuditOptions options;
  options.excursions.share_pct = 100;
  options.excursions.fail_mm = 100;
  const auto result = audit_text(log, options, &plan);
  const PassRecord& pass = result.passes.at(0);
  EXPECT_EQ(pass.excursion_count, 2490u);
  EXPECT_EQ(pass.excursions.size(), 100u);
  EXPECT_EQ(pass.undecided_by, std::vector<std::string>{"record.current.excursion"}) << "21 s are 12.6 mm";
}

}  // namespace
}  // namespace seamtakt::test
