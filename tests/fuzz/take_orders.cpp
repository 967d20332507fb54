// Order files.
#include <set>
#include <string>

#include "fuzz/fuzz_target.hpp"
#include "line/orders.hpp"

namespace seamtakt::fuzz {

bool take_orders(std::string_view input) {
  Plan plan;
  for (const char* id : {"BD", "TT", "BL"}) {
    plan.weldments.emplace_back();
    plan.weldments.back().id = id;
  }
  return is_taken([&] {
    const std::vector<Order> orders = parse_orders(input, "orders.csv", plan);
    promise(!orders.empty(), "an order file has an order");
    std::set<std::string> serials;
    for (const Order& order : orders) {
      promise(!order.serial.empty() && serials.insert(order.serial).second, "serials are there once");
      promise(order.number + 1 == serials.size(), "orders are numbered from 0");
    }
    dues_kept(orders);
  });
}

}  // namespace seamtakt::fuzz
