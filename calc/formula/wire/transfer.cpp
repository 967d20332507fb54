#include "formula/wire/transfer.hpp"

#include <cmath>

namespace seamtakt {
namespace {

/// Small shares of oxygen do the same to the transition: to 5 %, with a finding where the table's mix is
/// another.
constexpr double oxygen_like_table_pct = 5;
/// 90Ar-10CO2 stands for mixes that near.
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
  if (co2.known() ? co2.above > spray_co2_limit_pct : co2.above >= spray_co2_limit_pct)
    return {TransitionStatus::no_spray, {}, true};
  if (only_argon_and(gas, GasComponent::oxygen)) return oxygen_rows(gas, "98Ar 2O2", 2);
  if (only_argon_and(gas, GasComponent::carbon_dioxide) && co2.known() &&
      std::abs(co2.above - 10) <= co2_like_note_pct)
    return {TransitionStatus::published, "90Ar 10CO2", co2.above == 10};
  return {};
}

}  // namespace

TransitionRows transition_rows(std::string_view material, const ShieldingGas& gas) {
  if (material == "mild-steel") return mild_steel_rows(gas);
  if (material == "stainless" && only_argon_and(gas, GasComponent::oxygen))
    return oxygen_rows(gas, "99Ar 1O2", 1);
  bool pure_argon = only_argon_and(gas, GasComponent::argon);
  if (material == "aluminium" && pure_argon) return {TransitionStatus::published, "Ar", true};
  return {};
}

}  // namespace seamtakt
