#include "line/orders.hpp"

#include <algorithm>
#include <map>

#include "base/csv/csv_place.hpp"
#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/text/comma_list.hpp"
#include "base/text/spelling_suggestion.hpp"

namespace seamtakt {

namespace {

bool number_at(std::string_view text, std::size_t at, std::size_t digits, int& value) {
  if (at + digits > text.size()) return false;
  value = 0;
  for (std::size_t i = at; i < at + digits; ++i) {
    if (text[i] < '0' || text[i] > '9') return false;
    value = value * 10 + (text[i] - '0');
  }
  return true;
}

bool is_day(std::string_view text) {
  int year = 0, month = 0, day = 0;
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  if (!number_at(text, 0, 4, year) || !number_at(text, 5, 2, month) || !number_at(text, 8, 2, day))
    return false;
  if (month < 1 || month > 12 || day < 1) return false;
  constexpr int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return day <= days[month - 1] + (month == 2 && leap ? 1 : 0);
}

/// Thh:mm or Thh:mm:ss
bool is_hour(std::string_view text) {
  int hour = 0, minute = 0, second = 0;
  if ((text.size() != 6 && text.size() != 9) || text[0] != 'T' || text[3] != ':') return false;
  if (!number_at(text, 1, 2, hour) || !number_at(text, 4, 2, minute)) return false;
  if (text.size() == 9 && (text[6] != ':' || !number_at(text, 7, 2, second))) return false;
  return hour < 24 && minute < 60 && second < 60;
}

/// Empty where the text is no day.
std::string due_key(std::string_view due) {
  if (due.empty()) return never_due;
  if (!is_day(due.substr(0, 10))) return {};
  if (due.size() == 10) return std::string(due) + "T24";
  return is_hour(due.substr(10)) ? std::string(due) : std::string();
}

Sentence weldments_expected(const std::string& found, const Plan& plan) {
  std::vector<std::string> ids;
  std::vector<std::string_view> views;
  for (const Weldment& weldment : plan.weldments) ids.push_back(weldment.id);
  views.assign(ids.begin(), ids.end());
  const std::string_view near = spelling_suggestion(found, views);
  if (ids.size() > 8 && !near.empty()) return Sentence("line.refusal.near-weldment"_key, {{"nearest", near}});
  if (ids.empty()) return "a plan with weldments"_word;
  return Sentence("line.refusal.weldments"_key, {{"weldments", printable(comma_list(ids), 300)}});
}

}  // namespace

std::vector<Order> parse_orders(std::string_view text, const std::string& file, const Plan& plan) {
  const CsvTable table = parse_csv(text, file);
  // Both names are about: the shop's lists mostly say serial.
  const bool is_short = table.column("unit_serial") < 0 && table.column("serial") >= 0;
  const std::size_t serial = table.require(is_short ? "serial" : "unit_serial"),
                    weldment = table.require("weldment");
  const int due = table.column("due");
  const bool is_own = table.column("made_at_utc") >= 0;  // a sequence that this program wrote
  std::vector<Order> orders;
  std::map<std::string, std::uint64_t> lines;
  for (const CsvRow& row : table.rows) {
    Order order;
    order.serial = is_own ? csv_unguarded(row.fields[serial]) : row.fields[serial];
    order.weldment = is_own ? csv_unguarded(row.fields[weldment]) : row.fields[weldment];
    order.number = static_cast<std::uint32_t>(orders.size());
    if (due >= 0) order.due = row.fields[static_cast<std::size_t>(due)];
    if (order.serial.empty()) refuse_field(text, table, row, serial, "a unit's serial number"_word);
    const auto [first, fresh] = lines.emplace(order.serial, row.line);
    if (!fresh)
      throw InputError(field_place(text, table, row, serial),
                       Sentence("line.refusal.serial-again"_key, {{"serial", printable(order.serial)}}),
                       Sentence("line.refusal.serial-once"_key, {{"line", std::to_string(first->second)}}));
    if (!find_by_id(plan.weldments, order.weldment))
      refuse_field(text, table, row, weldment, weldments_expected(order.weldment, plan));
    order.due_key = due_key(order.due);
    if (order.due_key.empty())
      refuse_field(text, table, row, static_cast<std::size_t>(due),
                   "a date YYYY-MM-DD or YYYY-MM-DDThh:mm"_word);
    orders.push_back(std::move(order));
  }
  if (orders.empty())
    throw InputError(printable(file) + ":1:1", "no orders"_word, "at least one row below the header"_word);
  return orders;
}

std::vector<Order> read_orders(const std::string& path, const Plan& plan) {
  return parse_orders(read_file(path, largest_small_table), path, plan);
}

bool dues_kept(const std::vector<Order>& orders) {
  return std::is_sorted(orders.begin(), orders.end(),
                        [](const Order& a, const Order& b) { return a.due_key < b.due_key; });
}

}  // namespace seamtakt
