#include <array>
#include <cctype>
#include <string_view>

#include "drawing/part.hpp"

namespace seamtakt::drawing {

namespace {

constexpr std::array words = {"screw", "bolt",     "nut",    "washer",  "rivet",  "stud", "pin",
                              "brg",   "schraube", "mutter", "scheibe", "bolzen", "niet", "stift"};
constexpr std::array standards = {"din", "iso", "asme", "ansi", "bs", "jis"};

bool is_letter(char c) {
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}
bool is_figure(char c) {
  return c >= '0' && c <= '9';
}

template <class List>
bool is_one_of(const List& list, std::string_view word) {
  for (const std::string_view each : list)
    if (each == word) return true;
  return false;
}

}  // namespace

bool is_named_hardware(const std::string& name) {
  bool has_word = false, has_standard = false;
  std::string word;
  for (std::size_t i = 0; i <= name.size(); ++i) {
    const char c = i < name.size() ? name[i] : ' ';
    if (is_letter(c)) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      continue;
    }
    has_word = has_word || is_one_of(words, word);
    has_standard = has_standard || is_one_of(standards, word) || (word == "m" && is_figure(c));
    word.clear();
  }
  return has_word && has_standard;
}

}  // namespace seamtakt::drawing
