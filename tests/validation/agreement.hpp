#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <iomanip>
#include <iostream>
#include <string>
#include <vector>

#include "formula/validation.hpp"

namespace seamtakt::validation {

/// Computed values against measured ones.
class Agreement {
 public:
  void add(double computed, double measured) { off_pct_.push_back(100 * (computed / measured - 1)); }

  std::size_t values() const { return off_pct_.size(); }

  double bias_pct() const {
    double sum = 0;
    for (const double off : off_pct_) sum += off;
    return sum / static_cast<double>(values());
  }

  /// Standard deviation; from 2 values.
  double scatter_pct() const {
    double sum = 0;
    for (const double off : off_pct_) sum += (off - bias_pct()) * (off - bias_pct());
    return std::sqrt(sum / static_cast<double>(values() - 1));
  }

  /// Share of the values within an accuracy to either side.
  double coverage_pct(double within_pct) const {
    std::size_t within = 0;
    for (const double off : off_pct_) within += std::abs(off) <= within_pct ? 1 : 0;
    return 100.0 * static_cast<double>(within) / static_cast<double>(values());
  }

 private:
  std::vector<double> off_pct_;
};

/// The row of reference/validation.csv says what the measurements say, to its last digit.
inline void expect_as_stated(const std::string& formula_id, const Agreement& agreement) {
  const FormulaValidation* stated = validation_of(formula_id);
  ASSERT_NE(stated, nullptr) << formula_id << " isn't in reference/validation.csv";
  std::cout << std::fixed << std::setprecision(1) << formula_id << " against " << stated->source << ": n "
            << agreement.values() << ", bias " << agreement.bias_pct() << " %, scatter "
            << agreement.scatter_pct() << " %";
  EXPECT_EQ(agreement.values(), stated->values) << formula_id;
  EXPECT_NEAR(agreement.bias_pct(), stated->bias_pct, 0.051) << formula_id;
  EXPECT_NEAR(agreement.scatter_pct(), stated->scatter_pct, 0.051) << formula_id;
  if (stated->within_pct) {
    const double coverage = agreement.coverage_pct(*stated->within_pct);
    std::cout << ", " << coverage << " % within " << *stated->within_pct << " %";
    EXPECT_NEAR(coverage, stated->coverage_pct.value(), 0.51) << formula_id;
  }
  std::cout << "\n";
}

}  // namespace seamtakt::validation
