#include "formula/metal/carbon_equivalent.hpp"

#include "formula/quantities/composition_option.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"composition", OptionKind::text, "", "mass %, e.g. C=0.17,Mn=1.45", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"CE_IIW", "%", "CE (IIW)"},
    {"CET", "%", "CET"},
    {"Pcm", "%", "Pcm"},
    {"CEN", "%", "CEN"},
};

constexpr const FormulaNote* notes[] = {&ce_iiw_note, &cet_note, &pcm_note, &cen_note};

template <class Real>
void give(const char* key, const FormulaNote& note, const Real& value, const Composition<Real>& c,
          Results<Real>& out) {
  out.set(key, value);
  out.explain(note, value, "%",
              {{"C", "carbon", c.C, "%"},
               {"Si", "silicon", c.Si, "%"},
               {"Mn", "manganese", c.Mn, "%"},
               {"Cr", "chromium", c.Cr, "%"},
               {"Mo", "molybdenum", c.Mo, "%"},
               {"V", "vanadium", c.V, "%"},
               {"Ni", "nickel", c.Ni, "%"},
               {"Cu", "copper", c.Cu, "%"},
               {"Nb", "niobium", c.Nb, "%"},
               {"B", "boron", c.B, "%"}});
}

struct CarbonEquivalent {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    require_composition(in);
    Composition<Real> composition = given_composition(in);
    give("CE_IIW", ce_iiw_note, carbon_equivalent_iiw_pct(composition), composition, out);
    give("CET", cet_note, carbon_equivalent_cet_pct(composition), composition, out);
    give("Pcm", pcm_note, carbon_equivalent_pcm_pct(composition), composition, out);
    give("CEN", cen_note, carbon_equivalent_cen_pct(composition), composition, out);
    remark_not_reported(composition, carbon_equivalent_elements, out.findings);
    for (auto& finding : outside_cet_range(composition, "--composition"))
      out.findings.push_back(std::move(finding));
  }
};

}  // namespace

const Quantity carbon_equivalent_quantity{"carbon-equivalent",
                                          "carbon equivalents CE, CET, Pcm and CEN of a steel",
                                          options,
                                          results,
                                          notes,
                                          &CarbonEquivalent::compute<double>,
                                          &CarbonEquivalent::compute<Dual>};

}  // namespace seamtakt
