#include "records/statistics/process_chart.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

namespace seamtakt {

namespace {

constexpr double d2_of_two = 1.128, D4_of_two = 3.267;

double mean_of(const std::vector<double>& values) {
  double sum = 0;
  for (const double value : values) sum += value;
  return sum / static_cast<double>(values.size());
}

double overall_deviation(const std::vector<double>& values, double mean) {
  double squares = 0;
  for (const double value : values) squares += (value - mean) * (value - mean);
  return std::sqrt(squares / static_cast<double>(values.size() - 1));
}

/// How many of the `of` values up to `at` are more than `sigmas` from the centre on the side of `side`.
int beyond(const std::vector<double>& values, const ProcessChart& chart, std::size_t at, std::size_t of,
           double sigmas, double side) {
  int count = 0;
  for (std::size_t i = at + 1 - of; i <= at; ++i)
    count += (values[i] - chart.centre) * side > sigmas * chart.sigma ? 1 : 0;
  return count;
}

struct Pattern {
  RunsRule rule;
  std::size_t of;
  int count;
  double sigmas;
};
constexpr Pattern patterns[] = {{RunsRule::beyond_3_sigma, 1, 1, 3},
                                {RunsRule::two_of_three, 3, 2, 2},
                                {RunsRule::four_of_five, 5, 4, 1},
                                {RunsRule::eight_in_a_row, 8, 8, 0}};

/// The value that completes a pattern is itself part of it.
bool completes(const Pattern& pattern, const std::vector<double>& values, const ProcessChart& chart,
               std::size_t at) {
  if (at + 1 < pattern.of) return false;
  for (const double side : {1.0, -1.0})
    if ((values[at] - chart.centre) * side > pattern.sigmas * chart.sigma &&
        beyond(values, chart, at, pattern.of, pattern.sigmas, side) >= pattern.count)
      return true;
  return false;
}

std::optional<double> index_of_limits(double mean, double sd, std::optional<double> lower,
                                      std::optional<double> upper) {
  if (sd <= 0 || !(lower || upper)) return std::nullopt;
  const double to_upper = upper ? *upper - mean : HUGE_VAL, to_lower = lower ? mean - *lower : HUGE_VAL;
  return std::min(to_upper, to_lower) / (3 * sd);
}

}  // namespace

std::optional<ProcessChart> process_chart(const std::vector<double>& values) {
  if (values.size() < 2) return std::nullopt;
  ProcessChart chart;
  chart.centre = mean_of(values);
  for (std::size_t i = 1; i < values.size(); ++i) chart.mean_range += std::fabs(values[i] - values[i - 1]);
  chart.mean_range /= static_cast<double>(values.size() - 1);
  chart.sigma = chart.mean_range / d2_of_two;
  chart.lower = chart.centre - 3 * chart.sigma;
  chart.upper = chart.centre + 3 * chart.sigma;
  chart.range_upper = D4_of_two * chart.mean_range;
  return chart;
}

Word name_of(RunsRule rule) {
  switch (rule) {
    case RunsRule::beyond_3_sigma:
      return "1 beyond 3 sigma"_word;
    case RunsRule::two_of_three:
      return "2 of 3 beyond 2 sigma"_word;
    case RunsRule::four_of_five:
      return "4 of 5 beyond 1 sigma"_word;
    case RunsRule::eight_in_a_row:
      break;
  }
  return "8 in a row on one side"_word;
}

std::vector<RunsSignal> runs_signals(const std::vector<double>& values, const ProcessChart& chart) {
  std::vector<RunsSignal> signals;
  for (std::size_t at = 0; at < values.size(); ++at)
    for (const Pattern& pattern : patterns)
      if (completes(pattern, values, chart, at)) signals.push_back({pattern.rule, at});
  return signals;
}

std::optional<Capability> capability(const std::vector<double>& values, std::optional<double> lower,
                                     std::optional<double> upper) {
  const auto chart = process_chart(values);
  if (!chart) return std::nullopt;
  Capability result;
  result.values = values.size();
  result.mean = chart->centre;
  result.overall_sd = overall_deviation(values, result.mean);
  result.within_sd = chart->sigma;
  if (lower && upper && result.overall_sd > 0) result.Pp = (*upper - *lower) / (6 * result.overall_sd);
  if (lower && upper && result.within_sd > 0) result.Cp = (*upper - *lower) / (6 * result.within_sd);
  result.Ppk = index_of_limits(result.mean, result.overall_sd, lower, upper);
  result.Cpk = index_of_limits(result.mean, result.within_sd, lower, upper);
  if (result.Ppk) {
    const auto n = static_cast<double>(values.size());
    result.Ppk_low_95 =
        *result.Ppk - 1.645 * std::sqrt(1 / (9 * n) + *result.Ppk * *result.Ppk / (2 * (n - 1)));
  }
  return result;
}

std::optional<Drift> drift(const std::vector<double>& times, const std::vector<double>& values) {
  const std::size_t count = std::min(times.size(), values.size());
  if (count < 3) return std::nullopt;
  const double mean_time = mean_of(times), mean_value = mean_of(values);
  double squares = 0, products = 0;
  for (std::size_t i = 0; i < count; ++i) {
    squares += (times[i] - mean_time) * (times[i] - mean_time);
    products += (times[i] - mean_time) * (values[i] - mean_value);
  }
  if (!(squares > 0)) return std::nullopt;
  Drift result;
  result.values = count;
  result.slope = products / squares;
  double residuals = 0;
  for (std::size_t i = 0; i < count; ++i) {
    const double off = values[i] - mean_value - result.slope * (times[i] - mean_time);
    residuals += off * off;
  }
  const double standard_error = std::sqrt(residuals / static_cast<double>(count - 2) / squares);
  const double half = student_t_95(count - 2) * standard_error;
  result.low_95 = result.slope - half;
  result.high_95 = result.slope + half;
  if (standard_error > 0) {
    result.p_value = student_t_two_sided(result.slope / standard_error, count - 2);
  } else {
    result.p_value = result.slope == 0 ? 1 : 0;
  }
  return result;
}

std::vector<bool> certain_at_family_rate(const std::vector<double>& p_values, double rate) {
  std::vector<std::size_t> order(p_values.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return p_values[a] < p_values[b]; });
  const auto count = static_cast<double>(order.size());
  std::size_t certain = 0;
  for (std::size_t k = 0; k < order.size(); ++k)
    if (p_values[order[k]] <= rate * static_cast<double>(k + 1) / count) certain = k + 1;
  std::vector<bool> is_certain(p_values.size(), false);
  for (std::size_t k = 0; k < certain; ++k) is_certain[order[k]] = true;
  return is_certain;
}

