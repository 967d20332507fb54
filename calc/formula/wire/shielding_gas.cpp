#include "formula/wire/shielding_gas.hpp"

#include <charconv>
#include <cmath>
#include <vector>

namespace seamtakt {
namespace {

using Component = GasComponent;

struct MainGroup {
  std::string_view name;
  Component balance;
  GasShare co2, o2, he, h2, n2;
};

constexpr GasShare none{};

// ISO 14175:2008, Table 2 (recalled).
constexpr std::array main_groups = {
    MainGroup{"I1", Component::argon, none, none, none, none, none},
    MainGroup{"I2", Component::helium, none, none, none, none, none},
    MainGroup{"I3", Component::argon, none, none, {0.5, 95}, none, none},
    MainGroup{"M11", Component::argon, {0.5, 5}, none, none, {0.5, 5}, none},
    MainGroup{"M12", Component::argon, {0.5, 5}, none, none, none, none},
    MainGroup{"M13", Component::argon, none, {0.5, 3}, none, none, none},
    MainGroup{"M14", Component::argon, {0.5, 5}, {0.5, 3}, none, none, none},
    MainGroup{"M20", Component::argon, {5, 15}, none, none, none, none},
    MainGroup{"M21", Component::argon, {15, 25}, none, none, none, none},
    MainGroup{"M22", Component::argon, none, {3, 10}, none, none, none},
    MainGroup{"M23", Component::argon, {0.5, 5}, {3, 10}, none, none, none},
    MainGroup{"M24", Component::argon, {5, 15}, {0.5, 3}, none, none, none},
    MainGroup{"M25", Component::argon, {5, 15}, {3, 10}, none, none, none},
    MainGroup{"M26", Component::argon, {15, 25}, {0.5, 3}, none, none, none},
    MainGroup{"M27", Component::argon, {15, 25}, {3, 10}, none, none, none},
    MainGroup{"M31", Component::argon, {25, 50}, none, none, none, none},
    MainGroup{"M32", Component::argon, none, {10, 15}, none, none, none},
    MainGroup{"M33", Component::argon, {25, 50}, {2, 10}, none, none, none},
    MainGroup{"M34", Component::argon, {5, 25}, {10, 15}, none, none, none},
    MainGroup{"M35", Component::argon, {25, 50}, {10, 15}, none, none, none},
    MainGroup{"C1", Component::carbon_dioxide, none, none, none, none, none},
    MainGroup{"C2", Component::carbon_dioxide, none, {0.5, 30}, none, none, none},
    MainGroup{"R1", Component::argon, none, none, none, {0.5, 15}, none},
    MainGroup{"R2", Component::argon, none, none, none, {15, 50}, none},
    MainGroup{"N1", Component::nitrogen, none, none, none, none, none},
    MainGroup{"N2", Component::argon, none, none, none, none, {0.5, 5}},
    MainGroup{"N3", Component::argon, none, none, none, none, {5, 50}},
    MainGroup{"N4", Component::argon, none, none, none, {0.5, 10}, {0.5, 5}},
    MainGroup{"N5", Component::nitrogen, none, none, none, {0.5, 50}, none},
};

struct Symbol {
  std::string_view text;
  Component component;
};

// Longest first, so that "Ar" isn't taken for another and "CO2" not for carbon's code.
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

std::array<GasShare, gas_components> bounds_of(const MainGroup& group) {
  std::array<GasShare, gas_components> bounds{};
  bounds[static_cast<std::size_t>(Component::carbon_dioxide)] = group.co2;
  bounds[static_cast<std::size_t>(Component::oxygen)] = group.o2;
  bounds[static_cast<std::size_t>(Component::helium)] = group.he;
  bounds[static_cast<std::size_t>(Component::hydrogen)] = group.h2;
  bounds[static_cast<std::size_t>(Component::nitrogen)] = group.n2;
  return bounds;
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
    // Helium may stand in for argon in any group.
    bool fits = *percentage >= bounds.above && *percentage <= bounds.up_to;
    if (!fits && components[i] != Component::helium) return false;
    gas.share(components[i]) = {*percentage, *percentage};
  }
  return text.empty();
}

std::optional<ShieldingGas> designated(std::string_view text) {
  std::size_t dash = text.find('-');
  std::string_view name = text.substr(0, dash);
  for (const auto& group : main_groups) {
    if (group.name != name) continue;
    ShieldingGas gas{bounds_of(group)};
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
