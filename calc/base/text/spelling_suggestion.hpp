#pragma once

#include <cstddef>
#include <span>
#include <string_view>

namespace seamtakt {

/// Least number of insertions, deletions, replacements and swaps of neighbours that turn `a` into `b`
/// (Damerau-Levenshtein distance, the restricted form in which no piece is edited twice). Counts bytes.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The word of `known` that a person may have meant by `word`: the least distance without regard to case, and
/// the first among equals. Empty where nothing is near, which is more than a third of the longer word's
/// letters away.
std::string_view spelling_suggestion(std::string_view word, std::span<const std::string_view> known);

}  // namespace seamtakt
