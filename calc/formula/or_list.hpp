#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "base/sentences/sentence.hpp"

namespace seamtakt {

/// "plate, butt or lap": what a refusal expects one of. Empty for none.
Sentence or_list(const std::vector<std::string>& names);

inline Sentence or_list(std::initializer_list<std::string_view> names) {
  return or_list(std::vector<std::string>(names.begin(), names.end()));
}

}  // namespace seamtakt
