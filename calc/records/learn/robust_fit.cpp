#include "records/learn/robust_fit.hpp"

#include <Eigen/Cholesky>
#include <Eigen/QR>
#include <algorithm>
#include <cmath>
#include <vector>

#include "records/statistics/process_chart.hpp"

namespace seamtakt {

namespace {

constexpr double huber_k = 1.345, tukey_c = 4.685;
constexpr double mad_to_sd = 1.4826;  // of a normal distribution
constexpr int huber_rounds = 20, tukey_rounds = 60;

double median_magnitude(const Eigen::VectorXd& residual) {
  std::vector<double> sizes(static_cast<std::size_t>(residual.size()));
  for (Eigen::Index i = 0; i < residual.size(); ++i)
    sizes[static_cast<std::size_t>(i)] = std::fabs(residual[i]);
  const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
  std::nth_element(sizes.begin(), middle, sizes.end());
  return *middle;
}

double huber_weight(double u) {
  return std::fabs(u) <= huber_k ? 1 : huber_k / std::fabs(u);
}

double tukey_weight(double u) {
  if (std::fabs(u) >= tukey_c) return 0;
  const double part = 1 - u * u / (tukey_c * tukey_c);
  return part * part;
}

/// Derivative of psi(u) = u * weight(u).
double tukey_slope(double u) {
  if (std::fabs(u) >= tukey_c) return 0;
  const double q = u * u / (tukey_c * tukey_c);
  return (1 - q) * (1 - 5 * q);
}

struct State {
  Eigen::VectorXd parameters, residual;
  Eigen::MatrixXd jacobian;
  double scale = 0;
};

/// One weighted Gauss-Newton step; its size relative to the parameters, or -1 where they can't be separated.
template <class Weight>
double step(const FitModel& model, State& state, const Weight& weight) {
  model(state.parameters, state.residual, state.jacobian);
  const double least = 1e-12 * (1 + state.residual.cwiseAbs().maxCoeff());
  state.scale = std::max(mad_to_sd * median_magnitude(state.residual), least);
  Eigen::VectorXd roots(state.residual.size());
  for (Eigen::Index i = 0; i < roots.size(); ++i)
    roots[i] = std::sqrt(weight(state.residual[i] / state.scale));
  const Eigen::MatrixXd weighted = roots.asDiagonal() * state.jacobian;
  Eigen::ColPivHouseholderQR<Eigen::MatrixXd> decomposed(weighted);
  decomposed.setThreshold(1e-9);
  if (decomposed.rank() < state.parameters.size()) return -1;
  const Eigen::VectorXd change = decomposed.solve(-(roots.asDiagonal() * state.residual));
  state.parameters += change;
  return change.norm() / (1e-300 + state.parameters.norm());
}

template <class Weight>
bool settle(const FitModel& model, State& state, const Weight& weight, int rounds) {
  for (int round = 0; round < rounds; ++round) {
    const double size = step(model, state, weight);
    if (size < 0 || !state.parameters.allFinite()) return false;
    if (size < 1e-10) return true;
  }
  return true;
}

}  // namespace

std::optional<RobustFit> robust_fit(const FitModel& model, Eigen::VectorXd start) {
  State state;
  state.parameters = std::move(start);
  model(state.parameters, state.residual, state.jacobian);
  const Eigen::Index n = state.residual.size(), p = state.parameters.size();
  if (n <= p || !state.residual.allFinite()) return std::nullopt;
  if (!settle(model, state, huber_weight, huber_rounds) || !settle(model, state, tukey_weight, tukey_rounds))
    return std::nullopt;
  model(state.parameters, state.residual, state.jacobian);
  if (!state.residual.allFinite()) return std::nullopt;
  RobustFit fit;
  double psi_squares = 0, slopes = 0;
  for (Eigen::Index i = 0; i < n; ++i) {
    const double u = state.residual[i] / state.scale, weight = tukey_weight(u);
    psi_squares += u * weight * u * weight;
    slopes += tukey_slope(u);
    fit.rejected += weight == 0 ? 1 : 0;
  }
  if (!(slopes > 0)) return std::nullopt;
  const double mean_slope = slopes / static_cast<double>(n);
  const double variance =
      state.scale * state.scale * psi_squares / static_cast<double>(n - p) / (mean_slope * mean_slope);
  const Eigen::MatrixXd inverse =
      (state.jacobian.transpose() * state.jacobian).ldlt().solve(Eigen::MatrixXd::Identity(p, p));
  const double t = student_t_95(static_cast<std::size_t>(n - p));
  const Eigen::VectorXd half = t * (variance * inverse.diagonal().cwiseMax(0)).cwiseSqrt();
  if (!half.allFinite()) return std::nullopt;
  fit.parameters = state.parameters;
  fit.low_95 = state.parameters - half;
  fit.high_95 = state.parameters + half;
  fit.scale = state.scale;
  fit.rows = static_cast<std::size_t>(n);
  return fit;
}

}  // namespace seamtakt
