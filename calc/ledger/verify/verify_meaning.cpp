#include <filesystem>

#include "base/error.hpp"
#include "base/files/byte_source.hpp"
#include "ledger/body/signoff.hpp"
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
  const bool needs_ref = kind == record_kind::correction || kind == record_kind::void_record ||
                         kind == record_kind::signoff || kind == record_kind::nonconformance ||
                         kind == record_kind::disposition;
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
