#include "base/units/units.hpp"

#include <charconv>
#include <cmath>
#include <stdexcept>

#include "base/error.hpp"

namespace seamtakt {

double to_canonical(double value, const Unit& from) {
  return (value + from.offset) * from.multiply / from.divide;
}

double from_canonical(double value, const Unit& to) {
  return value * to.divide / to.multiply - to.offset;
}

double convert(double value, const Unit& from, const Unit& to) {
  if (from.dimension != to.dimension) throw std::logic_error("convert: units of different dimensions");
  if (std::string_view(from.name) == to.name) return value;
  return from_canonical(to_canonical(value, from), to);
}

const Unit& difference_unit(const Unit& unit) {
  if (unit.dimension != Dimension::temperature) return unit;
  return *find_unit(unit.name, Dimension::temperature_difference);
}

std::string units_that_fit(Dimension dimension) {
  std::string names, last;
  for (const Unit& unit : known_units()) {
    if (unit.dimension != dimension || *unit.name == '\0') continue;
    if (!last.empty()) names += (names.empty() ? "" : ", ") + last;
    last = unit.name;
  }
  if (last.empty()) return "no unit";
  return names.empty() ? last : names + " or " + last;
}

namespace {

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

std::string quoted(std::string_view text) {
  return "\"" + printable(text) + "\"";
}

std::string expected_of(const Unit& bare) {
  if (bare.dimension == Dimension::none) return "a number without a unit";
  return "a number with " + units_that_fit(bare.dimension);
}

}  // namespace

double parse_quantity(std::string_view text, const Unit& bare, const std::string& where) {
  const std::string_view whole = without_blanks(text);
  std::string_view digits = whole;
  if (digits.size() > 1 && digits[0] == '+' && digits[1] != '-') digits.remove_prefix(1);
  double value = 0;
  const auto parsed = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (parsed.ec != std::errc() || !std::isfinite(value)) {
    throw InputError(where, whole.empty() ? "nothing" : quoted(whole), expected_of(bare));
  }
  const std::string_view name =
      without_blanks(digits.substr(static_cast<std::size_t>(parsed.ptr - digits.data())));
  if (name.empty() || name == bare.name) return value;
  const Unit* unit = find_unit(name, bare.dimension);
  if (!unit) {
    const char* what = find_unit(name) ? "unit " : "unknown unit ";
    throw InputError(where, what + quoted(name) + " in " + quoted(whole), expected_of(bare));
  }
  const double result = convert(value, *unit, bare);
  if (!std::isfinite(result)) throw InputError(where, quoted(whole), "a finite number");
  return result;
}

}  // namespace seamtakt
