#include "formula/strength/distortion.hpp"

#include "base/sentences/name_list.hpp"
#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"type", OptionKind::text, "", "which movement", nullptr,
     "fillet-angular|longitudinal-bow|butt-transverse|tendon"},
    {"flange-width", OptionKind::number, "mm", "fillet-angular: whole width of the flange", nullptr, nullptr},
    {"leg", OptionKind::number, "mm", "fillet-angular: leg of the fillet", nullptr, nullptr},
    {"thickness", OptionKind::number, "mm", "thickness of the flange or of the butt-welded plates", nullptr,
     nullptr},
    {"weld-area", OptionKind::number, "mm2", "cross-section of the weld with the plate melted in", nullptr,
     nullptr},
    {"length", OptionKind::number, "mm", "length of the member", nullptr, nullptr},
    {"eccentricity", OptionKind::number, "mm", "from the weld's centroid to the neutral axis", nullptr,
     nullptr},
    {"second-moment", OptionKind::number, "mm4", "second moment of area of the member", nullptr, nullptr},
    {"heat-input", OptionKind::number, "kJ/mm", "tendon: net heat input, with thermal efficiency", nullptr,
     nullptr},
    {"section-area", OptionKind::number, "mm2", "tendon: section area of the member", nullptr, nullptr},
    {"modulus", OptionKind::number, "MPa", "tendon: modulus of elasticity", "210000", nullptr},
};

constexpr ResultSpec results[] = {
    {"movement_mm", "mm", "movement"},
    {"force_kN", "kN", "tendon force"},
    {"bow_mm", "mm", "bow"},
    {"shortening_mm", "mm", "shortening"},
};

constexpr const FormulaNote* notes[] = {&fillet_angular_note,  &longitudinal_bow_note,
                                        &butt_transverse_note, &tendon_force_note,
                                        &tendon_bow_note,      &tendon_shortening_note};

template <class Real>
void compute_fillet_angular(const Inputs<Real>& in, Results<Real>& out) {
  const Real width = positive(in, "flange-width"), leg = positive(in, "leg"),
             thickness = positive(in, "thickness");
  const Real movement = fillet_angular_movement_mm(width, leg, thickness);
  out.set("movement_mm", movement);
  out.explain(fillet_angular_note, movement, "mm",
              {{"W", "flange width", width, "mm"},
               {"w", "leg", leg, "mm"},
               {"t", "flange thickness", thickness, "mm"}});
}

template <class Real>
void compute_longitudinal_bow(const Inputs<Real>& in, Results<Real>& out) {
  const Real area = not_negative(in, "weld-area"), length = positive(in, "length");
  const Real eccentricity = in.number("eccentricity"), second_moment = positive(in, "second-moment");
  const Real movement = longitudinal_bow_mm(area, length, eccentricity, second_moment);
  out.set("movement_mm", movement);
  out.explain(longitudinal_bow_note, movement, "mm",
              {{"A_w", "weld area", area, "mm2"},
               {"L", "length", length, "mm"},
               {"d", "weld to neutral axis", eccentricity, "mm"},
               {"I", "second moment of area", second_moment, "mm4"}});
}

template <class Real>
void compute_butt_transverse(const Inputs<Real>& in, Results<Real>& out) {
  const Real area = not_negative(in, "weld-area"), thickness = positive(in, "thickness");
  const Real movement = butt_transverse_shrinkage_mm(area, thickness);
  out.set("movement_mm", movement);
  out.explain(butt_transverse_note, movement, "mm",
              {{"A_w", "weld area", area, "mm2"}, {"t", "plate thickness", thickness, "mm"}});
}

/// The force can't exceed the section's yield force; the yield stress isn't an input, so the lowest
/// structural grade decides when to warn.
template <class Real>
void note_tendon_stress(const Real& force_kN, const std::optional<Real>& section_area, Findings& findings) {
  constexpr double lowest_yield_MPa = 235;
  if (!section_area) return;
  const double stress = value_of(force_kN) * 1000 / value_of(*section_area);
  if (stress <= lowest_yield_MPa) return;
  Finding finding = remark("distortion.tendon-yield", "force_kN", Sentence("distortion.tendon-yield"_key),
                           "white-leggatt-dwight-1980, recalled");
  finding.severity = Severity::warn;
  finding.value = stress;
  finding.limit = lowest_yield_MPa;
  finding.unit = "MPa";
  findings.push_back(std::move(finding));
}

template <class Real>
void compute_tendon_bow(const Inputs<Real>& in, const Real& force, const Real& modulus, Results<Real>& out) {
  const std::optional<Real> length = find_positive(in, "length"), eccentricity = in.find("eccentricity");
  const std::optional<Real> second_moment = find_positive(in, "second-moment");
  if (!length || !eccentricity || !second_moment) return;
  const Real bow = tendon_bow_mm(force, *eccentricity, *length, modulus, *second_moment);
  out.set("bow_mm", bow);
  out.explain(tendon_bow_note, bow, "mm",
              {{"F", "tendon force", force, "kN"},
               {"e", "weld to neutral axis", *eccentricity, "mm"},
               {"L", "length", *length, "mm"},
               {"E", "modulus of elasticity", modulus, "MPa"},
               {"I", "second moment of area", *second_moment, "mm4"}});
}

template <class Real>
void compute_tendon(const Inputs<Real>& in, Results<Real>& out) {
  const Real heat_input = positive(in, "heat-input"), modulus = positive(in, "modulus");
  const Real force = tendon_force_kN(heat_input);
  out.set("force_kN", force);
  out.explain(tendon_force_note, force, "kN", {{"Q", "net heat input", heat_input, "kJ/mm"}});
  compute_tendon_bow(in, force, modulus, out);
  const std::optional<Real> length = find_positive(in, "length"), area = find_positive(in, "section-area");
  note_tendon_stress(force, area, out.findings);
  if (!length || !area) return;
  const Real shortening = tendon_shortening_mm(force, *length, modulus, *area);
  out.set("shortening_mm", shortening);
  out.explain(tendon_shortening_note, shortening, "mm",
              {{"F", "tendon force", force, "kN"},
               {"L", "length", *length, "mm"},
               {"E", "modulus of elasticity", modulus, "MPa"},
               {"A", "section area", *area, "mm2"}});
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  const std::string type = in.text("type");
  if (type == "fillet-angular") return compute_fillet_angular(in, out);
  if (type == "longitudinal-bow") return compute_longitudinal_bow(in, out);
  if (type == "butt-transverse") return compute_butt_transverse(in, out);
  if (type == "tendon") return compute_tendon(in, out);
  throw InputError("--type", type.empty() ? Sentence("nothing"_word) : Sentence::verbatim(printable(type)),
                   one_of_names({"fillet-angular", "longitudinal-bow", "butt-transverse", "tendon"}));
}

}  // namespace

const Quantity distortion_quantity{
    "distortion", "movement by weld shrinkage: handbook estimates, a factor of 1.5 to 2 either way",
    options,      results,
    notes,        compute<double>,
    compute<Dual>};

}  // namespace seamtakt
