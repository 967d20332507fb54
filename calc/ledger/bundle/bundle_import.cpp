#include <algorithm>
#include <optional>

#include "base/error.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/bundle/bundle_sides.hpp"
#include "ledger/verify/verify.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t rows_at_once = 10'000;
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
                     "a bundle (ledger export); arc logs are read by audit --store"_word);
  const JsonNode* version = body_member(*node, "bundle.version");
  if (version == nullptr || version->number != 1)
    throw InputError(where, "a bundle of another version"_word,
                     Sentence("store.version"_key, {{"version", 1}}));
  return body_text(*node, "bundle.store");
}

class Import {
 public:
  Import(LedgerBackend& backend, std::string file) : backend_(backend), file_(std::move(file)) {}

  BundleOutcome run(std::istream& in) {
    backend_.begin();
    try {
      take_all(in);
      backend_.commit();
    } catch (...) {
      backend_.rollback();
      throw;
    }
    return outcome_;
  }

 private:
  void take_all(std::istream& in) {
    const LedgerSnapshot before = backend_.snapshot();
    outcome_.records_before = stored_ = before.state.n;
    stored_frontier_ = before.state.frontier;
    for (std::string line; std::getline(in, line);) {
      ++line_;
      if (in.eof()) refuse("a last line without its end"_word, "a whole bundle"_word);
      if (line.size() > longest_line)
        refuse(Sentence("bundle.line.bytes"_key, {{"bytes", line.size()}}), "a bundle's line"_word);
      take(line);
    }
    if (line_ == 0) refuse("an empty file"_word, "a bundle (ledger export)"_word);
    store();
    if (frontier_.size() != last_head_.n) refuse("records that no head covers"_word, "a whole bundle"_word);
    if (frontier_.size() < stored_)
      refuse("fewer records than the store has"_word,
             "a bundle of this store, of the same age or newer"_word);
    if (outcome_.records_added > 0) backend_.set_state({frontier_.size(), frontier_.bytes()});
    store_sides();
    check_stored();
    describe();
  }

  [[noreturn]] void refuse(Phrase found, Phrase expected) const {
    throw InputError(place(), std::move(found), std::move(expected));
  }
  std::string place() const { return printable(file_) + ":" + std::to_string(line_); }

  void take(const std::string& line) {
    constexpr std::string_view body_start = "{\"body\":";
    if (line_ == 1) return take_header(line);
    if (std::string_view(line).starts_with(body_start) && line.back() == '}')
      return take_body(line.substr(body_start.size(), line.size() - body_start.size() - 1));
    JsonLimits limits;
    limits.string_bytes = longest_line;
    const JsonNode node = parse_json(line, printable(file_) + " line " + std::to_string(line_), limits);
    if (node.members.size() != 1)
      refuse("\"" + printable(line, 40) + "\"", "a body, head, person or raw"_word);
    if (const JsonNode* head = node.find("head"))
      take_head(*head);
    else if (const JsonNode* person = node.find("person"))
      sides_.take_person(*person, place());
    else if (const JsonNode* raw = node.find("raw"))
      sides_.take_raw(*raw, place());
    else
      refuse("\"" + printable(line, 40) + "\"", "a body, head, person or raw"_word);
  }

  void take_header(const std::string& line) { store_id_ = bundle_store(line, file_); }

  void take_body(std::string body) {
    std::vector<CanonicalMember> members;
    const std::uint64_t seq = frontier_.size() + 1;
    if (!scan_canonical_object(body, members))
      refuse("a body that isn't canonical JSON"_word, "a body as it was exported"_word);
    if (member_text(members, "seq") != std::to_string(seq) ||
        member_text(members, "store") != "\"" + store_id_ + "\"")
      refuse("another record"_word,
             Sentence("bundle.record"_key, {{"record", seq}, {"store", printable(store_id_, 40)}}));
    const std::string_view kind = member_text(members, "kind");
    LedgerRow row{seq, std::string(kind.size() > 2 ? kind.substr(1, kind.size() - 2) : ""), std::move(body),
                  ""};
    if (!is_record_kind(row.kind))
      refuse("a record of an unknown kind"_word, "a kind that this program knows"_word);
    const Digest leaf = leaf_digest(row.body);
    row.leaf = bytes_of(leaf);
    frontier_.append(leaf);
    if (row.kind == record_kind::genesis || row.kind == record_kind::key ||
        row.kind == record_kind::key_revoke)
      note_key(row);
    if (seq == stored_ && frontier_.bytes() != stored_frontier_)
      refuse("other records than the store has"_word, "a bundle of the same store, or an empty store"_word);
    sides_.note_references(row, members);
    if (seq <= stored_) return;
    rows_.push_back(std::move(row));
    if (rows_.size() >= rows_at_once) store();
  }

