#include "formula/input_checks.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/wire/melting.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"current", OptionKind::number, "A", "mean current; or give --wire-feed", nullptr, nullptr},
    {"wire-feed", OptionKind::number, "m/min", "wire feed speed; or give --current", nullptr, nullptr},
    {"extension", OptionKind::number, "mm", "electrode extension: contact tip distance less arc length",
     nullptr, nullptr},
    {"wire-diameter", OptionKind::number, "mm", "wire diameter, for tabulated coefficients", nullptr,
     nullptr},
    {"wire-material", OptionKind::text, "", "mild-steel or aluminium, for tabulated coefficients", nullptr,
     nullptr},
    {"alpha", OptionKind::number, "", "arc coefficient, mm/(A s)", nullptr, nullptr},
    {"beta", OptionKind::number, "", "resistance coefficient, 1/(A^2 s)", nullptr, nullptr},
    {"rms-current", OptionKind::number, "A",
     "effective current of a pulsed waveform; else the current is steady", nullptr, nullptr},
    {"arc", OptionKind::text, "", "what the arc is; the law is fitted to steady ones", "steady",
     "steady|pulsed|controlled-dip"},
};

constexpr ResultSpec results[] = {
    {"wire_feed_speed_m_min", "m/min", "wire feed speed"},
    {"current_A", "A", "current"},
    {"alpha_mm_s_A", "mm/(A s)", "alpha"},
    {"beta_per_s_A2", "1/(A^2 s)", "beta"},
};

constexpr const FormulaNote* notes[] = {&melting_rate_note,    &melting_rate_rms_note,
                                        &melting_current_note, &melting_mean_current_note,
                                        &melting_alpha_note,   &melting_beta_note};

template <class Real>
struct Coefficients {
  std::optional<Real> alpha, beta;
  bool complete() const { return alpha && beta; }
};

template <class Real>
void from_table(const Inputs<Real>& in, Coefficients<Real>& coefficients, Results<Real>& out) {
  std::string material = in.text("wire-material");
  auto reference = reference_melting_coefficients(material);
  if (!reference)
    throw InputError("--wire-material", printable(material),
                     "mild-steel or aluminium; for another wire --alpha and --beta"_word);
  auto diameter = find_positive(in, "wire-diameter");
  if (!diameter) return;
  add_if_any(out.findings, outside_range(melting_diameter_range, value_of(*diameter), "--wire-diameter"));
  if (!coefficients.alpha) {
    coefficients.alpha = scaled_alpha_mm_s_A(reference->alpha_mm_s_A, *diameter);
    out.explain(melting_alpha_note, *coefficients.alpha, "mm/(A s)",
                {{"alpha12", "alpha of the 1.2 mm wire", Real(reference->alpha_mm_s_A), "mm/(A s)"},
                 {"d", "wire diameter", *diameter, "mm"}});
  }
  if (!coefficients.beta) {
    coefficients.beta = scaled_beta_per_s_A2(reference->beta_per_s_A2, *diameter);
    out.explain(melting_beta_note, *coefficients.beta, "1/(A^2 s)",
                {{"beta12", "beta of the 1.2 mm wire", Real(reference->beta_per_s_A2), "1/(A^2 s)"},
                 {"d", "wire diameter", *diameter, "mm"}});
  }
}

template <class Real>
Coefficients<Real> coefficients_of(const Inputs<Real>& in, Results<Real>& out) {
  Coefficients<Real> coefficients{find_not_negative(in, "alpha"), find_not_negative(in, "beta")};
  if (!coefficients.complete() && in.has("wire-material")) from_table(in, coefficients, out);
  if (coefficients.alpha) out.set("alpha_mm_s_A", *coefficients.alpha);
  if (coefficients.beta) out.set("beta_per_s_A2", *coefficients.beta);
  if (coefficients.complete() && value_of(*coefficients.alpha) == 0 && value_of(*coefficients.beta) == 0)
    throw InputError("--alpha", "0, and --beta 0 too"_word, "one of the two above 0"_word);
  return coefficients;
}

