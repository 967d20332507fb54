#pragma once

#include <string>

#include "ledger/store/ledger.hpp"

namespace seamtakt {

/// Where private keys are: $XDG_DATA_HOME/seamtakt/keys, else ~/.local/share/seamtakt/keys. InputError where
/// the environment names neither.
std::string key_folder();

/// The file of a store's key: `given` (--key), else STORE.pem in the key folder. InputError where it would
/// be in the store's own folder: a copy of that folder would contain both.
std::string key_path(const std::string& store_uri, const std::string& given, const std::string& store_id);

/// Loads the key, or makes it where the store begins. A passphrase is taken from
/// SEAMTAKT_KEY_PASSPHRASE.
KeyProvider key_provider(const std::string& store_uri, const std::string& given);

/// Passphrase for protected keys; empty where none is set.
std::string key_passphrase();

/// A key that will be in force after the next commit, beside the one that is.
std::string next_key_path(const std::string& path);

/// The person's own key, `given` or person.pem in the key folder; made where there is none yet.
SigningKey person_signing_key(const std::string& given);

}  // namespace seamtakt
