#include "line/release.hpp"

#include <algorithm>
#include <filesystem>

#include "base/error.hpp"

namespace seamtakt {

namespace {

Sentence waiting_sentence(const WaitingUnit& unit) {
  std::vector<Argument> arguments{{"weldment", unit.order.weldment}, {"for", unit.sentence}};
  if (unit.released_instead.empty()) return Sentence("line.cart.incomplete.last"_key, std::move(arguments));
  arguments.emplace_back("next", unit.released_instead);
  return Sentence("line.cart.incomplete"_key, std::move(arguments));
}

/// A serial number names a file of the folder and nothing else.
bool is_file_name(const std::string& serial) {
  return serial != "." && serial != ".." && serial.find('/') == std::string::npos &&
         serial.find('\0') == std::string::npos;
}

WaitingUnit judged(const Order& order, const Plan& plan, const std::string& folder) {
  WaitingUnit unit;
  unit.order = order;
  const std::string path = (std::filesystem::path(folder) / (order.serial + ".csv")).string();
  std::error_code none;
  if (!is_file_name(order.serial) || !std::filesystem::exists(path, none)) {
    unit.sentence = Sentence("line.cart.absent"_key);
    return unit;
  }
  unit.has_cart = true;
  unit.cart = check_cart(*find_by_id(plan.weldments, order.weldment), read_cart(path));
  unit.sentence = cart_sentence(unit.cart);
  return unit;
}

}  // namespace

Release release_all(const std::vector<Order>& orders) {
  return {orders, orders, {}};
}

Release release_complete(const std::vector<Order>& orders, const Plan& plan, const std::string& folder) {
  if (!std::filesystem::is_directory(folder))
    throw InputError("--carts", "\"" + printable(folder) + "\"", "a folder of carts, SERIAL.csv each"_word);
  Release release;
  release.orders = orders;
  std::size_t told = 0;  // waiting units before this one know what goes instead of them
  for (const Order& order : orders) {
    WaitingUnit unit = judged(order, plan, folder);
    if (!unit.has_cart || !unit.cart.complete()) {
      release.waiting.push_back(std::move(unit));
      continue;
    }
    for (; told < release.waiting.size(); ++told) release.waiting[told].released_instead = order.serial;
    release.released.push_back(order);
  }
  return release;
}

Findings waiting_findings(const Release& release) {
  Findings findings;
  for (const WaitingUnit& unit : release.waiting)
    if (unit.unwelded_seams == 0)
      findings.push_back({"line.cart.incomplete", Severity::warn, unit.order.serial, std::nullopt,
                          std::nullopt, "", waiting_sentence(unit), "plan limit"});
  return findings;
}

}  // namespace seamtakt
