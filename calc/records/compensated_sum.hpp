#pragma once

#include <cmath>

namespace seamtakt {

/// Sum that carries along what rounding lost (Neumaier's form of Kahan's summation): its error doesn't grow
/// with the number of terms. Terms are added in the order of the log, so that the result is the same on every
/// run.
class CompensatedSum {
 public:
  void add(double term) {
    const double total = sum_ + term;
    lost_ += std::fabs(sum_) >= std::fabs(term) ? (sum_ - total) + term : (term - total) + sum_;
    sum_ = total;
  }
  double value() const { return sum_ + lost_; }

 private:
  double sum_ = 0, lost_ = 0;
};

}  // namespace seamtakt