template <class Real>
void feed_of_current(const Real& current, const std::optional<Real>& rms, const Real& extension,
                     const Real& alpha, const Real& beta, Results<Real>& out) {
  out.set("current_A", current);
  add_if_any(out.findings, outside_range(melting_current_range, value_of(current), "--current"));
  if (rms && value_of(*rms) < value_of(current))
    throw InputError("--rms-current", number_text(value_of(*rms)), "at least the mean current"_word);
  Real feed =
      feed_m_min_from_mm_s(rms ? wire_feed_speed_of_waveform_mm_s(current, *rms, extension, alpha, beta)
                               : wire_feed_speed_mm_s(current, extension, alpha, beta));
  out.set("wire_feed_speed_m_min", feed);
  out.explain(rms ? melting_rate_rms_note : melting_rate_note, feed, "m/min",
              {{"alpha", "arc coefficient", alpha, "mm/(A s)"},
               {"beta", "resistance coefficient", beta, "1/(A^2 s)"},
               {"l", "electrode extension", extension, "mm"},
               {"I", "current", current, "A"},
               {"Irms", "effective current", rms.value_or(current), "A"}});
}

template <class Real>
void current_of_feed(const Real& feed, const std::optional<Real>& rms, const Real& extension,
                     const Real& alpha, const Real& beta, Results<Real>& out) {
  out.set("wire_feed_speed_m_min", feed);
  Real feed_mm_s = feed_mm_s_from_m_min(feed);
  if (rms && value_of(alpha) == 0)
    throw InputError("--alpha", number_text(0), "a value above 0 where --rms-current is given"_word);
  Real current = rms ? melting_mean_current_A(feed_mm_s, *rms, extension, alpha, beta)
                     : melting_current_A(feed_mm_s, extension, alpha, beta);
  if (rms && !(value_of(current) >= 0 && value_of(current) <= value_of(*rms)))
    throw InputError(
        "--rms-current", number_text(value_of(*rms)),
        "an effective current that goes with this wire feed (mean current within 0 and the effective one)"_word);
  out.set("current_A", current);
  add_if_any(out.findings, outside_range(melting_current_range, value_of(current), "--wire-feed"));
  out.explain(rms ? melting_mean_current_note : melting_current_note, current, "A",
              {{"w", "wire feed speed", feed_mm_s, "mm/s"},
               {"alpha", "arc coefficient", alpha, "mm/(A s)"},
               {"beta", "resistance coefficient", beta, "1/(A^2 s)"},
               {"l", "electrode extension", extension, "mm"},
               {"Irms", "effective current", rms.value_or(current), "A"}});
}

/// A pulse with its effective current is within the law; a controlled dip never is.
void remark_arc(const std::string& arc, bool has_rms, Findings& findings) {
  const bool is_pulsed = arc == "pulsed" && !has_rms;
  if (!is_pulsed && arc != "controlled-dip") return;
  const double error_pct = is_pulsed ? melting_error_pulsed_pct : melting_error_controlled_dip_pct;
  findings.push_back({"melting.arc",
                      Severity::warn,
                      "--arc",
                      error_pct,
                      {},
                      "%",
                      Sentence(is_pulsed ? "melting.arc.pulsed"_key : "melting.arc.controlled-dip"_key,
                               {{"error", UnitValue{error_pct, "%", 2}}}),
                      "common practice, no source"});
}

struct MeltingRate {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    require_only_one(in, {"current", "wire-feed"});
    Coefficients<Real> coefficients = coefficients_of(in, out);
    auto current = find_not_negative(in, "current"), feed = find_positive(in, "wire-feed");
    auto extension = find_positive(in, "extension"), rms = find_not_negative(in, "rms-current");
    if (extension)
      add_if_any(out.findings, outside_range(melting_extension_range, value_of(*extension), "--extension"));
    // Without a resistance term the extension doesn't matter.
    if (!extension && coefficients.beta && value_of(*coefficients.beta) == 0) extension = Real(1.0);
    if (!coefficients.complete() || !extension) {
      if (current) out.set("current_A", *current);
      if (feed) out.set("wire_feed_speed_m_min", *feed);
      return;
    }
    remark_arc(in.text("arc"), rms.has_value(), out.findings);
    if (current) feed_of_current(*current, rms, *extension, *coefficients.alpha, *coefficients.beta, out);
    if (feed) current_of_feed(*feed, rms, *extension, *coefficients.alpha, *coefficients.beta, out);
  }
};

}  // namespace

const Quantity melting_rate_quantity{"melting-rate",
                                     "wire feed speed and current of a consumable electrode",
                                     options,
                                     results,
                                     notes,
                                     &MeltingRate::compute<double>,
                                     &MeltingRate::compute<Dual>};

}  // namespace seamtakt
