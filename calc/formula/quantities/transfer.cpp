#include "formula/wire/transfer.hpp"

#include "base/sentences/name_list.hpp"
#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"wire-diameter", OptionKind::number, "mm", "wire diameter", nullptr, nullptr},
    {"wire-material", OptionKind::text, "", "material of the wire", nullptr,
     "mild-steel|stainless|aluminium"},
    {"gas", OptionKind::text, "", "ISO 14175 designation or a mix such as \"98Ar 2O2\"", nullptr, nullptr},
    {"current", OptionKind::number, "A", "current", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"transfer_mode", "", "transfer mode"},
    {"transition_current_A", "A", "transition current"},
    {"interpolated", "", "interpolated"},
};

constexpr const FormulaNote* notes[] = {&transition_current_note};

std::string required_text(bool given, std::string text, const char* name, const Sentence& expected) {
  if (!given) throw InputError(name, "nothing"_word, expected);
  return text;
}

constexpr Word gas_expected = "an ISO 14175 designation (M21, M21-ArC-18) or a mix (98Ar 2O2)"_word;

template <class Real>
void remark_gas(const Transition<Real>& transition, Findings& findings) {
  std::string source = "mig-handbook, Table 1-2";
  if (transition.status == TransitionStatus::no_spray || transition.status == TransitionStatus::unclear)
    findings.push_back(remark(
        "transfer.gas.no-spray", "--gas",
        Sentence("transfer.gas.no-spray"_key, {{"limit", UnitValue{spray_co2_limit_pct, "%"}},
                                               {"others_from", UnitValue{20, "%"}},
                                               {"others_to", UnitValue{spray_co2_others_limit_pct, "%"}}}),
        source));
  if (transition.status == TransitionStatus::published && !transition.gas_is_table_gas)
    findings.push_back(remark("transfer.gas.other-mix", "--gas",
                              Sentence("transfer.gas.other-mix"_key, {{"gas", transition.table_gas}}),
                              source));
  if (transition.status == TransitionStatus::published && transition.indicative)
    findings.push_back(remark("transfer.gas.indicative", "--gas", Sentence("transfer.gas.indicative"_key),
                              "common practice, no source"));
}

struct Transfer {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    std::string material = required_text(in.has("wire-material"), in.text("wire-material"), "--wire-material",
                                         one_of_names({"mild-steel", "stainless", "aluminium"}));
    std::string designation = required_text(in.has("gas"), in.text("gas"), "--gas", gas_expected);
    auto gas = shielding_gas_of(designation);
    if (!gas) throw InputError("--gas", printable(designation), gas_expected);
    Real diameter = positive(in, "wire-diameter");
    auto current = find_not_negative(in, "current");
    Transition<Real> transition = transition_current(material, diameter, *gas);
    out.set_bool("interpolated", transition.interpolated);
    if (transition.current_A) {
      out.set("transition_current_A", *transition.current_A);
      out.explain(transition_current_note, *transition.current_A, "A",
                  {{"d", "wire diameter", diameter, "mm"}});
    }
    // Without a transition current the mode doesn't depend on the current.
    if (current || transition.status != TransitionStatus::published)
      out.set_text("transfer_mode", transfer_mode(transition, current ? value_of(*current) : 0.0));
    remark_gas(transition, out.findings);
  }
};

}  // namespace

const Quantity transfer_quantity{"transfer",
                                 "transition current to spray, and the mode at a current",
                                 options,
                                 results,
                                 notes,
                                 &Transfer::compute<double>,
                                 &Transfer::compute<Dual>};

}  // namespace seamtakt
