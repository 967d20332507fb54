#include "formula/metal/preheat.hpp"

#include "formula/input_checks.hpp"
#include "formula/metal/carbon_equivalent.hpp"
#include "formula/quantities/composition_option.hpp"
#include "formula/quantities/registry.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"method", OptionKind::text, "", "b: EN 1011-2 method B; aws-hydrogen: AWS D1.1 hydrogen control", "b",
     "b|aws-hydrogen"},
    {"composition", OptionKind::text, "", "mass %, e.g. C=0.17,Mn=1.45; or --cet, or --pcm", nullptr,
     nullptr},
    {"cet", OptionKind::number, "%", "CET of the parent metal", nullptr, nullptr},
    {"weld-metal-cet", OptionKind::number, "%", "CET of the weld metal", nullptr, nullptr},
    {"thickness", OptionKind::number, "mm", "thickness of the thicker plate", nullptr, nullptr},
    {"hydrogen", OptionKind::number, "ml/100g", "diffusible hydrogen of the weld metal", nullptr, nullptr},
    {"heat-input", OptionKind::number, "kJ/mm", "heat input, with efficiency", nullptr, nullptr},
    {"pcm", OptionKind::number, "%", "Pcm of the parent metal (aws-hydrogen)", nullptr, nullptr},
    {"hydrogen-level", OptionKind::text, "", "hydrogen level (aws-hydrogen); or --hydrogen", nullptr,
     "H1|H2|H3"},
    {"restraint", OptionKind::text, "", "restraint of the joint (aws-hydrogen)", nullptr, "low|medium|high"},
};

constexpr ResultSpec results[] = {
    {"preheat_C", "C", "preheat"},
    {"in_range", "", "in range"},
    {"cet_used", "%", "CET used"},
    {"hydrogen_scale", "", "hydrogen scale"},
    {"susceptibility_index", "", "susceptibility index"},
};

constexpr const FormulaNote* notes[] = {&design_cet_note, &preheat_method_b_note, &susceptibility_note,
                                        &aws_preheat_note};

constexpr std::array<std::string_view, 6> cet_elements = {"C", "Mn", "Mo", "Cr", "Cu", "Ni"};
constexpr std::array<std::string_view, 9> pcm_elements = {"C", "Si", "Mn", "Cu", "Cr", "Ni", "Mo", "V", "B"};

template <class Real>
std::optional<Real> parent_cet(const Inputs<Real>& in, Results<Real>& out) {
  require_only_one(in, {"cet", "composition"});
  if (!in.has("composition")) return find_positive(in, "cet");
  Composition<Real> composition = given_composition(in);
  remark_not_reported(composition, cet_elements, out.findings);
  for (auto& finding : outside_cet_range(composition, "--composition"))
    out.findings.push_back(std::move(finding));
  return carbon_equivalent_cet_pct(composition);
}

template <class Real>
std::optional<Real> cet_used(const Inputs<Real>& in, Results<Real>& out) {
  std::optional<Real> parent = parent_cet(in, out);
  std::optional<Real> weld_metal = find_positive(in, "weld-metal-cet");
  if (!parent) return std::nullopt;
  Real used = weld_metal ? design_cet_pct(*parent, *weld_metal) : *parent;
  out.set("cet_used", used);
  if (weld_metal)
    out.explain(design_cet_note, used, "%",
                {{"CET", "parent metal", *parent, "%"}, {"CETw", "weld metal", *weld_metal, "%"}});
  return used;
}

void remark_low_preheat(double preheat_C, Findings& findings) {
  if (preheat_C > shop_temperature_C) return;
  Finding finding =
      remark("preheat.none-needed", "preheat_C",
             Sentence("preheat.none-needed.below-shop"_key, {{"coldest", UnitValue{coldest_plate_C, "C"}}}),
             "en-1011-2, C.3 (recalled)");
  finding.value = preheat_C;
  finding.limit = shop_temperature_C;
  finding.unit = "C";
  findings.push_back(std::move(finding));
}

template <class Real>
void compute_method_b(const Inputs<Real>& in, Results<Real>& out) {
  std::optional<Real> cet = cet_used(in, out);
  auto thickness = find_positive(in, "thickness"), hydrogen = find_not_negative(in, "hydrogen");
  auto heat_input = find_positive(in, "heat-input");
  if (hydrogen) out.set_text("hydrogen_scale", hydrogen_scale(value_of(*hydrogen)));
  if (!cet || !thickness || !hydrogen || !heat_input) return;
  Real preheat = preheat_method_b_C(*cet, *thickness, *hydrogen, *heat_input);
  out.set("preheat_C", preheat);
  Findings outside = outside_preheat_range(value_of(*cet), value_of(*thickness), value_of(*hydrogen),
                                           value_of(*heat_input), "preheat_C");
  out.set_bool("in_range", outside.empty());
  for (auto& finding : outside) out.findings.push_back(std::move(finding));
  remark_low_preheat(value_of(preheat), out.findings);
  out.explain(preheat_method_b_note, preheat, "C",
              {{"CET", "CET used", *cet, "%"},
               {"d", "thicker plate", *thickness, "mm"},
               {"HD", "diffusible hydrogen", *hydrogen, "ml/100g"},
               {"Q", "heat input", *heat_input, "kJ/mm"}});
}

