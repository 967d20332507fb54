#include "formula/strength/fillet_resistance.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"throat", OptionKind::number, "mm", "effective throat", nullptr, nullptr},
    {"length", OptionKind::number, "mm", "effective length of each weld", nullptr, nullptr},
    {"count", OptionKind::number, "", "number of equal welds that share the force", "1", nullptr},
    {"steel", OptionKind::text, "", "grade of the weaker part", nullptr, "S235|S275|S355|S420|S460"},
    {"tensile", OptionKind::number, "MPa", "tensile strength of the weaker part, instead of the grade's",
     nullptr, nullptr},
    {"beta-w", OptionKind::number, "", "correlation factor, instead of the grade's", nullptr, nullptr},
    {"force-normal-to-weld", OptionKind::number, "N", "total force across the welds' axis", nullptr, nullptr},
    {"force-along-weld", OptionKind::number, "N", "total force along the welds' axis", nullptr, nullptr},
    {"edition", OptionKind::text, "", "of EN 1993-1-8, for the correlation factor (2024 recalled)", "2005",
     "2005|2024"},
    {"tensile-table", OptionKind::text, "", "where a grade's tensile strength is taken from", "en-1993-1-1",
     "en-1993-1-1|en-10025"},
};

constexpr ResultSpec results[] = {
    {"design_shear_strength_MPa", "MPa", "design shear strength"},
    {"utilisation_simplified", "", "utilisation, simplified"},
    {"utilisation_directional", "", "utilisation, directional"},
    {"resistance_N", "N", "resistance, simplified"},
};

constexpr const FormulaNote* notes[] = {&weld_shear_strength_note, &fillet_resistance_note,
                                        &simplified_utilisation_note, &directional_utilisation_note};

template <class Real>
struct Steel {
  Real tensile_MPa, beta_w;
};

void note_edition(const std::string& grade, bool edition_2024, Findings& findings) {
  if (!edition_2024 || (grade != "S420" && grade != "S460")) return;
  findings.push_back(
      remark("fillet-resistance.edition", "--edition",
             Sentence("fillet-resistance.edition"_key, {{"edition", "2024"}, {"grade", grade}}),
             "EN 1993-1-8:2024, recalled"));
}

/// Tensile strength and correlation factor, from the grade or given; InputError where one of them is missing.
template <class Real>
Steel<Real> steel_of(const Inputs<Real>& in, Findings& findings) {
  const std::string grade = in.text("steel");
  std::optional<Real> tensile = find_positive(in, "tensile"), beta_w = find_within(in, "beta-w", 0.1, 2);
  if (!grade.empty()) {
    const bool edition_2024 = in.text("edition") == "2024";
    const auto known =
        fillet_steel(grade, edition_2024 ? FilletEdition::ed2024 : FilletEdition::ed2005,
                     in.text("tensile-table") == "en-10025" ? TensileTable::product : TensileTable::design);
    if (!known)
      throw InputError("--steel", printable(grade), "a grade of reference/fillet_strength.csv"_word);
    if (!beta_w) note_edition(grade, edition_2024, findings);
    if (!tensile) tensile = Real(known->tensile_MPa);
    if (!beta_w) beta_w = Real(known->beta_w);
  }
  if (!tensile) throw InputError("--steel", "nothing"_word, "a grade, or --tensile with --beta-w"_word);
  if (!beta_w)
    throw InputError("--beta-w", "nothing"_word,
                     "the correlation factor that goes with --tensile, or --steel"_word);
  return {*tensile, *beta_w};
}

/// 4.5.1(2), 4.5.2(2) and 4.11: what keeps a weld from counting, whatever its stress.
void judge_size(double throat_mm, double length_mm, Findings& findings) {
  const auto add = [&](const char* rule, Severity severity, const char* where, double value, double limit,
                       Sentence sentence, const char* source) {
    findings.push_back({rule, severity, where, value, limit, "mm", std::move(sentence), source});
  };
  constexpr double throat_min_mm = 3;
  if (throat_mm < throat_min_mm)
    add("fillet-resistance.throat", Severity::warn, "--throat", throat_mm, throat_min_mm,
        Sentence("fillet-resistance.throat"_key, {{"least", UnitValue{throat_min_mm, "mm"}}}),
        "EN 1993-1-8:2005, 4.5.2(2), recalled");
  const double length_min = effective_length_min_mm(throat_mm);
  if (length_mm < length_min)
    add("fillet-resistance.length", Severity::warn, "--length", length_mm, length_min,
        Sentence("fillet-resistance.length"_key, {{"shortest", UnitValue{effective_length_min_mm(0), "mm"}}}),
        "EN 1993-1-8:2005, 4.5.1(2)");
  const double factor = long_lap_factor(length_mm, throat_mm);
  if (factor < 1)
    add("fillet-resistance.long-lap", Severity::note, "--length", length_mm, 150 * throat_mm,
        Sentence("fillet-resistance.long-lap"_key, {{"factor", UnitValue{factor, ""}}}),
        "EN 1993-1-8:2005, 4.11");
}

