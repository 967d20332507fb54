#include "base/files/digest.hpp"

// The functions of SHA-256 alone: the library's general ones take longer to set up than a record takes to
// hash.
#define OPENSSL_SUPPRESS_DEPRECATED
#include <openssl/sha.h>

#include <cstring>
#include <stdexcept>

namespace seamtakt {

namespace {

constexpr char digits[] = "0123456789abcdef";

int digit_value(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  return -1;
}

}  // namespace

std::string hex(std::string_view bytes) {
  std::string text;
  text.reserve(2 * bytes.size());
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    text += digits[byte >> 4];
    text += digits[byte & 15];
  }
  return text;
}

std::string hex(const Digest& digest) {
  return hex(bytes_of(digest));
}

std::optional<std::string> bytes_from_hex(std::string_view text) {
  if (text.size() % 2 != 0) return std::nullopt;
  std::string bytes;
  for (std::size_t i = 0; i < text.size(); i += 2) {
    const int high = digit_value(text[i]), low = digit_value(text[i + 1]);
    if (high < 0 || low < 0) return std::nullopt;
    bytes += static_cast<char>(high * 16 + low);
  }
  return bytes;
}

std::optional<Digest> digest_from_hex(std::string_view text) {
  const auto bytes = bytes_from_hex(text);
  return bytes ? digest_from_bytes(*bytes) : std::nullopt;
}

std::string_view bytes_of(const Digest& digest) {
  return {reinterpret_cast<const char*>(digest.data()), digest.size()};
}

std::optional<Digest> digest_from_bytes(std::string_view bytes) {
  Digest digest;
  if (bytes.size() != digest.size()) return std::nullopt;
  std::memcpy(digest.data(), bytes.data(), digest.size());
  return digest;
}

struct Sha256::State {
  SHA256_CTX context;

  static void require(int good) {
    if (good != 1) throw std::runtime_error("SHA-256 isn't available in the OpenSSL library");
  }
  void begin() { require(SHA256_Init(&context)); }
};

Sha256::Sha256() : state_(std::make_unique<State>()) {
  state_->begin();
}

Sha256::~Sha256() = default;

Sha256& Sha256::add(std::string_view bytes) {
  State::require(SHA256_Update(&state_->context, bytes.data(), bytes.size()));
  return *this;
}

Digest Sha256::take() {
  Digest digest;
  State::require(SHA256_Final(digest.data(), &state_->context));
  state_->begin();
  return digest;
}

std::string sha256_hex(std::string_view bytes) {
  return hex(Sha256().add(bytes).take());
}

}  // namespace seamtakt
