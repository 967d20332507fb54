#pragma once

#include <string>
#include <vector>

#include "plan/fit/fit.hpp"
#include "plan/fit/fit_search.hpp"

namespace seamtakt {

/// Where a schedule states no limits, so many times its settings are searched.
inline constexpr double fit_assumed_from = 0.6, fit_assumed_to = 1.4;

/// A seam's fit before any schedule is written: what to change, and the finished report except for the ids of
/// new schedules.
struct SeamFit {
  FittedSeam report;
  bool is_short_of_preheat = false;         ///< no settings inside the limits need as little as there is
  std::vector<std::string> assumed_ranges;  ///< schedules whose limits left a side open
};

SeamFit fit_seam(const Plan& plan, const Weldment& weldment, const Seam& seam, const FitOptions& options);

/// Sets a schedule's settings; a measured current changes with them along the melting law.
void apply_settings(Schedule& schedule, const FitPoint& settings);

/// `schedules` with as many passes of `from` as asked for, welded with `to`: the first ones stay where they
/// are, more follow the last one, and the last ones go where fewer are needed.
void set_passes(std::vector<std::string>& schedules, const std::string& from, const std::string& to,
                int passes);

}  // namespace seamtakt
