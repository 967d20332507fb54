#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <functional>
#include <optional>

namespace seamtakt {

/// Residuals of a model and their derivatives at given parameters, for the rows asked for.
/// residual: n; jacobian: n x parameters.
using FitModel = std::function<void(const Eigen::VectorXd& parameters, Eigen::VectorXd& residual,
                                    Eigen::MatrixXd& jacobian)>;

struct RobustFit {
  Eigen::VectorXd parameters, low_95, high_95;
  double scale = 0;  ///< robust standard deviation of the residuals
  std::size_t rows = 0;
  std::size_t rejected = 0;  ///< rows that count for nothing
};

/// Least squares that are robust against a few outliers: iteratively reweighted Gauss-Newton, first with
/// Huber's weights (k = 1.345), then with Tukey's biweight (c = 4.685), scale from the median absolute
/// residual. Intervals: Student's t on the asymptotic covariance of M-estimates. Source: huber-1981, 6.3
/// and 7.6 (recalled); tuning constants for 95 % efficiency at the normal distribution. Empty where there are
/// no more rows than parameters, the parameters can't be separated, or it doesn't converge.
std::optional<RobustFit> robust_fit(const FitModel& model, Eigen::VectorXd start);

}  // namespace seamtakt
