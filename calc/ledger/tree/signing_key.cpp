#include "ledger/tree/signing_key.hpp"

#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/x509.h>

#include <stdexcept>

#include "base/error.hpp"
#include "base/files/digest.hpp"

namespace seamtakt {

namespace {

struct Free {
  void operator()(BIO* bio) const { BIO_free(bio); }
  void operator()(EVP_MD_CTX* context) const { EVP_MD_CTX_free(context); }
};
using Bio = std::unique_ptr<BIO, Free>;

EVP_PKEY* pkey(const std::shared_ptr<void>& key) {
  return static_cast<EVP_PKEY*>(key.get());
}

std::shared_ptr<void> owned(EVP_PKEY* key) {
  return {key, [](void* each) { EVP_PKEY_free(static_cast<EVP_PKEY*>(each)); }};
}

void require(bool good, const char* what) {
  if (!good) throw std::runtime_error(std::string("the OpenSSL library fails: ") + what);
}

std::shared_ptr<void> ed25519(EVP_PKEY* key, const std::string& where, Word expected) {
  const auto held = owned(key);
  if (key == nullptr || EVP_PKEY_get_base_id(key) != EVP_PKEY_ED25519)
    throw InputError(where, key == nullptr ? "no key that can be read"_word : "a key of another kind"_word,
                     expected);
  return held;
}

Bio memory(std::string_view bytes) {
  Bio bio(BIO_new_mem_buf(bytes.data(), static_cast<int>(bytes.size())));
  require(bio != nullptr, "memory");
  return bio;
}

std::string text_of(const Bio& bio) {
  char* data = nullptr;
  const long size = BIO_get_mem_data(bio.get(), &data);
  return {data, static_cast<std::size_t>(size)};
}

constexpr Word public_expected = "an Ed25519 public key (PEM)"_word,
               private_expected = "an Ed25519 private key (PKCS#8 PEM)"_word;

}  // namespace

PublicKey PublicKey::from_pem(std::string_view pem, const std::string& where) {
  PublicKey key;
  key.key_ =
      ed25519(PEM_read_bio_PUBKEY(memory(pem).get(), nullptr, nullptr, nullptr), where, public_expected);
  return key;
}

PublicKey PublicKey::from_der(std::string_view der, const std::string& where) {
  const auto* at = reinterpret_cast<const unsigned char*>(der.data());
  PublicKey key;
  key.key_ = ed25519(d2i_PUBKEY(nullptr, &at, static_cast<long>(der.size())), where, public_expected);
  return key;
}

std::string PublicKey::pem() const {
  Bio bio(BIO_new(BIO_s_mem()));
  require(bio != nullptr && PEM_write_bio_PUBKEY(bio.get(), pkey(key_)) == 1, "public key as PEM");
  return text_of(bio);
}

std::string PublicKey::der() const {
  unsigned char* bytes = nullptr;
  const int size = i2d_PUBKEY(pkey(key_), &bytes);
  require(size > 0, "public key as DER");
  std::string der(reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(size));
  OPENSSL_free(bytes);
  return der;
}

std::string PublicKey::id() const {
  return hex(Sha256().add(der()).take());
}

bool PublicKey::verifies(std::string_view text, std::string_view signature) const {
  const std::unique_ptr<EVP_MD_CTX, Free> context(EVP_MD_CTX_new());
  require(context != nullptr, "memory");
  return EVP_DigestVerifyInit(context.get(), nullptr, nullptr, nullptr, pkey(key_)) == 1 &&
         EVP_DigestVerify(context.get(), reinterpret_cast<const unsigned char*>(signature.data()),
                          signature.size(), reinterpret_cast<const unsigned char*>(text.data()),
                          text.size()) == 1;
}

SigningKey SigningKey::generate() {
  SigningKey key;
  key.public_key_.key_ = owned(EVP_PKEY_Q_keygen(nullptr, nullptr, "ED25519"));
  require(key.public_key_.key_ != nullptr, "a new key");
  return key;
}

SigningKey SigningKey::from_pem(std::string_view pem, const std::string& passphrase,
                                const std::string& where) {
  // Without this the library would ask at the terminal.
  const auto give = [](char* to, int size, int, void* given) {
    const auto& text = *static_cast<const std::string*>(given);
    if (text.empty() || text.size() > static_cast<std::size_t>(size)) return 0;
    text.copy(to, text.size());
    return static_cast<int>(text.size());
  };
  SigningKey key;
  EVP_PKEY* read =
      PEM_read_bio_PrivateKey(memory(pem).get(), nullptr, give, const_cast<std::string*>(&passphrase));
  if (read == nullptr && pem.find("ENCRYPTED") != std::string_view::npos)
    throw InputError(where,
                     passphrase.empty() ? "a key protected by a passphrase"_word : "another passphrase"_word,
                     "its passphrase"_word);
  key.public_key_.key_ = ed25519(read, where, private_expected);
  return key;
}

std::string SigningKey::pem(const std::string& passphrase) const {
  Bio bio(BIO_new(BIO_s_mem()));
  require(bio != nullptr, "memory");
  const EVP_CIPHER* cipher = passphrase.empty() ? nullptr : EVP_aes_256_cbc();
  require(PEM_write_bio_PKCS8PrivateKey(bio.get(), pkey(public_key_.key_), cipher,
                                        passphrase.empty() ? nullptr : passphrase.data(),
                                        static_cast<int>(passphrase.size()), nullptr, nullptr) == 1,
          "private key as PEM");
  return text_of(bio);
}

std::string SigningKey::sign(std::string_view text) const {
  const std::unique_ptr<EVP_MD_CTX, Free> context(EVP_MD_CTX_new());
  std::string signature(64, '\0');
  std::size_t size = signature.size();
  require(context != nullptr &&
              EVP_DigestSignInit(context.get(), nullptr, nullptr, nullptr, pkey(public_key_.key_)) == 1 &&
              EVP_DigestSign(context.get(), reinterpret_cast<unsigned char*>(signature.data()), &size,
                             reinterpret_cast<const unsigned char*>(text.data()), text.size()) == 1,
          "a signature");
  return signature;
}

}  // namespace seamtakt
