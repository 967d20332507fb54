#include <charconv>
#include <cmath>
#include <cstdlib>

#include "base/units/units.hpp"

namespace seamtakt {

namespace {

/// Range within which a number is written without an exponent.
constexpr double smallest_plain = 1e-5;
constexpr double largest_plain = 1e16;

/// A decimal number's parts: 0.d1d2d3... times ten to the power `point`.
struct Decimal {
  bool negative = false;
  std::string digits;
  int point = 0;
};

Decimal decimal_of(double value, int digits) {
  char text[64];
  const auto end =
      std::to_chars(text, text + sizeof text, std::abs(value), std::chars_format::scientific, digits - 1);
  const std::string_view whole(text, static_cast<std::size_t>(end.ptr - text));
  const std::size_t e = whole.find('e');
  Decimal decimal;
  decimal.negative = std::signbit(value);
  for (char c : whole.substr(0, e)) {
    if (c != '.') decimal.digits += c;
  }
  std::string_view exponent = whole.substr(e + 1);
  if (exponent.front() == '+') exponent.remove_prefix(1);
  std::from_chars(exponent.data(), exponent.data() + exponent.size(), decimal.point);
  ++decimal.point;
  while (decimal.digits.size() > 1 && decimal.digits.back() == '0') decimal.digits.pop_back();
  return decimal;
}

std::string plain(const Decimal& decimal) {
  const int count = static_cast<int>(decimal.digits.size());
  if (decimal.point <= 0)
    return "0." + std::string(static_cast<std::size_t>(-decimal.point), '0') + decimal.digits;
  const auto point = static_cast<std::size_t>(decimal.point);
  if (decimal.point >= count) return decimal.digits + std::string(point - decimal.digits.size(), '0');
  return decimal.digits.substr(0, point) + "." + decimal.digits.substr(point);
}

std::string with_exponent(const Decimal& decimal) {
  std::string text = decimal.digits.substr(0, 1);
  if (decimal.digits.size() > 1) text.append(".").append(decimal.digits, 1);
  return text.append("e").append(std::to_string(decimal.point - 1));
}

}  // namespace

void append_number_text(std::string& out, double value) {
  const double size = std::abs(value);
  const bool is_plain = size == 0 || (size >= smallest_plain && size < largest_plain);
  char text[64];
  const auto end = std::to_chars(text, text + sizeof text, value,
                                 is_plain ? std::chars_format::fixed : std::chars_format::scientific);
  out.append(text, end.ptr);
}

std::string number_text(double value) {
  std::string text;
  append_number_text(text, value);
  return text;
}

std::string rounded_text(double value, int digits) {
  if (value == 0) return "0";
  if (!std::isfinite(value)) return number_text(value);
  const Decimal decimal = decimal_of(value, digits < 1 ? 1 : (digits > 17 ? 17 : digits));
  const bool is_plain = decimal.point > -5 && decimal.point <= 16;
  std::string text = decimal.negative ? "-" : "";
  return text.append(is_plain ? plain(decimal) : with_exponent(decimal));
}

}  // namespace seamtakt
