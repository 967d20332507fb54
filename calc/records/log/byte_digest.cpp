#include "records/log/byte_digest.hpp"

#include <openssl/evp.h>

#include <stdexcept>

namespace seamtakt {

struct ByteDigest::State {
  struct Free {
    void operator()(EVP_MD_CTX* unused) const { EVP_MD_CTX_free(unused); }
  };
  std::unique_ptr<EVP_MD_CTX, Free> context{EVP_MD_CTX_new()};
};

namespace {

void require(bool done) {
  if (!done) throw std::runtime_error("SHA-256 isn't available");
}

}  // namespace

ByteDigest::ByteDigest() : state_(std::make_unique<State>()) {
  require(state_->context != nullptr && EVP_DigestInit_ex(state_->context.get(), EVP_sha256(), nullptr) == 1);
}
ByteDigest::~ByteDigest() = default;

void ByteDigest::add(std::string_view bytes) {
  require(EVP_DigestUpdate(state_->context.get(), bytes.data(), bytes.size()) == 1);
}

std::string ByteDigest::hex() {
  unsigned char digest[EVP_MAX_MD_SIZE];
  unsigned length = 0;
  require(EVP_DigestFinal_ex(state_->context.get(), digest, &length) == 1);
  constexpr char digits[] = "0123456789abcdef";
  std::string text;
  for (unsigned i = 0; i < length; ++i) {
    text += digits[digest[i] >> 4];
    text += digits[digest[i] & 15];
  }
  return text;
}

}  // namespace seamtakt
