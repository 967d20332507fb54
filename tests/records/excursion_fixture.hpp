#pragma once

#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "audit_fixture.hpp"

namespace seamtakt::test {

using OverTime = std::function<double(double)>;

/// What a log is made of; times in s from the pass's first row.
struct Weld {
  double to_s = 50, step_s = 0.1;
  OverTime amperes = [](double) { return 301; };
  OverTime volts = [](double) { return 25; };
  OverTime speed = [](double) { return 8; };
  OverTime gas = [](double) { return 15; };
  std::string seam = "S1";
};

/// Rows to `to_s`, where the arc goes out. A ripple of 0.5 A, nil on average, keeps the logger from looking
/// frozen.
inline std::string log_of(const Weld& weld) {
  std::string log =
      "time_s,unit_serial,weldment,seam,pass,current_A,voltage_V,travel_speed_mm_s,gas_flow_l_min\n";
  const int rows = static_cast<int>(std::lround(weld.to_s / weld.step_s));
  for (int i = 0; i <= rows; ++i) {
    const double t = i * weld.step_s;
    const double amperes = i < rows ? weld.amperes(t) : 0;
    log += fixed(t, 4) + ",U1,W," + weld.seam + ",1," +
           fixed(amperes > 0 ? amperes + (i % 2 != 0 ? 0.5 : -0.5) : 0, 2) + "," + fixed(weld.volts(t), 2) +
           "," + fixed(weld.speed(t), 2) + "," + fixed(weld.gas(t), 1) + "\n";
  }
  return log;
}

inline Plan plan_with(const ScheduleLimits& limits) {
  Plan plan = small_plan();
  plan.schedules[0].limits = limits;
  return plan;
}

inline Plan plan_with_current() {
  ScheduleLimits limits;
  limits.current_A = Interval{271, 331};
  return plan_with(limits);
}

/// 301 A, and others from `from_s` on for `for_s` in each of the stretches.
inline OverTime with_stretches(double amperes, std::vector<double> from_s, double for_s) {
  return [=](double t) {
    for (const double from : from_s)
      if (t >= from - 1e-9 && t < from + for_s - 1e-9) return amperes;
    return 301.0;
  };
}

inline AuditResult audited(const Weld& weld, const Plan& plan, const AuditOptions& options = {}) {
  return audit_text(log_of(weld), options, &plan);
}

}  // namespace seamtakt::test
