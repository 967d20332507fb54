#pragma once

#include <initializer_list>
#include <span>
#include <string_view>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// "a, b and c" of names, keys or units, which stay as they are in every language.
Sentence all_of_names(std::span<const std::string_view> names);
/// "a, b or c".
Sentence one_of_names(std::span<const std::string_view> names);
inline Sentence one_of_names(std::initializer_list<std::string_view> names) {
  return one_of_names(std::span(names.begin(), names.size()));
}

}  // namespace seamtakt
