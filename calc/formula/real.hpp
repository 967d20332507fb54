#pragma once

#include <array>
#include <cmath>
#include <compare>
#include <cstddef>

namespace seamtakt {

/// As many partial derivatives as a Dual carries.
inline constexpr int dual_inputs = 24;

/// Number type that carries its partial derivatives with respect to at most 24 inputs: what turns a formula
/// into its first-order uncertainty (JCGM 100:2008, 5.1.2). A constant (`Dual(5.0)`) carries zeros. Its
/// operators are plain functions that real.cpp defines: with a library of expression templates, each formula
/// was compiled into types of its own, which took half of the time to compile a file. Functions are found
/// by their argument alone, so that `exp(x)` of a double never means this one.
class Dual {
 public:
  using Derivatives = std::array<double, dual_inputs>;

  Dual() = default;
  Dual(double value) : value_(value) {}
  /// Input number `index` of `count`: its derivative with respect to itself is 1.
  Dual(double value, int count, int index);

  double value() const { return value_; }
  const Derivatives& derivatives() const { return derivatives_; }

  /// A function of this number: `value` there, and its `slope`.
  Dual mapped(double value, double slope) const;

  Dual operator-() const;
  Dual& operator+=(const Dual& other);
  Dual& operator-=(const Dual& other);
  Dual& operator*=(const Dual& other);
  Dual& operator/=(const Dual& other);
  Dual& operator+=(double other);
  Dual& operator-=(double other);
  Dual& operator*=(double other);
  Dual& operator/=(double other);

  friend Dual operator+(Dual a, const Dual& b) { return a += b; }
  friend Dual operator-(Dual a, const Dual& b) { return a -= b; }
  friend Dual operator*(Dual a, const Dual& b) { return a *= b; }
  friend Dual operator/(Dual a, const Dual& b) { return a /= b; }
  friend Dual operator+(Dual a, double b) { return a += b; }
  friend Dual operator-(Dual a, double b) { return a -= b; }
  friend Dual operator*(Dual a, double b) { return a *= b; }
  friend Dual operator/(Dual a, double b) { return a /= b; }
  friend Dual operator+(double a, Dual b) { return b += a; }
  friend Dual operator-(double a, const Dual& b) { return -b += a; }
  friend Dual operator*(double a, Dual b) { return b *= a; }
  friend Dual operator/(double a, const Dual& b) { return b.divided_into(a); }

  friend bool operator==(const Dual& a, const Dual& b) { return a.value_ == b.value_; }
  friend std::partial_ordering operator<=>(const Dual& a, const Dual& b) { return a.value_ <=> b.value_; }

  friend Dual abs(const Dual& x) { return x.value_ < 0 ? -x : x; }
  friend Dual sqrt(const Dual& x) {
    const double root = std::sqrt(x.value_);
    return x.mapped(root, 0.5 / root);
  }
  friend Dual exp(const Dual& x) {
    const double power = std::exp(x.value_);
    return x.mapped(power, power);
  }
  friend Dual log(const Dual& x) { return x.mapped(std::log(x.value_), 1 / x.value_); }
  friend Dual pow(const Dual& x, double exponent) {
    return x.mapped(std::pow(x.value_, exponent), exponent * std::pow(x.value_, exponent - 1));
  }
  friend Dual sin(const Dual& x) { return x.mapped(std::sin(x.value_), std::cos(x.value_)); }
  friend Dual cos(const Dual& x) { return x.mapped(std::cos(x.value_), -std::sin(x.value_)); }
  friend Dual tan(const Dual& x) {
    const double cosine = std::cos(x.value_);
    return x.mapped(std::tan(x.value_), 1 / (cosine * cosine));
  }
  friend Dual acos(const Dual& x) {
    return x.mapped(std::acos(x.value_), -1 / std::sqrt(1 - x.value_ * x.value_));
  }
  friend Dual tanh(const Dual& x) {
    const double cosine = std::cosh(x.value_);
    return x.mapped(std::tanh(x.value_), 1 / (cosine * cosine));
  }

 private:
  Dual divided_into(double numerator) const;

  double value_ = 0;
  Derivatives derivatives_{};
};

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

/// Arc tangent (rad) for both number types.
inline double arc_tangent(double x) {
  return std::atan(x);
}
inline Dual arc_tangent(const Dual& x) {
  return x.mapped(std::atan(x.value()), 1 / (1.0 + x.value() * x.value()));
}

}  // namespace seamtakt
