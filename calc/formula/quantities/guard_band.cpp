#include "formula/uncertainty/guard_band.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"value", OptionKind::number, "", "measured value", nullptr, nullptr},
    {"u", OptionKind::number, "", "its standard uncertainty, in the value's unit", nullptr, nullptr},
    {"lower", OptionKind::number, "", "lower tolerance limit", nullptr, nullptr},
    {"upper", OptionKind::number, "", "upper tolerance limit", nullptr, nullptr},
};

constexpr ResultSpec results[] = {
    {"acceptance", "", "acceptance interval"},
    {"verdict", "", "verdict"},
    {"probability_of_conformity", "", "probability of conformity"},
};

constexpr const FormulaNote* notes[] = {&acceptance_lower_note, &acceptance_upper_note, &conformity_note};

constexpr const char* rule_source = "ILAC-G8:09/2019, 4.2.2: guard band w = U, k = 2";

template <class Real>
Limits<Real> limits_of(const Inputs<Real>& in) {
  const Limits<Real> limits{in.find("lower"), in.find("upper")};
  if (!limits.lower && !limits.upper)
    throw InputError("--upper", "nothing"_word, "a value, or --lower, or both"_word);
  if (limits.lower && limits.upper && value_of(*limits.lower) > value_of(*limits.upper))
    throw InputError(
        "--lower", number_text(value_of(*limits.lower)),
        Sentence("guard-band.not-above-upper"_key, {{"upper", exact_value(value_of(*limits.upper))}}));
  return limits;
}

template <class Real>
Limits<double> values_of(const Limits<Real>& limits) {
  Limits<double> values;
  if (limits.lower) values.lower = value_of(*limits.lower);
  if (limits.upper) values.upper = value_of(*limits.upper);
  return values;
}

template <class Real>
void set_acceptance(const Real& u, const Limits<Real>& tolerance, Results<Real>& out) {
  const Limits<Real> acceptance = acceptance_interval(u, tolerance);
  out.set_list("acceptance", {acceptance.lower, acceptance.upper});
  if (acceptance.lower)
    out.explain(
        acceptance_lower_note, *acceptance.lower, "",
        {{"lower", "lower tolerance limit", *tolerance.lower, ""}, {"u", "standard uncertainty", u, ""}});
  if (acceptance.upper)
    out.explain(
        acceptance_upper_note, *acceptance.upper, "",
        {{"upper", "upper tolerance limit", *tolerance.upper, ""}, {"u", "standard uncertainty", u, ""}});
  if (acceptance.lower && acceptance.upper && value_of(*acceptance.lower) > value_of(*acceptance.upper)) {
    Finding finding = remark("guard-band.empty", "acceptance", Sentence("guard-band.empty"_key), rule_source);
    finding.severity = Severity::warn;
    finding.value = value_of(u);
    finding.limit = (value_of(*tolerance.upper) - value_of(*tolerance.lower)) / (2 * coverage_factor);
    out.findings.push_back(std::move(finding));
  }
}

void judge(double value, double u, const Limits<double>& tolerance, GuardDecision decision,
           Findings& findings) {
  if (decision == GuardDecision::pass) return;
  const Limits<double> acceptance = acceptance_interval(u, tolerance);
  const bool failed = decision == GuardDecision::fail;
  const Limits<double>& crossed = failed ? tolerance : acceptance;
  const bool low = crossed.lower && value < *crossed.lower;
  Finding finding = remark(failed ? "guard-band.reject" : "guard-band.inside", "--value",
                           Sentence(failed ? "guard-band.reject"_key : "guard-band.inside"_key), rule_source);
  finding.severity = failed ? Severity::fail : Severity::warn;
  finding.value = value;
  finding.limit = low ? *crossed.lower : *crossed.upper;
  findings.push_back(std::move(finding));
}

template <class Real>
void set_probability(const Real& value, const Real& u, const Limits<Real>& tolerance, GuardDecision decision,
                     Results<Real>& out) {
  // Without uncertainty the value is inside or it isn't.
  const bool certain = value_of(u) == 0;
  const Real probability = certain ? Real(decision == GuardDecision::fail ? 0.0 : 1.0)
                                   : probability_of_conformity(value, u, tolerance);
  out.set("probability_of_conformity", probability);
  out.explain(conformity_note, probability, "",
              {{"y", "measured value", value, ""}, {"u", "standard uncertainty", u, ""}});
  if (!out.keep_explanations) return;
  std::vector<SymbolValue>& inputs = out.explanations.back().inputs;
  if (tolerance.lower) inputs.push_back({"lower", "lower tolerance limit", value_of(*tolerance.lower), ""});
  if (tolerance.upper) inputs.push_back({"upper", "upper tolerance limit", value_of(*tolerance.upper), ""});
}

template <class Real>
void compute(const Inputs<Real>& in, Results<Real>& out) {
  const Limits<Real> tolerance = limits_of(in);
  const std::optional<Real> value = in.find("value");
  const Real u = not_negative(in, "u");
  set_acceptance(u, tolerance, out);
  if (!value) return;
  const Limits<double> limits = values_of(tolerance);
  const GuardDecision decision = decision_with_guard_band(value_of(*value), value_of(u), limits);
  out.set_text("verdict", to_string(decision));
  set_probability(*value, u, tolerance, decision, out);
  judge(value_of(*value), value_of(u), limits, decision, out.findings);
}

}  // namespace

const Quantity guard_band_quantity{
    "guard-band", "decision on a measured value with its uncertainty (ILAC-G8)",
    options,      results,
    notes,        compute<double>,
    compute<Dual>};

}  // namespace seamtakt
