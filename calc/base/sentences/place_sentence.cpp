#include "base/sentences/place_sentence.hpp"

#include <algorithm>
#include <utility>

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

Sentence place_list(const std::vector<std::string>& places) {
  std::vector<Sentence> sentences;
  for (const std::string& place : places) sentences.push_back(place_sentence(place));
  return Sentence("place.list"_key, {{"places", std::move(sentences)}});
}

}  // namespace seamtakt
