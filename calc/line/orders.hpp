#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.hpp"

namespace seamtakt {

/// The due_key of an order that is never due: it is last.
inline constexpr const char* never_due = "9999-99-99";

/// One unit ordered.
struct Order {
  std::string serial, weldment;
  std::uint32_t number = 0;  ///< its place in the file, from 0: it chooses its random numbers
  std::string due;           ///< as in the file; empty: none
  std::string due_key;  ///< orders by time as text does; a day without an hour ends it; empty `due` is last
  double available_s = 0;  ///< working time at which its cart is complete; 0: from the start
};

/// Reads an order file: CSV with the columns unit_serial (or serial), weldment and, optionally, due
/// (YYYY-MM-DD, or with Thh:mm); other columns are skipped. The first problem is an InputError at
/// FILE:LINE:COLUMN: a column that is missing, a serial that is empty or there twice, a weldment that the
/// plan doesn't know, a day that isn't in the calendar, no order.
std::vector<Order> parse_orders(std::string_view text, const std::string& file, const Plan& plan);

std::vector<Order> read_orders(const std::string& path, const Plan& plan);

/// Whether no order is behind one that is due later.
bool dues_kept(const std::vector<Order>& orders);

}  // namespace seamtakt
