#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <deque>
#include <limits>
#include <numbers>
#include <optional>
#include <stdexcept>
#include <string>
#include <tuple>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt::test {

/// A line by the clock on the wall, written from the definitions and sharing nothing with calc/line but the
/// plan: look for what happens next (a service or assembly's takt is over, work begins or ends, parts come),
/// let the time pass, let units move one by one from the last stage to the first, give out people. Every
/// stage has a time or a time range of its own, and nothing is sent back. Times are elapsed ones from the
/// calendar's start.
class PlainShop {
 public:
  struct Unit {
    double start_s = 0, end_s = 0;
  };

  /// `arrives_s`: when each unit's parts are there.
  PlainShop(const Plan& plan, std::vector<double> arrives_s, std::uint64_t seed)
      : line_(*plan.line), seed_(seed), arrives_s_(std::move(arrives_s)), units(arrives_s_.size()) {
    const std::size_t stages = line_.stages.size();
    taken_.assign(units.size(), false);
    places_.resize(stages + 1);
    buffers_.resize(stages);
    for (std::size_t j = 0; j < stages; ++j)
      places_[j].resize(static_cast<std::size_t>(line_.stages[j].servers));
    for (const Operators& group : line_.operators) free_people_.push_back(group.count);
    if (line_.calendar) fill_week();
    if (line_.pull == "takt") {
      places_[stages].resize(1);
      begin_takt(first_pull_s());
    }
    happen();
    while (left_ < units.size()) {
      pass_time();
      happen();
    }
  }

 private:
  static constexpr double never = std::numeric_limits<double>::infinity();
  struct Place {
    std::optional<std::size_t> unit;
    bool assembly = false;
    bool worked_at = false, done = false;
    double left_s = 0, ready_s = 0;
    long came = 0, turn = 0;

    bool goes_on() const { return (unit || assembly) && worked_at && !done; }
  };

  const Line& line_;
  std::uint64_t seed_;
  std::vector<double> arrives_s_;

 public:
  std::vector<Unit> units;

