#pragma once

namespace seamtakt {

/// Factors of published formulas that hold only in inches, minutes and degrees Fahrenheit. Formulas are
/// templates over their number type, so these exact factors are here rather than in the run-time table of
/// units.
inline constexpr double mm_per_inch = 25.4;
inline constexpr double s_per_min = 60.0;

constexpr double celsius_from_fahrenheit(double fahrenheit) {
  return (fahrenheit - 32.0) / 1.8;
}

}  // namespace seamtakt
