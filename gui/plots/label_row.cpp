#include "plots/label_row.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt::desk {

namespace {

constexpr double gap_px = 4;

struct Taken {
  double from, to;
};

bool is_free(const std::vector<Taken>& taken, double from, double to) {
  return std::none_of(taken.begin(), taken.end(),
                      [&](const Taken& other) { return from < other.to && other.from < to; });
}

}  // namespace

std::vector<double> placed_labels(const std::vector<RowLabel>& labels, double row_px) {
  std::vector<double> places;
  std::vector<Taken> taken;
  for (const RowLabel& label : labels) {
    const double last = std::max(0.0, row_px - label.wide_px);
    const double before = label.at_px - label.wide_px - gap_px, behind = label.at_px + gap_px;
    // Beside its line, else at the edge of one that stands already: the nearest of those.
    std::vector<double> wanted = {label.left ? before : behind, label.left ? behind : before};
    for (const Taken& other : taken) {
      wanted.push_back(other.to + gap_px);
      wanted.push_back(other.from - label.wide_px - gap_px);
    }
    for (double& place : wanted) place = std::clamp(place, 0.0, last);
    std::stable_sort(wanted.begin() + 2, wanted.end(), [&](double a, double b) {
      return std::abs(a - label.at_px) < std::abs(b - label.at_px);
    });
    const auto found = std::find_if(wanted.begin(), wanted.end(), [&](double place) {
      return is_free(taken, place, place + label.wide_px);
    });
    const double place = found != wanted.end() ? *found : wanted.front();
    places.push_back(place);
    taken.push_back({place, place + label.wide_px});
  }
  return places;
}

}  // namespace seamtakt::desk
