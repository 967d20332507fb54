// The row kernel for x86-64 with AVX-512 (F, BW, DQ, VL), 64 bytes at a time.
#include "records/row_kernel_sets.hpp"

#if defined(__x86_64__)
#include <immintrin.h>

#if defined(__clang__)
#pragma clang attribute push(                                                            \
    __attribute__((target("avx512f,avx512bw,avx512dq,avx512vl,bmi,bmi2,lzcnt,popcnt"))), \
    apply_to = function)
#else
#pragma GCC push_options
#pragma GCC target("avx512f,avx512bw,avx512dq,avx512vl,bmi,bmi2,lzcnt,popcnt,prefer-vector-width=512")
#endif

namespace seamtakt {

namespace {

inline std::uint64_t nondigits_of(const char* p) {
  const __m512i from_nought = _mm512_sub_epi8(_mm512_loadu_si512(p), _mm512_set1_epi8('0'));
  return _mm512_cmpgt_epu8_mask(from_nought, _mm512_set1_epi8(9));
}

#include "records/row_kernel_body.hpp"

}  // namespace

const RowKernel avx512_row_kernel = {"avx512", take_rows, sum_rows};

}  // namespace seamtakt

#if defined(__clang__)
#pragma clang attribute pop
#else
#pragma GCC pop_options
#endif
#endif
