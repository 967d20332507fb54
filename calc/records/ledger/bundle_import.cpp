#include <algorithm>
#include <optional>

#include "base/error.hpp"
#include "records/ledger/bundle.hpp"
#include "records/ledger/canonical_json.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t rows_a_commit = 1000;
constexpr std::size_t longest_line = 64u << 20;

/// The store's id from a bundle's first line.
std::string bundle_store(const std::string& line, const std::string& file) {
  std::optional<JsonNode> node;
  try {
    node = parse_json(line, file);
  } catch (const InputError&) {
  }
  const std::string where = printable(file) + ":1";
  if (!node || body_text(*node, "bundle.format") != "seamtakt-bundle")
    throw InputError(where, "\"" + printable(line, 40) + "\"",
                     "a bundle (ledger export); arc logs are read by audit --store");
  const JsonNode* version = body_member(*node, "bundle.version");
  if (version == nullptr || version->number != 1)
    throw InputError(where, "a bundle of another version", "version 1");
  return body_text(*node, "bundle.store");
}

class Import {
 public:
  Import(LedgerBackend& backend, std::string file) : backend_(backend), file_(std::move(file)) {}

  BundleOutcome run(std::istream& in) {
    const LedgerSnapshot before = backend_.snapshot();
    outcome_.records_before = stored_ = before.state.n;
    stored_frontier_ = before.state.frontier;
    for (std::string line; std::getline(in, line);) {
      ++line_;
      if (in.eof()) refuse("a last line without its end", "a whole bundle");
      if (line.size() > longest_line)
        refuse("a line of " + std::to_string(line.size()) + " bytes", "a bundle's line");
      take(line);
    }
    if (line_ == 0) refuse("an empty file", "a bundle (ledger export)");
    if (!pending_.empty()) store();
    if (frontier_.size() != last_head_.n) refuse("records that no head covers", "a whole bundle");
    if (frontier_.size() < stored_)
      refuse("fewer records than the store has", "a bundle of this store, of the same age or newer");
    store_sides();
    describe();
    return outcome_;
  }

 private:
  struct Pending {
    LedgerRow row;
    std::optional<SignedHead> head;  ///< that covers it as its last one
  };

  [[noreturn]] void refuse(const std::string& found, const std::string& expected) const {
    throw InputError(printable(file_) + ":" + std::to_string(line_), found, expected);
  }

  void take(const std::string& line) {
    constexpr std::string_view body_start = "{\"body\":";
    if (line_ == 1) return take_header(line);
    if (std::string_view(line).starts_with(body_start) && line.back() == '}')
      return take_body(line.substr(body_start.size(), line.size() - body_start.size() - 1));
    JsonLimits limits;
    limits.string_bytes = longest_line;
    const JsonNode node = parse_json(line, printable(file_) + " line " + std::to_string(line_), limits);
    if (const JsonNode* head = node.find("head"))
      take_head(*head);
    else if (const JsonNode* person = node.find("person"))
      persons_.push_back(
          {body_text(*person, "sha256"), body_text(*person, "salt"), body_text(*person, "name")});
    else if (const JsonNode* raw = node.find("raw"))
      chunks_.push_back({body_text(*raw, "sha256"), bytes_from_hex(body_text(*raw, "digests")).value_or("")});
    else
      refuse("\"" + printable(line, 40) + "\"", "a body, head, person or raw");
  }

  void take_header(const std::string& line) { store_id_ = bundle_store(line, file_); }

  void take_body(std::string body) {
    std::vector<CanonicalMember> members;
    const std::uint64_t seq = frontier_.size() + 1;
    if (!scan_canonical_object(body, members))
      refuse("a body that isn't canonical JSON", "a body as it was exported");
    if (member_text(members, "seq") != std::to_string(seq) ||
        member_text(members, "store") != "\"" + store_id_ + "\"")
      refuse("another record", "record " + std::to_string(seq) + " of store " + printable(store_id_, 40));
    const std::string_view kind = member_text(members, "kind");
    LedgerRow row{seq, std::string(kind.size() > 2 ? kind.substr(1, kind.size() - 2) : ""), std::move(body),
                  ""};
    if (!is_record_kind(row.kind)) refuse("a record of an unknown kind", "a kind that this program knows");
    const Digest leaf = leaf_digest(row.body);
    row.leaf = bytes_of(leaf);
    frontier_.append(leaf);
    if (row.kind == record_kind::genesis || row.kind == record_kind::key ||
        row.kind == record_kind::key_revoke)
      note_key(row);
    if (seq == stored_ && frontier_.bytes() != stored_frontier_)
      refuse("other records than the store has", "a bundle of the same store, or an empty store");
    if (seq > stored_) pending_.push_back({std::move(row), std::nullopt});
  }

  void note_key(const LedgerRow& row) {
    const JsonNode body = body_of(row);
    next_key_ = PublicKey::from_pem(body_text(body, "results.public_key"),
                                    printable(file_) + ":" + std::to_string(line_));
    // A lost key can't sign what takes its place.
    if (row.kind != record_kind::key) key_ = next_key_;
  }

