#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/tolerance/qualification_range.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"basis", OptionKind::text, "", "standard of the procedure test (level 2, recalled)", "iso15614-1",
     "iso15614-1"},
    {"edition", OptionKind::text, "", "edition of the standard", "2017", "2004|2017"},
    {"tested-heat-input", OptionKind::number, "kJ/mm", "heat input, or arc energy, of the test", nullptr,
     nullptr},
    {"tested-thickness", OptionKind::number, "mm", "thickness of the test piece", nullptr, nullptr},
    {"tested-throat", OptionKind::number, "mm", "throat of the test fillet", nullptr, nullptr},
    {"joint", OptionKind::text, "",
     "butt, or fillet (also by its joint: tee, corner, lap); fillet where a throat is given and this left "
     "out",
     nullptr, "butt|fillet|tee|corner|lap"},
    {"runs", OptionKind::text, "", "runs of the test weld", "multi", "single|multi"},
    {"impact", OptionKind::flag, "", "impact was required and tested", nullptr, nullptr},
    {"hardness", OptionKind::flag, "", "hardness was required and tested", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"heat_input_kJ_mm", "kJ/mm", "qualified heat input"},
    {"thickness_mm", "mm", "qualified thickness"},
    {"throat_mm", "mm", "qualified throat"},
};

constexpr const FormulaNote* notes[] = {&qualified_thickness_low_note,  &qualified_thickness_high_note,
                                        &qualified_throat_low_note,     &qualified_throat_high_note,
                                        &qualified_heat_input_low_note, &qualified_heat_input_high_note};

const char* recalled_source(const QualifiedTest& test) {
  return test.edition == "2004" ? "ISO 15614-1:2004, recalled" : "ISO 15614-1:2017 level 2, recalled";
}

struct Notes {
  const FormulaNote& low;
  const FormulaNote& high;
  const char* symbol;  ///< of the tested value
  const char* meaning;
  const char* unit;
};

template <class Real>
void set_range(const Notes& noted, const RangeRule& rule, const Real& tested, Results<Real>& out) {
  const QualifiedRange<Real> range = qualified_range(rule, tested);
  out.set_list(noted.low.result, {range.low, range.high});
  if (range.low)
    out.explain(noted.low, *range.low, noted.unit,
                {{"f_low", "factor of the row", Real(rule.low_factor.value_or(0)), ""},
                 {"t_least", "least of the row", Real(rule.low_at_least.value_or(0)), "mm"},
                 {noted.symbol, noted.meaning, tested, noted.unit}});
  if (range.high)
    out.explain(noted.high, *range.high, noted.unit,
                {{"f_high", "factor of the row", Real(*rule.high_factor), ""},
                 {noted.symbol, noted.meaning, tested, noted.unit}});
}

/// Where impact properties are required of the production weld but weren't tested, 12 mm is the most.
void note_impact_limit(const QualifiedTest& test, double tested_mm, const QualifiedRange<double>& range,
                       Findings& findings) {
  constexpr double untested_impact_up_to_mm = 12;
  if (test.joint != "butt" || test.impact_tested || tested_mm <= 3 || tested_mm > untested_impact_up_to_mm ||
      !range.high || *range.high <= untested_impact_up_to_mm)
    return;
  Finding finding = remark(
      "qualification.impact-thickness", "thickness_mm",
      Sentence("qualification.impact-thickness"_key, {{"most", UnitValue{untested_impact_up_to_mm, "mm"}}}),
      recalled_source(test));
  finding.value = *range.high;
  finding.limit = untested_impact_up_to_mm;
  finding.unit = "mm";
  findings.push_back(std::move(finding));
}

template <class Real>
void compute_thickness(const QualifiedTest& test, const Real& tested, Results<Real>& out) {
  const auto rule = thickness_rule(test, value_of(tested));
  if (!rule) {
    constexpr double thickest_run_mm = 100;
    Finding finding =
        remark("qualification.no-range", "--tested-thickness",
               Sentence("qualification.no-range"_key, {{"thickness", UnitValue{thickest_run_mm, "mm"}}}),
               recalled_source(test));
    finding.severity = Severity::warn;
    finding.value = value_of(tested);
    finding.limit = thickest_run_mm;
    finding.unit = "mm";
    out.findings.push_back(std::move(finding));
    return;
  }
  set_range(
      {qualified_thickness_low_note, qualified_thickness_high_note, "t", "thickness of the test piece", "mm"},
      *rule, tested, out);
  note_impact_limit(test, value_of(tested), qualified_range(*rule, value_of(tested)), out.findings);
}

template <class Real>
QualifiedTest test_of(const Inputs<Real>& in) {
  QualifiedTest test;
  test.basis = in.text("basis");
  test.edition = in.text("edition");
  const std::string joint = in.text("joint");
  const bool fillet = joint.empty() ? in.has("tested-throat") : joint != "butt";
  test.joint = fillet ? "fillet" : "butt";
  test.runs = in.text("runs");
  test.impact_tested = in.has("impact");
  test.hardness_tested = in.has("hardness");
  if (!fillet && in.has("tested-throat"))
    throw InputError("--tested-throat", "a throat of a butt weld"_word, "--joint fillet, or no throat"_word);
  return test;
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  const std::optional<Real> heat_input = find_positive(in, "tested-heat-input");
  const std::optional<Real> thickness = find_positive(in, "tested-thickness");
  const std::optional<Real> throat = find_positive(in, "tested-throat");
  if (!heat_input && !thickness && !throat)
    throw InputError("--tested-thickness", "nothing"_word,
                     "a value, or --tested-heat-input or --tested-throat"_word);
  const QualifiedTest test = test_of(in);
  if (heat_input)
    set_range({qualified_heat_input_low_note, qualified_heat_input_high_note, "Q", "heat input of the test",
               "kJ/mm"},
              heat_input_rule(test), *heat_input, out);
  if (thickness) compute_thickness(test, *thickness, out);
  if (throat)
    set_range({qualified_throat_low_note, qualified_throat_high_note, "a", "throat of the test weld", "mm"},
              throat_rule(test), *throat, out);
  out.findings.push_back(remark("qualification.recalled", "--basis", Sentence("qualification.recalled"_key),
                                recalled_source(test)));
}

}  // namespace

const Quantity qualification_quantity{
    "qualification", "what a procedure test qualifies (ISO 15614-1 level 2, recalled)",
    options,         results,
    notes,           compute<double>,
    compute<Dual>};

}  // namespace seamtakt
