#include "base/units/units.hpp"

#include <charconv>
#include <cmath>
#include <stdexcept>

#include "base/error.hpp"
#include "base/sentences/name_list.hpp"

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

Sentence units_that_fit(Dimension dimension) {
  std::vector<std::string_view> names;
  for (const Unit& unit : known_units())
    if (unit.dimension == dimension && *unit.name != '\0') names.emplace_back(unit.name);
  return names.empty() ? Sentence("no unit"_word) : one_of_names(names);
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

Sentence expected_of(const Unit& bare) {
  if (bare.dimension == Dimension::none) return "a number without a unit"_word;
  return Sentence("units.number-with"_key, {{"units", units_that_fit(bare.dimension)}});
}

}  // namespace

double parse_quantity(std::string_view text, const Unit& bare, const std::string& where) {
  const std::string_view whole = without_blanks(text);
  std::string_view digits = whole;
  if (digits.size() > 1 && digits[0] == '+' && digits[1] != '-') digits.remove_prefix(1);
  double value = 0;
  const auto parsed = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (parsed.ec != std::errc() || !std::isfinite(value)) {
    throw InputError(where, whole.empty() ? Phrase("nothing"_word) : Phrase(quoted(whole)),
                     expected_of(bare));
  }
  const std::string_view name =
      without_blanks(digits.substr(static_cast<std::size_t>(parsed.ptr - digits.data())));
  if (name.empty() || name == bare.name) return value;
  const Unit* unit = find_unit(name, bare.dimension);
  if (!unit) {
    const SentenceKey found = find_unit(name) ? "units.other-unit"_key : "units.unknown-unit"_key;
    throw InputError(where, Sentence(found, {{"unit", quoted(name)}, {"text", quoted(whole)}}),
                     expected_of(bare));
  }
  const double result = convert(value, *unit, bare);
  if (!std::isfinite(result)) throw InputError(where, quoted(whole), "a finite number"_word);
  return result;
}

}  // namespace seamtakt
