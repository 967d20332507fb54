#include "formula/kernel/philox.hpp"

#if defined(__x86_64__)
#include <immintrin.h>
#endif

namespace seamtakt {

namespace {

constexpr std::uint32_t multiplier_0 = 0xD2511F53u, multiplier_1 = 0xCD9E8D57u;
constexpr std::uint32_t weyl_0 = 0x9E3779B9u, weyl_1 = 0xBB67AE85u;
constexpr int rounds = 10;

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

}  // namespace

PhiloxBlock philox_4x32_10(const PhiloxBlock& counter, std::uint32_t key_0, std::uint32_t key_1) {
  const Keys keys(std::uint64_t{key_1} << 32 | key_0);
  std::uint32_t c0 = counter.words[0], c1 = counter.words[1], c2 = counter.words[2], c3 = counter.words[3];
  for (int round = 0; round < rounds; ++round) {
    const std::uint64_t p0 = std::uint64_t{multiplier_0} * c0, p1 = std::uint64_t{multiplier_1} * c2;
    c0 = static_cast<std::uint32_t>(p1 >> 32) ^ c1 ^ static_cast<std::uint32_t>(keys.k0[round]);
    c1 = static_cast<std::uint32_t>(p1);
    c2 = static_cast<std::uint32_t>(p0 >> 32) ^ c3 ^ static_cast<std::uint32_t>(keys.k1[round]);
    c3 = static_cast<std::uint32_t>(p0);
  }
  return {{c0, c1, c2, c3}};
}

#if defined(__x86_64__) && defined(__GNUC__)

// A word stands in a lane of 64 bits, whose lower half alone is multiplied (what the vector units have an
// instruction for, and the compiler doesn't find by itself); so the upper half may hold anything. Two groups
// of counters go side by side: a round waits for the one before it, and the processor has the other group
// meanwhile.
#define SEAMTAKT_PHILOX_ROW(name, attribute, bytes, Native, multiply)                            \
  namespace {                                                                                    \
  attribute void name(const PhiloxRow& row) {                                                    \
    typedef unsigned long long Lanes __attribute__((vector_size(bytes), aligned(8), may_alias)); \
    constexpr std::size_t lanes = bytes / 8, groups = 2;                                         \
    static_assert(philox_row_length % (groups * lanes) == 0);                                    \
    const Keys keys(row.seed);                                                                   \
    Lanes offset;                                                                                \
    for (std::size_t i = 0; i < lanes; ++i) offset[i] = i;                                       \
    const Lanes m0 = Lanes{} + multiplier_0, m1 = Lanes{} + multiplier_1;                        \
    for (std::size_t i = 0; i < philox_row_length; i += groups * lanes) {                        \
      Lanes c0[groups], c1[groups], c2[groups], c3[groups], p0[groups], p1[groups];              \
      for (std::size_t g = 0; g < groups; ++g) {                                                 \
        c0[g] = offset + (row.first + i + g * lanes);                                            \
        c1[g] = Lanes{} + (row.first >> 32);                                                     \
        c2[g] = Lanes{} + row.stream;                                                            \
        c3[g] = Lanes{};                                                                         \
      }                                                                                          \
      for (int round = 0; round < rounds; ++round) {                                             \
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

// The plain form of this instruction has an uninitialised operand in g++ 12's header, and its warning.
#define multiply_512(a, b) _mm512_maskz_mul_epu32(0xff, a, b)

SEAMTAKT_PHILOX_ROW(philox_row_plain, , 16, __m128i, _mm_mul_epu32)
SEAMTAKT_PHILOX_ROW(philox_row_avx2, __attribute__((target("avx2"))), 32, __m256i, _mm256_mul_epu32)
SEAMTAKT_PHILOX_ROW(philox_row_avx512, __attribute__((target("arch=x86-64-v4"))), 64, __m512i, multiply_512)

void philox_row(const PhiloxRow& row, InstructionSet set) {
  if (set == InstructionSet::avx512) return philox_row_avx512(row);
  if (set == InstructionSet::avx2) return philox_row_avx2(row);
  philox_row_plain(row);
}

#else

void philox_row(const PhiloxRow& row, InstructionSet) {
  for (std::size_t i = 0; i < philox_row_length; ++i) {
    const std::uint64_t at = row.first + i;
    const PhiloxBlock block = philox_4x32_10(
        {{static_cast<std::uint32_t>(at), static_cast<std::uint32_t>(at >> 32), row.stream, 0}},
        static_cast<std::uint32_t>(row.seed), static_cast<std::uint32_t>(row.seed >> 32));
    for (std::size_t k = 0; k < 4; ++k) row.words[k][i] = block.words[k];
  }
}

#endif

}  // namespace seamtakt
