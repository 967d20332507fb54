#include "plan/evaluate/joint_metals.hpp"

#include <algorithm>

#include "formula/metal/carbon_equivalent.hpp"

namespace seamtakt {

namespace {

/// CET where it holds for this composition.
template <class Pairs>
std::optional<double> cet_of(const Pairs& composition_pct) {
  const auto steel = composition_of<double>(composition_pct);
  if (why_not_ferritic(composition_pct) || above_cet_range(steel)) return std::nullopt;
  return carbon_equivalent_cet_pct(steel);
}

}  // namespace

JointMetals joint_metals(const PassFacts& facts) {
  JointMetals metals;
  metals.has_hardness = true;
  bool has_cet = true;
  for (std::size_t plate = 0; plate < 2; ++plate) {
    const CompositionPct& composition_pct = facts.metals[plate]->composition_pct;
    metals.of_metals[plate] = steel_of(*facts.metals[plate], facts.seam.thickness_mm[plate]);
    metals.steels[plate] = metals.of_metals[plate].steel;
    metals.is_ferritic = metals.is_ferritic && !why_not_ferritic(composition_pct);
    has_cet = has_cet && !above_cet_range(metals.steels[plate]);
    metals.has_hardness =
        metals.has_hardness && inside_yurioka_domain(hardening_elements(metals.steels[plate]));
  }
  metals.has_hardness = metals.has_hardness && metals.is_ferritic;
  const double cet[2] = {carbon_equivalent_cet_pct(metals.steels[0]),
                         carbon_equivalent_cet_pct(metals.steels[1])};
  metals.higher_cet = cet[1] > cet[0] ? 1 : 0;
  if (metals.is_ferritic && has_cet) metals.cet_pct = cet[metals.higher_cet];
  metals.design_cet_pct = metals.cet_pct;
  const CompositionPct& weld_metal_pct = facts.wire.weld_metal_composition_pct;
  if (weld_metal_pct.empty()) return metals;
  metals.weld_metal_cet_pct = cet_of(weld_metal_pct);
  metals.design_cet_pct.reset();
  if (metals.cet_pct && metals.weld_metal_cet_pct)
    metals.design_cet_pct = design_cet_pct(*metals.cet_pct, *metals.weld_metal_cet_pct);
  return metals;
}

std::optional<PreheatCase> preheat_case_of(const PassFacts& facts, const JointMetals& metals,
                                           double heat_input_kJ_mm) {
  if (!metals.design_cet_pct || !facts.wire.hydrogen_ml_100g) return std::nullopt;
  return preheat_case({*metals.design_cet_pct,
                       std::max(facts.seam.thickness_mm[0], facts.seam.thickness_mm[1]),
                       *facts.wire.hydrogen_ml_100g, heat_input_kJ_mm});
}

}  // namespace seamtakt
