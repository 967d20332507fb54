#include "records/actual/arc_match.hpp"

#include <algorithm>
#include <cmath>

namespace seamtakt {

namespace {

constexpr std::size_t most_pairs = 4'000'000;
constexpr double left_out_ratio = 2;
constexpr double least_time_s = 1e-3;

double cost_of(double time_s, double planned_s) {
  return std::fabs(std::log(std::max(time_s, least_time_s) / std::max(planned_s, least_time_s)));
}

}  // namespace

std::vector<std::size_t> rising_positions(const std::vector<std::optional<std::size_t>>& numbers) {
  std::vector<std::size_t> tails;  // tails[k]: where the smallest end of a rising row of k + 1 is
  std::vector<std::optional<std::size_t>> before(numbers.size());
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    if (!numbers[i]) continue;
    const auto at =
        std::lower_bound(tails.begin(), tails.end(), *numbers[i],
                         [&](std::size_t tail, std::size_t number) { return *numbers[tail] < number; });
    if (at != tails.begin()) before[i] = *(at - 1);
    if (at == tails.end())
      tails.push_back(i);
    else
      *at = i;
  }
  std::vector<std::size_t> positions;
  if (tails.empty()) return positions;
  for (std::optional<std::size_t> i = tails.back(); i; i = before[*i]) positions.push_back(*i);
  std::reverse(positions.begin(), positions.end());
  return positions;
}

std::vector<std::optional<std::size_t>> aligned_by_time(const std::vector<double>& times_s,
                                                        const std::vector<double>& planned_s) {
  const std::size_t n = times_s.size(), m = planned_s.size();
  if (m > 0 && n > most_pairs / m) return {};
  const double left_out = std::log(left_out_ratio);
  // least[i][j]: cost of the first i arcs and the first j planned ones.
  const std::size_t width = m + 1;
  std::vector<double> least((n + 1) * width);
  for (std::size_t i = 0; i <= n; ++i)
    for (std::size_t j = 0; j <= m; ++j) {
      double& cost = least[i * width + j];
      if (i == 0 || j == 0) {
        cost = left_out * static_cast<double>(i + j);
        continue;
      }
      const double matched = least[(i - 1) * width + j - 1] + cost_of(times_s[i - 1], planned_s[j - 1]);
      cost = std::min({matched, least[(i - 1) * width + j] + left_out, least[i * width + j - 1] + left_out});
    }
  std::vector<std::optional<std::size_t>> planned_of(n);
  for (std::size_t i = n, j = m; i > 0 && j > 0;) {
    const double cost = least[i * width + j];
    if (cost == least[(i - 1) * width + j - 1] + cost_of(times_s[i - 1], planned_s[j - 1])) {
      planned_of[--i] = --j;
    } else if (cost == least[(i - 1) * width + j] + left_out) {
      --i;
    } else {
      --j;
    }
  }
  return planned_of;
}

}  // namespace seamtakt
