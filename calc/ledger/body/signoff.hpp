#pragma once

#include <cstdint>
#include <string>

#include "ledger/store/ledger.hpp"

namespace seamtakt {

/// What a person signs with a key of their own: the store's key says "recorded", theirs says "approved".
std::string signoff_text(const std::string& store_id, std::uint64_t seq, const Digest& leaf,
                         const std::string& key_id);

/// Members of the sign-off record of record `seq`.
std::vector<std::pair<std::string, std::string>> signoff_members(const SigningKey& person,
                                                                 const std::string& store_id,
                                                                 std::uint64_t seq, const Digest& leaf);

/// Whether the sign-off record `body` is signed by the key that it names, for that record.
bool signoff_holds(const JsonNode& body, const std::string& store_id, std::uint64_t seq, const Digest& leaf);

}  // namespace seamtakt
