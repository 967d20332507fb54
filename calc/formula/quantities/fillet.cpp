#include "formula/size/fillet.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"leg", OptionKind::number, "mm", "leg along the first plate; or --throat, or --area", nullptr, nullptr},
    {"leg-2", OptionKind::number, "mm", "leg along the second plate; equal to --leg where not given", nullptr,
     nullptr},
    {"throat", OptionKind::number, "mm", "theoretical throat of equal legs", nullptr, nullptr},
    {"area", OptionKind::number, "mm2", "whole section of a weld with equal legs", nullptr, nullptr},
    {"dihedral", OptionKind::number, "deg", "angle between the plates", "90", nullptr},
    {"gap", OptionKind::number, "mm", "root gap, deducted from the legs", "0", nullptr},
    {"convexity", OptionKind::number, "mm", "height of the face over the flat one; negative where concave",
     nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"leg_mm", "mm", "leg"},
    {"leg_2_mm", "mm", "second leg"},
    {"throat_mm", "mm", "theoretical throat"},
    {"effective_throat_mm", "mm", "effective throat"},
    {"area_mm2", "mm2", "area"},
    {"skew_factor", "", "skew factor"},
};

constexpr const FormulaNote* notes[] = {&fillet_leg_of_throat_note, &fillet_leg_of_area_note,
                                        &fillet_throat_note,        &fillet_effective_throat_note,
                                        &fillet_area_note,          &fillet_skew_note};

template <class Real>
struct Section {
  Real leg, leg_2, dihedral, height;
  Real face() const { return fillet_face_width_mm(leg, leg_2, dihedral); }
  Real segment() const { return face_segment_area_mm2(face(), height); }
};

template <class Real>
Section<Real> section_of_area(const Inputs<Real>& in, const Real& dihedral, const Real& height,
                              Results<Real>& out) {
  Real area = positive(in, "area");
  auto leg = fillet_leg_of_full_area_mm(area, height, dihedral);
  if (!leg)
    throw InputError("--convexity", number_text(value_of(height)),
                     "a face that leaves a triangle within the area"_word);
  Section<Real> section{*leg, *leg, dihedral, height};
  out.explain(fillet_leg_of_area_note, *leg, "mm",
              {{"A", "whole section", area, "mm2"},
               {"As", "segment of the face", section.segment(), "mm2"},
               {"psi", "dihedral", dihedral, "deg"}});
  return section;
}

template <class Real>
std::optional<Section<Real>> given_section(const Inputs<Real>& in, const Real& dihedral, Results<Real>& out) {
  require_only_one(in, {"leg", "throat", "area"});
  require_only_one(in, {"leg-2", "throat", "area"});
  Real height = in.find("convexity").value_or(Real(0.0));
  if (in.has("area")) return section_of_area(in, dihedral, height, out);
  if (auto throat = find_positive(in, "throat")) {
    Real leg = fillet_leg_of_throat_mm(*throat, dihedral);
    out.explain(fillet_leg_of_throat_note, leg, "mm",
                {{"a", "throat", *throat, "mm"}, {"psi", "dihedral", dihedral, "deg"}});
    return Section<Real>{leg, leg, dihedral, height};
  }
  auto leg_2 = find_positive(in, "leg-2");
  if (leg_2 && !in.has("leg")) in.number("leg");
  auto leg = find_positive(in, "leg");
  if (!leg) return std::nullopt;
  return Section<Real>{*leg, leg_2.value_or(*leg), dihedral, height};
}

/// Throat of the legs less the gap, less a concave face; 0 where nothing remains (judged by judge_throat).
template <class Real>
Real effective_throat(const Section<Real>& section, const Real& gap) {
  Real leg = section.leg - gap, leg_2 = section.leg_2 - gap;
  if (value_of(leg) <= 0 || value_of(leg_2) <= 0) return Real(0.0);
  Real concavity = smaller<Real>(section.height, Real(0.0));
  Real throat = fillet_throat_mm(leg, leg_2, section.dihedral) + concavity;
  return larger<Real>(throat, Real(0.0));
}

constexpr ValidRange dihedral_range{"fillet.dihedral.range",
                                    "The dihedral angle"_word,
                                    60,
                                    135,
                                    "deg",
                                    "aws-d1-1, skewed T-joints (recalled)"};

Finding finding_of(const char* rule, Severity severity, const char* where, double value, double limit,
                   Sentence sentence, std::string source) {
  return {rule, severity, where, value, limit, "mm", std::move(sentence), std::move(source)};
}

void judge_dihedral(double dihedral, Findings& findings) {
  add_if_any(findings, outside_range(dihedral_range, dihedral, "--dihedral"));
  // Below the first angle AWS D1.1 gives no throat, up to the second a throat less its Z loss.
  constexpr double throat_from_deg = 30, whole_throat_from_deg = 60, greatest_z_loss_mm = 10;
  if (dihedral >= whole_throat_from_deg) return;
  const UnitValue throat_from{throat_from_deg, "deg"};
  Sentence sentence =
      dihedral < throat_from_deg
          ? Sentence("fillet.dihedral.no-throat"_key, {{"angle", throat_from}})
          : Sentence("fillet.dihedral.z-loss"_key, {{"from", throat_from},
                                                    {"to", UnitValue{whole_throat_from_deg, "deg"}},
                                                    {"least", UnitValue{0, "mm"}},
                                                    {"most", UnitValue{greatest_z_loss_mm, "mm"}}});
  findings.push_back(
      remark("fillet.dihedral.z-loss", "--dihedral", std::move(sentence), "aws-d1-1, Z loss (recalled)"));
}

