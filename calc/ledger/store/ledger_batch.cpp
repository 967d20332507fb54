#include <openssl/rand.h>

#include <algorithm>
#include <stdexcept>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "base/text/utf8.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/body/record_text.hpp"
#include "ledger/store/day_lookup.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t flush_rows = 1000;

/// By which day the next record is found; `rows` are those before it that aren't in the store yet.
std::vector<std::pair<std::string, std::string>> day_lookups(const std::string& kind, const JsonNode& body,
                                                             LedgerBackend& backend, std::uint64_t seq,
                                                             const std::vector<LedgerRow>& rows) {
  std::vector<std::pair<std::string, std::string>> lookups;
  const std::string day = has_day(kind) ? day_of(body) : "";
  if (day.empty()) return lookups;
  lookups.emplace_back(day_topic, day);
  const bool is_first =
      std::none_of(rows.begin(), rows.end(), [](const LedgerRow& row) { return has_day(row.kind); });
  if (is_first && lacks_days_before(backend, seq - rows.size())) lookups.emplace_back(days_begin_topic, "");
  return lookups;
}

}  // namespace

std::uint64_t LedgerBatch::add(const LedgerEntry& entry) {
  const std::uint64_t seq = next_seq();
  // In the body a byte that isn't UTF-8 would be another text than in the table.
  for (const auto& [topic, key] : entry.lookups)
    if (first_invalid_utf8(key) != std::string::npos)
      throw InputError("record " + std::to_string(seq),
                       Sentence("ledger.lookup.not-utf-8"_key, {{"topic", topic}}), "UTF-8 text"_word);
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("v", ledger_body_version)
      .member("kind", entry.kind)
      .member("store", store_id_)
      .member("seq", seq);
  json.member("t", stamp_.utc).member("t_source", "computer clock").member("app", stamp_.program);
  json.member("who", stamp_.who.empty() ? "" : person(stamp_.who)).member("why", stamp_.why);
  if (entry.ref) json.member("ref", *entry.ref);
  for (const auto& [key, text] : entry.members) json.key(key).raw(text);
  json.key(lookups_member).begin_array();
  for (const auto& [topic, key] : entry.lookups) json.value(topic + ":" + key);
  json.end_array();
  json.end_object();
  JsonNode body = parse_json(json.take(), "record " + std::to_string(seq));
  const auto of_day = day_lookups(entry.kind, body, backend_, seq, rows_);
  for (const auto& [topic, key] : of_day) {
    JsonNode& text = body.members.back().value.elements.emplace_back();  // of the keys
    text.kind = JsonNode::Kind::string;
    text.string = topic + ":" + key;
  }

  LedgerRow row{seq, entry.kind, canonical_json(body), {}};
  const Digest leaf = leaf_digest(row.body);
  row.leaf = bytes_of(leaf);
  frontier_.append(leaf);
  rows_.push_back(std::move(row));
  const auto note = [&](const std::string& topic, const std::string& key) {
    auto& numbers = added_[{topic, key}];
    if (!numbers.empty() && numbers.back() == seq) return;
    numbers.push_back(seq);
    lookups_.push_back({topic, key, seq});
  };
  for (const auto& [topic, key] : entry.lookups) note(topic, key);
  for (const auto& [topic, key] : of_day) note(topic, key);
  if (entry.ref) note("ref", std::to_string(*entry.ref));
  if (rows_.size() >= flush_rows) flush();
  return seq;
}

void LedgerBatch::flush() {
  backend_.insert_records(rows_);
  backend_.insert_lookups(lookups_);
  rows_.clear();
  lookups_.clear();
  added_.clear();
}

std::vector<std::uint64_t> LedgerBatch::find(const std::string& topic, const std::string& key) const {
  auto numbers = backend_.find(topic, key);
  if (const auto added = added_.find({topic, key}); added != added_.end())
    numbers.insert(numbers.end(), added->second.begin(), added->second.end());
  return numbers;
}

std::string LedgerBatch::person(const std::string& name) {
  check_record_text("a person's name", name, longest_who);
  if (persons_.empty())
    for (const PersonRow& known : backend_.persons()) persons_[known.name] = known.sha256;
  auto& sha256 = persons_[name];
  if (sha256.empty()) {
    std::string salt(salt_bytes, '\0');
    if (RAND_bytes(reinterpret_cast<unsigned char*>(salt.data()), static_cast<int>(salt.size())) != 1)
      throw std::runtime_error("the OpenSSL library has no random numbers");
    sha256 = hex(Sha256().add(salt).add(name).take());
    backend_.insert_person({sha256, hex(salt), name});
  }
  return sha256;
}

void LedgerBatch::keep_raw_chunks(const RawChunksRow& chunks) {
  backend_.insert_raw_chunks(chunks);
}

}  // namespace seamtakt