  void take_head(const JsonNode& node) {
    SignedHead head;
    head.store = store_id_;
    const JsonNode* n = node.find("n");
    head.n = n != nullptr && n->is_integer && n->number > 0 ? static_cast<std::uint64_t>(n->number) : 0;
    const auto root = digest_from_hex(body_text(node, "root"));
    const auto signature = bytes_from_hex(body_text(node, "signature"));
    head.utc = body_text(node, "utc");
    head.previous = body_text(node, "previous");
    head.key_id = body_text(node, "key_id");
    if (!root || !signature || head.n != frontier_.size() || *root != frontier_.root())
      refuse("a head of other records",
             "a head of the " + std::to_string(frontier_.size()) + " records before it");
    head.root = *root;
    head.signature = *signature;
    if (head.previous != (last_head_.n == 0 ? std::string(no_previous_head) : last_head_.text_sha256()))
      refuse("a head that doesn't follow the one before it", "all heads in order");
    if (!key_ || key_->id() != head.key_id || !key_->verifies(head.text(), head.signature))
      refuse("a head whose signature doesn't hold", "one signed by the store's key");
    key_ = next_key_;
    last_head_ = head;
    if (head.n <= stored_) return;
    pending_.back().head = head;
    ++outcome_.heads_added;
    if (pending_.size() >= rows_a_commit) store();
  }

  /// All that is pending up to its last head.
  void store() {
    if (!pending_.back().head) refuse("records that no head covers", "a whole bundle");
    std::vector<LedgerRow> rows;
    std::vector<LookupRow> lookups;
    for (Pending& each : pending_) {
      const auto of_body = lookups_in_body(each.row.body, each.row.seq);
      lookups.insert(lookups.end(), of_body.begin(), of_body.end());
      rows.push_back(std::move(each.row));
    }
    backend_.begin();
    try {
      if (backend_.snapshot().state.n != rows.front().seq - 1)
        throw InputError(backend_.name(), "a store that another program writes",
                         "one that nobody else writes");
      backend_.insert_records(rows);
      backend_.insert_lookups(lookups);
      for (const Pending& each : pending_)
        if (each.head) backend_.insert_head(*each.head);
      backend_.set_state({frontier_.size(), frontier_.bytes()});
      backend_.commit();
    } catch (...) {
      backend_.rollback();
      throw;
    }
    outcome_.records_added += rows.size();
    pending_.clear();
  }

  void store_sides() {
    // Done again where nothing was added: an import may have ended just before.
    backend_.begin();
    try {
      for (const PersonRow& person : persons_) backend_.insert_person(person);
      for (const RawChunksRow& chunks : chunks_) backend_.insert_raw_chunks(chunks);
      backend_.commit();
    } catch (...) {
      backend_.rollback();
      throw;
    }
  }

  void describe() {
    if (outcome_.records_added == 0) {
      outcome_.text =
          "Nothing added: the store has all " + std::to_string(frontier_.size()) + " records of this bundle.";
      return;
    }
    outcome_.text = "Added " + std::to_string(outcome_.records_added) + " records under " +
                    std::to_string(outcome_.heads_added) + " heads";
    outcome_.text += outcome_.records_before > 0
                         ? " to the " + std::to_string(outcome_.records_before) + " that were there."
                         : ".";
  }

  LedgerBackend& backend_;
  std::string file_, store_id_, stored_frontier_;
  std::uint64_t line_ = 0, stored_ = 0;
  MerkleFrontier frontier_;
  SignedHead last_head_;
  std::optional<PublicKey> key_, next_key_;
  std::vector<Pending> pending_;
  std::vector<PersonRow> persons_;
  std::vector<RawChunksRow> chunks_;
  BundleOutcome outcome_;
};

}  // namespace

void check_bundle_header(std::istream& in, const std::string& file) {
  std::string line;
  for (char c = 0; line.size() < 1000 && in.get(c) && c != '\n';) line += c;
  bundle_store(line, file);
  in.clear();
  in.seekg(0);
}

BundleOutcome import_bundle(LedgerBackend& backend, std::istream& in, const std::string& file) {
  return Import(backend, file).run(in);
}

std::vector<LookupRow> lookups_in_body(std::string_view body, std::uint64_t seq) {
  std::vector<CanonicalMember> members;
  std::vector<LookupRow> rows;
  if (!scan_canonical_object(body, members)) return rows;
  const JsonNode keys = parse_json(member_text(members, lookups_member), "record " + std::to_string(seq));
  for (const JsonNode& key : keys.elements) {
    const auto colon = key.string.find(':');
    if (colon != std::string::npos)
      rows.push_back({key.string.substr(0, colon), key.string.substr(colon + 1), seq});
  }
  if (const std::string_view ref = member_text(members, "ref"); !ref.empty())
    rows.push_back({"ref", std::string(ref), seq});
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  return rows;
}

}  // namespace seamtakt