double student_t_two_sided(double t, std::size_t degrees_of_freedom) {
  const auto n = static_cast<double>(std::max<std::size_t>(degrees_of_freedom, 1));
  // With x = sqrt(n) tan(angle) the density is cos(angle)^(n - 1) times a constant: the tail is the integral
  // from the angle of |t| to pi/2, by Simpson's rule.
  const double from = std::atan(std::fabs(t) / std::sqrt(n)), to = std::numbers::pi / 2;
  constexpr int steps = 4000;
  const double width = (to - from) / steps;
  const auto power = [&](int i) { return std::pow(std::fmax(0, std::cos(from + width * i)), n - 1); };
  double sum = power(0) + (n == 1 ? 1 : 0);
  for (int i = 1; i < steps; ++i) sum += (i % 2 ? 4 : 2) * power(i);
  const double tail = sum * width / 3;
  // The whole, from 0 to pi/2, is sqrt(pi) gamma(n/2) / (2 gamma((n + 1)/2)).
  const double whole =
      std::sqrt(std::numbers::pi) / 2 * std::exp(std::lgamma(n / 2) - std::lgamma((n + 1) / 2));
  return std::fmin(1, tail / whole);
}

double student_t_95(std::size_t degrees_of_freedom) {
  constexpr double exact[] = {12.706204736, 4.302652730, 3.182446305, 2.776445105, 2.570581836,
                              2.446911851,  2.364624252, 2.306004135, 2.262157163, 2.228138852};
  if (degrees_of_freedom <= 10) return exact[std::max<std::size_t>(degrees_of_freedom, 1) - 1];
  // Cornish-Fisher expansion about the normal quantile (abramowitz-stegun, 26.7.5); error below 1e-5 from 11
  // on.
  const double z = 1.959963984540054, n = static_cast<double>(degrees_of_freedom);
  const double z3 = z * z * z, z5 = z3 * z * z, z7 = z5 * z * z;
  const double g1 = (z3 + z) / 4, g2 = (5 * z5 + 16 * z3 + 3 * z) / 96,
               g3 = (3 * z7 + 19 * z5 + 17 * z3 - 15 * z) / 384;
  return z + g1 / n + g2 / (n * n) + g3 / (n * n * n);
}

}  // namespace seamtakt
