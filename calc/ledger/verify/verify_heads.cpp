#include <algorithm>

#include "ledger/verify/verify_run.hpp"

namespace seamtakt {

namespace {

Sentence span_sentence(std::uint64_t first, std::uint64_t last) {
  return first == last ? Sentence("ledger.record"_key, {{"record", first}})
                       : Sentence("ledger.records"_key, {{"first", first}, {"last", last}});
}

}  // namespace

void VerifyRun::next_page_of_heads() {
  if (head_at_ < heads_.size() || heads_ended_) return;
  heads_ = ledger_.backend().heads(last_head_.n, page_rows);
  head_at_ = 0;
  // A head of a commit that came after this verification began isn't its matter.
  std::erase_if(heads_, [&](const SignedHead& head) {
    return snapshot_.newest_head && head.n > snapshot_.newest_head->n;
  });
  heads_ended_ = heads_.size() < page_rows;
}

void VerifyRun::check_heads_at(std::uint64_t n) {
  next_page_of_heads();
  while (head_at_ < heads_.size() && heads_[head_at_].n <= n) {
    SignedHead head = heads_[head_at_++];
    head.store = store_id_;
    if (head.n < n)
      add_problem(last_head_.n + 1, n, Sentence("verify.head.no-records"_key, {{"records", head.n}}));
    else
      check_head(head);
    last_head_ = head;
    next_page_of_heads();
  }
  check_anchors_at(n);
}

void VerifyRun::check_head(const SignedHead& head) {
  const std::uint64_t first = last_head_.n + 1;
  const auto bad = [&](Sentence sentence) { add_problem(first, head.n, std::move(sentence)); };
  ++report_.heads;
  const std::string previous = last_head_.n == 0 ? std::string(no_previous_head) : last_head_.text_sha256();
  if (head.previous != previous) bad(Sentence("verify.head.before"_key, {{"records", head.n}}));
  if (head.root != frontier_.root() && !root_failed_) {
    bad(Sentence("verify.head.root"_key, {{"records", span_sentence(first, head.n)}}));
    root_failed_ = true;
  }
  const auto time = utc_seconds(head.utc);
  const auto before = last_head_.n > 0 ? utc_seconds(last_head_.utc) : std::nullopt;
  if (!time) bad("its head has no time"_word);
  if (time && before && *time < *before - clock_tolerance_s)
    bad(Sentence("verify.head.older"_key, {{"time", head.utc}, {"before", last_head_.utc}}));
  // A key record is signed by the key before it, and its own key signs from the next head on; a lost key
  // can't sign, so there the new one does.
  std::size_t key = signing_key_;
  while (key + 1 < keys_.size() && !keys_[key + 1].vouched) ++key;
  if (keys_.empty() || !keys_[key].key || keys_[key].id != head.key_id)
    bad(Sentence("verify.head.key"_key, {{"key", head.key_id.substr(0, 16)}}));
  else if (!keys_[key].key->verifies(head.text(), head.signature))
    bad("its head's signature doesn't hold"_word);
  if (!keys_.empty()) signing_key_ = keys_.size() - 1;
}

void VerifyRun::check_end() {
  const std::uint64_t count = next_seq_ - 1;
  next_page_of_heads();
  if (head_at_ < heads_.size())
    add_problem(count + 1, heads_[head_at_].n,
                Sentence("verify.records.missing"_key, {{"records", heads_[head_at_].n}}));
  if (last_head_.n < count && head_at_ >= heads_.size())
    add_problem(last_head_.n + 1, count,
                last_head_.n == 0 ? "no head was signed"_word : "no signed head covers them"_word);
  if (snapshot_.state.n != count)
    add_problem(std::min(snapshot_.state.n, count) + 1, std::max(snapshot_.state.n, count),
                Sentence("verify.state.count"_key, {{"stated", snapshot_.state.n}, {"count", count}}));
  else if (snapshot_.state.frontier != frontier_.bytes() && !root_failed_ && options_.from <= 1)
    add_problem(0, 0, "the state isn't that of the tree's last record (table state)"_word);
  check_anchors_beyond();
  check_pin();
}

void VerifyRun::check_pin() {
  if (options_.pinned_key_id.empty()) return;
  // The newest head's key, or one from which a chain of keys signed by those before leads to it.
  bool reaches = false;
  for (std::size_t i = 0; i <= signing_key_ && i < keys_.size(); ++i)
    reaches = keys_[i].id == options_.pinned_key_id || (reaches && keys_[i].vouched);
  report_.pinned = reaches;
  if (!reaches)
    add_problem(0, 0, Sentence("verify.key.not-pinned"_key, {{"key", options_.pinned_key_id.substr(0, 16)}}));
}

}  // namespace seamtakt