void judge_gap(double gap, Findings& findings) {
  if (gap > aws_gap_greatest_mm) {
    findings.push_back(
        finding_of("fillet.gap.greatest", Severity::warn, "--gap", gap, aws_gap_greatest_mm,
                   Sentence("fillet.gap.greatest"_key, {{"greatest", UnitValue{aws_gap_greatest_mm, "mm"}}}),
                   "aws-d1-1, fit-up of fillet welds (recalled)"));
  } else if (gap > 0 && gap <= aws_gap_free_mm) {
    findings.push_back(
        finding_of("fillet.gap.deducted", Severity::note, "--gap", gap, aws_gap_free_mm,
                   Sentence("fillet.gap.deducted"_key, {{"free", UnitValue{aws_gap_free_mm, "mm"}}}),
                   "aws-d1-1, fit-up of fillet welds (recalled)"));
  }
}

void judge_throat(double throat, double gap, Findings& findings) {
  if (throat > 0) return;
  findings.push_back(finding_of("fillet.throat.none", Severity::fail, "--gap", gap, 0,
                                Sentence("fillet.throat.none"_key), "en-1993-1-8, 4.5.2(1)"));
}

void judge_face(double face_width, double height, Findings& findings) {
  double limit = convexity_limit_mm(face_width);
  if (height <= limit) return;
  findings.push_back(finding_of("fillet.convexity.limit", Severity::warn, "--convexity", height, limit,
                                Sentence("fillet.convexity.limit"_key),
                                "aws-d1-1, weld profiles (recalled)"));
}

void judge_legs(double leg, double leg_2, double dihedral, Findings& findings) {
  if (!throat_is_shorter_leg(leg, leg_2, dihedral)) return;
  findings.push_back(remark("fillet.throat.shorter-leg", "--leg", Sentence("fillet.throat.shorter-leg"_key),
                            "derived, geometry"));
}

template <class Real>
void explain_section(const Section<Real>& section, const Real& gap, const Real& throat, const Real& effective,
                     const Real& area, Results<Real>& out) {
  Real concavity = -smaller<Real>(section.height, Real(0.0));
  out.explain(fillet_throat_note, throat, "mm",
              {{"z1", "leg", section.leg, "mm"},
               {"z2", "second leg", section.leg_2, "mm"},
               {"psi", "dihedral", section.dihedral, "deg"}});
  if (value_of(effective) > 0)
    out.explain(fillet_effective_throat_note, effective, "mm",
                {{"z1", "leg", section.leg, "mm"},
                 {"z2", "second leg", section.leg_2, "mm"},
                 {"psi", "dihedral", section.dihedral, "deg"},
                 {"g", "gap", gap, "mm"},
                 {"h", "concavity", concavity, "mm"}});
  out.explain(fillet_area_note, area, "mm2",
              {{"z1", "leg", section.leg, "mm"},
               {"z2", "second leg", section.leg_2, "mm"},
               {"psi", "dihedral", section.dihedral, "deg"},
               {"As", "segment of the face", section.segment(), "mm2"}});
}

struct Fillet {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    Real dihedral = in.number("dihedral"), gap = not_negative(in, "gap");
    if (!(value_of(dihedral) > 0 && value_of(dihedral) < 180))
      throw InputError("--dihedral", number_text(value_of(dihedral)),
                       Sentence("formula.angle-above-below"_key,
                                {{"above", UnitValue{0, "deg"}}, {"below", UnitValue{180, "deg"}}}));
    auto section = given_section(in, dihedral, out);
    Real skew = fillet_skew_factor(dihedral);
    judge_dihedral(value_of(dihedral), out.findings);
    judge_gap(value_of(gap), out.findings);
    out.set("skew_factor", skew);
    out.explain(fillet_skew_note, skew, "", {{"psi", "dihedral", dihedral, "deg"}});
    if (section) section_results(*section, gap, out);
  }

  template <class Real>
  static void section_results(const Section<Real>& section, const Real& gap, Results<Real>& out) {
    Real throat = fillet_throat_mm(section.leg, section.leg_2, section.dihedral);
    Real effective = effective_throat(section, gap);
    Real area = fillet_area_mm2(section.leg, section.leg_2, section.dihedral) + section.segment();
    if (value_of(area) < 0)
      throw InputError("--convexity", number_text(value_of(section.height)),
                       "a face that leaves some area"_word);
    out.set("leg_mm", section.leg);
    out.set("leg_2_mm", section.leg_2);
    out.set("throat_mm", throat);
    out.set("effective_throat_mm", effective);
    out.set("area_mm2", area);
    judge_legs(value_of(section.leg), value_of(section.leg_2), value_of(section.dihedral), out.findings);
    judge_face(value_of(section.face()), value_of(section.height), out.findings);
    judge_throat(value_of(effective), value_of(gap), out.findings);
    explain_section(section, gap, throat, effective, area, out);
  }
};

}  // namespace

const Quantity fillet_quantity{"fillet",
                               "legs, throat and area of a fillet weld",
                               options,
                               results,
                               notes,
                               &Fillet::compute<double>,
                               &Fillet::compute<Dual>};

}  // namespace seamtakt
