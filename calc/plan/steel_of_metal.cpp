#include "plan/steel_of_metal.hpp"

#include <string>

#include "formula/metal/cev_limit.hpp"

namespace seamtakt {

namespace {

/// By the standard with its grade; a standard's bare name is completed by the metal's id.
std::optional<double> standard_limit_pct(const BaseMetal& metal, double thickness_mm) {
  if (metal.standard.empty()) return std::nullopt;
  if (const auto limit = cev_limit_pct(metal.standard, thickness_mm)) return limit;
  return cev_limit_pct(metal.standard + ' ' + metal.id, thickness_mm);
}

}  // namespace

SteelOfMetal steel_of(const BaseMetal& metal, double thickness_mm) {
  SteelOfMetal result;
  result.steel = composition_of<double>(metal.composition_pct);
  if (metal.composition_basis == "standard-maximum") {
    const std::optional<double> limit = metal.CEV ? metal.CEV : standard_limit_pct(metal, thickness_mm);
    if (limit) result.alloy_share = alloy_share(result.steel, *limit);
    if (result.alloy_share < 1) {
      result.cev_pct = limit;
      result.steel = with_alloy_share(result.steel, result.alloy_share);
    }
  }
  result.CE_IIW_pct = metal.CEV.value_or(carbon_equivalent_iiw_pct(result.steel));
  return result;
}

}  // namespace seamtakt
