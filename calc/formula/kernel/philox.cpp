#include "formula/kernel/philox.hpp"

#include "formula/kernel/philox_body.hpp"

#if defined(__x86_64__)
#include <immintrin.h>
#endif

namespace seamtakt {

PhiloxBlock philox_4x32_10(const PhiloxBlock& counter, std::uint32_t key_0, std::uint32_t key_1) {
  const philox::Keys keys(std::uint64_t{key_1} << 32 | key_0);
  std::uint32_t c0 = counter.words[0], c1 = counter.words[1], c2 = counter.words[2], c3 = counter.words[3];
  for (int round = 0; round < philox::rounds; ++round) {
    const std::uint64_t p0 = std::uint64_t{philox::multiplier_0} * c0,
                        p1 = std::uint64_t{philox::multiplier_1} * c2;
    c0 = static_cast<std::uint32_t>(p1 >> 32) ^ c1 ^ static_cast<std::uint32_t>(keys.k0[round]);
    c1 = static_cast<std::uint32_t>(p1);
    c2 = static_cast<std::uint32_t>(p0 >> 32) ^ c3 ^ static_cast<std::uint32_t>(keys.k1[round]);
    c3 = static_cast<std::uint32_t>(p0);
  }
  return {{c0, c1, c2, c3}};
}

#if defined(__x86_64__) && defined(__GNUC__)

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
