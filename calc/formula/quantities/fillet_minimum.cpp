#include "formula/size/fillet_minimum.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"thickness", OptionKind::number, "mm", "thickness of the thinner plate", nullptr, nullptr},
    {"thickness-2", OptionKind::number, "mm", "thickness of the other plate (the same where left out)",
     nullptr, nullptr},
    {"cyclic", OptionKind::flag, "", "cyclically loaded", nullptr, nullptr},
    {"hydrogen", OptionKind::text, "", "low: gas-shielded, cored and submerged-arc welding; other: the rest",
     "low", "low|other"},
};

constexpr ResultSpec results[] = {
    {"leg_min_mm", "mm", "least leg (AWS D1.1)"},
    {"throat_min_mm", "mm", "least throat (EN 1993-1-8)"},
};

constexpr const FormulaNote* notes[] = {&fillet_leg_min_note, &fillet_throat_min_note};

/// Where the codes' own scopes begin (mm), recalled.
constexpr double aws_from_mm = 3, eurocode_from_mm = 4;

void note_scope(const FilletMinimumCase& fillet, Findings& findings) {
  const double thinner = std::min(fillet.thickness_mm, fillet.other_thickness_mm);
  if (thinner >= eurocode_from_mm) return;
  const UnitValue eurocode{eurocode_from_mm, "mm"};
  Sentence sentence = thinner < aws_from_mm
                          ? Sentence("fillet-minimum.thin-plate.both"_key,
                                     {{"eurocode", eurocode}, {"aws", UnitValue{aws_from_mm, "mm"}}})
                          : Sentence("fillet-minimum.thin-plate"_key, {{"eurocode", eurocode}});
  Finding finding = remark("fillet-minimum.thin-plate", "--thickness", std::move(sentence),
                           "EN 1993-1-8, 4.1, and AWS D1.1, 1.2, recalled");
  finding.value = thinner;
  finding.limit = eurocode_from_mm;
  finding.unit = "mm";
  findings.push_back(std::move(finding));
}

/// The inch table's rows end at 1/4 and 1/2 in, a little above the metric table's 6 and 12 mm.
void note_inch_plate(double governing_mm, Findings& findings) {
  struct InchRow {
    double above_mm, up_to_mm;
    const char *leg, *plate;
  };
  constexpr InchRow rows[] = {{6, 6.35, "1/8 in", "1/4 in"}, {12, 12.7, "3/16 in", "1/2 in"}};
  for (const InchRow& row : rows) {
    if (governing_mm <= row.above_mm || governing_mm > row.up_to_mm) continue;
    Finding finding =
        remark("fillet-minimum.inch-plate", "--thickness",
               Sentence("fillet-minimum.inch-plate"_key, {{"leg", row.leg}, {"plate", row.plate}}),
               "AWS D1.1, minimum fillet weld size");
    finding.value = governing_mm;
    finding.limit = row.up_to_mm;
    finding.unit = "mm";
    findings.push_back(std::move(finding));
  }
}

void note_leg(const FilletMinimumCase& fillet, double leg_mm, bool other_given, Findings& findings) {
  const double thinner = std::min(fillet.thickness_mm, fillet.other_thickness_mm);
  if (!fillet.low_hydrogen)
    findings.push_back(remark("fillet-minimum.single-pass", "--hydrogen",
                              Sentence(other_given ? "fillet-minimum.single-pass"_key
                                                   : "fillet-minimum.single-pass.equal-plates"_key),
                              "AWS D1.1, minimum fillet weld size"));
  if (leg_mm <= thinner) return;
  Finding finding =
      remark("fillet-minimum.exceeds-plate", "--thickness", Sentence("fillet-minimum.exceeds-plate"_key),
             "AWS D1.1, minimum fillet weld size");
  finding.value = leg_mm;
  finding.limit = thinner;
  finding.unit = "mm";
  findings.push_back(std::move(finding));
}

void note_german_annex(const FilletMinimumCase& fillet, Findings& findings) {
  const std::optional<double> throat = fillet_throat_min_german_annex_mm(fillet);
  if (!throat || *throat <= fillet_throat_min_mm) return;
  Finding finding =
      remark("fillet-minimum.german-annex", "throat_min_mm",
             Sentence("fillet-minimum.german-annex"_key, {{"throat", UnitValue{*throat, "mm", 3}}}),
             "DIN EN 1993-1-8/NA, recalled");
  finding.value = fillet_throat_min_mm;
  finding.limit = *throat;
  finding.unit = "mm";
  findings.push_back(std::move(finding));
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  out.set("throat_min_mm", Real(fillet_throat_min_mm));
  out.explain(fillet_throat_min_note, Real(fillet_throat_min_mm), "mm", {});
  const std::optional<Real> thickness = find_positive(in, "thickness");
  const std::optional<Real> other = find_positive(in, "thickness-2");
  if (!thickness) return;
  FilletMinimumCase fillet;
  fillet.thickness_mm = value_of(*thickness);
  fillet.other_thickness_mm = other ? value_of(*other) : fillet.thickness_mm;
  fillet.low_hydrogen = in.text("hydrogen") != "other";
  fillet.cyclic = in.has("cyclic");
  const double leg = fillet_leg_min_mm(fillet);
  // Where the thinner plate caps the leg, the leg moves with that plate.
  Real least_leg(leg);
  if (leg == fillet.thickness_mm)
    least_leg = *thickness;
  else if (other && leg == fillet.other_thickness_mm)
    least_leg = *other;
  out.set("leg_min_mm", least_leg);
  out.explain(
      fillet_leg_min_note, Real(leg), "mm",
      {{"T", "plate that the table goes by", Real(governing_thickness_mm(fillet)), "mm"},
       {"t_thinner", "thinner plate", Real(std::min(fillet.thickness_mm, fillet.other_thickness_mm)), "mm"}});
  note_scope(fillet, out.findings);
  note_inch_plate(governing_thickness_mm(fillet), out.findings);
  note_leg(fillet, leg, other.has_value(), out.findings);
  note_german_annex(fillet, out.findings);
}

}  // namespace

const Quantity fillet_minimum_quantity{"fillet-minimum",
                                       "least leg and throat that the codes allow a fillet",
                                       options,
                                       results,
                                       notes,
                                       compute<double>,
                                       compute<Dual>};

}  // namespace seamtakt
