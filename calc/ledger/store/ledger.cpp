#include "ledger/store/ledger.hpp"

#include <openssl/rand.h>

#include <stdexcept>

#include "base/error.hpp"
#include "ledger/body/record_text.hpp"

namespace seamtakt {

namespace {

/// Rolled back unless committed.
class Transaction {
 public:
  explicit Transaction(LedgerBackend& backend) : backend_(backend) { backend.begin(); }
  ~Transaction() {
    if (open_) backend_.rollback();
  }
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit() {
    backend_.commit();
    open_ = false;
  }

 private:
  LedgerBackend& backend_;
  bool open_ = true;
};

std::string random_hex(std::size_t bytes) {
  std::string random(bytes, '\0');
  if (RAND_bytes(reinterpret_cast<unsigned char*>(random.data()), static_cast<int>(bytes)) != 1)
    throw std::runtime_error("the OpenSSL library has no random numbers");
  return hex(random);
}

std::string store_id_of(LedgerBackend& backend) {
  const auto first = backend.records(1, 1);
  if (first.empty() || first[0].seq != 1) return {};
  return body_text(body_of(first[0]), "store");
}

void check_clock(const WriteStamp& stamp, const std::optional<SignedHead>& newest) {
  const auto now = utc_seconds(stamp.utc);
  if (!now) throw std::invalid_argument("a time stamp that isn't UTC");
  const auto before = newest ? utc_seconds(newest->utc) : std::nullopt;
  if (before && *now < *before - clock_tolerance_s)
    throw InputError("this machine's clock", stamp.utc,
                     Sentence("ledger.clock"_key, {{"newest", newest->utc}}));
}

/// An import by a machine may name nobody; a text that is given must be one.
void check_texts(const WriteStamp& stamp) {
  if (!stamp.who.empty()) check_record_text("--who", stamp.who, longest_who);
  if (!stamp.why.empty()) check_record_text("--why", stamp.why, longest_why);
}

}  // namespace

Ledger Ledger::open(const std::string& uri, const StoreOpening& opening) {
  return Ledger(open_ledger_backend(uri, opening));
}

std::string Ledger::store_id() const {
  return store_id_of(*backend_);
}

std::string Ledger::person_name(const std::string& sha256) const {
  if (!names_read_) {
    for (const PersonRow& person : backend_->persons()) names_[person.sha256] = person.name;
    names_read_ = true;
  }
  const auto found = names_.find(sha256);
  return found != names_.end() ? found->second : sha256.empty() ? "" : "person " + sha256.substr(0, 8);
}

SignedHead Ledger::write(const KeyProvider& key, const WriteStamp& stamp,
                         const std::function<void(LedgerBatch&)>& fill) {
  return write_signed(key, false, stamp, fill);
}

SignedHead Ledger::write_with_lost_key(const SigningKey& next, const WriteStamp& stamp,
                                       const std::function<void(LedgerBatch&)>& fill) {
  return write_signed([&](const std::string&, const std::string&) { return next; }, true, stamp, fill);
}

SignedHead Ledger::write_signed(const KeyProvider& provider, bool any_key, const WriteStamp& stamp,
                                const std::function<void(LedgerBatch&)>& fill) {
  check_texts(stamp);
  Transaction transaction(*backend_);
  // Read inside the transaction: two writers that looked before it would continue from the same record.
  const LedgerSnapshot before = backend_->snapshot();
  check_clock(stamp, before.newest_head);
  const bool is_new = before.state.n == 0;
  LedgerBatch batch(*backend_, stamp);
  const auto frontier = MerkleFrontier::from_bytes(before.state.n, before.state.frontier);
  if (!frontier || before.last_seq != before.state.n)
    throw InputError(backend_->name(), "a store whose state isn't that of its records"_word,
                     "an unaltered store (ledger verify)"_word);
  batch.frontier_ = *frontier;
  batch.store_id_ = is_new ? random_hex(16) : store_id_of(*backend_);
  const std::string in_force = is_new ? "" : key_in_force(*backend_).id;
  const SigningKey key = provider(batch.store_id_, in_force);
  if (is_new)
    batch.add({record_kind::genesis, {}, key_members(key, batch.store_id_), {{"signing_key", ""}}});
  else if (const std::string id = key.public_key().id(); id != in_force && !any_key)
    throw InputError("the signing key", Sentence("ledger.key"_key, {{"key", id.substr(0, 16)}}),
                     Sentence("ledger.key.of-store"_key, {{"key", in_force.substr(0, 16)}}));
  const std::uint64_t first = batch.next_seq();
  fill(batch);
  names_read_ = false;
  if (batch.next_seq() == first) return before.newest_head.value_or(SignedHead{});

  batch.flush();
  SignedHead head;
  head.store = batch.store_id_;
  head.n = batch.frontier_.size();
  head.root = batch.frontier_.root();
  head.utc = stamp.utc;
  head.previous = no_previous_head;
  if (before.newest_head) {
    SignedHead previous = *before.newest_head;
    previous.store = head.store;
    head.previous = previous.text_sha256();
  }
  head.sign(key);
  backend_->insert_head(head);
  backend_->set_state({head.n, batch.frontier_.bytes()});
  transaction.commit();
  return head;
}

LedgerRow Ledger::record(std::uint64_t seq) const {
  auto rows = backend_->records(seq, 1);
  if (seq == 0 || rows.empty() || rows[0].seq != seq)
    throw InputError("record " + std::to_string(seq), "none of that number"_word,
                     Sentence("ledger.record.numbers"_key, {{"last", backend_->snapshot().last_seq}}));
  return std::move(rows[0]);
}

void Ledger::each_record(std::uint64_t first, const std::function<bool(const LedgerRow&)>& each) const {
  for (std::uint64_t next = first;;) {
    const auto page = backend_->records(next, page_rows);
    for (const LedgerRow& row : page)
      if (!each(row)) return;
    if (page.size() < page_rows) return;
    next = page.back().seq + 1;
  }
}

std::vector<Digest> Ledger::leaves(std::uint64_t n) const {
  std::vector<Digest> leaves;
  if (n > 0)
    each_record(1, [&](const LedgerRow& row) {
      leaves.push_back(leaf_digest(row.body));
      return leaves.size() < n;
    });
  return leaves;
}

}  // namespace seamtakt