 private:
  // The calendar: whether work goes on in each minute since the start, for a week.
  void fill_week() {
    const Calendar& calendar = *line_.calendar;
    static const char* const days[] = {"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
    const auto minute = [](const std::string& text) {
      return std::stoi(text.substr(0, 2)) * 60 + std::stoi(text.substr(3));
    };
    // Zeller's congruence (recalled) for the weekday of the start.
    int year = std::stoi(calendar.start.substr(0, 4)), month = std::stoi(calendar.start.substr(5, 2));
    const int day = std::stoi(calendar.start.substr(8, 2));
    if (month < 3) {
      month += 12;
      --year;
    }
    const int from_saturday = (day + 13 * (month + 1) / 5 + year + year / 4 - year / 100 + year / 400) % 7;
    const int weekday = (from_saturday + 5) % 7;  // 0: Monday
    start_min_ = weekday * 1440 + minute(calendar.start.substr(11));
    works_.assign(10080, 0);
    for (const Shift& shift : calendar.shifts)
      for (const std::string& name : shift.days) {
        const int midnight = static_cast<int>(std::find(days, days + 7, name) - days) * 1440;
        const int from = minute(shift.from), length = (minute(shift.to) - from + 1439) % 1440 + 1;
        for (int i = 0; i < length; ++i) works_[static_cast<std::size_t>((midnight + from + i) % 10080)] = 1;
        for (const TextPair& pause : shift.breaks)
          for (int i = minute(pause[0]); i % 1440 != minute(pause[1]); ++i) {
            const int at = i % 1440 < from ? i % 1440 + 1440 : i % 1440;
            works_[static_cast<std::size_t>((midnight + at) % 10080)] = 0;
          }
      }
  }
  bool works_in(long minute) const {
    return works_.empty() || works_[static_cast<std::size_t>((start_min_ + minute) % 10080)];
  }
  bool works() const { return works_in(static_cast<long>(std::floor(now_s_ / 60))); }
  double next_edge_s() const {
    if (works_.empty()) return never;
    const long first = static_cast<long>(std::floor(now_s_ / 60));
    for (long m = first + 1; m < first + 20'000; ++m)
      if (works_in(m) != works_in(first)) return static_cast<double>(m) * 60;
    return never;
  }

  // Chance: SplitMix64 over counters, as random_stream.hpp says.
  static std::uint64_t mixed(std::uint64_t x) {
    x += 0x9e3779b97f4a7c15u;
    x = (x ^ (x >> 30)) * 0xbf58476d1ce4e5b9u;
    x = (x ^ (x >> 27)) * 0x94d049bb133111ebu;
    return x ^ (x >> 31);
  }
  double uniform(std::size_t stage, std::uint64_t purpose, std::size_t unit, std::uint64_t index) const {
    const std::uint64_t key = mixed(mixed(mixed(seed_) + stage) + purpose);
    return (static_cast<double>(mixed(key ^ ((static_cast<std::uint64_t>(unit) << 32) + index)) >> 11) + 1) *
           0x1p-53;
  }
  /// By halving: of a standard normal variable a share p is below.
  static double quantile(double p) {
    if (p > 0.5) return -quantile(1 - std::min(p, 1 - 0x1p-53));
    double low = -40, high = 0;
    for (int i = 0; i < 200; ++i) {
      const double middle = (low + high) / 2;
      (0.5 * std::erfc(-middle / std::numbers::sqrt2) < p ? low : high) = middle;
    }
    return high;
  }
  double mean_s(std::size_t j) const {
    const Stage& stage = line_.stages[j];
    if (stage.time_range_s.empty()) return *stage.time_s;
    return (stage.time_range_s[0] + stage.time_range_s[1] + stage.time_range_s[2]) / 3;
  }
  double work_s(std::size_t j, std::size_t unit) const {
    const Stage& stage = line_.stages[j];
    const double u = uniform(j, 3, unit, 0);
    if (!stage.time_range_s.empty()) {
      const double a = stage.time_range_s[0], c = stage.time_range_s[1], b = stage.time_range_s[2];
      if (u <= (c - a) / (b - a)) return a + std::sqrt(u * (b - a) * (c - a));
      return b - std::sqrt((1 - u) * (b - a) * (b - c));
    }
    if (!stage.cv || *stage.cv <= 0) return *stage.time_s;
    const double variance = std::log(1 + *stage.cv * *stage.cv);
    return *stage.time_s * std::exp(std::sqrt(variance) * quantile(u) - variance / 2);
  }
  /// Stops while so much is worked: after exponential times of work, exponential repairs.
  double stops_s(std::size_t j, std::size_t unit, double worked_s) const {
    const Stage& stage = line_.stages[j];
    if (stage.availability >= 1) return 0;
    const double up_s = stage.repair_s * stage.availability / (1 - stage.availability);
    double at_s = 0, stopped_s = 0;
    for (std::uint64_t stop = 0;; ++stop) {
      at_s -= std::log(uniform(j, 0, unit, stop)) * up_s;
      if (at_s >= worked_s) return stopped_s;
      stopped_s -= std::log(uniform(j, 1, unit, stop)) * stage.repair_s;
    }
  }
  double takt_s() const { return *line_.takt_s * line_.planning_pct / 100; }
  double first_pull_s() const {
    double sum_s = 0;
    for (std::size_t j = 0; j < line_.stages.size(); ++j) sum_s += mean_s(j);
    return sum_s;
  }

  void pass_time() {
    double next_s = std::min(next_edge_s(), next_arrival_s());
    if (works())
      for (const auto& stage : places_)
        for (const Place& place : stage)
          if (place.goes_on()) next_s = std::min(next_s, now_s_ + place.left_s);
    if (next_s == never) throw std::logic_error("a shop in which nothing happens any more");
    if (works())
      for (auto& stage : places_)
        for (Place& place : stage)
          if (place.goes_on())
            place.left_s = now_s_ + place.left_s <= next_s ? 0 : place.left_s - (next_s - now_s_);
    now_s_ = next_s;
  }
  double next_arrival_s() const {
    double next_s = never;
    for (const double at_s : arrives_s_)
      if (at_s > now_s_) next_s = std::min(next_s, at_s);
    return next_s;
  }

  void happen() {
    do {
      do settle();
      while (finish_one());
    } while (give_out_people());
  }

  /// Of what is over now, of the last stage the first.
  bool finish_one() {
    for (std::size_t j = places_.size(); j-- > 0;)
      for (Place& place : places_[j])
        if (place.goes_on() && place.left_s <= 0) {
          if (place.assembly) {
            place = {};
            return true;
          }
          if (const int group = group_of(j); group >= 0) ++free_people_[static_cast<std::size_t>(group)];
          place.done = true;
          place.turn = ++turns_;
          return true;
        }
    return false;
  }

  void settle() {
    for (bool moved = true; moved;) {
      moved = false;
      for (std::size_t j = places_.size(); j-- > 0 && !moved;)
        moved = (j < buffers_.size() && hand_over(j)) || take(j);
    }
  }

  bool hand_over(std::size_t j) {
    Place* longest = nullptr;
    for (Place& place : places_[j])
      if (place.done && (!longest || place.turn < longest->turn)) longest = &place;
    if (!longest) return false;
    const std::size_t unit = *longest->unit;
    if (j + 1 == buffers_.size() && places_[j + 1].empty()) {
      leave(unit);
    } else if (Place* free = idle(j + 1); free && buffers_[j].empty()) {
      begin(j + 1, *free, unit);
    } else if (buffers_[j].size() < static_cast<std::size_t>(line_.stages[j].buffer_after)) {
      buffers_[j].push_back(unit);
    } else {
      return false;
    }
    *longest = {};
    return true;
  }

  bool take(std::size_t j) {
    Place* free = idle(j);
    if (!free) return false;
    std::optional<std::size_t> unit;
    if (j > 0) {
      if (buffers_[j - 1].empty()) return false;
      unit = buffers_[j - 1].front();
      buffers_[j - 1].pop_front();
    } else if (works()) {
      for (std::size_t u = 0; u < units.size() && !unit; ++u)
        if (!taken_[u] && arrives_s_[u] <= now_s_) unit = u;
      if (!unit) return false;
      taken_[*unit] = true;
      units[*unit].start_s = now_s_;
    } else {
      return false;
    }
    begin(j, *free, *unit);
    return true;
  }

  Place* idle(std::size_t j) {
    for (Place& place : places_[j])
      if (!place.unit && !place.assembly) return &place;
    return nullptr;
  }

  void begin(std::size_t j, Place& place, std::size_t unit) {
    if (j == buffers_.size()) {
      leave(unit);
      return begin_takt(takt_s());
    }
    place = {};
    place.unit = unit;
    const double worked_s = work_s(j, unit);
    place.left_s = worked_s + stops_s(j, unit, worked_s);
    place.worked_at = group_of(j) < 0;
    place.ready_s = now_s_;
    place.came = ++turns_;
  }
  void begin_takt(double time_s) {
    Place& place = places_.back().front();
    place = {};
    place.assembly = place.worked_at = true;
    place.left_s = time_s;
  }
  void leave(std::size_t unit) {
    units[unit].end_s = now_s_;
    ++left_;
  }

  int group_of(std::size_t j) const {
    for (std::size_t group = 0; group < line_.operators.size(); ++group)
      for (const std::string& id : line_.operators[group].stages)
        if (id == line_.stages[j].id) return static_cast<int>(group);
    return -1;
  }
  /// To what has been ready longest, then to the later stage, then to what came first.
  bool give_out_people() {
    bool given = false;
    for (std::size_t group = 0; group < free_people_.size(); ++group)
      while (free_people_[group] > 0) {
        Place* next = nullptr;
        std::size_t stage = 0;
        for (std::size_t j = 0; j < buffers_.size(); ++j)
          for (Place& place : places_[j]) {
            if (!place.unit || place.worked_at || place.done || group_of(j) != static_cast<int>(group))
              continue;
            const auto rank = [](const Place& p, std::size_t at) {
              return std::tuple(p.ready_s, -static_cast<long>(at), p.came);
            };
            if (next && rank(*next, stage) < rank(place, j)) continue;
            next = &place;
            stage = j;
          }
        if (!next) break;
        --free_people_[group];
        next->worked_at = given = true;
      }
    return given;
  }

  std::vector<char> works_;
  long start_min_ = 0;
  double now_s_ = 0;
  std::vector<std::vector<Place>> places_;  ///< the last are assembly's
  std::vector<std::deque<std::size_t>> buffers_;
  std::vector<int> free_people_;
  std::vector<bool> taken_;
  std::size_t left_ = 0;
  long turns_ = 0;
};

}  // namespace seamtakt::test
