#pragma once

#include <cstdint>

#include "formula/kernel/philox.hpp"

/// The generator's rounds in lanes, written once for vectors of any size: philox.cpp has it with each
/// instruction set's own multiplication, and a test with one of 64 bytes that any processor can run.
namespace seamtakt::philox {

inline constexpr std::uint32_t multiplier_0 = 0xD2511F53u, multiplier_1 = 0xCD9E8D57u;
inline constexpr std::uint32_t weyl_0 = 0x9E3779B9u, weyl_1 = 0xBB67AE85u;
inline constexpr int rounds = 10;

/// The keys of all rounds.
struct Keys {
  std::uint64_t k0[rounds], k1[rounds];

  explicit Keys(std::uint64_t seed) {
    auto low = static_cast<std::uint32_t>(seed), high = static_cast<std::uint32_t>(seed >> 32);
    for (int round = 0; round < rounds; ++round, low += weyl_0, high += weyl_1) {
      k0[round] = low;
      k1[round] = high;
    }
  }
};

}  // namespace seamtakt::philox

#if defined(__GNUC__)

// A word is in a lane of 64 bits, and only the lower half is multiplied (vector units have an instruction for
// that, which the compiler doesn't find by itself); so the upper half may hold anything. Two groups of
// counters are interleaved: each round depends on the one before it, and the processor works on the other
// group meanwhile.
#define SEAMTAKT_PHILOX_ROW(name, attribute, bytes, Native, multiply)                            \
  namespace {                                                                                    \
  attribute void name(const PhiloxRow& row) {                                                    \
    typedef unsigned long long Lanes __attribute__((vector_size(bytes), aligned(8), may_alias)); \
    constexpr std::size_t lanes = bytes / 8, groups = 2;                                         \
    static_assert(philox_row_length % (groups * lanes) == 0);                                    \
    const philox::Keys keys(row.seed);                                                           \
    Lanes offset;                                                                                \
    for (std::size_t i = 0; i < lanes; ++i) offset[i] = i;                                       \
    const Lanes m0 = Lanes{} + philox::multiplier_0, m1 = Lanes{} + philox::multiplier_1;        \
    for (std::size_t i = 0; i < philox_row_length; i += groups * lanes) {                        \
      Lanes c0[groups], c1[groups], c2[groups], c3[groups], p0[groups], p1[groups];              \
      for (std::size_t g = 0; g < groups; ++g) {                                                 \
        c0[g] = offset + (row.first + i + g * lanes);                                            \
        c1[g] = Lanes{} + (row.first >> 32);                                                     \
        c2[g] = Lanes{} + row.stream;                                                            \
        c3[g] = Lanes{};                                                                         \
      }                                                                                          \
      for (int round = 0; round < philox::rounds; ++round) {                                     \
        for (std::size_t g = 0; g < groups; ++g) {                                               \
          p0[g] = (Lanes)multiply((Native)m0, (Native)c0[g]);                                    \
          p1[g] = (Lanes)multiply((Native)m1, (Native)c2[g]);                                    \
        }                                                                                        \
        for (std::size_t g = 0; g < groups; ++g) {                                               \
          c0[g] = (p1[g] >> 32) ^ c1[g] ^ keys.k0[round];                                        \
          c1[g] = p1[g];                                                                         \
          c2[g] = (p0[g] >> 32) ^ c3[g] ^ keys.k1[round];                                        \
          c3[g] = p0[g];                                                                         \
        }                                                                                        \
      }                                                                                          \
      for (std::size_t g = 0; g < groups; ++g) {                                                 \
        *(Lanes*)(row.words[0] + i + g * lanes) = c0[g];                                         \
        *(Lanes*)(row.words[1] + i + g * lanes) = c1[g];                                         \
        *(Lanes*)(row.words[2] + i + g * lanes) = c2[g];                                         \
        *(Lanes*)(row.words[3] + i + g * lanes) = c3[g];                                         \
      }                                                                                          \
    }                                                                                            \
  }                                                                                              \
  }

#endif
