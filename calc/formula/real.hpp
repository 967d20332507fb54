#pragma once

#include <cmath>
#include <cstddef>

#include <Eigen/Core>
#include <unsupported/Eigen/AutoDiff>

namespace seamtakt {

/// As many partial derivatives as a Dual carries.
inline constexpr int dual_inputs = 24;

/// Number type that carries its partial derivatives with respect to at most 24 inputs: what turns a formula
/// into its first-order uncertainty (JCGM 100:2008, 5.1.2). The derivative vector has a fixed size, so that a
/// constant (`Dual(5.0)`) carries zeros: with a vector of run-time size it would be empty, and Eigen can't
/// add an empty vector to an expression. Two habits keep formulas right for it: name every intermediate value
/// `Real`, never `auto` (Eigen's operators return expressions that refer to their operands), and write
/// `larger<Real>(a, b)` where a or b is an expression.
using Dual = Eigen::AutoDiffScalar<Eigen::Matrix<double, dual_inputs, 1>>;

/// The input number `index` (0..23): its derivative with respect to itself is 1.
inline Dual seeded(double value, std::size_t index) {
  return Dual(value, dual_inputs, static_cast<int>(index));
}

inline double value_of(double x) {
  return x;
}
inline double value_of(const Dual& x) {
  return x.value();
}

/// Branch that both number types understand: both sides are computed, one is taken.
template <class Real>
Real select(bool condition, const Real& if_true, const Real& if_false) {
  return condition ? if_true : if_false;
}

/// The larger; where equal, the first (so that derivatives come from one branch only).
template <class Real>
Real larger(const Real& a, const Real& b) {
  return select<Real>(value_of(a) >= value_of(b), a, b);
}

template <class Real>
Real smaller(const Real& a, const Real& b) {
  return select<Real>(value_of(a) <= value_of(b), a, b);
}

/// Arc tangent (rad) for both number types; Eigen's automatic differentiation has none.
inline double arc_tangent(double x) {
  return std::atan(x);
}
inline Dual arc_tangent(const Dual& x) {
  return Dual(std::atan(x.value()), x.derivatives() / (1.0 + x.value() * x.value()));
}

}  // namespace seamtakt
