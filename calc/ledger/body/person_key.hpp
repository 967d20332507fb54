#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "ledger/store/ledger.hpp"

namespace seamtakt {

/// Topic by which the records are found that a person's key signed or that say whose it is.
inline constexpr const char* person_key_topic = "person_key";

/// A person's signed statement that a key is theirs. `person`: the digest that replaces the name.
std::string person_key_text(const std::string& store_id, const std::string& key_id,
                            const std::string& person);

/// Members of the record that binds a key to a name.
std::vector<std::pair<std::string, std::string>> person_key_members(const SigningKey& key,
                                                                    const std::string& store_id,
                                                                    const std::string& person);

/// Whether the record `body`, of kind person, is signed by the key that it names, for who wrote it.
bool person_key_holds(const JsonNode& body, const std::string& store_id);

/// Whose key it is: the digest that replaces the name to which it was bound, or else of the person who first
/// signed off with it. Empty if nobody did yet.
std::string owner_of_key(LedgerBackend& backend, const std::string& key_id);

/// InputError at --who where the key belongs to another name. `person`: the digest of who writes.
void check_key_owner(const Ledger& ledger, const std::string& key_id, const std::string& person);

}  // namespace seamtakt
