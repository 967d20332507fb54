#include <algorithm>
#include <cmath>

#include "base/units/units.hpp"
#include "formula/wire/melting.hpp"
#include "plan/wire_extension.hpp"
#include "records/learn/learn_parts.hpp"
#include "records/statistics/process_chart.hpp"

namespace seamtakt {

namespace {

/// Below this ratio of the greatest to the least extension times current the two terms of the law can't be
/// separated.
constexpr double least_spread = 1.3;
/// Nor where an interval is wider than this share of its coefficient, on either side.
constexpr double widest_share = 0.25;

Examples usable(const Examples& examples) {
  Examples kept;
  for (const Example& example : examples) {
    const SteadyMeans& steady = example.record->steady;
    const bool logged = steady.current_A.value_or(0) > 0 && steady.wire_feed_speed_m_min.value_or(0) > 0;
    if (logged && wire_extension_mm(*example.schedule) > 0 &&
        example.schedule->waveform != "waveform-controlled")
      kept.push_back(example);
  }
  return kept;
}

double spread(const Examples& examples) {
  double least = HUGE_VAL, most = 0;
  for (const Example& example : examples) {
    const double product = wire_extension_mm(*example.schedule) * *example.record->steady.current_A;
    least = std::min(least, product);
    most = std::max(most, product);
  }
  return most / least;
}

/// ln of the logged current over that of the law; parameters are factors of the wire's coefficients.
double residual_of(const Example& example, const Wire& wire, double alpha_factor, double beta_factor,
                   double& by_alpha, double& by_beta) {
  const double alpha = wire.alpha_mm_s_A * alpha_factor, beta = wire.beta_per_s_A2 * beta_factor;
  const double extension = wire_extension_mm(*example.schedule);
  const double feed = feed_mm_s_from_m_min(*example.record->steady.wire_feed_speed_m_min);
  const double current = melting_current_A(feed, extension, alpha, beta);
  // alpha I + beta l I^2 = W: dI/dalpha = -I/(alpha + 2 beta l I), dI/dbeta = -l I^2/(alpha + 2 beta l I).
  const double slope = alpha + 2 * beta * extension * current;
  by_alpha = wire.alpha_mm_s_A / slope;
  by_beta = wire.beta_per_s_A2 * extension * current / slope;
  return std::log(*example.record->steady.current_A / current);
}

LearnedParameter parameter_of(const std::string& name, const char* unit, double old_value,
                              const CheckedFit& checked, Eigen::Index index) {
  LearnedParameter parameter;
  parameter.name = name;
  parameter.unit = unit;
  parameter.old_value = old_value;
  parameter.new_value = old_value * checked.fit.parameters[index];
  parameter.low_95 = old_value * checked.fit.low_95[index];
  parameter.high_95 = old_value * checked.fit.high_95[index];
  parameter.leave_one_out_low = old_value * checked.left_out_low[index];
  parameter.leave_one_out_high = old_value * checked.left_out_high[index];
  parameter.records = checked.fit.rows;
  parameter.outliers = checked.fit.rejected;
  parameter.prediction_sd_pct = 100 * checked.prediction_sd;
  parameter.proposed = old_value < parameter.low_95 || old_value > parameter.high_95;
  return parameter;
}

std::optional<CheckedFit> fit_both(const Examples& examples, const Wire& wire) {
  if (wire.alpha_mm_s_A <= 0 || wire.beta_per_s_A2 <= 0 || spread(examples) < least_spread)
    return std::nullopt;
  const ExampleResidual residual = [&wire](const Example& example, const Eigen::VectorXd& factors,
                                           Eigen::Ref<Eigen::VectorXd> slopes) {
    return residual_of(example, wire, factors[0], factors[1], slopes[0], slopes[1]);
  };
  auto checked = checked_fit(examples, residual, Eigen::VectorXd::Ones(2));
  if (!checked) return std::nullopt;
  for (Eigen::Index i = 0; i < 2; ++i) {
    const double value = checked->fit.parameters[i];
    if (!(value > 0) || checked->fit.high_95[i] - value > widest_share * value) return std::nullopt;
  }
  return checked;
}

std::optional<CheckedFit> fit_factor(const Examples& examples, const Wire& wire) {
  const ExampleResidual residual = [&wire](const Example& example, const Eigen::VectorXd& factor,
                                           Eigen::Ref<Eigen::VectorXd> slopes) {
    double by_alpha = 0, by_beta = 0;
    const double off = residual_of(example, wire, factor[0], factor[0], by_alpha, by_beta);
    slopes[0] = by_alpha + by_beta;
    return off;
  };
  return checked_fit(examples, residual, Eigen::VectorXd::Ones(1));
}

/// The 95 % half-width (%) of the currents that a refitted law tells: of those left out of the fit, by
/// Student's t.
double half_width_pct(const CheckedFit& checked, std::size_t coefficients) {
  const std::size_t rows = checked.fit.rows - checked.fit.rejected;
  const std::size_t left = rows > coefficients ? rows - coefficients : 1;
  return std::min(100.0, 100 * student_t_95(left) * checked.prediction_sd);
}

/// The refitted law's uncertainty goes with its coefficients.
void propose_half_width(double half_width_pct, const std::string& place, std::size_t records, Wire& proposal,
                        Learned& learned) {
  // A fit without any scatter says nothing of it.
  if (!(half_width_pct > 0)) return;
  proposal.U_melting_pct = half_width_pct;
  learned.findings.push_back(
      {"learn.melting.half-width", Severity::note, place, half_width_pct, std::nullopt, "%",
       Sentence("learn.melting.half-width"_key,
                {{"half_width", UnitValue{half_width_pct, "%", 3}}, {"records", records}}),
       learn_source});
}

}  // namespace

void learn_melting(const Examples& examples, const Wire& wire, Learned& learned) {
  const std::string place = "wires/" + wire.id;
  const Examples rows = usable(examples);
  if (rows.empty() || (wire.alpha_mm_s_A <= 0 && wire.beta_per_s_A2 <= 0)) return;
  if (rows.size() < least_records) return note_too_few(place, rows.size(), learned);
  auto checked = fit_both(rows, wire);
  const bool both = checked.has_value();
  if (!both) checked = fit_factor(rows, wire);
  if (!checked) return;
  const auto alpha = parameter_of(place + "/alpha_mm_s_A", "mm/(s A)", wire.alpha_mm_s_A, *checked, 0);
  const auto beta =
      parameter_of(place + "/beta_per_s_A2", "1/(s A2)", wire.beta_per_s_A2, *checked, both ? 1 : 0);
  if (!both)
    learned.findings.push_back(
        {"learn.melting.factor", Severity::note, place, checked->fit.parameters[0], std::nullopt, "",
         "The records' currents are too much alike to tell the two melting coefficients apart: "
         "one factor is fitted to both."_word,
         learn_source});
  if (wire.alpha_mm_s_A > 0) learned.parameters.push_back(alpha);
  if (wire.beta_per_s_A2 > 0) learned.parameters.push_back(beta);
  // The two belong together: neither is proposed without the other.
  if (!alpha.proposed && !beta.proposed) return;
  Wire& proposal = *find_by_id(learned.proposal.wires, wire.id);
  proposal.alpha_mm_s_A = alpha.new_value;
  proposal.beta_per_s_A2 = beta.new_value;
  propose_half_width(half_width_pct(*checked, both ? 2 : 1), place, checked->fit.rows, proposal, learned);
  for (LearnedParameter& parameter : learned.parameters)
    if (parameter.name.rfind(place + "/", 0) == 0) parameter.proposed = true;
}

}  // namespace seamtakt
