#pragma once

#include <cstdint>

namespace seamtakt {

/// 10^exponent, 0 <= exponent <= 18.
constexpr std::int64_t whole_power_of_ten(unsigned exponent) {
  constexpr std::int64_t powers[] = {1,
                                     10,
                                     100,
                                     1'000,
                                     10'000,
                                     100'000,
                                     1'000'000,
                                     10'000'000,
                                     100'000'000,
                                     1'000'000'000,
                                     10'000'000'000,
                                     100'000'000'000,
                                     1'000'000'000'000,
                                     10'000'000'000'000,
                                     100'000'000'000'000,
                                     1'000'000'000'000'000,
                                     10'000'000'000'000'000,
                                     100'000'000'000'000'000,
                                     1'000'000'000'000'000'000};
  return powers[exponent];
}

}  // namespace seamtakt
