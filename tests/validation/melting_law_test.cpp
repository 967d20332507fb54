// The melting law against recorded passes of a robot cell, whose wire and extension nobody wrote down: the
// scatter says more than the bias.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>

#include "base/csv/csv.hpp"
#include "formula/wire/melting.hpp"
#include "validation/agreement.hpp"
#include "validation/open_data.hpp"

namespace seamtakt::validation {
namespace {

constexpr double taken_extension_mm = 15;
constexpr double arc_is_on_above_A = 5;
/// What the arc needs to become steady, and what its end takes.
constexpr double start_and_end_s = 2;
/// Of a set-up that is used: how far the current swings (standard deviation over mean), and how far the wire
/// feeds of its runs differ. Neither knows of the law.
constexpr double widest_swing = 0.1, widest_difference = 0.1;

struct Sample {
  double time_s, current_A, wire_mm;
};

struct SteadyRun {
  double current_A = 0, swing = 0, feed_mm_s = 0;
};

double number_of_field(const std::string& text) {
  double value = 0;
  EXPECT_TRUE(parse_number(text, value)) << text;
  return value;
}

/// "10:08:57.489"
double seconds_of_day(const std::string& text) {
  double seconds = 0;
  for (const std::string& part : parts_of(text, ':')) seconds = 60 * seconds + number_of_field(part);
  return seconds;
}

/// Columns: date, time, part, pressure, gas flow, feed (a running mean, not used), current, wire consumed.
std::vector<Sample> samples_of(const std::filesystem::path& file) {
  std::ifstream stream(file);
  std::vector<Sample> samples;
  std::string line;
  std::getline(stream, line);  // the headings
  while (std::getline(stream, line)) {
    const std::vector<std::string> fields = parts_of(line, ',');
    if (fields.size() < 8) continue;
    samples.push_back({seconds_of_day(fields[1]), number_of_field(fields[6]), number_of_field(fields[7])});
  }
  return samples;
}

std::vector<Sample> steady_samples(const std::vector<Sample>& samples) {
  const auto is_on = [](const Sample& sample) { return sample.current_A > arc_is_on_above_A; };
  const auto first = std::find_if(samples.begin(), samples.end(), is_on);
  const auto last = std::find_if(samples.rbegin(), samples.rend(), is_on);
  if (first == samples.end()) return {};
  const double from = first->time_s + start_and_end_s, to = last->time_s - start_and_end_s;
  std::vector<Sample> steady;
  for (const Sample& sample : samples)
    if (sample.time_s > from && sample.time_s < to) steady.push_back(sample);
  return steady;
}

/// Feed: slope of the wire consumed, by least squares.
SteadyRun steady_run(const std::vector<Sample>& samples) {
  const double count = static_cast<double>(samples.size());
  double time = 0, wire = 0;
  SteadyRun run;
  for (const Sample& sample : samples) {
    time += sample.time_s / count;
    wire += sample.wire_mm / count;
    run.current_A += sample.current_A / count;
  }
  double with_time = 0, of_time = 0, of_current = 0;
  for (const Sample& sample : samples) {
    with_time += (sample.time_s - time) * (sample.wire_mm - wire);
    of_time += (sample.time_s - time) * (sample.time_s - time);
    of_current += (sample.current_A - run.current_A) * (sample.current_A - run.current_A);
  }
  run.feed_mm_s = with_time / of_time;
  run.swing = std::sqrt(of_current / count) / run.current_A;
  return run;
}

bool is_usable(const std::vector<SteadyRun>& runs) {
  double least = HUGE_VAL, most = 0;
  for (const SteadyRun& run : runs) {
    if (run.swing > widest_swing) return false;
    least = std::min(least, run.feed_mm_s);
    most = std::max(most, run.feed_mm_s);
  }
  return most <= (1 + widest_difference) * least;
}

class MeltingLawValidation : public ::testing::Test {
 protected:
  void SetUp() override {
    const std::filesystem::path folder = open_data("arc-logs");
    if (folder.empty()) GTEST_SKIP() << "SEAMTAKT_OPEN_DATA doesn't name the open data's folder";
    std::map<std::string, std::vector<SteadyRun>> set_ups;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
      if (entry.path().extension() == ".csv" && entry.path().parent_path() != folder)
        set_ups[entry.path().parent_path().filename().string()].push_back(
            steady_run(steady_samples(samples_of(entry.path()))));
    for (const auto& [name, runs] : set_ups)
      if (is_usable(runs)) runs_.insert(runs_.end(), runs.begin(), runs.end());
    law_ = reference_melting_coefficients("mild-steel").value();
  }

  std::vector<SteadyRun> runs_;
  MeltingCoefficients law_{};
};

TEST_F(MeltingLawValidation, TellsTheCurrentOfSteadyPassesFromTheirWireFeed) {
  Agreement agreement;
  for (const SteadyRun& run : runs_)
    agreement.add(melting_current_A(run.feed_mm_s, taken_extension_mm, law_.alpha_mm_s_A, law_.beta_per_s_A2),
                  run.current_A);
  expect_as_stated("melting.current", agreement);
  EXPECT_LE(agreement.scatter_pct(), 10);
}

TEST_F(MeltingLawValidation, TellsTheWireFeedOfSteadyPassesFromTheirCurrent) {
  Agreement agreement;
  for (const SteadyRun& run : runs_)
    agreement.add(
        wire_feed_speed_mm_s(run.current_A, taken_extension_mm, law_.alpha_mm_s_A, law_.beta_per_s_A2),
        run.feed_mm_s);
  expect_as_stated("melting.wire-feed", agreement);
}

}  // namespace
}  // namespace seamtakt::validation
