#include <array>
#include <cctype>
#include <map>
#include <string_view>

#include "drawing/seam_finder.hpp"

namespace seamtakt::drawing {

namespace {

constexpr std::array words = {"screw", "bolt",     "nut",    "washer",  "rivet",  "stud", "pin",
                              "brg",   "schraube", "mutter", "scheibe", "bolzen", "niet", "stift"};
/// What such a word may stand beside: a bracket for a bolt is a part to weld.
constexpr std::array welded = {"bracket", "plate", "lug",     "support", "housing", "holder",
                               "mount",   "frame", "konsole", "platte",  "blech",   "halter",
                               "lasche",  "bock",  "block",   "rib",     "flange",  "flansch"};
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
  bool has_word = false, has_standard = false, is_welded = false;
  std::string word;
  for (std::size_t i = 0; i <= name.size(); ++i) {
    const char c = i < name.size() ? name[i] : ' ';
    if (is_letter(c)) {
      word += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      continue;
    }
    has_word = has_word || is_one_of(words, word);
    is_welded = is_welded || is_one_of(welded, word);
    has_standard = has_standard || is_one_of(standards, word) || (word == "m" && is_figure(c));
    word.clear();
  }
  return has_word && has_standard && !is_welded;
}

std::optional<Note> hardware_note(const std::vector<Part>& parts) {
  Note note;
  note.kind = "hardware";
  std::map<std::string, int> counts;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (!parts[i].is_hardware) continue;
    note.parts.push_back(static_cast<int>(i));
    ++counts[parts[i].name];
  }
  if (note.parts.empty()) return {};
  note.text =
      "By name bolts, nuts, washers, bearings or the like, left out by an import that isn't told otherwise: ";
  bool is_first = true;
  for (const auto& [name, count] : counts) {
    note.text += (is_first ? "" : ", ") + std::to_string(count) + " x " + name;
    is_first = false;
  }
  note.text += ".";
  return note;
}

}  // namespace seamtakt::drawing
