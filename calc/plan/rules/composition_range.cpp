#include <algorithm>
#include <string>

#include "formula/metal/carbon_equivalent.hpp"
#include "formula/metal/ferritic.hpp"
#include "formula/metal/haz_hardness.hpp"
#include "plan/rules/rules.hpp"
#include "plan/steel_of_metal.hpp"

namespace seamtakt {

namespace {

Finding not_computed(const char* rule, const std::string& where, Word what, std::string_view element,
                     double pct, double bound_pct, bool is_upper, const char* source) {
  Finding finding =
      remark(rule, where,
             Sentence(is_upper ? "composition.not-computed-above"_key : "composition.not-computed-below"_key,
                      {{"what", what},
                       {"material", where},
                       {"element", element},
                       {"value", UnitValue{pct, "%"}},
                       {"bound", UnitValue{bound_pct, "%"}}}),
             source);
  finding.value = pct;
  finding.limit = bound_pct;
  finding.unit = "%";
  return finding;
}

/// Why CET isn't computed for a composition that is a ferritic steel's.
void judge_cet_range(const char* rule, Word what, const std::string& where, const Composition<double>& steel,
                     Findings& findings) {
  const ElementRange* above = above_cet_range(steel);
  if (!above) return;
  for (const auto& [symbol, value] : Composition<double>::members())
    if (symbol == above->symbol)
      findings.push_back(not_computed(rule, where, what, symbol, steel.*value, above->range.upper, true,
                                      above->range.source));
}

bool judge_ferritic(const char* rule, Word what, const std::string& where,
                    const CompositionPct& composition_pct, Findings& findings) {
  const auto why = why_not_ferritic(composition_pct);
  if (!why) return true;
  findings.push_back(
      not_computed(rule, where, what, why->symbol, why->pct, why->bound_pct, why->is_upper, why->source));
  return false;
}

/// The thickest plate of a metal whose composition depends on it.
double thickest_mm(const Plan& plan, const BaseMetal& metal) {
  double thickest = 0;
  if (!depends_on_thickness(metal)) return thickest;
  for (const Weldment& weldment : plan.weldments)
    for (const Seam& seam : weldment.seams)
      for (std::size_t plate = 0; plate < std::min(seam.base_metals.size(), seam.thickness_mm.size());
           ++plate)
        if (seam.base_metals[plate] == metal.id) thickest = std::max(thickest, seam.thickness_mm[plate]);
  return thickest;
}

}  // namespace

// Why values of seams of a metal are empty: each formula by its own range of compositions.
void judge_composition_range(const Plan& plan, Findings& findings) {
  for (const BaseMetal& metal : plan.base_metals) {
    if (!judge_ferritic("composition.not-ferritic",
                        "t8/5, carbon equivalents, preheat, hardness and penetration aren't computed"_word,
                        metal.id, metal.composition_pct, findings))
      continue;
    const Composition<double> steel = steel_of(metal, thickest_mm(plan, metal)).steel;
    judge_cet_range("composition.cet-range", "CET and preheat aren't computed"_word, metal.id, steel,
                    findings);
    const HardeningElements elements = hardening_elements(steel);
    if (inside_yurioka_domain(elements)) continue;
    const bool is_carbon = !is_inside(yurioka_carbon_range, elements.C);
    const ValidRange& range = is_carbon ? yurioka_carbon_range : yurioka_nitrogen_range;
    findings.push_back(not_computed("composition.hardness-range", metal.id, "Hardness isn't computed"_word,
                                    is_carbon ? "C" : "N", is_carbon ? elements.C : elements.N, range.upper,
                                    true, range.source));
  }
  for (const Wire& wire : plan.wires)
    if (judge_ferritic("composition.weld-metal", "Preheat isn't computed"_word, wire.id,
                       wire.weld_metal_composition_pct, findings))
      judge_cet_range("composition.weld-metal", "Preheat isn't computed"_word, wire.id,
                      composition_of<double>(wire.weld_metal_composition_pct), findings);
}

}  // namespace seamtakt
