#include <algorithm>
#include <system_error>

#include "base/json/json_writer.hpp"
#include "base/time/log_time.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

namespace {

constexpr const char* kinds[] = {
    record_kind::genesis,    record_kind::schedule,       record_kind::calibration,
    record_kind::ingest,     record_kind::pass,           record_kind::manual,
    record_kind::correction, record_kind::void_record,    record_kind::signoff,
    record_kind::key,        record_kind::key_revoke,     record_kind::migrate,
    record_kind::anchor,     record_kind::nonconformance, record_kind::disposition,
    record_kind::note,       record_kind::person,         record_kind::judgement,
    record_kind::retention,  record_kind::timestamp};

}  // namespace

bool is_record_kind(std::string_view kind) {
  return std::any_of(std::begin(kinds), std::end(kinds), [&](const char* each) { return kind == each; });
}

JsonNode body_of(const LedgerRowView& row) {
  try {
    return parse_json(row.body, "record " + std::to_string(row.seq));
  } catch (const std::runtime_error& error) {
    throw StoreDamaged("the store is damaged: " + std::string(error.what()));
  }
}

const JsonNode* body_member(const JsonNode& body, std::string_view path) {
  const auto dot = path.find('.');
  const JsonNode* member = body.find(path.substr(0, dot));
  return member == nullptr || dot == std::string_view::npos ? member
                                                            : body_member(*member, path.substr(dot + 1));
}

std::string body_text(const JsonNode& body, std::string_view path) {
  const JsonNode* member = body_member(body, path);
  return member != nullptr && member->kind == JsonNode::Kind::string ? member->string : "";
}

std::optional<double> body_number(const JsonNode& body, std::string_view path) {
  const JsonNode* member = body_member(body, path);
  return member != nullptr && member->kind == JsonNode::Kind::number ? std::optional<double>(member->number)
                                                                     : std::nullopt;
}

KeyInForce key_in_force(LedgerBackend& backend) {
  const auto found = backend.find("signing_key", "");
  if (found.empty()) return {};
  const auto rows = backend.records(found.back(), 1);
  if (rows.empty() || rows[0].seq != found.back()) return {};
  const JsonNode body = body_of(rows[0]);
  return {found.back(), body_text(body, "results.key_id"), body_text(body, "results.public_key")};
}

std::string key_proof_text(const std::string& store_id, const std::string& key_id) {
  return "seamtakt-key/1\n" + store_id + "\n" + key_id + "\n";
}

std::vector<std::pair<std::string, std::string>> key_members(const SigningKey& key,
                                                             const std::string& store_id) {
  const std::string id = key.public_key().id();
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("algorithm", "Ed25519").member("key_id", id).member("public_key", key.public_key().pem());
  json.member("proof", hex(key.sign(key_proof_text(store_id, id))));
  json.end_object();
  return {{"results", json.take()}};
}

std::optional<std::int64_t> utc_seconds(std::string_view utc) {
  LogTime time;
  if (utc.size() != 20 || utc.back() != 'Z' || !parse_iso8601(utc, time)) return std::nullopt;
  return time.ns / 1'000'000'000;
}

}  // namespace seamtakt
