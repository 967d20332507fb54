// The row kernel for any machine: eight bytes at a time in ordinary registers.
#include "records/row_kernel_sets.hpp"

namespace seamtakt {

namespace {

static_assert(__BYTE_ORDER__ == __ORDER_LITTLE_ENDIAN__, "digits are gathered from little-endian words");

/// Bit i: byte i of the 8 at `p` is no digit.
inline std::uint64_t nondigits_of_8(const char* p) {
  std::uint64_t word;
  __builtin_memcpy(&word, p, 8);
  constexpr std::uint64_t high = 0x8080808080808080ull, low7 = 0x7F7F7F7F7F7F7F7Full;
  const std::uint64_t from_nought = word ^ 0x3030303030303030ull;  // digits become 0 to 9
  const std::uint64_t other = (((from_nought & low7) + 0x7676767676767676ull) | from_nought) & high;
  return (other >> 7) * 0x0102040810204080ull >> 56;
}

inline std::uint64_t nondigits_of(const char* p) {
  std::uint64_t bits = 0;
  for (unsigned i = 0; i < 8; ++i) bits |= nondigits_of_8(p + 8 * i) << (8 * i);
  return bits;
}

#include "records/row_kernel_body.hpp"

}  // namespace

const RowKernel plain_row_kernel = {"plain", take_rows, sum_rows};

}  // namespace seamtakt
