#include "base/text/spelling_suggestion.hpp"
#include "base/text/ascii.hpp"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace seamtakt {

namespace {

/// Keys and names are shorter; a hostile key of many kilobytes isn't worth a quadratic comparison.
constexpr std::size_t longest_word = 128;

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = a[i - 1] == b[j - 1];
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1)});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    std::swap(before, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::string_view spelling_suggestion(std::string_view word, std::span<const std::string_view> known) {
  if (word.size() > longest_word) return {};
  const std::string wanted = lower_case(word);
  std::string_view best;
  std::size_t least = 0;
  for (std::string_view candidate : known) {
    const std::size_t longer = std::max(word.size(), candidate.size());
    const std::size_t gap = longer - std::min(word.size(), candidate.size());
    const std::size_t allowed = std::max<std::size_t>(longer / 3, 1);
    if (candidate.size() > longest_word || gap > allowed || longer < 2) continue;
    const std::size_t distance = edit_distance(wanted, lower_case(candidate));
    if (distance > allowed || (!best.empty() && distance >= least)) continue;
    best = candidate;
    least = distance;
  }
  return best;
}

}  // namespace seamtakt
