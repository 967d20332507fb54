#include "models/words/typed_numbers.hpp"

#include <algorithm>
#include <initializer_list>
#include <string_view>

namespace seamtakt::desk {

namespace {

bool is_digit_at(const std::string& text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

/// A comma before a digit: "0,5", ",5".
void take_decimal_commas(std::string& text) {
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == ',' && is_digit_at(text, i + 1)) text[i] = '.';
}

/// A comma between two digits: in "8,5, 12" the first one.
void take_commas_within_numbers(std::string& text) {
  for (std::size_t i = 1; i < text.size(); ++i)
    if (text[i] == ',' && is_digit_at(text, i - 1) && is_digit_at(text, i + 1)) text[i] = '.';
}

std::string plain_list(std::string text, bool decimal_comma) {
  if (text.find(';') == std::string::npos) {
    if (decimal_comma) take_commas_within_numbers(text);
    return text;
  }
  take_decimal_commas(text);
  if (text.find(',') == std::string::npos) std::ranges::replace(text, ';', ',');
  return text;
}

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
    text.replace(at, from.size(), to);
}

/// Takes one of the words off the beginning; false where none is there.
bool take_word(std::string& text, std::initializer_list<std::string_view> words) {
  for (const std::string_view word : words)
    if (text.starts_with(word)) {
      text.erase(0, word.size());
      return true;
    }
  return false;
}

/// "253 to 309" as the plan's texts have it, "253 .. 309"; the words of all languages of the desk are read.
std::string plain_interval(std::string text) {
  take_decimal_commas(text);
  if (text.find("..") != std::string::npos) return text;
  if (take_word(text, {"up to ", "to ", "bis ", "at most ", "höchstens ", "<=", "≤"})) return ".. " + text;
  const bool has_lower = take_word(text, {"from ", "von ", "ab ", "at least ", "mindestens ", ">=", "≥"});
  for (const std::string_view word : {" to ", " bis ", " – ", "–", " - "})
    if (const std::size_t at = text.find(word); at != std::string::npos)
      return text.replace(at, word.size(), " .. ");
  return has_lower ? text + " .." : text;
}

}  // namespace

std::string plain_numbers(std::string text, FieldKind kind, bool decimal_comma) {
  switch (kind) {
    case FieldKind::number:
    case FieldKind::integer:
    case FieldKind::choice_or_number:
      std::ranges::replace(text, ',', '.');
      return text;
    case FieldKind::interval:
      return plain_interval(std::move(text));
    case FieldKind::point:
    case FieldKind::path:
    case FieldKind::number_pairs:
      take_decimal_commas(text);
      return text;
    case FieldKind::text_list:
    case FieldKind::reference_list:
      std::ranges::replace(text, ';', ',');
      return text;
    case FieldKind::number_list:
      return plain_list(std::move(text), decimal_comma);
    case FieldKind::composition:
      // "C=0,17, Mn=1,45": a separator is followed by a symbol, not a digit.
      return plain_list(std::move(text), true);
    default:
      return text;
  }
}

std::string shown_numbers(std::string text, FieldKind kind, bool decimal_comma) {
  switch (kind) {
    case FieldKind::number_list:
    case FieldKind::composition:
    case FieldKind::text_list:
    case FieldKind::reference_list:
      replace_all(text, ", ", "; ");
      break;
    case FieldKind::number:
    case FieldKind::interval:
    case FieldKind::point:
    case FieldKind::path:
    case FieldKind::number_pairs:
    case FieldKind::choice_or_number:
      break;
    default:
      return text;
  }
  if (!decimal_comma || kind == FieldKind::text_list || kind == FieldKind::reference_list) return text;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text[i] == '.' && is_digit_at(text, i + 1) && (i == 0 || text[i - 1] != '.')) text[i] = ',';
  return text;
}

}  // namespace seamtakt::desk
