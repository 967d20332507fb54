#pragma once

#include <optional>
#include <vector>

#include "line/line_model.hpp"
#include "line/orders.hpp"

namespace seamtakt {

/// The clock's reading at which an order is due; a day without an hour is due at its end. Empty: it isn't.
std::optional<double> due_clock_s(const Order& order);

/// Orders' times in working time, in the orders' order. A list is empty where no order has such a time. A
/// unit is in time that leaves no later than due_s; before the start it is negative.
struct OrderTimes {
  std::vector<double> due_s, available_s;
};
/// `hours`: without them no order is judged by its due date, for a run has no clock.
OrderTimes order_times(const std::vector<Order>& orders, const WorkHours* hours);

/// Whether a unit that leaves then is late. `end_s` and `due_s` in working time.
bool is_late(double end_s, double due_s);

}  // namespace seamtakt
