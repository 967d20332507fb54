#include <filesystem>

#include "base/error.hpp"
#include "base/files/byte_source.hpp"
#include "ledger/body/person_key.hpp"
#include "ledger/body/signoff.hpp"
#include "ledger/body/timestamp.hpp"
#include "ledger/store/raw_chunks.hpp"
#include "ledger/verify/verify_run.hpp"

namespace seamtakt {

/// What only some kinds hold. Records are many and these are few, so a tree may be made of them.
void VerifyRun::check_meaning(const LedgerRowView& row) {
  const std::string_view kind = row.kind;
  if (kind == record_kind::pass) return;  // nearly all records, and nothing is special about them
  if (kind == record_kind::genesis || kind == record_kind::key) check_key_record(row, true);
  if (kind == record_kind::key_revoke) check_key_record(row, false);
  if (kind == record_kind::signoff) check_signoff(row);
  if (kind == record_kind::timestamp) check_time(row);
  if (kind == record_kind::person) check_person_key(row);
  if (kind == record_kind::disposition) check_covered(row);
  if (kind == record_kind::judgement) check_judgement(row);
  const bool needs_ref = kind == record_kind::correction || kind == record_kind::void_record ||
                         kind == record_kind::signoff || kind == record_kind::nonconformance ||
                         kind == record_kind::disposition || kind == record_kind::judgement;
  if (needs_ref && member_text(members_, "ref").empty())
    add_problem(row.seq, row.seq, "it points at no record"_word);
  if (kind == record_kind::ingest) {
    const JsonNode body = body_of(row);
    const JsonNode* raw = body.find("raw");
    if (raw == nullptr || raw->kind != JsonNode::Kind::array)
      return add_problem(row.seq, row.seq, "it names no logs"_word);
    for (const JsonNode& log : raw->elements)
      if (log.kind == JsonNode::Kind::object)
        chunk_roots_.try_emplace(body_text(log, "sha256"), row.seq, body_text(log, "chunk_root"));
  }
}

void VerifyRun::check_key_record(const LedgerRowView& row, bool vouched) {
  const JsonNode body = body_of(row);
  const std::string id = body_text(body, "results.key_id");
  KeyState state{id, std::nullopt, vouched};
  try {
    state.key =
        PublicKey::from_pem(body_text(body, "results.public_key"), "record " + std::to_string(row.seq));
  } catch (const InputError&) {
  }
  const auto proof = bytes_from_hex(body_text(body, "results.proof"));
  if (!state.key || state.key->id() != id)
    add_problem(row.seq, row.seq, "its key isn't the one that it names"_word);
  else if (!proof || !state.key->verifies(key_proof_text(store_id_, id), *proof))
    add_problem(row.seq, row.seq, "its key didn't sign that it is this store's"_word);
  keys_.push_back(std::move(state));
  if (!vouched) report_.warnings.push_back(Sentence("verify.key.replaced"_key, {{"record", row.seq}}));
}

void VerifyRun::check_signoff(const LedgerRowView& row) {
  const JsonNode body = body_of(row);
  const JsonNode* ref = body.find("ref");
  const auto number =
      ref != nullptr && ref->is_integer && ref->number >= 1 ? static_cast<std::uint64_t>(ref->number) : 0;
  const auto about =
      number > 0 && number < row.seq ? ledger_.backend().records(number, 1) : std::vector<LedgerRow>();
  const bool found = !about.empty() && about[0].seq == number;
  if (!found || !signoff_holds(body, store_id_, number, leaf_digest(about[0].body)))
    add_problem(row.seq, row.seq, "its sign-off isn't signed by the person's key"_word);
  check_key_owner(row, body);
}

/// A person's key belongs to one name.
void VerifyRun::check_person_key(const LedgerRowView& row) {
  const JsonNode body = body_of(row);
  if (!person_key_holds(body, store_id_))
    return add_problem(row.seq, row.seq, "its key isn't signed to be this person's"_word);
  check_key_owner(row, body);
  key_owners_.try_emplace(body_text(body, "results.key_id"), body_text(body, "who"));
}

void VerifyRun::check_key_owner(const LedgerRowView& row, const JsonNode& body) {
  const auto owner = key_owners_.find(body_text(body, "results.key_id"));
  if (owner != key_owners_.end() && owner->second != body_text(body, "who"))
    add_problem(row.seq, row.seq, "its key belongs to another person"_word);
}

/// A disposition that covers many records points at the first of them and is found by each of the others, so
/// that none counts as covered that doesn't show it.
void VerifyRun::check_covered(const LedgerRowView& row) {
  const JsonNode body = body_of(row);
  const JsonNode* covered = body_member(body, "results.records");
  if (covered == nullptr) return;
  std::vector<std::string> expected, found;
  double last = 0;
  bool is_rising = !covered->elements.empty();
  for (const JsonNode& each : covered->elements) {
    is_rising =
        is_rising && each.is_integer && each.number > last && each.number < static_cast<double>(row.seq);
    last = each.number;
    if (&each != &covered->elements.front() && is_rising)
      expected.push_back("ref:" + std::to_string(static_cast<std::uint64_t>(each.number)));
  }
  if (const JsonNode* keys = body.find(lookups_member))
    for (const JsonNode& key : keys->elements)
      if (key.string.starts_with("ref:")) found.push_back(key.string);
  const JsonNode* ref = body.find("ref");
  const bool begins = is_rising && ref != nullptr && ref->number == covered->elements.front().number;
  if (!begins || expected != found)
    add_problem(row.seq, row.seq, "the records that it covers aren't those that it points at"_word);
}

/// Kind of the earlier record of that number; empty where there is none.
std::string VerifyRun::kind_of(const LedgerRowView& row, const JsonNode* number) {
  if (number == nullptr || !number->is_integer || number->number < 1 ||
      number->number >= static_cast<double>(row.seq))
    return {};
  const auto seq = static_cast<std::uint64_t>(number->number);
  const auto found = ledger_.backend().records(seq, 1);
  return !found.empty() && found[0].seq == seq ? found[0].kind : "";
}

void VerifyRun::check_judgement(const LedgerRowView& row) {
  const JsonNode body = body_of(row);
  if (kind_of(row, body.find("ref")) != record_kind::pass ||
      kind_of(row, body_member(body, "results.calibration")) != record_kind::calibration)
    add_problem(row.seq, row.seq, "it doesn't judge a pass by a calibration"_word);
}

/// An outside authority's time over a head of this store.
void VerifyRun::check_time(const LedgerRowView& row) {
  const TimestampCheck check = check_timestamp(ledger_, store_id_, body_of(row), options_.trusted_time_pem);
  if (!check.problem.is_empty()) return add_problem(row.seq, row.seq, check.problem);
  const std::vector<Argument> said = {{"record", row.seq},
                                      {"records", check.n},
                                      {"time", check.reply.utc},
                                      {"authority", printable(check.reply.authority, 200)}};
  // Certificates that the store keeps are the word of whoever wrote it.
  const SentenceKey key = !check.is_vouched_for               ? "verify.time.unknown"_key
                          : options_.trusted_time_pem.empty() ? "verify.time.kept"_key
                                                              : "verify.time.vouched-for"_key;
  report_.warnings.push_back(Sentence(key, said));
  if (check.is_before_head)
    report_.warnings.push_back(Sentence("verify.time.before-head"_key, {{"record", row.seq}}));
}

void VerifyRun::check_raw_chunks() {
  std::string last;
  for (;;) {
    const auto page = ledger_.backend().raw_chunks(last, 100);
    for (const RawChunksRow& row : page) {
      const auto known = chunk_roots_.find(row.sha256);
      if (known == chunk_roots_.end() && options_.from > 1) continue;
      if (known == chunk_roots_.end())
        add_problem(0, 0, "pieces are kept of a log that no record names (table raw_chunks)"_word);
      else if (chunk_root(row.digests) != known->second.second)
        add_problem(known->second.first, known->second.first,
                    "the pieces kept of its raw log aren't those that were written"_word);
    }
    if (page.size() < 100) return;
    last = page.back().sha256;
  }
}

void VerifyRun::check_raw_files() {
  if (options_.raw_folder.empty()) return;
  std::map<std::string, std::string> digests;
  for (std::string last;;) {
    const auto page = ledger_.backend().raw_chunks(last, 100);
    for (const RawChunksRow& row : page) digests[row.sha256] = row.digests;
    if (page.size() < 100) break;
    last = page.back().sha256;
  }
  ledger_.each_record(std::max<std::uint64_t>(options_.from, 1), [&](const LedgerRow& row) {
    if (row.kind != record_kind::ingest || row.seq > snapshot_.last_seq) return true;
    const JsonNode body = body_of(row);
    const JsonNode* raw = body.find("raw");
    if (raw == nullptr) return true;
    for (const JsonNode& log : raw->elements) {
      const std::string sha256 = body_text(log, "sha256");
      const RawLogCheck check =
          check_raw_log(options_.raw_folder, body_text(log, "name"), sha256, digests[sha256]);
      if (!check.found)
        report_.warnings.push_back(
            Sentence("verify.raw-log.missing"_key, {{"record", row.seq},
                                                    {"log", printable(body_text(log, "name"), 80)},
                                                    {"folder", printable(options_.raw_folder)}}));
      else if (!check.problem.is_empty())
        add_problem(row.seq, row.seq, check.problem);
    }
    return true;
  });
}

}  // namespace seamtakt