template <class Real>
std::optional<Real> given_pcm(const Inputs<Real>& in, Results<Real>& out) {
  require_only_one(in, {"pcm", "composition"});
  if (!in.has("composition")) return find_positive(in, "pcm");
  Composition<Real> composition = given_composition(in);
  remark_not_reported(composition, pcm_elements, out.findings);
  return carbon_equivalent_pcm_pct(composition);
}

template <class Real>
struct GivenHydrogen {
  HydrogenLevel level;
  Real ml_100g;
};

template <class Real>
std::optional<GivenHydrogen<Real>> given_hydrogen(const Inputs<Real>& in, Results<Real>& out) {
  auto amount = find_positive(in, "hydrogen");
  if (amount) out.set_text("hydrogen_scale", hydrogen_scale(value_of(*amount)));
  if (in.has("hydrogen-level")) {
    HydrogenLevel level = *hydrogen_level_of(std::string_view(in.text("hydrogen-level")));
    return GivenHydrogen<Real>{level, amount.value_or(Real(hydrogen_of_level_ml_100g(level)))};
  }
  if (!amount) return std::nullopt;
  return GivenHydrogen<Real>{hydrogen_level_of(value_of(*amount)), *amount};
}

/// The table's group where it has one; the index's group beside it where the two differ.
char group_used(double pcm, HydrogenLevel level, double index, Findings& findings) {
  char by_index = susceptibility_group_of_index(index);
  auto by_table = susceptibility_group_of_table(pcm, level);
  const std::string index_group(1, by_index), table_group(1, by_table.value_or(by_index));
  const bool differs = by_table && *by_table != by_index;
  Sentence sentence = !by_table ? Sentence("preheat.group.by-index"_key, {{"group", index_group}})
                      : differs ? Sentence("preheat.group.by-table.index-differs"_key,
                                           {{"group", table_group}, {"index_group", index_group}})
                                : Sentence("preheat.group.by-table"_key, {{"group", table_group}});
  findings.push_back(remark("preheat.group", "susceptibility_index", std::move(sentence),
                            "aws-d1-1, hydrogen control (recalled)"));
  return by_table.value_or(by_index);
}

template <class Real>
void compute_aws(const Inputs<Real>& in, Results<Real>& out) {
  std::optional<Real> pcm = given_pcm(in, out);
  auto hydrogen = given_hydrogen(in, out);
  auto thickness = find_positive(in, "thickness");
  if (!pcm || !hydrogen) return;
  Real index = susceptibility_index(*pcm, hydrogen->ml_100g);
  out.set("susceptibility_index", index);
  out.explain(susceptibility_note, index, "",
              {{"Pcm", "Pcm", *pcm, "%"}, {"H", "diffusible hydrogen", hydrogen->ml_100g, "ml/100g"}});
  char group = group_used(value_of(*pcm), hydrogen->level, value_of(index), out.findings);
  auto outside = outside_range(susceptibility_index_range, value_of(index), "susceptibility_index");
  bool in_range = !outside;
  add_if_any(out.findings, std::move(outside));
  auto restraint = restraint_of(in.text("restraint"));
  if (!thickness || !restraint) return;
  AwsPreheat preheat = aws_preheat(*restraint, group, value_of(*thickness));
  out.set("preheat_C", Real(preheat.preheat_C));
  out.set_bool("in_range", in_range);
  if (preheat.none_needed_above)
    out.findings.push_back(remark("preheat.none-needed", "preheat_C",
                                  Sentence("preheat.none-needed.warm-shop"_key),
                                  "aws-d1-1, hydrogen control (recalled)"));
  out.explain(aws_preheat_note, Real(preheat.preheat_C), "C", {{"t", "thickness", *thickness, "mm"}});
}

struct Preheat {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    if (in.text("method") == "b") {
      compute_method_b(in, out);
    } else {
      compute_aws(in, out);
    }
  }
};

}  // namespace

const Quantity preheat_quantity{"preheat",
                                "preheat against hydrogen cracking",
                                options,
                                results,
                                notes,
                                &Preheat::compute<double>,
                                &Preheat::compute<Dual>};

}  // namespace seamtakt
