#pragma once

#include <string>
#include <vector>

namespace seamtakt {

/// "PA, PB, PC": words for a message; empty for none.
inline std::string comma_list(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

}  // namespace seamtakt
