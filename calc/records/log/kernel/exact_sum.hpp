#pragma once

#include <cstdint>
#include <optional>

namespace seamtakt {

__extension__ typedef __int128 Int128;

/// Values are added up as whole numbers of 1e-12 of their unit, times whole nanoseconds: no term is rounded
/// once it is on that grid, so a sum doesn't depend on the order of its terms or on how they were split among
/// threads. The greatest value a log may hold (2.5 MW) times the longest time (292 years) stays below 2^126.
inline constexpr double grid_of_one = 1e12;
/// Decimal text of up to 6 decimals is on the grid exactly, and so is the product of two such values.
inline constexpr std::int64_t grid_of_micro = 1'000'000;

namespace exact_detail {

/// The nearest whole number, for |x| < 2^51: no call, the same on every machine.
inline double nearest_whole(double x) {
  constexpr double shift = 6755399441055744.0;  // 1.5 x 2^52
  return (x + shift) - shift;
}

}  // namespace exact_detail

/// A value on the grid; |value| <= 2.5e6. Exact where it is a decimal number of up to 6 decimals, else within
/// 1e-12 or the double's own resolution.
inline std::int64_t on_grid(double value) {
  const double micro = exact_detail::nearest_whole(value * 1e6);
  if (micro / 1e6 == value) return static_cast<std::int64_t>(micro) * grid_of_micro;
  const double pico = value * grid_of_one;
  return static_cast<std::int64_t>(pico < 0 ? pico - 0.5 : pico + 0.5);
}

/// The product of two values on the grid, on the grid.
inline Int128 product_on_grid(std::int64_t a, std::int64_t b) {
  if (a % grid_of_micro == 0 && b % grid_of_micro == 0)
    return static_cast<Int128>(a / grid_of_micro) * (b / grid_of_micro);
  const Int128 product = static_cast<Int128>(a) * b;
  constexpr Int128 half = 500'000'000'000, whole = 1'000'000'000'000;
  return (product < 0 ? product - half : product + half) / whole;
}

/// sum / count as a double, rounded about once.
inline double quotient(Int128 sum, std::int64_t count) {
  const Int128 whole = sum / count;
  const auto rest = static_cast<std::int64_t>(sum - whole * count);
  return static_cast<double>(whole) + static_cast<double>(rest) / static_cast<double>(count);
}

/// What a sum of values on the grid times nanoseconds is in units times seconds.
inline double in_unit_seconds(Int128 sum) {
  return quotient(sum, 1'000'000'000) / grid_of_one;
}

/// A quantity times the time for which it held, and that time.
struct HeldSum {
  Int128 times_ns = 0;
  std::int64_t ns = 0;

  void add(std::int64_t on_grid_value, std::int64_t for_ns) {
    times_ns += static_cast<Int128>(on_grid_value) * for_ns;
    ns += for_ns;
  }
  void add(const HeldSum& other) {
    times_ns += other.times_ns;
    ns += other.ns;
  }
  /// Mean over the time for which it was logged.
  std::optional<double> mean() const {
    if (ns == 0) return std::nullopt;
    return quotient(times_ns, ns) / grid_of_one;
  }
};

}  // namespace seamtakt
