#include "formula/metal/composition_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "base/error.hpp"
#include "base/text/ascii.hpp"
#include "base/units/units.hpp"

namespace seamtakt {
namespace {

// What certificates of steel, stainless steel and aluminium list.
constexpr std::array<std::string_view, 40> symbols = {
    "C",  "Si", "Mn", "P",  "S",  "Cr", "Ni", "Mo", "Cu", "V",  "Nb", "Ti", "B",  "N",
    "Al", "Fe", "O",  "H",  "Co", "W",  "As", "Sn", "Sb", "Pb", "Ca", "Zr", "Ta", "Mg",
    "Zn", "Be", "Bi", "Se", "Te", "Ce", "La", "Y",  "Hf", "Cd", "Li", "Ag"};

double percentage(std::string_view text, std::string_view symbol, const std::string& where) {
  double value = 0;
  auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  bool whole = error == std::errc() && end == text.data() + text.size();
  if (!whole || !(value >= 0 && value <= 100))
    throw InputError(where,
                     Sentence("composition.text-for"_key, {{"text", printable(text)}, {"element", symbol}}),
                     "mass % from 0 to 100"_word);
  return value;
}

std::pair<std::string, double> parse_pair(std::string_view part, const std::string& where) {
  std::size_t equals = part.find('=');
  if (equals == std::string_view::npos)
    throw InputError(where, printable(part), "SYMBOL=PERCENT, e.g. C=0.17"_word);
  std::string_view symbol = trimmed(part.substr(0, equals), " ");
  if (std::find(symbols.begin(), symbols.end(), symbol) == symbols.end())
    throw InputError(where, printable(symbol), "an element's symbol, e.g. C, Mn or Cr"_word);
  return {std::string(symbol), percentage(trimmed(part.substr(equals + 1), " "), symbol, where)};
}

}  // namespace

std::vector<std::pair<std::string, double>> parse_composition(std::string_view text,
                                                              const std::string& where) {
  std::vector<std::pair<std::string, double>> pairs;
  double sum = 0;
  while (true) {
    std::size_t comma = text.find(',');
    auto pair = parse_pair(trimmed(text.substr(0, comma), " "), where);
    for (const auto& [symbol, value] : pairs)
      if (symbol == pair.first)
        throw InputError(where, Sentence("composition.twice"_key, {{"element", symbol}}),
                         "each element once"_word);
    sum += pair.second;
    pairs.push_back(std::move(pair));
    if (comma == std::string_view::npos) break;
    text.remove_prefix(comma + 1);
  }
  // A hair above 100 is the rounding of the decimals that were typed.
  if (sum > 100 + 1e-9)
    throw InputError(where, Sentence("composition.adds-up-to"_key, {{"sum", UnitValue{sum, "%", 6}}}),
                     Sentence("formula.at-most"_key, {{"most", UnitValue{100, "%"}}}));
  return pairs;
}

}  // namespace seamtakt