void judge_utilisation(double simplified, double directional, Findings& findings) {
  if (directional > 1)
    findings.push_back({"fillet-resistance.exceeded", Severity::fail, "utilisation_directional", directional,
                        1.0, "", Sentence("fillet-resistance.exceeded"_key), "EN 1993-1-8:2005, 4.5.3.2"});
  else if (simplified > 1)
    findings.push_back({"fillet-resistance.simplified-exceeded", Severity::note, "utilisation_simplified",
                        simplified, 1.0, "", Sentence("fillet-resistance.simplified-exceeded"_key),
                        "EN 1993-1-8:2005, 4.5.3.1"});
}

template <class Real>
struct Weld {
  Real throat_mm, length_mm, count, area_mm2;
};

template <class Real>
void compute_utilisation(const Inputs<Real>& in, const Steel<Real>& steel, const Weld<Real>& weld,
                         const Real& strength, Results<Real>& out) {
  const std::optional<Real> normal = in.find("force-normal-to-weld"), along = in.find("force-along-weld");
  if (!normal && !along) return;
  const Real N = normal.value_or(Real(0.0)), V = along.value_or(Real(0.0));
  const FilletStress<Real> stress = fillet_stress(weld.area_mm2, N, V);
  const Real simplified = simplified_utilisation(weld.area_mm2, N, V, strength);
  const Real directional = directional_utilisation(stress, steel.tensile_MPa, steel.beta_w);
  out.set("utilisation_simplified", simplified);
  out.set("utilisation_directional", directional);
  out.explain(simplified_utilisation_note, simplified, "",
              {{"N", "force across", N, "N"},
               {"V", "force along", V, "N"},
               {"f_vwd", "design shear strength", strength, "MPa"},
               {"a", "throat", weld.throat_mm, "mm"},
               {"L", "length of each", weld.length_mm, "mm"},
               {"n", "welds", weld.count, ""}});
  out.explain(directional_utilisation_note, directional, "",
              {{"s", "stress normal to the throat", stress.normal_MPa, "MPa"},
               {"tp", "shear across the weld's axis", stress.shear_across_MPa, "MPa"},
               {"tl", "shear along the weld's axis", stress.shear_along_MPa, "MPa"},
               {"beta_w", "correlation factor", steel.beta_w, ""},
               {"gamma_M2", "partial factor", Real(gamma_M2), ""},
               {"f_u", "tensile strength of the weaker part", steel.tensile_MPa, "MPa"}});
  judge_utilisation(value_of(simplified), value_of(directional), out.findings);
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  const Steel<Real> steel = steel_of(in, out.findings);
  const Real count = positive(in, "count");
  if (value_of(count) != std::floor(value_of(count)))
    throw InputError("--count", number_text(value_of(count)), "a whole number of welds"_word);
  const Real strength = weld_shear_strength_MPa(steel.tensile_MPa, steel.beta_w);
  out.set("design_shear_strength_MPa", strength);
  out.explain(weld_shear_strength_note, strength, "MPa",
              {{"f_u", "tensile strength of the weaker part", steel.tensile_MPa, "MPa"},
               {"beta_w", "correlation factor", steel.beta_w, ""},
               {"gamma_M2", "partial factor", Real(gamma_M2), ""}});
  const std::optional<Real> throat = find_positive(in, "throat"), length = find_positive(in, "length");
  if (!throat || !length) return;
  const Weld<Real> weld{*throat, *length, count, fillet_throat_area_mm2(*throat, *length, count)};
  const Real resistance = weld.area_mm2 * strength;
  out.set("resistance_N", resistance);
  out.explain(fillet_resistance_note, resistance, "N",
              {{"f_vwd", "design shear strength", strength, "MPa"},
               {"a", "throat", *throat, "mm"},
               {"L", "length of each", *length, "mm"},
               {"n", "welds", count, ""}});
  judge_size(value_of(*throat), value_of(*length), out.findings);
  compute_utilisation(in, steel, weld, strength, out);
}

}  // namespace

const Quantity fillet_resistance_quantity{"fillet-resistance",
                                          "design resistance of fillet welds, both methods of EN 1993-1-8",
                                          options,
                                          results,
                                          notes,
                                          compute<double>,
                                          compute<Dual>};

}  // namespace seamtakt
