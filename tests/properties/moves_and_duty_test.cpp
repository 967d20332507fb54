#include <gtest/gtest.h>

#include <cmath>

#include "formula/move_time.hpp"
#include "formula/takt.hpp"
#include "formula/wire/duty_cycle.hpp"
#include "properties/numbers.hpp"

namespace seamtakt::properties {
namespace {

struct Move {
  double distance = between(0, 3000), speed = between(10, 2000), acceleration = between(100, 10000),
         deceleration = between(100, 10000);
};

/// The same move by the integral of dx/v(x), v held by the speed and by what either end allows. x = d
/// sin^2(phi) takes care of the rests at both ends.
double integrated_time_s(const Move& m) {
  const int n = 20000;
  double sum = 0;
  for (int i = 0; i < n; ++i) {
    double phi = (i + 0.5) / n * M_PI / 2, at = m.distance * std::sin(phi) * std::sin(phi);
    double speed = std::min({m.speed, std::sqrt(2 * m.acceleration * at),
                             std::sqrt(2 * m.deceleration * m.distance) * std::cos(phi)});
    sum += 2 * m.distance * std::sin(phi) * std::cos(phi) / speed;
  }
  return sum * M_PI / 2 / n;
}

RC_GTEST_PROP(MoveTime, IsTheIntegralOfThePathOverItsSpeed, ()) {
  Move m;
  m.distance = between(0.1, 3000);
  assert_near(move_time(m.distance, m.speed, m.acceleration, m.deceleration).time_s, integrated_time_s(m),
              1e-3);
}

RC_GTEST_PROP(MoveTime, DoesNotJumpWhereTheSpeedIsJustReached, ()) {
  Move m;
  double ramps = 1 / m.acceleration + 1 / m.deceleration, just = m.speed * m.speed / 2 * ramps;
  auto time = [&](double distance) {
    return move_time(distance, m.speed, m.acceleration, m.deceleration).time_s;
  };
  assert_near(time(just * (1 - 1e-12)), time(just * (1 + 1e-12)), 1e-10);
}

RC_GTEST_PROP(MoveTime, IsTheSameThereAndBack, ()) {
  Move m;
  assert_near(move_time(m.distance, m.speed, m.acceleration, m.deceleration).time_s,
              move_time(m.distance, m.speed, m.deceleration, m.acceleration).time_s);
}

RC_GTEST_PROP(MoveTime, IsNotBelowTheTimeAtFullSpeedAndNeverFallsWithDistance, ()) {
  Move m;
  auto move = move_time(m.distance, m.speed, m.acceleration, m.deceleration);
  RC_ASSERT(move.time_s >= m.distance / m.speed * (1 - 1e-12));
  RC_ASSERT(move.reached_speed_mm_s <= m.speed);
  RC_ASSERT(move_time(m.distance + 1, m.speed, m.acceleration, m.deceleration).time_s > move.time_s);
}

RC_GTEST_PROP(MoveTime, OfAStopOnTheWayIsLonger, ()) {
  Move m;
  double first = between(0.01, 0.99) * m.distance;
  auto time = [&](double distance) {
    return move_time(distance, m.speed, m.acceleration, m.deceleration).time_s;
  };
  RC_ASSERT(time(first) + time(m.distance - first) >= time(m.distance) * (1 - 1e-12));
}

RC_GTEST_PROP(DutyCycle, IsUndoneByItsInverse, ()) {
  double rated = between(50, 1000), rated_duty = between(10, 100), duty = between(10, 100);
  double current = current_at_duty_A(rated, rated_duty, duty);
  assert_near(duty_at_current_pct(rated, rated_duty, current), duty, 1e-11);
}

RC_GTEST_PROP(DutyCycle, KeepsTheHeatOfTheCurrentsSquare, ()) {
  double rated = between(50, 1000), rated_duty = between(10, 100), duty = between(10, 100);
  double current = current_at_duty_A(rated, rated_duty, duty);
  assert_near(current * current * duty, rated * rated * rated_duty, 1e-11);
}

RC_GTEST_PROP(Takt, TimesTheRateIsAnHour, ()) {
  double available = between(1, 24), demand = between(1, 500);
  assert_near(takt_s(available, demand) * units_per_h(available, demand), 3600);
}

}  // namespace
}  // namespace seamtakt::properties
