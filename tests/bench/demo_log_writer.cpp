#include "demo_log_writer.hpp"

#include <algorithm>
#include <bit>
#include <cerrno>
#include <chrono>
#include <cmath>
#include <system_error>
#include <vector>

#include "base/csv/csv.hpp"
#include "formula/move_time.hpp"
#include "formula/wire/melting.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

namespace {

constexpr double true_melting_factor = 1.03;
constexpr double level_spread = 0.01, current_noise = 0.015, voltage_noise = 0.01;
constexpr double transient_share = 0.6, fault_share = 0.70;
constexpr double lead_in_s = 0.2, pause_s = 5, true_air_share = 0.85;
constexpr std::chrono::sys_days first_day = std::chrono::year(2026) / 3 / 2;
constexpr double first_second = 6 * 3600;

}  // namespace

std::uint64_t random_bits(std::uint64_t key, std::uint64_t counter) {
  std::uint64_t x = key + counter * 0x9e3779b97f4a7c15u;
  x = (x ^ (x >> 32)) * 0xd6e8feb86659fd93u;
  x = (x ^ (x >> 32)) * 0xd6e8feb86659fd93u;
  return x ^ (x >> 32);
}

namespace {

/// Nearly normal, mean 0, variance 1: the number of set bits in 64, spread evenly between its steps. No
/// function of the machine's mathematical library, so that every machine writes the same log.
double normal(std::uint64_t key, std::uint64_t counter) {
  const int ones = std::popcount(random_bits(key, 2 * counter));
  const double between = static_cast<double>(random_bits(key, 2 * counter + 1) >> 11) * 0x1p-53 - 0.5;
  return (ones - 32 + between) / std::sqrt(16 + 1.0 / 12);
}

}  // namespace

std::string fixed(double value, int decimals) {
  std::int64_t scale = 1;
  for (int i = 0; i < decimals; ++i) scale *= 10;
  const std::int64_t rounded = std::llround(value * static_cast<double>(scale));
  const std::int64_t size = rounded < 0 ? -rounded : rounded;
  std::string digits = std::to_string(size % scale);
  digits.insert(0, static_cast<std::size_t>(decimals) - digits.size(), '0');
  return (rounded < 0 ? "-" : "") + std::to_string(size / scale) + "." + digits;
}

namespace {

std::string timestamp(double seconds) {
  using namespace std::chrono;
  const milliseconds since(std::llround((seconds + first_second) * 1000));
  const auto day = floor<days>(since);
  const year_month_day date(first_day + day);
  const hh_mm_ss clock(since - day);
  char text[96];
  std::snprintf(text, sizeof text, "%04d-%02u-%02uT%02d:%02d:%02d.%03dZ", static_cast<int>(date.year()),
                static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                static_cast<int>(clock.hours().count()), static_cast<int>(clock.minutes().count()),
                static_cast<int>(clock.seconds().count()), static_cast<int>(clock.subseconds().count()));
  return text;
}

}  // namespace

Levels true_levels(const PassJob& job) {
  const Schedule& schedule = *job.schedule;
  const double extension_mm = schedule.contact_tip_distance_mm - schedule.arc_length_mm;
  const double current_A = melting_current_A(feed_mm_s_from_m_min(schedule.wire_feed_speed_m_min),
                                             extension_mm, job.wire->alpha_mm_s_A * true_melting_factor,
                                             job.wire->beta_per_s_A2 * true_melting_factor);
  const auto spread = [&](std::uint64_t which) {
    return 1 + level_spread * (static_cast<double>(random_bits(job.key, ~which) >> 11) * 0x1p-52 - 1);
  };
  return {schedule.current_A.value_or(current_A) * spread(0), schedule.arc_voltage_V * spread(1)};
}

/// Where the torch is and what the arc does at one moment.
struct TorchState {
  double along_mm = 0, current_share = 1, speed_mm_s = 0;
  bool arc = true;
};

LogWriter::LogWriter(std::FILE* file, double rate_Hz) : file_(file), step_s_(1 / rate_Hz) {
  put("timestamp,unit_serial,weldment,seam,pass,robot,schedule_revision,current_A,voltage_V,"
      "wire_feed_speed_m_min,travel_speed_mm_s,x_mm,y_mm,z_mm,gas_flow_l_min,interpass_C,arc_on\n");
}

void LogWriter::put(const std::string& text) {
  if (std::fwrite(text.data(), 1, text.size(), file_) != text.size())
    throw std::system_error(errno, std::generic_category(), "writing the log");
}

void LogWriter::pause() {
  tick_ += std::llround(pause_s / step_s_);
}

void LogWriter::begin(const PassJob& job) {
  sample_ = 0;
  levels_ = true_levels(job);
  identity_ = "," + csv_field(job.unit->serial) + "," + csv_field(job.unit->weldment->id) + "," +
              csv_field(job.seam->id) + "," + std::to_string(job.pass) + "," + csv_field(job.robot->id) +
              "," + std::to_string(job.schedule->revision) + ",";
  const double lower = std::max(21.0, job.schedule->preheat_C + 4);
  const auto limit = job.schedule->limits ? job.schedule->limits->interpass_C : std::nullopt;
  const double upper = limit && limit->upper ? *limit->upper : lower;
  interpass_C_ = job.pass == 1 ? lower : lower + 0.6 * (upper - lower);
}

