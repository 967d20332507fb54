#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace seamtakt {

/// SipHash-2-4 of a text under a key of 128 bits: nobody who doesn't know the key can tell the value or make
/// two texts of one value. Source: siphash-2012, figure 2.1; its appendix's value is checked.
std::uint64_t siphash(const std::array<std::uint64_t, 2>& key, std::string_view text);

/// A sum of rows that doesn't depend on their order. Its key is drawn for each run and kept to itself,
/// so that two different sets of rows have one sum with a chance of 2^-64, whoever made them.
class UnorderedSetHash {
 public:
  using Key = std::array<std::uint64_t, 2>;
  static Key random_key();
  explicit UnorderedSetHash(const Key& key) : key_(key) {}

  void add(std::string_view topic, std::string_view key, std::uint64_t seq);
  bool operator==(const UnorderedSetHash& other) const { return sum_ == other.sum_ && rows_ == other.rows_; }

 private:
  Key key_;
  std::uint64_t sum_ = 0, rows_ = 0;
  std::string row_;  ///< kept for its memory
};

}  // namespace seamtakt
