// The row kernel for x86-64 with AVX2, 32 bytes at a time.
#include "records/log/kernel/row_kernel_sets.hpp"

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

inline std::uint64_t line_ends_of(const char* p) {
  const auto half = [](const char* at) {
    const __m256i bytes = _mm256_loadu_si256(reinterpret_cast<const __m256i*>(at));
    return static_cast<std::uint32_t>(_mm256_movemask_epi8(_mm256_cmpeq_epi8(bytes, _mm256_set1_epi8('\n'))));
  };
  return half(p) | static_cast<std::uint64_t>(half(p + 32)) << 32;
}

#include "records/log/kernel/row_digits_body.hpp"

constexpr bool tells_digits = false;

template <unsigned Blocks>
class FixedBytes {
 public:
  void set(const char* row, const std::uint64_t* fixed, unsigned) {
    alignas(32) std::uint8_t care[64 * Blocks];
    for (unsigned i = 0; i < 64 * Blocks; ++i) care[i] = (fixed[i / 64] >> i % 64 & 1) != 0 ? 0xff : 0;
    for (unsigned i = 0; i < parts; ++i) {
      bytes_[i] = _mm256_loadu_si256(reinterpret_cast<const __m256i*>(row + 32 * i));
      care_[i] = _mm256_load_si256(reinterpret_cast<const __m256i*>(care + 32 * i));
    }
  }
  bool match(const char* row) const {
    __m256i differ = _mm256_setzero_si256();
    for (unsigned i = 0; i < parts; ++i) {
      const __m256i bytes = _mm256_loadu_si256(reinterpret_cast<const __m256i*>(row + 32 * i));
      differ = _mm256_or_si256(differ, _mm256_and_si256(_mm256_xor_si256(bytes, bytes_[i]), care_[i]));
    }
    return _mm256_testz_si256(differ, differ) != 0;
  }

 private:
  static constexpr unsigned parts = 2 * Blocks;
  __m256i bytes_[parts], care_[parts];
};

/// Each lane's digits are taken from 16 bytes that begin with its first digit: those of even lanes go to the
/// lower half of 16 bytes, those of odd lanes to the upper half.
template <unsigned Blocks>
class DigitLanes {
 public:
  void set(const std::uint8_t* source) {
    alignas(32) std::uint8_t order[32 * pairs];
    for (auto& byte : order) byte = no_byte;
    for (unsigned lane = 0; lane < lanes; ++lane) {
      const std::uint8_t* const digits = source + lane * lane_digits;
      unsigned first = 0;
      while (first < lane_digits && digits[first] == no_byte) ++first;
      from_[lane] = first == lane_digits ? std::uint8_t{0} : digits[first];
      // Lanes 0 and 2 are at the beginning of the halves of the first pair, 1 and 3 at the end of those of
      // the second.
      std::uint8_t* const to = order + 32 * (lane / 4 * 2 + lane % 2) + lane % 4 / 2 * 16 + lane % 2 * 8;
      for (unsigned i = 0; i < lane_digits; ++i)
        if (digits[i] != no_byte) to[i] = static_cast<std::uint8_t>(digits[i] - from_[lane]);
    }
    for (unsigned i = 0; i < pairs; ++i)
      order_[i] = _mm256_load_si256(reinterpret_cast<const __m256i*>(order + 32 * i));
  }
  void store(const char* row, std::int32_t* to) const {
    for (unsigned lane = 0; lane < lanes; lane += 8) {
      const __m256i fours = _mm256_packus_epi32(fours_of(row, lane), fours_of(row, lane + 4));
      const __m256i numbers = _mm256_madd_epi16(fours, _mm256_set1_epi32(0x00012710));
      // The lanes are in the order 0, 1, 4, 5, 2, 3, 6, 7.
      _mm256_store_si256(reinterpret_cast<__m256i*>(to + lane), _mm256_permute4x64_epi64(numbers, 0xD8));
    }
  }

 private:
  static constexpr unsigned lanes = 8 * Blocks, pairs = 4 * Blocks;

  __m128i load(const char* row, unsigned lane) const {
    return _mm_loadu_si128(reinterpret_cast<const __m128i*>(row + from_[lane]));
  }
  /// First and last four digits of four lanes, as numbers.
  __m256i fours_of(const char* row, unsigned lane) const {
    const __m256i even = _mm256_set_m128i(load(row, lane + 2), load(row, lane));
    const __m256i odd = _mm256_set_m128i(load(row, lane + 3), load(row, lane + 1));
    const __m256i digits = _mm256_and_si256(_mm256_or_si256(_mm256_shuffle_epi8(even, order_[lane / 2]),
                                                            _mm256_shuffle_epi8(odd, order_[lane / 2 + 1])),
                                            _mm256_set1_epi8(0x0f));
    return _mm256_madd_epi16(_mm256_maddubs_epi16(digits, _mm256_set1_epi16(0x010A)),
                             _mm256_set1_epi32(0x00010064));
  }

  __m256i order_[pairs];
  std::uint8_t from_[lanes];
};

#include "records/log/kernel/row_kernel_body.hpp"

}  // namespace

const RowKernel avx2_row_kernel = {"avx2", take_rows, sum_rows};

}  // namespace seamtakt

#if defined(__clang__)
#pragma clang attribute pop
#else
#pragma GCC pop_options
#endif
#endif
