#include "ledger/body/signoff.hpp"

#include "base/error.hpp"
#include "base/json/json_writer.hpp"

namespace seamtakt {

std::string signoff_text(const std::string& store_id, std::uint64_t seq, const Digest& leaf,
                         const std::string& key_id) {
  return "seamtakt-signoff/1\n" + store_id + "\n" + std::to_string(seq) + "\n" + hex(leaf) + "\n" + key_id +
         "\n";
}

std::vector<std::pair<std::string, std::string>> signoff_members(const SigningKey& person,
                                                                 const std::string& store_id,
                                                                 std::uint64_t seq, const Digest& leaf) {
  const std::string id = person.public_key().id();
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("key_id", id).member("public_key", person.public_key().pem()).member("leaf", hex(leaf));
  json.member("signature", hex(person.sign(signoff_text(store_id, seq, leaf, id))));
  json.end_object();
  return {{"results", json.take()}};
}

bool signoff_holds(const JsonNode& body, const std::string& store_id, std::uint64_t seq, const Digest& leaf) {
  try {
    const PublicKey key = PublicKey::from_pem(body_text(body, "results.public_key"), "sign-off");
    const auto signature = bytes_from_hex(body_text(body, "results.signature"));
    return signature && key.id() == body_text(body, "results.key_id") &&
           key.verifies(signoff_text(store_id, seq, leaf, key.id()), *signature);
  } catch (const InputError&) {
    return false;
  }
}

}  // namespace seamtakt
