#pragma once

#include <algorithm>
#include <cstdlib>

namespace seamtakt::test {

/// Torches of the cells for the outside solver: seams lie along x in rows 180 mm apart, and two torches keep
/// 300 mm, so that those of neighbouring rows keep 240 mm along x (180, 240, 300) and delays are whole tenths
/// of a second. Travel is 10 mm/s: a millimetre each tenth.
inline constexpr long oracle_row_mm = 180, oracle_torch_distance_mm = 300;

/// From x to x, in the row at y.
struct OracleLine {
  long from_mm, to_mm, y_mm;

  long tenths() const { return std::labs(to_mm - from_mm); }
  long at(long tenth) const { return from_mm < to_mm ? from_mm + tenth : from_mm - tenth; }
};

/// When arc a may begin, counted from the beginning of arc b (tenths of a second): at most `late_by` after it
/// or at least `early_by`. Whatever the delay, where they never come too near.
struct TooNear {
  bool never = true;
  long late_by = 100000, early_by = -100000;
};

inline bool come_too_near(const OracleLine& a, const OracleLine& b, long delay) {
  const long first = std::max(0L, delay), last = std::min(b.tenths(), a.tenths() + delay);
  for (long tenth = first; tenth <= last && first < last; ++tenth) {
    const long x = a.at(tenth - delay) - b.at(tenth), y = a.y_mm - b.y_mm;
    if (x * x + y * y < oracle_torch_distance_mm * oracle_torch_distance_mm) return true;
  }
  return false;
}

/// By trying every delay. The delays that are too near are without a gap, because torches go straight and
/// evenly.
inline TooNear too_near(const OracleLine& a, const OracleLine& b) {
  TooNear found;
  for (long delay = -a.tenths(); delay <= b.tenths(); ++delay) {
    if (!come_too_near(a, b, delay)) continue;
    if (found.never) found.late_by = delay - 1;
    found.early_by = delay + 1;
    found.never = false;
  }
  return found;
}

}  // namespace seamtakt::test
