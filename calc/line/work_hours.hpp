#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// A calendar compiled to the week's intervals of work. Nothing at the line goes on outside them: work,
/// stops, changes and the assembly's takt pause and go on where they were (preempt-resume). So a line runs in
/// working time as if there were no calendar, and only what is shown is put on the clock. Each direction
/// takes O(log n) for n intervals of the week, however long the run. Source: derived.
///
/// Working time and elapsed time both are s from the calendar's start; elapsed time counts nights too.
class WorkHours {
 public:
  /// The calendar must have passed check_plan: std::bad_optional_access or std::invalid_argument else.
  explicit WorkHours(const Calendar& calendar);

  /// Elapsed time at which `work_s` has just been worked: at the end of a shift it is that end.
  double end_s(double work_s) const;
  /// Elapsed time at which whatever follows `work_s` of work begins: at the end of a shift it is the next
  /// one's begin.
  double begin_s(double work_s) const;
  /// Working time until an elapsed time of 0 or more.
  double work_s(double elapsed_s) const;

  /// Elapsed time of a reading of the clock (seconds since 1970-01-01T00:00).
  double elapsed_s(double clock_s) const { return clock_s - start_clock_s_; }
  /// "2026-11-25T06:00:30"
  std::string clock(double elapsed_s) const;

  /// The first day: the date of the first moment of work, "2026-11-25".
  const std::string& day() const { return day_; }
  /// Elapsed time at which its last shift ends: of those that begin on that date, else of the one under way.
  double day_end_s() const { return day_end_s_; }

 private:
  /// The interval of the week in which the week's work passes `work_s`.
  std::size_t interval_of(double work_s) const;
  void find_first_day(const Calendar& calendar);

  double start_clock_s_ = 0;
  double start_in_week_s_ = 0;           ///< since Monday 00:00
  std::vector<double> begin_s_, end_s_;  ///< of the week's intervals
  std::vector<double> before_s_;         ///< work of the week before each
  double week_work_s_ = 0;
  double worked_before_s_ = 0;  ///< of the first week before the start
  std::string day_;
  double day_end_s_ = 0;
};

}  // namespace seamtakt
