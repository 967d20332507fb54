#pragma once

#include <concepts>
#include <cstdint>
#include <limits>
#include <string>

#include "cli/common/command_line.hpp"

namespace seamtakt::cli {

/// The whole number that `text` is, in decimal digits alone, within least..most. InputError at `option`
/// otherwise: a sign, an exponent and a number too large for 64 bits are no whole numbers in that range.
std::uint64_t whole_number(const std::string& text, std::uint64_t least, std::uint64_t most,
                           const std::string& option);

/// Adds an option that takes a whole number from `least` to `most`; anything else is bad input.
template <std::integral Number>
Option add_whole_number(const Command& command, const std::string& option, Number& value, std::uint64_t least,
                        std::uint64_t most, const std::string& help) {
  const std::uint64_t greatest =
      std::min(most, static_cast<std::uint64_t>(std::numeric_limits<Number>::max()));
  return command
      .option(
          option,
          [&value, option, least, greatest](const std::string& text) {
            value = static_cast<Number>(whole_number(text, least, greatest, option));
          },
          help)
      .takes("N");
}

/// Threads that a person may ask for; 0 means as many as the machine has.
inline constexpr std::uint64_t most_threads = 1024;

/// Adds `--seed`: any whole number of 64 bits.
Option add_seed(const Command& command, std::uint64_t& seed, const std::string& help);

/// What a quantity given on the command line may be.
struct QuantityRange {
  double least = 0, most = 0;
};
/// No time that is asked for on the command line is longer: 11 days.
inline constexpr double longest_s = 1e6;

/// The quantity that `text` is, in `unit` where it is a bare number, within the range. InputError at `option`
/// otherwise.
double quantity(const std::string& text, const char* unit, QuantityRange range, const std::string& option);

}  // namespace seamtakt::cli
