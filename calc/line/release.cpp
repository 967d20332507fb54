#include "line/release.hpp"

#include <algorithm>
#include <filesystem>
#include <optional>

#include "base/error.hpp"

namespace seamtakt {

namespace {

Sentence waiting_sentence(const WaitingUnit& unit) {
  std::vector<Argument> arguments{{"weldment", unit.order.weldment}, {"for", unit.sentence}};
  if (unit.released_instead.empty()) return Sentence("line.cart.incomplete.last"_key, std::move(arguments));
  arguments.emplace_back("next", unit.released_instead);
  return Sentence("line.cart.incomplete"_key, std::move(arguments));
}

Finding note_finding(const CartNote& note, const WorkHours* hours) {
  std::vector<Argument> arguments{{"weldment", note.order.weldment}, {"for", note.sentence}};
  if (note.complete_from_s <= 0)
    return {"line.cart.extra",
            Severity::warn,
            note.order.serial,
            std::nullopt,
            std::nullopt,
            "",
            Sentence("line.cart.extra"_key, std::move(arguments)),
            "plan limit"};
  if (hours)
    arguments.emplace_back("time", hours->clock(note.complete_from_s));
  else
    arguments.emplace_back("time", UnitValue{note.complete_from_s / 3600, "h", 4});
  return {"line.cart.expected",
          Severity::warn,
          note.order.serial,
          note.complete_from_s,
          std::nullopt,
          "s",
          Sentence("line.cart.expected"_key, std::move(arguments)),
          "plan limit"};
}

/// A serial number names a file of the folder and nothing else.
bool is_file_name(const std::string& serial) {
  return serial != "." && serial != ".." && serial.find('/') == std::string::npos &&
         serial.find('\0') == std::string::npos;
}

/// Elapsed time of an arrival.
double arrival_s(const CartArrival& arrival, const WorkHours* hours) {
  if (!arrival.is_clock) return arrival.time_s;
  if (!hours)
    throw InputError(arrival.place, "a time of the clock and a plan without line.calendar"_word,
                     "seconds since the line's start"_word);
  return hours->elapsed_s(arrival.time_s);
}

struct JudgedUnit : WaitingUnit {
  std::optional<double> complete_from_s;  ///< elapsed; empty: it lacks nothing, or lacks it for good
};

JudgedUnit judged(const Order& order, const Plan& plan, const std::string& folder, const WorkHours* hours) {
  JudgedUnit unit;
  unit.order = order;
  const std::string path = (std::filesystem::path(folder) / (order.serial + ".csv")).string();
  std::error_code none;
  if (!is_file_name(order.serial) || !std::filesystem::exists(path, none)) {
    unit.sentence = Sentence("line.cart.absent"_key);
    return unit;
  }
  unit.has_cart = true;
  const Cart cart = read_cart(path);
  unit.cart = check_cart(*find_by_id(plan.weldments, order.weldment), cart);
  unit.sentence = cart_sentence(unit.cart);
  unit.complete_from_s =
      complete_from_s(cart, unit.cart, [&](const CartArrival& arrival) { return arrival_s(arrival, hours); });
  return unit;
}

}  // namespace

Release release_all(const std::vector<Order>& orders) {
  return {orders, orders};
}

Release release_complete(const std::vector<Order>& orders, const Plan& plan, const std::string& folder) {
  if (!std::filesystem::is_directory(folder))
    throw InputError("--carts", "\"" + printable(folder) + "\"", "a folder of carts, SERIAL.csv each"_word);
  std::optional<WorkHours> hours;
  if (plan.line && plan.line->calendar) hours.emplace(*plan.line->calendar);
  const WorkHours* clock = hours ? &*hours : nullptr;
  Release release;
  release.orders = orders;
  std::size_t told = 0;  // waiting units before this one know what goes instead of them
  for (const Order& order : orders) {
    JudgedUnit unit = judged(order, plan, folder, clock);
    if (unit.complete_from_s.value_or(0) > 0) {
      const double from_s = *unit.complete_from_s;
      release.released.push_back(order);
      release.released.back().available_s = clock ? clock->work_s(from_s) : from_s;
      release.notes.push_back({order, unit.sentence, from_s});
      continue;
    }
    if (!unit.complete_from_s && !(unit.has_cart && unit.cart.complete())) {
      release.waiting.push_back(std::move(unit));
      continue;
    }
    if (!unit.cart.extra.empty()) release.notes.push_back({order, extra_sentence(unit.cart), 0});
    for (; told < release.waiting.size(); ++told) release.waiting[told].released_instead = order.serial;
    release.released.push_back(order);
  }
  return release;
}

Findings waiting_findings(const Release& release, const WorkHours* hours) {
  Findings findings;
  for (const WaitingUnit& unit : release.waiting)
    if (unit.unwelded_seams == 0)
      findings.push_back({"line.cart.incomplete", Severity::warn, unit.order.serial, std::nullopt,
                          std::nullopt, "", waiting_sentence(unit), "plan limit"});
  for (const CartNote& note : release.notes) findings.push_back(note_finding(note, hours));
  return findings;
}

}  // namespace seamtakt
