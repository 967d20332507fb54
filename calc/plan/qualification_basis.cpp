#include "plan/qualification_basis.hpp"

#include <cctype>
#include <string>

#include "base/text/ascii.hpp"

namespace seamtakt {

namespace {

/// Whether `text` names the document, as a number of its own: "ISO 15614-1" isn't in "ISO 15614-12".
bool names(std::string_view text, std::string_view document) {
  const auto is_part_of_number = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0; };
  for (std::size_t at = text.find(document); at != std::string_view::npos; at = text.find(document, at + 1)) {
    const std::size_t end = at + document.size();
    const bool begins = at == 0 || !is_part_of_number(text[at - 1]);
    // A further part ("15613-2") would be another document; a year follows a colon.
    const bool ends = end == text.size() || !(is_part_of_number(text[end]) || text[end] == '-');
    if (begins && ends) return true;
  }
  return false;
}

}  // namespace

QualificationRoute qualification_route(std::string_view basis) {
  if (names(basis, "ISO 15614-1")) return QualificationRoute::judged;
  for (const char* document : {"ISO 15610", "ISO 15611", "ISO 15612", "ISO 15613"})
    if (names(basis, document)) return QualificationRoute::known;
  const std::string lower = lower_case(basis);
  if (names(lower, "d1.1"))
    return lower.find("prequalified") != std::string::npos ? QualificationRoute::prequalified
                                                           : QualificationRoute::d1_1;
  return QualificationRoute::other;
}

const char* iso_15614_1_edition(std::string_view basis) {
  constexpr std::string_view document = "15614-1", latest = "2017";
  const std::size_t at = basis.find(document);
  if (at == std::string_view::npos) return latest.data();
  const std::size_t year = basis.find_first_of("0123456789", at + document.size());
  const bool is_year = year != std::string_view::npos && year + latest.size() <= basis.size();
  return is_year && basis.substr(year, latest.size()) < latest ? "2004" : latest.data();
}

}  // namespace seamtakt
