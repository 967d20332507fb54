// The row kernel for x86-64 with AVX-512 (F, BW, DQ, VL, VBMI), 64 bytes at a time.
#include "records/log/kernel/row_kernel_sets.hpp"

#if defined(__x86_64__)
#include <immintrin.h>

#if defined(__clang__)
#pragma clang attribute push(                                                                       \
    __attribute__((target("avx512f,avx512bw,avx512dq,avx512vl,avx512vbmi,bmi,bmi2,lzcnt,popcnt"))), \
    apply_to = function)
#else
#pragma GCC push_options
#pragma GCC target( \
    "avx512f,avx512bw,avx512dq,avx512vl,avx512vbmi,bmi,bmi2,lzcnt,popcnt,prefer-vector-width=512")
#endif

namespace seamtakt {

namespace {

inline std::uint64_t nondigits_of(const char* p) {
  const __m512i from_nought = _mm512_sub_epi8(_mm512_loadu_si512(p), _mm512_set1_epi8('0'));
  return _mm512_cmpgt_epu8_mask(from_nought, _mm512_set1_epi8(9));
}

inline std::uint64_t line_ends_of(const char* p) {
  return _mm512_cmpeq_epi8_mask(_mm512_loadu_si512(p), _mm512_set1_epi8('\n'));
}

#include "records/log/kernel/row_digits_body.hpp"

constexpr bool tells_digits = false;

template <unsigned Blocks>
class FixedBytes {
 public:
  void set(const char* row, const std::uint64_t* fixed, unsigned) {
    for (unsigned b = 0; b < Blocks; ++b) {
      fixed_[b] = fixed[b];
      bytes_[b] = _mm512_loadu_si512(row + 64 * b);
    }
  }
  bool match(const char* row) const {
    std::uint64_t differ = 0;
    for (unsigned b = 0; b < Blocks; ++b)
      differ |= _mm512_mask_cmpneq_epi8_mask(fixed_[b], _mm512_loadu_si512(row + 64 * b), bytes_[b]);
    return differ == 0;
  }

 private:
  __m512i bytes_[Blocks];
  std::uint64_t fixed_[Blocks];
};

template <unsigned Blocks>
class DigitLanes {
 public:
  void set(const std::uint8_t* source) {
    for (unsigned b = 0; b < Blocks; ++b) {
      source_[b] = _mm512_loadu_si512(source + 64 * b);
      present_[b] = _mm512_cmpneq_epi8_mask(source_[b], _mm512_set1_epi8(static_cast<char>(no_byte)));
    }
  }
  void store(const char* row, std::int32_t* lanes) const {
    const __m512i nought = _mm512_set1_epi8('0');
    const __m512i first = _mm512_sub_epi8(_mm512_loadu_si512(row), nought);
    if constexpr (Blocks == 1) {
      store_8(_mm512_maskz_permutexvar_epi8(present_[0], source_[0], first), lanes);
    } else {
      const __m512i second = _mm512_sub_epi8(_mm512_loadu_si512(row + 64), nought);
      for (unsigned b = 0; b < Blocks; ++b)
        store_8(_mm512_maskz_permutex2var_epi8(present_[b], first, source_[b], second), lanes + 8 * b);
    }
  }

 private:
  static void store_8(__m512i digits, std::int32_t* lanes) {
    const __m512i pairs = _mm512_maddubs_epi16(digits, _mm512_set1_epi16(0x010A));
    const __m512i fours = _mm512_madd_epi16(pairs, _mm512_set1_epi32(0x00010064));
    const __m512i numbers =
        _mm512_add_epi64(_mm512_mul_epu32(fours, _mm512_set1_epi64(10000)), _mm512_srli_epi64(fours, 32));
    _mm256_store_si256(reinterpret_cast<__m256i*>(lanes), _mm512_cvtepi64_epi32(numbers));
  }

  __m512i source_[Blocks];
  std::uint64_t present_[Blocks];
};

#include "records/log/kernel/row_kernel_body.hpp"

}  // namespace

const RowKernel avx512_row_kernel = {"avx512", take_rows, sum_rows};

}  // namespace seamtakt

#if defined(__clang__)
#pragma clang attribute pop
#else
#pragma GCC pop_options
#endif
#endif