namespace {

/// Sideways, in the plane and across the seam; across an upright seam along x.
Point_mm across(const Seam& seam, double along_mm) {
  const Point_mm a = point_at(seam, std::max(0.0, along_mm - 0.5)), b = point_at(seam, along_mm + 0.5);
  const double dx = b[0] - a[0], dy = b[1] - a[1], size = std::sqrt(dx * dx + dy * dy);
  if (size < 1e-9) return {1, 0, 0};
  return {-dy / size, dx / size, 0};
}

/// A weave as a triangle wave: -1 to 1.
double weave_phase(double cycles) {
  const double share = cycles - std::floor(cycles);
  return share < 0.5 ? 4 * share - 1 : 3 - 4 * share;
}

}  // namespace

void LogWriter::row(const PassJob& job, const TorchState& state) {
  const std::uint64_t counter = sample_++ * 4;
  const double current_A =
      levels_.current_A * state.current_share * (1 + current_noise * normal(job.key, counter));
  const double voltage_V = levels_.voltage_V * (1 + voltage_noise * normal(job.key, counter + 1));
  Point_mm point = point_at(*job.seam, state.along_mm);
  if (job.schedule->weave && state.speed_mm_s > 0) {
    const double off_mm =
        job.schedule->weave->half_width_mm * weave_phase(now_s() * job.schedule->weave->frequency_Hz);
    const Point_mm side = across(*job.seam, state.along_mm);
    for (std::size_t i = 0; i < 3; ++i) point[i] += off_mm * side[i];
  }
  const double feed = job.schedule->wire_feed_speed_m_min * (1 + 0.002 * normal(job.key, counter + 2));
  put(timestamp(now_s()) + identity_ + fixed(state.arc ? current_A : 0, 1) + "," +
      fixed(state.arc ? voltage_V : 0, 2) + "," + fixed(state.arc ? feed : 0, 2) + "," +
      fixed(state.speed_mm_s, 2) + "," + fixed(point[0], 1) + "," + fixed(point[1], 1) + "," +
      fixed(point[2], 1) + "," +
      fixed(job.schedule->gas_flow_l_min + 0.15 * normal(job.key, counter + 3), 1) + "," +
      fixed(interpass_C_, 1) + "," + (state.arc ? "1\n" : "0\n"));
  ++tick_;
}

void LogWriter::idle(const PassJob& job, double along_mm, double seconds) {
  const std::int64_t rows = std::max<std::int64_t>(1, std::llround(seconds / step_s_));
  for (std::int64_t i = 0; i < rows; ++i) row(job, {along_mm, 0, 0, false});
}

void LogWriter::dwell(const PassJob& job, double along_mm, double seconds, double from_share,
                      double to_share) {
  const std::int64_t rows = std::llround(seconds / step_s_);
  for (std::int64_t i = 0; i < rows; ++i) {
    const double share = (static_cast<double>(i) + 0.5) / static_cast<double>(rows);
    row(job, {along_mm, from_share + share * (to_share - from_share), 0, true});
  }
}

void LogWriter::run(const PassJob& job, const WeldRun& run) {
  const double start_s = job.schedule->arc_start_s.value_or(job.robot->arc_start_s);
  const double crater_s = job.schedule->crater_fill_s.value_or(job.robot->crater_fill_s);
  idle(job, run.from_mm, lead_in_s + start_s / 2);
  dwell(job, run.from_mm, start_s / 2, transient_share, 1);
  const double speed = job.schedule->travel_speed_mm_s, way_mm = std::abs(run.to_mm - run.from_mm);
  const std::int64_t rows = std::llround(way_mm / speed / step_s_);
  for (std::int64_t i = 0; i <= rows; ++i) {
    const double share = std::min(1.0, static_cast<double>(i) * step_s_ * speed / way_mm);
    const bool low = job.low_current && share > 1.0 / 3 && share < 2.0 / 3;
    row(job, {run.from_mm + share * (run.to_mm - run.from_mm), low ? fault_share : 1, speed, true});
  }
  dwell(job, run.to_mm, crater_s, 1, transient_share);
  idle(job, run.to_mm, job.robot->post_flow_s);
}

void LogWriter::weld(const PassJob& job) {
  begin(job);
  std::vector<WeldRun> runs = weld_runs(*job.seam);
  if (job.reversed) {
    std::reverse(runs.begin(), runs.end());
    for (WeldRun& each : runs) std::swap(each.from_mm, each.to_mm);
  }
  double at_mm = runs.empty() ? 0 : runs.front().from_mm;
  for (const WeldRun& each : runs) {
    const double air_s = distance_mm(point_at(*job.seam, at_mm), point_at(*job.seam, each.from_mm)) /
                         job.robot->air_speed_mm_s;
    if (air_s > 0) idle(job, each.from_mm, air_s + job.robot->wrist_s);
    run(job, each);
    at_mm = each.to_mm;
  }
}

void LogWriter::move_to(const PassJob& job) {
  const std::vector<WeldRun> runs = weld_runs(*job.seam);
  const double first_mm = job.reversed ? runs.back().to_mm : runs.front().from_mm;
  const double last_mm = job.reversed ? runs.front().from_mm : runs.back().to_mm;
  const Robot& robot = *job.robot;
  if (const auto from = ends_.find(robot.id); from != ends_.end()) {
    const double way_mm = distance_mm(from->second, point_at(*job.seam, first_mm));
    const double time_s = move_time(way_mm, true_air_share * robot.air_speed_mm_s,
                                    robot.air_acceleration_mm_s2, robot.air_acceleration_mm_s2)
                              .time_s +
                          robot.wrist_s + job.seam->sense_points * robot.sense_point_s;
    tick_ += std::llround(time_s / step_s_);
  }
  ends_[robot.id] = point_at(*job.seam, last_mm);
}

}  // namespace seamtakt
