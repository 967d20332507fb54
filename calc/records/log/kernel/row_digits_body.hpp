// Digits in words of eight bytes: part of the row kernel, compiled once for each instruction set.

/// Numbers of digits in a shape's lanes. A missing digit counts as 0.
inline constexpr unsigned lane_digits = 8;
inline constexpr std::uint8_t no_byte = 0xff;

inline std::uint64_t load8(const char* p) {
  std::uint64_t word;
  __builtin_memcpy(&word, p, 8);
  return word;
}

/// Of a word that holds 8 digits' values, the first in its lowest byte, the number.
inline std::uint32_t number_of(std::uint64_t digits) {
  digits = digits * 10 + (digits >> 8);
  constexpr std::uint64_t every_other = 0x000000FF000000FFull;
  return static_cast<std::uint32_t>(((digits & every_other) * 0x000F424000000064ull +
                                     ((digits >> 16) & every_other) * 0x0000271000000001ull) >>
                                    32);
}
