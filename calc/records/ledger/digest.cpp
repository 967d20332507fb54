#include "records/ledger/digest.hpp"

#include <openssl/evp.h>

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
  struct Free {
    void operator()(EVP_MD_CTX* unused) const { EVP_MD_CTX_free(unused); }
    void operator()(EVP_MD* unused) const { EVP_MD_free(unused); }
  };
  std::unique_ptr<EVP_MD, Free> algorithm{EVP_MD_fetch(nullptr, "SHA256", nullptr)};
  std::unique_ptr<EVP_MD_CTX, Free> context{EVP_MD_CTX_new()};

  void require(bool good) const {
    if (!good) throw std::runtime_error("SHA-256 isn't available in the OpenSSL library");
  }
  void begin() { require(EVP_DigestInit_ex2(context.get(), algorithm.get(), nullptr) == 1); }
};

Sha256::Sha256() : state_(std::make_unique<State>()) {
  state_->require(state_->algorithm != nullptr && state_->context != nullptr);
  state_->begin();
}

Sha256::~Sha256() = default;

Sha256& Sha256::add(std::string_view bytes) {
  state_->require(EVP_DigestUpdate(state_->context.get(), bytes.data(), bytes.size()) == 1);
  return *this;
}

Digest Sha256::take() {
  Digest digest;
  unsigned size = 0;
  state_->require(EVP_DigestFinal_ex(state_->context.get(), digest.data(), &size) == 1);
  state_->begin();
  return digest;
}

}  // namespace seamtakt
