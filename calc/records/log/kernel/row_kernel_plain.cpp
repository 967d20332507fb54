// The row kernel for any machine: eight bytes at a time in ordinary registers.
#include "records/log/kernel/row_kernel_sets.hpp"

namespace seamtakt {

namespace {

static_assert(__BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__, "digits are gathered from little-endian words");

constexpr std::uint64_t high_bits = 0x8080808080808080ull, low7 = 0x7F7F7F7F7F7F7F7Full;

/// The highest bit of each byte of a word that is no digit; the other bits mean nothing.
inline std::uint64_t beyond_digits(std::uint64_t word) {
  const std::uint64_t from_nought = word ^ 0x3030303030303030ull;  // digits become 0 to 9
  return ((from_nought & low7) + 0x7676767676767676ull) | from_nought;
}

/// Bit i: byte i of the 8 at `p` is no digit.
inline std::uint64_t nondigits_of_8(const char* p) {
  std::uint64_t word;
  __builtin_memcpy(&word, p, 8);
  return ((beyond_digits(word) & high_bits) >> 7) * 0x0102040810204080ull >> 56;
}

inline std::uint64_t nondigits_of(const char* p) {
  std::uint64_t bits = 0;
  for (unsigned i = 0; i < 8; ++i) bits |= nondigits_of_8(p + 8 * i) << (8 * i);
  return bits;
}

inline std::uint64_t line_ends_of(const char* p) {
  std::uint64_t bits = 0;
  for (unsigned i = 0; i < 8; ++i) {
    std::uint64_t word;
    __builtin_memcpy(&word, p + 8 * i, 8);
    word ^= 0x0A0A0A0A0A0A0A0Aull;
    const std::uint64_t others = (((word & low7) + low7) | word) & high_bits;
    bits |= ((others ^ high_bits) >> 7) * 0x0102040810204080ull >> 56 << (8 * i);
  }
  return bits;
}

#include "records/log/kernel/row_digits_body.hpp"

constexpr bool tells_digits = true;

template <unsigned Blocks>
class FixedBytes {
 public:
  void set(const char* row, const std::uint64_t* fixed, unsigned size) {
    for (unsigned i = 0; i < words; ++i) {
      care_[i] = high_[i] = 0;
      for (unsigned byte = 0; byte < 8; ++byte) {
        const unsigned at = 8 * i + byte;
        if ((fixed[at / 64] >> at % 64 & 1) != 0)
          care_[i] |= std::uint64_t{0xff} << (8 * byte);
        else if (at < size)
          high_[i] |= std::uint64_t{0x80} << (8 * byte);
      }
      bytes_[i] = load8(row + 8 * i) & care_[i];
    }
  }
  bool match(const char* row) const {
    std::uint64_t differ = 0;
    for (unsigned i = 0; i < words; ++i) differ |= (load8(row + 8 * i) & care_[i]) ^ bytes_[i];
    return differ == 0;
  }
  /// Whether the row's other bytes are digits, too.
  bool match_with_digits(const char* row) const {
    std::uint64_t differ = 0;
    for (unsigned i = 0; i < words; ++i) {
      const std::uint64_t word = load8(row + 8 * i);
      differ |= ((word & care_[i]) ^ bytes_[i]) | (beyond_digits(word) & high_[i]);
    }
    return differ == 0;
  }

 private:
  static constexpr unsigned words = 8 * Blocks;
  std::uint64_t bytes_[words], care_[words];
  std::uint64_t high_[words];  ///< highest bit of each byte that has to be a digit
};

template <unsigned Blocks>
class DigitLanes {
 public:
  void set(const std::uint8_t* source) {
    used_ = 0;
    for (unsigned i = 0; i < lanes; ++i) {
      lane_[i] = lane_of(source + i * lane_digits);
      if (lane_[i].fraction != 0) used_ = i + 1;
    }
  }
  void store(const char* row, std::int32_t* to) const {
    unsigned i = 0;
    for (; i < used_; ++i) to[i] = static_cast<std::int32_t>(number_at(row, lane_[i]));
    for (; i < lanes; ++i) to[i] = 0;
  }

 private:
  static constexpr unsigned lanes = 8 * Blocks;
  /// The digits end before `end`; those of `whole` have a decimal sign after them.
  struct Lane {
    std::uint64_t whole, fraction;
    std::uint8_t end, empty_bits;
  };

  static Lane lane_of(const std::uint8_t* source) {
    Lane lane{};
    unsigned last = lane_digits;
    while (last > 0 && source[last - 1] == no_byte) --last;
    if (last == 0) return lane;
    lane.empty_bits = static_cast<std::uint8_t>(8 * (lane_digits - last));
    lane.end = static_cast<std::uint8_t>(source[last - 1] + 1);
    for (unsigned i = 1; i <= last && source[last - i] != no_byte; ++i)
      (source[last - i] + i == lane.end ? lane.fraction : lane.whole) |= std::uint64_t{0xff} << (64 - 8 * i);
    return lane;
  }
  static std::uint32_t number_at(const char* row, const Lane& lane) {
    const char* const end = row + lane.end;
    const std::uint64_t digits = ((load8(end - 8) ^ 0x3030303030303030ull) & lane.fraction) |
                                 ((load8(end - 9) ^ 0x3030303030303030ull) & lane.whole);
    return number_of(digits >> lane.empty_bits);
  }

  Lane lane_[lanes];
  unsigned used_;  ///< lanes after these have no digits
};

#include "records/log/kernel/row_kernel_body.hpp"

}  // namespace

const RowKernel plain_row_kernel = {"plain", take_rows, sum_rows};

}  // namespace seamtakt
