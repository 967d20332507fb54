#pragma once

#include <memory>
#include <string>
#include <string_view>

namespace seamtakt {

/// An Ed25519 key that checks signatures. Source: rfc-8032.
class PublicKey {
 public:
  /// SubjectPublicKeyInfo: PEM text, or its DER bytes. InputError at `where` where it is no Ed25519 key.
  static PublicKey from_pem(std::string_view pem, const std::string& where);
  static PublicKey from_der(std::string_view der, const std::string& where);

  std::string pem() const;
  std::string der() const;
  /// SHA-256 of the DER bytes, hex: the key's fingerprint.
  std::string id() const;
  bool verifies(std::string_view text, std::string_view signature) const;

 private:
  friend class SigningKey;
  std::shared_ptr<void> key_;
};

/// An Ed25519 key pair.
class SigningKey {
 public:
  static SigningKey generate();
  /// PKCS#8 PEM, also one protected by `passphrase`. InputError at `where`.
  static SigningKey from_pem(std::string_view pem, const std::string& passphrase, const std::string& where);

  /// PKCS#8 PEM; encrypted (AES-256) where `passphrase` isn't empty.
  std::string pem(const std::string& passphrase) const;
  const PublicKey& public_key() const { return public_key_; }
  /// 64 bytes.
  std::string sign(std::string_view text) const;

 private:
  PublicKey public_key_;
};

/// A key pair's file: 0600, never written over. InputError: absent, or others may read it;
/// std::system_error: unreadable.
SigningKey load_signing_key(const std::string& path, const std::string& passphrase = {});
/// Makes the folders above it (0700) where they are missing. InputError where the name is taken, unless
/// `replace`.
void save_signing_key(const std::string& path, const SigningKey& key, const std::string& passphrase = {},
                      bool replace = false);

}  // namespace seamtakt
