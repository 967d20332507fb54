#include "line/cart.hpp"

#include <algorithm>
#include <charconv>

#include "base/csv/csv_place.hpp"
#include "base/json/json_node.hpp"
#include "plan/clock_time.hpp"

namespace seamtakt {

namespace {

constexpr int most_of_a_part = 1'000'000;

int quantity_of(std::string_view text, const CsvTable& table, const CsvRow& row, std::size_t field) {
  const std::string& given = row.fields[field];
  int value = 0;
  const auto end = std::from_chars(given.data(), given.data() + given.size(), value);
  if (end.ec != std::errc() || end.ptr != given.data() + given.size() || value < 1 || value > most_of_a_part)
    refuse_field(text, table, row, field,
                 Sentence("line.refusal.whole-number"_key, {{"least", 1}, {"most", most_of_a_part}}));
  return value;
}

CartPart& part_of(Cart& cart, const std::string& name) {
  const auto found =
      std::find_if(cart.begin(), cart.end(), [&](const CartPart& part) { return part.part == name; });
  if (found != cart.end()) return *found;
  cart.push_back({name});
  return cart.back();
}

CartArrival arrival_of(std::string_view text, const CsvTable& table, const CsvRow& row, std::size_t field) {
  const std::string& given = row.fields[field];
  CartArrival arrival;
  arrival.place = field_place(text, table, row, field);
  if (const std::optional<double> clock_s = parse_clock_s(given)) {
    arrival.time_s = *clock_s;
    arrival.is_clock = true;
  } else if (!parse_number(given, arrival.time_s) || arrival.time_s < 0) {
    refuse_field(text, table, row, field, "a local time YYYY-MM-DDThh:mm, or seconds since the start"_word);
  }
  return arrival;
}

int quantity_needed(const Weldment& weldment, const std::string& part) {
  int needed = 0;
  for (const Part& item : weldment.parts)
    if (item.id == part) needed += item.quantity;
  return needed;
}

Sentence missing(const PartDifference& part) {
  if (part.found == 0)
    return Sentence("kit.part.missing.none"_key, {{"count", part.quantity()}, {"part", part.part}});
  return Sentence(
      "kit.part.missing"_key,
      {{"count", part.quantity()}, {"part", part.part}, {"found", part.found}, {"needed", part.needed}});
}

Sentence extra(const PartDifference& part) {
  if (part.needed == 0)
    return Sentence("kit.part.extra.none"_key, {{"count", part.quantity()}, {"part", part.part}});
  return Sentence(
      "kit.part.extra"_key,
      {{"count", part.quantity()}, {"part", part.part}, {"found", part.found}, {"needed", part.needed}});
}

Sentence joined(std::vector<Sentence> differences) {
  if (differences.empty()) return {};
  return Sentence("kit.differences"_key, {{"differences", std::move(differences)}});
}

}  // namespace

Cart parse_cart(std::string_view text, const std::string& file) {
  const CsvTable table = parse_csv(text, file);
  const std::size_t part = table.require("part"), quantity = table.require("quantity");
  const int heat = table.column("heat"), arrives = table.column("arrives");
  Cart cart;
  for (const CsvRow& row : table.rows) {
    if (row.fields[part].empty()) refuse_field(text, table, row, part, "a part"_word);
    CartPart& item = part_of(cart, row.fields[part]);
    const int count = quantity_of(text, table, row, quantity);
    int in_all = item.quantity;
    for (const CartArrival& arrival : item.expected) in_all += arrival.quantity;
    if (count > most_of_a_part - in_all)
      refuse_field(text, table, row, quantity,
                   Sentence("line.refusal.most-of-a-part"_key, {{"most", most_of_a_part}}));
    if (arrives >= 0 && !row.fields[static_cast<std::size_t>(arrives)].empty()) {
      item.expected.push_back(arrival_of(text, table, row, static_cast<std::size_t>(arrives)));
      item.expected.back().quantity = count;
    } else {
      item.quantity += count;
    }
    if (heat < 0) continue;
    const std::string& number = row.fields[static_cast<std::size_t>(heat)];
    if (!number.empty() && std::find(item.heats.begin(), item.heats.end(), number) == item.heats.end())
      item.heats.push_back(number);
  }
  return cart;
}

Cart read_cart(const std::string& path) {
  return parse_cart(read_file(path, largest_small_table), path);
}

CartCheck check_cart(const Weldment& weldment, const Cart& cart) {
  CartCheck check;
  std::vector<std::string> seen;
  for (const Part& part : weldment.parts) {
    if (std::find(seen.begin(), seen.end(), part.id) != seen.end()) continue;
    seen.push_back(part.id);
    const auto there =
        std::find_if(cart.begin(), cart.end(), [&](const CartPart& item) { return item.part == part.id; });
    const PartDifference found{part.id, quantity_needed(weldment, part.id),
                               there == cart.end() ? 0 : there->quantity};
    if (found.found < found.needed) check.missing.push_back(found);
    if (found.found > found.needed) check.extra.push_back(found);
  }
  for (const CartPart& item : cart)
    if (item.quantity > 0 && quantity_needed(weldment, item.part) == 0 &&
        std::find(seen.begin(), seen.end(), item.part) == seen.end())
      check.extra.push_back({item.part, 0, item.quantity});
  return check;
}

std::optional<double> complete_from_s(const Cart& cart, const CartCheck& check,
                                      const std::function<double(const CartArrival&)>& time_of) {
  std::optional<double> latest_s;
  for (const PartDifference& part : check.missing) {
    const auto item = std::ranges::find(cart, part.part, &CartPart::part);
    if (item == cart.end()) return std::nullopt;
    std::vector<std::pair<double, int>> arrivals;
    for (const CartArrival& arrival : item->expected)
      arrivals.emplace_back(time_of(arrival), arrival.quantity);
    std::ranges::sort(arrivals);
    int lacking = part.quantity();
    for (auto at = arrivals.begin(); at != arrivals.end() && lacking > 0; ++at) {
      lacking -= at->second;
      if (lacking <= 0) latest_s = latest_s ? std::max(*latest_s, at->first) : at->first;
    }
    if (lacking > 0) return std::nullopt;
  }
  return latest_s;
}

Sentence cart_sentence(const CartCheck& check) {
  std::vector<Sentence> differences;
  for (const PartDifference& part : check.missing) differences.push_back(missing(part));
  for (const PartDifference& part : check.extra) differences.push_back(extra(part));
  return joined(std::move(differences));
}

Sentence extra_sentence(const CartCheck& check) {
  std::vector<Sentence> differences;
  for (const PartDifference& part : check.extra) differences.push_back(extra(part));
  return joined(std::move(differences));
}

Findings cart_findings(const std::string& where, const CartCheck& check) {
  Findings findings;
  const auto add = [&](const char* rule, Severity severity, const PartDifference& part, Sentence difference) {
    findings.push_back({rule, severity, where + "/" + part.part, part.found, part.needed, "",
                        Sentence("kit.difference"_key, {{"difference", std::move(difference)}}),
                        "plan limit"});
  };
  for (const PartDifference& part : check.missing)
    add("kit.part.missing", Severity::fail, part, missing(part));
  for (const PartDifference& part : check.extra) add("kit.part.extra", Severity::warn, part, extra(part));
  return findings;
}

}  // namespace seamtakt
