#include "base/sentences/place_sentence.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

bool is_number(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) { return '0' <= c && c <= '9'; });
}

}  // namespace

Sentence place_sentence(std::string_view place) {
  constexpr std::string_view pass = "/pass ", schedule = "schedule ";
  if (const std::size_t at = place.rfind(pass); at != std::string_view::npos) {
    const std::string_view number = place.substr(at + pass.size());
    if (is_number(number))
      return Sentence("place.pass"_key, {{"seam", place.substr(0, at)}, {"pass", number}});
  }
  if (place.starts_with(schedule))
    return Sentence("place.schedule"_key, {{"schedule", place.substr(schedule.size())}});
  return Sentence::verbatim(std::string(place));
}

}  // namespace seamtakt
