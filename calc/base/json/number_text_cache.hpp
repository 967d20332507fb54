#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>
#include <cstring>

namespace seamtakt {

/// Remembers how numbers are written in JSON. In a long table the same numbers recur (every seam of a kind
/// has the same heat input), and a lookup is several times as fast as finding the shortest text again.
class NumberTextCache {
 public:
  /// What write may touch: no number's text is longer.
  static constexpr std::size_t most_bytes = 31;

  /// Writes the same text as append_json_value, and returns how long it is. `to` has room for most_bytes.
  std::size_t write(char* to, double number) {
    const auto bits = std::bit_cast<std::uint64_t>(number);
    Entry& entry = entries_[(bits * 0x9e3779b97f4a7c15u) >> (64 - index_bits)];
    if (entry.length == 0 || entry.bits != bits) fill(entry, number);
    std::memcpy(to, entry.text, most_bytes);  // a copy of fixed length is the quickest
    return entry.length;
  }

 private:
  struct Entry {
    std::uint64_t bits = 0;
    char text[most_bytes];
    std::uint8_t length = 0;  ///< 0: nothing remembered
  };
  static void fill(Entry& entry, double number);

  static constexpr unsigned index_bits = 11;
  std::array<Entry, std::size_t{1} << index_bits> entries_;
};

}  // namespace seamtakt
