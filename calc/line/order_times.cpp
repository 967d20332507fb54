#include "line/order_times.hpp"

#include <algorithm>
#include <limits>

#include "plan/clock_time.hpp"

namespace seamtakt {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double day_s = 86400;

double due_work_s(const Order& order, const WorkHours& hours) {
  const std::optional<double> due = due_clock_s(order);
  if (!due) return never;
  const double elapsed_s = hours.elapsed_s(*due);
  return elapsed_s < 0 ? -1 : hours.work_s(elapsed_s);
}

}  // namespace

std::optional<double> due_clock_s(const Order& order) {
  constexpr std::size_t date = 10;
  if (!order.due_key.ends_with("T24")) return parse_clock_s(order.due_key);
  const std::optional<double> midnight = parse_clock_s(order.due_key.substr(0, date) + "T00:00");
  if (!midnight) return std::nullopt;
  return *midnight + day_s;
}

OrderTimes order_times(const std::vector<Order>& orders, const WorkHours* hours) {
  OrderTimes times;
  for (const Order& order : orders) times.available_s.push_back(order.available_s);
  if (std::ranges::all_of(times.available_s, [](double time_s) { return time_s <= 0; }))
    times.available_s.clear();
  if (!hours) return times;
  for (const Order& order : orders) times.due_s.push_back(due_work_s(order, *hours));
  if (std::ranges::all_of(times.due_s, [](double time_s) { return time_s == never; })) times.due_s.clear();
  return times;
}

bool is_late(double end_s, double due_s) {
  // Sums of times are off by their rounding.
  constexpr double in_time_s = 1e-6;
  return end_s > due_s + in_time_s;
}

}  // namespace seamtakt
