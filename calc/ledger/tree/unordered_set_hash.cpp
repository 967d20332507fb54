#include "ledger/tree/unordered_set_hash.hpp"

#include <openssl/rand.h>

#include <bit>
#include <cstring>
#include <stdexcept>

namespace seamtakt {

namespace {

struct SipState {
  std::uint64_t v0, v1, v2, v3;

  void round() {
    v0 += v1;
    v2 += v3;
    v1 = std::rotl(v1, 13) ^ v0;
    v3 = std::rotl(v3, 16) ^ v2;
    v0 = std::rotl(v0, 32);
    v2 += v1;
    v0 += v3;
    v1 = std::rotl(v1, 17) ^ v2;
    v3 = std::rotl(v3, 21) ^ v0;
    v2 = std::rotl(v2, 32);
  }
  void take(std::uint64_t word) {
    v3 ^= word;
    round();
    round();
    v0 ^= word;
  }
};

/// Up to eight bytes, the first one lowest.
std::uint64_t word_of(const char* bytes, std::size_t count) {
  std::uint64_t word = 0;
  if constexpr (std::endian::native == std::endian::little) {
    std::memcpy(&word, bytes, count);
    return word;
  }
  for (std::size_t i = count; i-- > 0;) word = word << 8 | static_cast<unsigned char>(bytes[i]);
  return word;
}

void put_word(char* bytes, std::uint64_t word) {
  for (int i = 0; i < 8; ++i) bytes[i] = static_cast<char>(word >> (8 * i));
}

}  // namespace

std::uint64_t siphash(const std::array<std::uint64_t, 2>& key, std::string_view text) {
  SipState state{key[0] ^ 0x736f6d6570736575, key[1] ^ 0x646f72616e646f6d, key[0] ^ 0x6c7967656e657261,
                 key[1] ^ 0x7465646279746573};
  std::size_t at = 0;
  for (; at + 8 <= text.size(); at += 8) state.take(word_of(text.data() + at, 8));
  state.take(static_cast<std::uint64_t>(text.size()) << 56 | word_of(text.data() + at, text.size() - at));
  state.v2 ^= 0xff;
  for (int i = 0; i < 4; ++i) state.round();
  return state.v0 ^ state.v1 ^ state.v2 ^ state.v3;
}

UnorderedSetHash::Key UnorderedSetHash::random_key() {
  Key key;
  if (RAND_bytes(reinterpret_cast<unsigned char*>(key.data()), static_cast<int>(sizeof key)) != 1)
    throw std::runtime_error("the OpenSSL library has no random numbers");
  return key;
}

void UnorderedSetHash::add(std::string_view topic, std::string_view key, std::uint64_t seq) {
  row_.resize(16);
  put_word(row_.data(), seq);
  put_word(row_.data() + 8, topic.size());  // where the topic ends
  row_.append(topic).append(key);
  sum_ += siphash(key_, row_);
  ++rows_;
}

}  // namespace seamtakt
