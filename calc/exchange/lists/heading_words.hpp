#pragma once

#include <span>
#include <string_view>

namespace seamtakt {

/// A name that seam lists and schedule lists of the trade have for a column, in English or German, as
/// HeadingReader compares names: lower case, umlauts written out, words separated by a blank, without the
/// unit. Common practice, no source.
struct HeadingWord {
  std::string_view name, key;
};

std::span<const HeadingWord> seam_heading_words();
std::span<const HeadingWord> schedule_heading_words();

/// The same for what a cell says of a choice: "T-Stoss" is a tee joint.
std::span<const HeadingWord> choice_words();

}  // namespace seamtakt
