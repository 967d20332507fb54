#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// Chart of individual values and moving ranges of two.
///   centre = mean of x;  sigma = mean moving range / d2;  limits = centre -+ 3 sigma;  upper range limit =
///   D4 * mean moving range. d2 = 1.128, D4 = 3.267 for two values.
/// Source: iso-7870-2 (recalled).
struct ProcessChart {
  double centre = 0, sigma = 0;
  double lower = 0, upper = 0;
  double mean_range = 0, range_upper = 0;
};

/// Fewer than two values give no chart.
std::optional<ProcessChart> process_chart(const std::vector<double>& values);

/// Patterns that a process in control rarely shows.
/// Source: sqc-handbook-1956: one value beyond 3 sigma; two of three in a row beyond 2 sigma
/// on one side; four of five beyond 1 sigma on one side; eight in a row on one side of the centre.
enum class RunsRule { beyond_3_sigma, two_of_three, four_of_five, eight_in_a_row };
Word name_of(RunsRule rule);

struct RunsSignal {
  RunsRule rule;
  std::size_t at;  ///< index of the value that completes the pattern
};

/// Every value that completes a pattern, by value, then by rule. A pattern that continues signals again at
/// each value.
std::vector<RunsSignal> runs_signals(const std::vector<double>& values, const ProcessChart& chart);

/// Performance (overall standard deviation) and capability (within, from moving ranges) of a characteristic
/// against its limits; an index is empty where its limit is open or nothing scatters.
///   Pp = (U - L)/(6 s), Ppk = min(U - m, m - L)/(3 s); Cp, Cpk with sigma from moving ranges.
/// Source: iso-22514-2 (recalled): indices of a normally distributed characteristic.
struct Capability {
  std::size_t values = 0;
  double mean = 0, overall_sd = 0, within_sd = 0;
  std::optional<double> Pp, Ppk, Cp, Cpk;
  /// 95 % lower bound of Ppk: Ppk - 1.645 * sqrt(1/(9n) + Ppk^2/(2(n - 1))) (bissell-1990).
  std::optional<double> Ppk_low_95;
};

std::optional<Capability> capability(const std::vector<double>& values, std::optional<double> lower,
                                     std::optional<double> upper);

/// Slope of values over time by least squares, with its 95 % interval (Student's t).
struct Drift {
  std::size_t values = 0;
  double slope = 0, low_95 = 0, high_95 = 0;  ///< unit of the values per unit of time
  double p_value = 1;                         ///< two-sided, that the slope is 0
  bool is_certain() const { return low_95 > 0 || high_95 < 0; }
};

/// Fewer than three values, or all at one time: none.
std::optional<Drift> drift(const std::vector<double>& times, const std::vector<double>& values);

/// Which of several hypotheses, tested at once, are refused so that the expected share of false ones among
/// them is at most `rate` (Benjamini and Hochberg's step-up rule; benjamini-hochberg-1995). In the
/// order of the p-values given.
std::vector<bool> certain_at_family_rate(const std::vector<double>& p_values, double rate);

/// Probability of a |t| at least as large (Student's t). degrees_of_freedom >= 1; relative error below 1e-9
/// while the result is above 1e-12. Source: abramowitz-stegun, 26.7.1 and 26.7.3, by the angle
/// atan(t/sqrt(n)).
double student_t_two_sided(double t, std::size_t degrees_of_freedom);

/// Two-sided 95 % quantile of Student's t: 12.706 for 1 degree of freedom, 1.960 for many. degrees_of_freedom
/// >= 1.
double student_t_95(std::size_t degrees_of_freedom);

}  // namespace seamtakt
