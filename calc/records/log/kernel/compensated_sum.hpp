#pragma once

namespace seamtakt {

/// Sum that carries along what rounding lost (Neumaier's form of Kahan's summation): its error doesn't grow
/// with the number of terms. Terms are added in the order of the log, so that the result is the same on every
/// run.
class CompensatedSum {
 public:
  void add(double term) {
    const double total = sum_ + term;
    const double term_seen = total - sum_;
    lost_ += (sum_ - (total - term_seen)) + (term - term_seen);
    sum_ = total;
  }
  double value() const { return sum_ + lost_; }

 private:
  double sum_ = 0, lost_ = 0;
};

}  // namespace seamtakt
