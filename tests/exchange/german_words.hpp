#pragma once

#include <cctype>
#include <string_view>

#include "base/sentences/language.hpp"

namespace seamtakt {

inline const Language& german() {
  return *find_language("de");
}

/// Whether a text has words to translate: "C.3", "CET", "t8/5", "{1}: {2}" and a formula are the same in
/// every language.
inline bool has_words(std::string_view text) {
  std::size_t letters = 0;
  for (const char c : text) {
    letters = std::islower(static_cast<unsigned char>(c)) != 0 ? letters + 1 : 0;
    if (letters == 3) return true;
  }
  return false;
}

}  // namespace seamtakt
