#pragma once

#include <cstddef>
#include <cstdint>

#include "formula/kernel/instruction_set.hpp"

namespace seamtakt {

/// Random numbers that are a function of their place: Philox 4x32 with 10 rounds. Which thread draws a
/// number, and when, can't change it. Source: salmon-2011.

struct PhiloxBlock {
  std::uint32_t words[4];
};

/// The four words of one counter and key.
PhiloxBlock philox_4x32_10(const PhiloxBlock& counter, std::uint32_t key_0, std::uint32_t key_1);

inline constexpr std::size_t philox_row_length = 256;

/// The words of the counters {first + i, stream, 0}, i from 0 to philox_row_length - 1. `first` is a multiple
/// of that. Only the lower 32 bits of each stored word are random; the upper ones are undefined.
struct PhiloxRow {
  std::uint64_t seed = 0, first = 0;
  std::uint32_t stream = 0;
  std::uint64_t* words[4] = {};
};

void philox_row(const PhiloxRow& row, InstructionSet set = best_instruction_set());

}  // namespace seamtakt
