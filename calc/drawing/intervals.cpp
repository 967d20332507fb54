#include "drawing/intervals.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt::drawing {

namespace {

/// The place where `holds` changes between two places.
double border_between(double from, double to, double cut, double fine, bool at_from,
                      const std::function<bool(double)>& holds) {
  // Nearly always the border is the cut itself: then it is exact.
  if (holds(cut - fine) == at_from && holds(cut + fine) != at_from) return cut;
  while (to - from > fine) {
    const double middle = (from + to) / 2;
    (holds(middle) == at_from ? from : to) = middle;
  }
  return (from + to) / 2;
}

}  // namespace

std::vector<Stretch> stretches_where(std::vector<double> cuts, double fine,
                                     const std::function<bool(double)>& holds) {
  std::sort(cuts.begin(), cuts.end());
  std::vector<double> kept;
  for (const double cut : cuts)
    if (kept.empty() || cut - kept.back() > 4 * fine) kept.push_back(cut);
  if (kept.size() > 1 && cuts.back() != kept.back()) kept.back() = cuts.back();
  std::vector<Stretch> found;
  if (kept.size() < 2) return found;
  bool before = false;
  double begin = 0, last_middle = 0;
  for (std::size_t i = 0; i + 1 < kept.size(); ++i) {
    const double middle = (kept[i] + kept[i + 1]) / 2;
    const bool now = holds(middle);
    if (i == 0) {
      begin = kept[0];
    } else if (now != before) {
      const double border = border_between(last_middle, middle, kept[i], fine, before, holds);
      if (before) found.emplace_back(begin, border);
      begin = border;
    }
    before = now;
    last_middle = middle;
  }
  if (before) found.emplace_back(begin, kept.back());
  return found;
}

}  // namespace seamtakt::drawing
