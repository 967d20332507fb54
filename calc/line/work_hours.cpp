#include "line/work_hours.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "plan/clock_time.hpp"

namespace seamtakt {

namespace {

constexpr double day_s = 86400, week_s = 7 * day_s;
/// Sums of times are off by their rounding: so near to a shift's end they are at it.
constexpr double at_once_s = 1e-6;

struct Span {
  double begin_s = 0, end_s = 0;
};

/// Adds a span that may reach into the next week.
void add_of_week(std::vector<Span>& spans, double begin_s, double end_s) {
  if (end_s <= begin_s) return;
  if (begin_s >= week_s) {
    spans.push_back({begin_s - week_s, end_s - week_s});
  } else if (end_s > week_s) {
    spans.push_back({begin_s, week_s});
    spans.push_back({0, end_s - week_s});
  } else {
    spans.push_back({begin_s, end_s});
  }
}

/// A shift's work of one day: what its breaks leave.
void add_shift(std::vector<Span>& spans, const Shift& shift, double midnight_s) {
  const ShiftMinutes whole = shift_minutes(shift);
  std::vector<ShiftMinutes> breaks;
  for (const TextPair& one : shift.breaks) breaks.push_back(break_minutes(shift, one));
  std::ranges::sort(breaks, {}, &ShiftMinutes::from);
  int from = whole.from;
  for (const ShiftMinutes& pause : breaks) {
    add_of_week(spans, midnight_s + from * 60.0, midnight_s + pause.from * 60.0);
    from = std::max(from, pause.to);
  }
  add_of_week(spans, midnight_s + from * 60.0, midnight_s + whole.to * 60.0);
}

}  // namespace

WorkHours::WorkHours(const Calendar& calendar) : start_clock_s_(parse_clock_s(calendar.start).value()) {
  std::vector<Span> spans;
  for (const Shift& shift : calendar.shifts)
    for (const std::string& day : shift.days) add_shift(spans, shift, weekday_of(day).value() * day_s);
  std::ranges::sort(spans, {}, &Span::begin_s);
  for (const Span& span : spans) {
    if (!end_s_.empty() && span.begin_s <= end_s_.back()) {
      end_s_.back() = std::max(end_s_.back(), span.end_s);
      continue;
    }
    begin_s_.push_back(span.begin_s);
    end_s_.push_back(span.end_s);
  }
  for (std::size_t i = 0; i < begin_s_.size(); ++i) {
    before_s_.push_back(week_work_s_);
    week_work_s_ += end_s_[i] - begin_s_[i];
  }
  if (week_work_s_ <= 0) throw std::invalid_argument("work hours: a calendar without work");
  start_in_week_s_ =
      weekday_of_clock(start_clock_s_) * day_s + start_clock_s_ - std::floor(start_clock_s_ / day_s) * day_s;
  worked_before_s_ = work_s(0);
  find_first_day(calendar);
}

std::size_t WorkHours::interval_of(double work_s) const {
  const auto after = std::upper_bound(before_s_.begin(), before_s_.end(), work_s);
  return static_cast<std::size_t>(std::max<std::ptrdiff_t>(after - before_s_.begin() - 1, 0));
}

double WorkHours::end_s(double work_s) const {
  const double target_s = worked_before_s_ + std::max(work_s, 0.0);
  double weeks = std::floor(target_s / week_work_s_), rest_s = target_s - weeks * week_work_s_;
  if (rest_s <= at_once_s && weeks > 0) {  // it is the end of the week before
    weeks -= 1;
    rest_s += week_work_s_;
  }
  const std::size_t i = interval_of(rest_s - at_once_s);
  const double in_week_s = std::min(begin_s_[i] + (rest_s - before_s_[i]), end_s_[i]);
  return std::max(0.0, weeks * week_s + in_week_s - start_in_week_s_);
}

double WorkHours::begin_s(double work_s) const {
  const double target_s = worked_before_s_ + std::max(work_s, 0.0);
  double weeks = std::floor(target_s / week_work_s_), rest_s = target_s - weeks * week_work_s_;
  if (rest_s >= week_work_s_ - at_once_s) {
    weeks += 1;
    rest_s = 0;
  }
  const std::size_t i = interval_of(rest_s + at_once_s);
  const double in_week_s = begin_s_[i] + std::max(0.0, rest_s - before_s_[i]);
  // Within an interval the start itself is the begin.
  return std::max(0.0, weeks * week_s + in_week_s - start_in_week_s_);
}

double WorkHours::work_s(double elapsed_s) const {
  const double at_s = start_in_week_s_ + elapsed_s;
  const double weeks = std::floor(at_s / week_s), in_week_s = at_s - weeks * week_s;
  const auto after = std::upper_bound(begin_s_.begin(), begin_s_.end(), in_week_s);
  double worked_s = weeks * week_work_s_ - worked_before_s_;
  if (after == begin_s_.begin()) return worked_s;
  const auto i = static_cast<std::size_t>(after - begin_s_.begin() - 1);
  worked_s += before_s_[i] + std::min(in_week_s, end_s_[i]) - begin_s_[i];
  return worked_s;
}

std::string WorkHours::clock(double elapsed_s) const {
  return clock_text(start_clock_s_ + elapsed_s);
}

void WorkHours::find_first_day(const Calendar& calendar) {
  const double first_s = begin_s(0), first_clock_s = start_clock_s_ + first_s;
  day_ = clock_text(first_clock_s).substr(0, 10);
  const double midnight_s = elapsed_s(std::floor(first_clock_s / day_s) * day_s);
  const int weekday = weekday_of_clock(first_clock_s);
  int last_min = -1;
  for (const Shift& shift : calendar.shifts)
    for (const std::string& day : shift.days)
      if (weekday_of(day) == weekday) last_min = std::max(last_min, shift_minutes(shift).to);
  if (last_min >= 0) {
    day_end_s_ = midnight_s + last_min * 60.0;
    return;
  }
  // A night shift of the day before is under way.
  const double in_week_s = std::fmod(start_in_week_s_ + first_s, week_s);
  const std::size_t i = interval_of(work_s(first_s) + worked_before_s_ + at_once_s);
  day_end_s_ = first_s + end_s_[i] - in_week_s;
}

}  // namespace seamtakt
