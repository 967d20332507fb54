#pragma once

#include <array>
#include <cstdint>
#include <string>

namespace seamtakt {

/// Remembers how numbers are written in JSON. In a long table the same figures come again and again (every
/// seam of a kind has the same heat input), and looking up is several times as quick as finding the shortest
/// text anew.
class NumberMemory {
 public:
  /// The same text as append_json_value.
  void append(std::string& out, double number);

 private:
  struct Entry {
    std::uint64_t bits = 0;
    std::uint8_t length = 0;  ///< 0: nothing remembered
    char text[31];
  };
  static constexpr unsigned index_bits = 11;
  std::array<Entry, std::size_t{1} << index_bits> entries_;
};

}  // namespace seamtakt
