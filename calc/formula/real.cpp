#include "formula/real.hpp"

namespace seamtakt {

Dual::Dual(double value, int, int index) : value_(value) {
  derivatives_[static_cast<std::size_t>(index)] = 1;
}

Dual Dual::mapped(double value, double slope) const {
  Dual result(value);
  for (std::size_t i = 0; i < derivatives_.size(); ++i) result.derivatives_[i] = derivatives_[i] * slope;
  return result;
}

Dual Dual::operator-() const {
  Dual result(-value_);
  for (std::size_t i = 0; i < derivatives_.size(); ++i) result.derivatives_[i] = -derivatives_[i];
  return result;
}

Dual& Dual::operator+=(const Dual& other) {
  value_ += other.value_;
  for (std::size_t i = 0; i < derivatives_.size(); ++i) derivatives_[i] += other.derivatives_[i];
  return *this;
}

Dual& Dual::operator-=(const Dual& other) {
  value_ -= other.value_;
  for (std::size_t i = 0; i < derivatives_.size(); ++i) derivatives_[i] -= other.derivatives_[i];
  return *this;
}

Dual& Dual::operator*=(const Dual& other) {
  const double value = value_, factor = other.value_;
  for (std::size_t i = 0; i < derivatives_.size(); ++i)
    derivatives_[i] = derivatives_[i] * factor + other.derivatives_[i] * value;
  value_ = value * factor;
  return *this;
}

Dual& Dual::operator/=(const Dual& other) {
  const double value = value_, divisor = other.value_, per_square = 1 / (divisor * divisor);
  for (std::size_t i = 0; i < derivatives_.size(); ++i)
    derivatives_[i] = (derivatives_[i] * divisor - other.derivatives_[i] * value) * per_square;
  value_ = value / divisor;
  return *this;
}

Dual& Dual::operator+=(double other) {
  value_ += other;
  return *this;
}

Dual& Dual::operator-=(double other) {
  value_ -= other;
  return *this;
}

Dual& Dual::operator*=(double other) {
  value_ *= other;
  for (double& derivative : derivatives_) derivative *= other;
  return *this;
}

Dual& Dual::operator/=(double other) {
  value_ /= other;
  const double share = 1 / other;
  for (double& derivative : derivatives_) derivative *= share;
  return *this;
}

Dual Dual::divided_into(double numerator) const {
  return mapped(numerator / value_, -numerator / (value_ * value_));
}

}  // namespace seamtakt
