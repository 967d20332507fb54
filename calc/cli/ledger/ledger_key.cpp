#include <filesystem>

#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/json/json_writer.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/store_key.hpp"

namespace seamtakt::cli {

namespace {

void show_key(const Ledger& ledger, const LedgerOptions& given, Result& result) {
  const std::string store = ledger.store_id();
  const KeyInForce key = key_in_force(ledger.backend());
  const std::string path = key_path(given.store, given.key, store);
  const bool is_here = std::filesystem::exists(path);
  if (given.json) {
    JsonWriter json;
    json.begin_object().member("store", store).member("key_id", key.id).member("public_key", key.pem);
    json.member("since_record", key.seq).member("file", path).member("file_exists", is_here).end_object();
    result.output = json.take();
    return;
  }
  const auto say = [&](const Sentence& sentence) { result.output += shown_text(sentence) + "\n"; };
  say(Sentence("cli.key.store"_key, {{"store", store}}));
  say(Sentence("cli.key.fingerprint"_key, {{"key", key.id}}));
  say(Sentence("cli.key.since"_key, {{"record", key.seq}}));
  say(Sentence(is_here ? "cli.key.file"_key : "cli.key.file.elsewhere"_key,
               {{"file", printable(path, 400)}}));
  result.output += key.pem;
}

/// The key file that a new key is to replace must be this store's own, where there is one: no other key is
/// lost for it. `in_force`: its id.
void check_replaced_key(const std::string& path, const std::string& in_force) {
  const FileKind there = kind_of_file(path);
  if (there == FileKind::absent) return;
  Word found = "a file that is no private key"_word;
  if (there == FileKind::private_key) {
    found = "a key that can't be read"_word;
    try {
      if (load_signing_key(path, key_passphrase()).public_key().id() == in_force) return;
      found = "another store's key"_word;
    } catch (const InputError&) {
    }
  }
  throw InputError(printable(path), found, "this store's key, or a new name (move it away first)"_word);
}

/// The new key is on the disk before the record is, and takes the old one's place after it.
void replace_key(const LedgerOptions& given, Result& result, bool lost) {
  Ledger ledger = open_for_writing(given);
  const std::string store = ledger.store_id(), path = key_path(given.store, given.key, store);
  if (lost) check_replaced_key(path, key_in_force(ledger.backend()).id);
  const SigningKey next = SigningKey::generate();
  save_signing_key(next_key_path(path), next, key_passphrase(), true);
  const auto fill = [&](LedgerBatch& batch) {
    const std::string before = key_in_force(ledger.backend()).id;
    LedgerEntry entry{lost ? record_kind::key_revoke : record_kind::key,
                      {},
                      key_members(next, batch.store_id()),
                      {{"signing_key", ""}}};
    entry.members.emplace_back("replaces", "\"" + before + "\"");
    batch.add(entry);
  };
  // Where the old key is lost, the new one signs what puts it into force.
  if (lost)
    ledger.write_with_lost_key(next, stamp_of(given), fill);
  else
    ledger.write(key_provider(given.store, given.key), stamp_of(given), fill);
  std::filesystem::rename(next_key_path(path), path);
  if (given.json) return show_key(ledger, given, result);
  result.output = shown_text(Sentence(lost ? "cli.key.new.lost"_key : "cli.key.new"_key,
                                      {{"key", next.public_key().id()}, {"file", printable(path, 400)}})) +
                  "\n";
}

void protect_key(const LedgerOptions& given, Result& result) {
  const Ledger ledger = open_for_reading(given);
  const std::string path = key_path(given.store, given.key, ledger.store_id());
  if (key_passphrase().empty())
    throw InputError("SEAMTAKT_KEY_PASSPHRASE", "nothing"_word,
                     "the passphrase to protect the key with"_word);
  save_signing_key(path, load_signing_key(path), key_passphrase(), true);
  if (given.json) return show_key(ledger, given, result);
  result.output = shown_text(Sentence("cli.key.protected"_key, {{"file", printable(path, 400)}})) + "\n";
}

}  // namespace

void ledger_key(const LedgerOptions& given, Result& result) {
  if (given.rotate + given.protect + given.replace_lost > 1)
    throw InputError("ledger key", "several of --rotate, --protect and --replace-lost"_word,
                     "one of them"_word);
  if (given.protect) return protect_key(given, result);
  if (given.rotate || given.replace_lost) return replace_key(given, result, given.replace_lost);
  show_key(open_for_reading(given), given, result);
}

}  // namespace seamtakt::cli
