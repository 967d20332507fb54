#include "ledger/store/store_key.hpp"

#include <cstdlib>
#include <filesystem>

#include "base/error.hpp"

namespace seamtakt {

namespace {

std::string environment(const char* name) {
  const char* value = std::getenv(name);
  return value != nullptr ? value : "";
}

std::filesystem::path real_folder_of(const std::string& file) {
  std::error_code ignored;
  const auto folder = std::filesystem::absolute(file).parent_path();
  const auto real = std::filesystem::weakly_canonical(folder, ignored);
  return ignored ? folder : real;
}

}  // namespace

std::string key_folder() {
  std::string data = environment("XDG_DATA_HOME");
  if (data.empty() && !environment("HOME").empty()) data = environment("HOME") + "/.local/share";
  if (data.empty())
    throw InputError("XDG_DATA_HOME", "no value, and HOME has none"_word,
                     "a folder for keys, or --key FILE"_word);
  return data + "/seamtakt/keys";
}

std::string key_path(const std::string& store_uri, const std::string& given, const std::string& store_id) {
  const std::string path = given.empty() ? key_folder() + "/" + store_id + ".pem" : given;
  constexpr std::string_view sqlite = "sqlite:";
  if (store_uri.starts_with(sqlite) &&
      real_folder_of(path) == real_folder_of(store_uri.substr(sqlite.size())))
    throw InputError("--key", Sentence("cli.key.in-store-folder"_key, {{"file", printable(path)}}),
                     "a file in another folder"_word);
  return path;
}

std::string next_key_path(const std::string& path) {
  return path + ".next";
}

std::string key_passphrase() {
  return environment("SEAMTAKT_KEY_PASSPHRASE");
}

KeyProvider key_provider(const std::string& store_uri, const std::string& given) {
  return [store_uri, given](const std::string& store_id, const std::string& key_id) {
    const std::string path = key_path(store_uri, given, store_id);
    const bool exists = std::filesystem::exists(path);
    if (key_id.empty() && !exists) {
      const SigningKey key = SigningKey::generate();
      save_signing_key(path, key, key_passphrase());
      return key;
    }
    if (!exists)
      throw InputError(printable(path), "no such key"_word,
                       Sentence("cli.key.of-store"_key, {{"store", store_id}}));
    SigningKey key = load_signing_key(path, key_passphrase());
    // A change of keys was committed, and the program ended before the new one took the old one's place.
    if (!key_id.empty() && key.public_key().id() != key_id && std::filesystem::exists(next_key_path(path))) {
      SigningKey next = load_signing_key(next_key_path(path), key_passphrase());
      if (next.public_key().id() != key_id) return key;
      std::filesystem::rename(next_key_path(path), path);
      return next;
    }
    return key;
  };
}

SigningKey person_signing_key(const std::string& given) {
  const std::string path = given.empty() ? key_folder() + "/person.pem" : given;
  if (!std::filesystem::exists(path)) save_signing_key(path, SigningKey::generate(), key_passphrase());
  return load_signing_key(path, key_passphrase());
}

}  // namespace seamtakt
