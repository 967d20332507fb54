// The row kernel for x86-64 with AVX2, 32 bytes at a time.
#include "records/row_kernel_sets.hpp"

#if defined(__x86_64__)
#include <immintrin.h>

#if defined(__clang__)
#pragma clang attribute push(__attribute__((target("avx2,bmi,bmi2,lzcnt,popcnt"))), apply_to = function)
#else
#pragma GCC push_options
#pragma GCC target("avx2,bmi,bmi2,lzcnt,popcnt")
#endif

namespace seamtakt {

namespace {

inline std::uint64_t nondigits_of(const char* p) {
  const auto half = [](const char* at) {
    const __m256i bytes = _mm256_loadu_si256(reinterpret_cast<const __m256i*>(at));
    const __m256i from_nought = _mm256_sub_epi8(bytes, _mm256_set1_epi8('0'));
    const __m256i digit = _mm256_cmpeq_epi8(_mm256_min_epu8(from_nought, _mm256_set1_epi8(9)), from_nought);
    return static_cast<std::uint32_t>(~_mm256_movemask_epi8(digit));
  };
  return half(p) | static_cast<std::uint64_t>(half(p + 32)) << 32;
}

#include "records/row_kernel_body.hpp"

}  // namespace

const RowKernel avx2_row_kernel = {"avx2", take_rows, sum_rows};

}  // namespace seamtakt

#if defined(__clang__)
#pragma clang attribute pop
#else
#pragma GCC pop_options
#endif
#endif
