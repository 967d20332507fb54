#include "ledger/tree/signed_head.hpp"

namespace seamtakt {

std::string SignedHead::text() const {
  return "seamtakt-log/1\n" + store + "\n" + std::to_string(n) + "\n" + hex(root) + "\n" + utc + "\n" +
         previous + "\n" + key_id + "\n";
}

std::string SignedHead::text_sha256() const {
  return hex(Sha256().add(text()).take());
}

std::string SignedHead::anchor_line() const {
  return store + " " + std::to_string(n) + " " + hex(root) + " " + utc + " " + key_id + " " + hex(signature);
}

void SignedHead::sign(const SigningKey& key) {
  key_id = key.public_key().id();
  signature = key.sign(text());
}

}  // namespace seamtakt
