#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// "PA, PB, PC": words for a message; empty for none.
inline std::string comma_list(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

/// Calls visit(word) for each word of such a list, in their order.
template <class Visit>
void each_of_comma_list(std::string_view list, const Visit& visit) {
  while (!list.empty()) {
    const std::size_t comma = list.find(", ");
    visit(list.substr(0, comma));
    list = comma == std::string_view::npos ? std::string_view() : list.substr(comma + 2);
  }
}

}  // namespace seamtakt
