#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/tolerance/general_tolerance.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"length", OptionKind::number, "mm", "nominal length; of an angle, its shorter leg", nullptr, nullptr},
    {"class", OptionKind::text, "", "A to D: lengths and angles, E to H: straightness", nullptr,
     "A|B|C|D|E|F|G|H"},
    {"kind", OptionKind::text, "",
     "what is measured; linear for A to D, straightness for E to H where left out", nullptr,
     "linear|angular|straightness"},
};

constexpr ResultSpec results[] = {
    {"tolerance_mm", "mm", "tolerance +-"},
    {"tolerance_deg", "deg", "tolerance +-"},
};

constexpr const FormulaNote* notes[] = {&linear_tolerance_note, &angular_tolerance_note,
                                        &angular_tolerance_mm_note, &straightness_tolerance_note};

ToleranceKind kind_asked(const std::string& kind, const std::string& tolerance_class) {
  if (kind == "linear") return ToleranceKind::linear;
  if (kind == "angular") return ToleranceKind::angular;
  if (kind == "straightness") return ToleranceKind::straightness;
  return kind_of_class(tolerance_class).value_or(ToleranceKind::linear);
}

const FormulaNote& note_of(ToleranceKind kind) {
  switch (kind) {
    case ToleranceKind::angular:
      return angular_tolerance_note;
    case ToleranceKind::straightness:
      return straightness_tolerance_note;
    default:
      return linear_tolerance_note;
  }
}

void note_no_row(ToleranceKind kind, double length_mm, Findings& findings) {
  const bool straightness = kind == ToleranceKind::straightness;
  const double from_mm = straightness ? 30 : 2;
  Finding finding =
      remark("tolerance.no-row", "--length",
             Sentence(straightness ? "tolerance.no-row.straightness"_key : "tolerance.no-row.linear"_key,
                      {{"length", UnitValue{from_mm, "mm"}}}),
             "ISO 13920:1996");
  finding.severity = Severity::warn;
  finding.value = length_mm;
  finding.limit = from_mm;
  finding.unit = "mm";
  findings.push_back(std::move(finding));
}

template <class Real>
void set_tolerance(ToleranceKind kind, const GeneralTolerance& tolerance, const Real& length,
                   Results<Real>& out) {
  if (tolerance.tolerance_mm) {
    const Real value(*tolerance.tolerance_mm);
    out.set("tolerance_mm", value);
    out.explain(note_of(kind), value, "mm", {{"L", "nominal length", length, "mm"}});
  }
  if (tolerance.tolerance_deg) {
    const Real value(*tolerance.tolerance_deg);
    out.set("tolerance_deg", value);
    out.explain(angular_tolerance_note, value, "deg", {{"L", "shorter leg", length, "mm"}});
  }
  if (tolerance.tolerance_mm_per_m) {
    const Real at_leg_end = length * (*tolerance.tolerance_mm_per_m / 1000);
    out.set("tolerance_mm", at_leg_end);
    out.explain(angular_tolerance_mm_note, at_leg_end, "mm",
                {{"t", "rounded tangent of the tolerance", Real(*tolerance.tolerance_mm_per_m), "mm/m"},
                 {"L", "shorter leg", length, "mm"}});
  }
  if (tolerance.basis == SourceBasis::recalled)
    out.findings.push_back(remark("tolerance.recalled", "--class", Sentence("formula.row-recalled"_key),
                                  "ISO 13920:1996, recalled"));
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  const Real length = positive(in, "length");
  const std::string tolerance_class = in.text("class");
  if (tolerance_class.empty()) throw InputError("--class", "nothing"_word, "one of A to H"_word);
  const ToleranceKind kind = kind_asked(in.text("kind"), tolerance_class);
  const std::optional<GeneralTolerance> tolerance =
      general_tolerance(kind, tolerance_class, value_of(length));
  if (tolerance)
    set_tolerance(kind, *tolerance, length, out);
  else
    note_no_row(kind, value_of(length), out.findings);
}

}  // namespace

const Quantity tolerance_quantity{"tolerance",  "general tolerances of welded constructions (ISO 13920)",
                                  options,      results,
                                  notes,        compute<double>,
                                  compute<Dual>};

}  // namespace seamtakt
