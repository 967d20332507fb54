// Anchors kept outside against what the store has.
#include <algorithm>

#include "base/error.hpp"
#include "ledger/verify/verify_run.hpp"

namespace seamtakt {

namespace {

/// An anchor that differs from a head of the store in so few of its some 310 characters is that head's, with
/// slips of whoever typed it: no other records have a root and a signature so near (common practice, no
/// source).
constexpr std::size_t most_slips = 16;

std::size_t differences(std::string_view a, std::string_view b) {
  const std::size_t common = std::min(a.size(), b.size());
  std::size_t count = std::max(a.size(), b.size()) - common;
  for (std::size_t i = 0; i < common; ++i) count += a[i] != b[i];
  return count;
}

/// Characters in which an anchor isn't that of the head.
std::size_t slips(const Anchor& anchor, const SignedHead& head) {
  return differences(anchor.store, head.store) +
         differences(std::to_string(anchor.n), std::to_string(head.n)) +
         differences(hex(anchor.root), hex(head.root)) + differences(anchor.utc, head.utc) +
         differences(anchor.key_id, head.key_id) + differences(hex(anchor.signature), hex(head.signature));
}

}  // namespace

void VerifyRun::check_anchors_at(std::uint64_t n) {
  const auto range = anchors_.equal_range(n);
  for (auto at = range.first; at != range.second; ++at) {
    const Anchor& anchor = *at->second;
    const std::uint64_t first = report_.anchored_to + 1;
    if (anchor.store != store_id_) {
      doubt(anchor, 0, 0, Sentence("verify.anchor.other-store"_key, {{"anchor", anchor.where}}));
    } else if (anchor.root != frontier_.root()) {
      doubt(anchor, first, n,
            Sentence("verify.anchor.other-root"_key, {{"anchor", anchor.where}, {"records", n}}));
    } else if (last_head_.n == n && (last_head_.utc != anchor.utc || last_head_.key_id != anchor.key_id ||
                                     last_head_.signature != anchor.signature)) {
      doubt(anchor, first, n,
            Sentence("verify.anchor.other-head"_key, {{"anchor", anchor.where}, {"records", n}}));
    } else {
      report_.anchored_to = std::max(report_.anchored_to, n);
    }
  }
}

void VerifyRun::check_anchors_beyond() {
  const std::uint64_t count = next_seq_ - 1;
  for (auto at = anchors_.upper_bound(count); at != anchors_.end(); ++at) {
    const Anchor& anchor = *at->second;
    if (anchor.store != store_id_)
      doubt(anchor, 0, 0, Sentence("verify.anchor.other-store"_key, {{"anchor", anchor.where}}));
    else
      doubt(anchor, count + 1, anchor.n,
            Sentence("verify.anchor.more"_key, {{"anchor", anchor.where}, {"records", anchor.n}}));
  }
}

void VerifyRun::doubt(const Anchor& anchor, std::uint64_t seq, std::uint64_t last_seq, Sentence sentence) {
  doubted_.push_back({&anchor, {seq, last_seq, std::move(sentence)}, {}, 0});
}

void VerifyRun::settle_doubted_anchors() {
  if (doubted_.empty()) return;
  for (std::uint64_t last = 0;;) {
    const auto page = ledger_.backend().heads(last, page_rows);
    for (SignedHead head : page) {
      head.store = store_id_;
      for (DoubtedAnchor& doubted : doubted_)
        if (const std::size_t count = slips(*doubted.anchor, head); count <= most_slips) {
          doubted.slips = count;
          doubted.head = head.n;
        }
    }
    if (page.size() < page_rows || page.back().n <= last) break;  // a damaged tree may lead in a circle
    last = page.back().n;
  }
  for (DoubtedAnchor& doubted : doubted_)
    if (!doubted.slips)
      add_problem(doubted.problem.seq, doubted.problem.last_seq, std::move(doubted.problem.sentence));
}

void VerifyRun::refuse_mistyped_anchors() {
  for (const DoubtedAnchor& doubted : doubted_) {
    if (!doubted.slips) continue;
    const Sentence why("anchor.mistyped"_key, {{"count", *doubted.slips}, {"records", doubted.head}});
    const Sentence found("anchor.not-one"_key, {{"why", why}});
    // It says nothing of the store, neither good nor bad; what else is known to be bad is said first.
    if (report_.trusted) throw InputError(doubted.anchor->where, found, "the anchor as it was printed"_word);
    report_.warnings.push_back(
        Sentence("verify.anchor.mistyped"_key, {{"anchor", doubted.anchor->where}, {"what", found}}));
  }
}

}  // namespace seamtakt
