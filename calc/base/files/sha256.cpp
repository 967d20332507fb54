#include <openssl/evp.h>

#include <stdexcept>

#include "base/files/atomic_save.hpp"

namespace seamtakt {

std::string sha256_hex(std::string_view bytes) {
  unsigned char digest[EVP_MAX_MD_SIZE];
  unsigned size = 0;
  if (EVP_Digest(bytes.data(), bytes.size(), digest, &size, EVP_sha256(), nullptr) != 1) {
    throw std::runtime_error("SHA-256 isn't available in the OpenSSL library");
  }
  constexpr char digits[] = "0123456789abcdef";
  std::string hex;
  hex.reserve(2 * size);
  for (unsigned i = 0; i < size; ++i) {
    hex += digits[digest[i] >> 4];
    hex += digits[digest[i] & 15];
  }
  return hex;
}

}  // namespace seamtakt
