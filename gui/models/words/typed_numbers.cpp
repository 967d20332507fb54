#include "models/words/typed_numbers.hpp"

#include <algorithm>

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

}  // namespace

std::string plain_numbers(std::string text, FieldKind kind, bool decimal_comma) {
  switch (kind) {
    case FieldKind::number:
    case FieldKind::integer:
    case FieldKind::choice_or_number:
      std::ranges::replace(text, ',', '.');
      return text;
    case FieldKind::interval:
    case FieldKind::point:
    case FieldKind::path:
    case FieldKind::number_pairs:
      take_decimal_commas(text);
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

}  // namespace seamtakt::desk
