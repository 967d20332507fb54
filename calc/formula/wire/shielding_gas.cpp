#include "formula/wire/shielding_gas.hpp"

#include <charconv>
#include <cmath>
#include <vector>

#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

using Component = GasComponent;

struct MainGroup {
  std::string name;
  Component balance;
  std::array<GasShare, gas_components> bounds;
};

struct GroupColumns {
  Component component;
  const char *above, *up_to;
};
constexpr GroupColumns group_columns[] = {{Component::carbon_dioxide, "co2_above_pct", "co2_up_to_pct"},
                                          {Component::oxygen, "o2_above_pct", "o2_up_to_pct"},
                                          {Component::helium, "he_above_pct", "he_up_to_pct"},
                                          {Component::hydrogen, "h2_above_pct", "h2_up_to_pct"},
                                          {Component::nitrogen, "n2_above_pct", "n2_up_to_pct"}};

Component balance_of(const ReferenceTable& table, std::size_t row) {
  const std::string& text = table.text(row, "balance");
  if (text == "argon") return Component::argon;
  if (text == "helium") return Component::helium;
  if (text == "carbon dioxide") return Component::carbon_dioxide;
  if (text == "nitrogen") return Component::nitrogen;
  table.refuse(row, "balance", "argon, helium, carbon dioxide or nitrogen");
}

GasShare share_of(const ReferenceTable& table, std::size_t row, const GroupColumns& columns) {
  if (table.text(row, columns.above).empty() && table.text(row, columns.up_to).empty()) return {};
  const GasShare share{table.number_within(row, columns.above, 0, 100),
                       table.number_within(row, columns.up_to, 0, 100)};
  if (share.above > share.up_to)
    table.refuse(row, columns.above, "a share that isn't above " + table.text(row, columns.up_to));
  return share;
}

/// reference/gases.csv: ISO 14175:2008, Table 2 (recalled).
std::vector<MainGroup> read_groups() {
  const ReferenceTable table("gases.csv");
  std::vector<MainGroup> groups;
  for (std::size_t row = 0; row < table.size(); ++row) {
    MainGroup group{table.text(row, "id"), balance_of(table, row), {}};
    for (const GroupColumns& columns : group_columns)
      group.bounds[static_cast<std::size_t>(columns.component)] = share_of(table, row, columns);
    groups.push_back(std::move(group));
  }
  return groups;
}

const std::vector<MainGroup>& main_groups() {
  static const std::vector<MainGroup> groups = read_groups();
  return groups;
}

struct Symbol {
  std::string_view text;
  Component component;
};

// Longest first, so that "Ar" isn't mistaken for another and "CO2" not for carbon's code.
constexpr std::array mix_symbols = {
    Symbol{"CO2", Component::carbon_dioxide}, Symbol{"Ar", Component::argon},
    Symbol{"He", Component::helium},          Symbol{"O2", Component::oxygen},
    Symbol{"H2", Component::hydrogen},        Symbol{"N2", Component::nitrogen}};
constexpr std::array code_symbols = {
    Symbol{"Ar", Component::argon}, Symbol{"He", Component::helium},  Symbol{"C", Component::carbon_dioxide},
    Symbol{"O", Component::oxygen}, Symbol{"H", Component::hydrogen}, Symbol{"N", Component::nitrogen}};

template <class Symbols>
const Symbol* symbol_at(const Symbols& symbols, std::string_view text) {
  for (const auto& symbol : symbols)
    if (text.starts_with(symbol.text)) return &symbol;
  return nullptr;
}

/// A percentage at the front, which is taken off; empty where there is none or it isn't within 0 to 100.
std::optional<double> take_percentage(std::string_view& text) {
  double value = 0;
  auto [end, error] =
      std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (error != std::errc() || !(value >= 0 && value <= 100)) return std::nullopt;
  text.remove_prefix(static_cast<std::size_t>(end - text.data()));
  return value;
}

void skip_any(std::string_view& text, std::string_view marks) {
  std::size_t first = text.find_first_not_of(marks);
  text.remove_prefix(first == std::string_view::npos ? text.size() : first);
}

/// The balance takes what the others leave.
void fill_balance(ShieldingGas& gas, Component balance) {
  double least = 0, most = 0;
  for (const auto& share : gas.shares) {
    least += share.above;
    most += share.up_to;
  }
  gas.share(balance) = {std::max(0.0, 100 - most), std::max(0.0, 100 - least)};
}

/// "ArC-18", "ArCO-12/2": the balance, the components' codes, their percentages in the same order.
bool apply_percentages(std::string_view text, const MainGroup& group, ShieldingGas& gas) {
  std::vector<Component> components;
  while (!text.empty() && text.front() != '-') {
    const Symbol* symbol = symbol_at(code_symbols, text);
    if (!symbol) return false;
    text.remove_prefix(symbol->text.size());
    if (symbol->component != group.balance) components.push_back(symbol->component);
  }
  for (std::size_t i = 0; i < components.size(); ++i) {
    if (text.empty() || text.front() != (i == 0 ? '-' : '/')) return false;
    text.remove_prefix(1);
    auto percentage = take_percentage(text);
    if (!percentage) return false;
    const GasShare& bounds = gas.share(components[i]);
    // Helium may replace argon in any group.
    bool fits = *percentage >= bounds.above && *percentage <= bounds.up_to;
    if (!fits && components[i] != Component::helium) return false;
    gas.share(components[i]) = {*percentage, *percentage};
  }
  return text.empty();
}

std::optional<ShieldingGas> designated(std::string_view text) {
  std::size_t dash = text.find('-');
  std::string_view name = text.substr(0, dash);
  for (const MainGroup& group : main_groups()) {
    if (group.name != name) continue;
    ShieldingGas gas{group.bounds};
    if (dash != std::string_view::npos && !apply_percentages(text.substr(dash + 1), group, gas))
      return std::nullopt;
    fill_balance(gas, group.balance);
    return gas;
  }
  return std::nullopt;
}

/// A single component without a percentage is the balance ("Ar 18CO2", "Ar").
std::optional<ShieldingGas> mixed(std::string_view text) {
  ShieldingGas gas;
  std::optional<Component> balance;
  double total = 0;
  while (!text.empty()) {
    bool starts_with_symbol = symbol_at(mix_symbols, text) != nullptr;
    auto percentage = starts_with_symbol ? std::nullopt : take_percentage(text);
    skip_any(text, " %");
    const Symbol* symbol = symbol_at(mix_symbols, text);
    if (!symbol || (!percentage && balance) || (!percentage && !starts_with_symbol)) return std::nullopt;
    if (!gas.share(symbol->component).none()) return std::nullopt;
    text.remove_prefix(symbol->text.size());
    skip_any(text, " -/+,");
    if (percentage) {
      gas.share(symbol->component) = {*percentage, *percentage};
      total += *percentage;
    } else {
      balance = symbol->component;
    }
  }
  if (balance && gas.share(*balance).none() && total < 100) {
    gas.share(*balance) = {100 - total, 100 - total};
    return gas;
  }
  return !balance && std::abs(total - 100) <= 0.5 ? std::optional(gas) : std::nullopt;
}

}  // namespace

std::optional<ShieldingGas> shielding_gas_of(std::string_view designation) {
  constexpr std::string_view standard = "ISO 14175";
  if (designation.starts_with(standard)) {
    designation.remove_prefix(standard.size());
    skip_any(designation, " -:");
    return designated(designation);
  }
  auto gas = designated(designation);
  return gas ? gas : mixed(designation);
}

}  // namespace seamtakt
