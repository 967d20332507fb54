#include "formula/wire/transfer.hpp"

#include <cmath>

#include "formula/reference_table.hpp"

namespace seamtakt {
namespace {

/// Small shares of oxygen do the same to the transition: to 5 %, with a finding where the table's mix is
/// another.
constexpr double oxygen_like_table_pct = 5;
/// 90Ar-10CO2 represents mixes close to it.
constexpr double co2_like_note_pct = 1;

bool only_argon_and(const ShieldingGas& gas, GasComponent component) {
  for (std::size_t i = 0; i < gas_components; ++i) {
    auto other = static_cast<GasComponent>(i);
    if (other != GasComponent::argon && other != component && !gas.shares[i].none()) return false;
  }
  return !gas.share(GasComponent::argon).none();
}

TransitionRows oxygen_rows(const ShieldingGas& gas, std::string_view table_gas, double table_pct) {
  const GasShare& oxygen = gas.share(GasComponent::oxygen);
  if (oxygen.none() || oxygen.up_to > oxygen_like_table_pct) return {};
  bool exact = oxygen.known() && std::abs(oxygen.above - table_pct) < 0.05;
  return {TransitionStatus::published, table_gas, exact};
}

TransitionRows mild_steel_rows(const ShieldingGas& gas) {
  const GasShare& co2 = gas.share(GasComponent::carbon_dioxide);
  const auto is_above = [&](double limit_pct) {
    return co2.known() ? co2.above > limit_pct : co2.above >= limit_pct;
  };
  if (is_above(spray_co2_others_limit_pct)) return {TransitionStatus::no_spray, {}, true};
  if (is_above(spray_co2_limit_pct)) return {TransitionStatus::unclear, {}, true};
  if (only_argon_and(gas, GasComponent::oxygen)) return oxygen_rows(gas, "98Ar 2O2", 2);
  if (only_argon_and(gas, GasComponent::carbon_dioxide) && co2.known() &&
      std::abs(co2.above - 10) <= co2_like_note_pct)
    return {TransitionStatus::published, "90Ar 10CO2", co2.above == 10};
  return {};
}

/// Interpolation goes from row to row.
void check_order(const ReferenceTable& table, std::size_t row, const std::vector<TransitionCurrent>& before) {
  for (const TransitionCurrent& each : before)
    if (each.material == table.text(row, "material") && each.gas == table.text(row, "gas") &&
        each.diameter_mm >= table.number(row, "diameter_mm"))
      table.refuse(row, "diameter_mm", "diameters that rise within a material and gas");
}

/// The rows' names are those of `table`, which outlives them.
std::vector<TransitionCurrent> read_currents(const ReferenceTable& table) {
  std::vector<TransitionCurrent> list;
  for (std::size_t row = 0; row < table.size(); ++row) {
    check_order(table, row, list);
    list.push_back({table.text(row, "material"), table.text(row, "gas"), table.positive(row, "diameter_mm"),
                    table.positive(row, "transition_current_A"),
                    table.basis(row) == SourceBasis::common_practice});
  }
  return list;
}

}  // namespace

const std::vector<TransitionCurrent>& transition_currents() {
  static const ReferenceTable table("transition_current.csv");
  static const std::vector<TransitionCurrent> list = read_currents(table);
  return list;
}

TransitionRows transition_rows(std::string_view material, const ShieldingGas& gas) {
  if (material == "mild-steel") return mild_steel_rows(gas);
  if (material == "stainless" && only_argon_and(gas, GasComponent::oxygen))
    return oxygen_rows(gas, "99Ar 1O2", 1);
  bool pure_argon = only_argon_and(gas, GasComponent::argon);
  if (material == "aluminium" && pure_argon) return {TransitionStatus::published, "Ar", true};
  return {};
}

}  // namespace seamtakt
