#pragma once

#include <rapidcheck/gtest.h>

namespace seamtakt::properties {

/// A number between two bounds, in steps fine enough to give odd values.
inline double between(double lower, double upper) {
  return lower + (upper - lower) * *rc::gen::inRange(0, 1'000'001) / 1e6;
}

/// Equal except for rounding.
inline void assert_near(double value, double expected, double relative = 1e-12) {
  RC_ASSERT(std::abs(value - expected) <= relative * std::max(std::abs(value), std::abs(expected)));
}

}  // namespace seamtakt::properties