  void note_key(const LedgerRow& row) {
    const JsonNode body = body_of(row);
    next_key_ = PublicKey::from_pem(body_text(body, "results.public_key"), place());
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
      refuse("a head of other records"_word, Sentence("bundle.head-of"_key, {{"records", frontier_.size()}}));
    head.root = *root;
    head.signature = *signature;
    if (head.previous != (last_head_.n == 0 ? std::string(no_previous_head) : last_head_.text_sha256()))
      refuse("a head that doesn't follow the one before it"_word, "all heads in order"_word);
    if (!key_ || key_->id() != head.key_id || !key_->verifies(head.text(), head.signature))
      refuse("a head whose signature doesn't hold"_word, "one signed by the store's key"_word);
    key_ = next_key_;
    last_head_ = head;
    if (head.n <= stored_) return;
    heads_.push_back(head);
    ++outcome_.heads_added;
  }

  /// The records read so far go into the open transaction.
  void store() {
    std::vector<LookupRow> lookups;
    for (const LedgerRow& row : rows_) {
      const auto of_body = lookups_in_body(row.body, row.seq);
      lookups.insert(lookups.end(), of_body.begin(), of_body.end());
    }
    backend_.insert_records(rows_);
    backend_.insert_lookups(lookups);
    for (const SignedHead& head : heads_) backend_.insert_head(head);
    outcome_.records_added += rows_.size();
    rows_.clear();
    heads_.clear();
  }

  void store_sides() {
    // Where nothing was added too: the bundle before may have been exported without names.
    sides_.check();
    for (const PersonRow& person : sides_.persons()) backend_.insert_person(person);
    for (const RawChunksRow& chunks : sides_.chunks()) backend_.insert_raw_chunks(chunks);
  }

  /// A store that isn't trusted stays so for ever: it is checked before anything is final.
  void check_stored() {
    VerifyOptions options;
    options.from = std::max<std::uint64_t>(1, std::min(stored_ + 1, frontier_.size()));
    const VerifyReport report = verify_ledger(Ledger::over(backend_), options);
    if (report.trusted) return;
    const LedgerProblem& problem = report.problems.front();
    const Sentence said = problem.seq > 0 ? Sentence("ledger.problem.record"_key,
                                                     {{"record", problem.seq}, {"problem", problem.sentence}})
                                          : problem.sentence;
    throw InputError(printable(file_),
                     Sentence("bundle.not-trusted"_key, {{"store", backend_.name()}, {"problem", said}}),
                     "a bundle of a trusted store, and a trusted store"_word);
  }

  void describe() {
    if (outcome_.records_added == 0) {
      outcome_.sentence = Sentence("bundle.nothing-added"_key, {{"records", frontier_.size()}});
      return;
    }
    std::vector<Argument> counts = {{"records", outcome_.records_added}, {"heads", outcome_.heads_added}};
    const bool was_empty = outcome_.records_before == 0;
    if (!was_empty) counts.emplace_back("before", outcome_.records_before);
    outcome_.sentence =
        Sentence(was_empty ? "bundle.added"_key : "bundle.added.to-others"_key, std::move(counts));
  }

  LedgerBackend& backend_;
  std::string file_, store_id_, stored_frontier_;
  std::uint64_t line_ = 0, stored_ = 0;
  MerkleFrontier frontier_;
  SignedHead last_head_;
  std::optional<PublicKey> key_, next_key_;
  std::vector<LedgerRow> rows_;
  std::vector<SignedHead> heads_;
  BundleSides sides_;
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
