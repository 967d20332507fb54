#pragma once

#include <algorithm>
#include <cmath>
#include <random>

#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {

/// One tee whose current follows from the melting law, with instruments of 2, 1 and 1 % (standard).
inline Plan tee_by_the_law() {
  Plan plan = load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
  plan.weldments.front().seams.resize(1);
  plan.schedules.resize(1);
  plan.schedules[0].preheat_C = 20;
  plan.measuring->u_current_pct = 2;
  plan.measuring->u_voltage_pct = plan.measuring->u_travel_speed_pct = 1;
  return plan;
}

/// The same with settings, plates and law drawn at random.
inline Plan random_tee(std::mt19937& random, double least_U_pct, double most_U_pct) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  Plan plan = tee_by_the_law();
  Schedule& schedule = plan.schedules[0];
  schedule.wire_feed_speed_m_min = between(5, 13);
  schedule.arc_voltage_V = between(22, 33);
  schedule.travel_speed_mm_s = between(4, 11);
  schedule.preheat_C = between(15, 150);
  plan.wires[0].U_melting_pct = between(least_U_pct, most_U_pct);
  plan.weldments[0].seams[0].thickness_mm = {between(4, 40), between(4, 40)};
  return plan;
}

/// t8/5 (s) of a tee by EN 1011-2, Annex D, written here a second time: F2 = F3 = 0.67.
inline double tee_cooling_time_s(double Q_kJ_mm, double d_mm, double T0_C, double f2 = 0.67) {
  const double a = 1 / (500 - T0_C), b = 1 / (800 - T0_C);
  const double two = (4300 - 4.3 * T0_C) * 1e5 * Q_kJ_mm * Q_kJ_mm / d_mm / d_mm * (a * a - b * b) * f2;
  return std::max(two, (6700 - 5 * T0_C) * Q_kJ_mm * (a - b) * 0.67);
}

/// Heat inputs (kJ/mm) as they may be where `planned` is: current off by the law and by the instrument,
/// voltage and travel speed by their instruments, all normal.
class TrueHeat {
 public:
  TrueHeat(const Plan& plan, double planned_kJ_mm, unsigned seed)
      : planned_kJ_mm_(planned_kJ_mm),
        u_law_(plan.wires[0].U_melting_pct.value_or(15) / 200),
        random_(seed) {}

  double next() {
    const double current = 1 + u_law_ * normal_(random_) + 0.02 * normal_(random_);
    const double voltage = 1 + 0.01 * normal_(random_), speed = 1 + 0.01 * normal_(random_);
    return planned_kJ_mm_ * current * voltage / speed;
  }

 private:
  double planned_kJ_mm_, u_law_;
  std::mt19937 random_;
  std::normal_distribution<double> normal_;
};

}  // namespace seamtakt::test
