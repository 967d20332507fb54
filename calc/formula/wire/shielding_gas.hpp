#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace seamtakt {

/// Share of a component, volume %: `above` < share <= `up_to`; equal where it is known.
struct GasShare {
  double above = 0, up_to = 0;

  bool known() const { return above == up_to; }
  bool none() const { return up_to == 0; }
};

enum class GasComponent { argon, carbon_dioxide, oxygen, helium, hydrogen, nitrogen };
inline constexpr std::size_t gas_components = 6;

/// What a shielding gas is made of, as far as its designation says so.
struct ShieldingGas {
  std::array<GasShare, gas_components> shares{};

  const GasShare& share(GasComponent component) const { return shares[static_cast<std::size_t>(component)]; }
  GasShare& share(GasComponent component) { return shares[static_cast<std::size_t>(component)]; }
};

/// Reads a designation of ISO 14175 ("M21", "M21-ArC-18", "ISO 14175 M21-ArC-18", "ISO 14175-C1": a main
/// group with the bounds of its table, or with percentages), or a mix ("98Ar 2O2", "82Ar/18CO2", "Ar 18CO2",
/// "Ar"). Source: iso-14175, Table 2 (recalled), reference/gases.csv. Helium that the standard allows in
/// place of argon isn't distinguished. Empty where the text is neither, a percentage is outside the group's
/// bounds, or a mix doesn't add up to 100 %.
std::optional<ShieldingGas> shielding_gas_of(std::string_view designation);

}  // namespace seamtakt
