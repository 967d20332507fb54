#include "cli/common/number_option.hpp"

#include <charconv>

#include "base/error.hpp"
#include "base/units/units.hpp"

namespace seamtakt::cli {

std::uint64_t whole_number(const std::string& text, std::uint64_t least, std::uint64_t most,
                           const std::string& option) {
  std::uint64_t value = 0;
  const char* const end = text.data() + text.size();
  const auto [read, error] = std::from_chars(text.data(), end, value);
  if (error == std::errc{} && read == end && value >= least && value <= most) return value;
  throw InputError(
      option, "\"" + printable(text) + "\"",
      Sentence("cli.whole-number"_key, {{"least", std::to_string(least)}, {"most", std::to_string(most)}}));
}

Option add_seed(const Command& command, std::uint64_t& seed, const std::string& help) {
  return add_whole_number(command, "--seed", seed, 0, std::numeric_limits<std::uint64_t>::max(), help);
}

double quantity(const std::string& text, const char* unit, QuantityRange range, const std::string& option) {
  const double value = parse_quantity(text, *find_unit(unit), option);
  if (value >= range.least && value <= range.most) return value;
  throw InputError(
      option, "\"" + printable(text) + "\"",
      Sentence("cli.quantity-range"_key,
               {{"least", number_text(range.least)}, {"most", number_text(range.most)}, {"unit", unit}}));
}

}  // namespace seamtakt::cli
