#pragma once

#include <map>
#include <set>

#include "ledger/body/canonical_json.hpp"
#include "ledger/tree/unordered_set_hash.hpp"
#include "ledger/verify/verify.hpp"

namespace seamtakt {

/// Members that every body has, as text from the body; empty where missing.
struct BodyParts {
  std::string_view app, keys, kind, ref, seq, store, t, v, who, why;
};
BodyParts body_parts(const std::vector<CanonicalMember>& members);

/// One verification: what the parts know of one another.
class VerifyRun {
 public:
  VerifyRun(const Ledger& ledger, const VerifyOptions& options) : ledger_(ledger), options_(options) {}
  VerifyReport run();

 private:
  struct KeyState {
    std::string id;
    std::optional<PublicKey> key;
    bool vouched = true;  ///< by the key before it
  };
  /// An anchor that doesn't agree. Whether it is one at all is known once all heads were compared.
  struct DoubtedAnchor {
    const Anchor* anchor;
    LedgerProblem problem;             ///< where it is one
    std::optional<std::size_t> slips;  ///< characters in which it isn't that of `head`
    std::uint64_t head = 0;
  };

  void add_problem(std::uint64_t seq, std::uint64_t last_seq, Sentence sentence);
  void guarded(Word what, const std::function<void()>& part);

  // Records
  void check_records();
  bool take_row(const LedgerRowView& row);
  void check_row(const LedgerRowView& row);
  void check_leaf(const LedgerRowView& row, const std::optional<Digest>& stored);
  void check_body(const LedgerRowView& row);
  void check_place(const LedgerRowView& row, const BodyParts& parts);
  void check_stamp(const LedgerRowView& row, const BodyParts& parts);
  void check_meaning(const LedgerRowView& row);
  void check_key_record(const LedgerRowView& row, bool vouched);
  void check_signoff(const LedgerRowView& row);
  void check_time(const LedgerRowView& row);
  void check_person_key(const LedgerRowView& row);
  void check_key_owner(const LedgerRowView& row, const JsonNode& body);
  void check_covered(const LedgerRowView& row);
  void check_judgement(const LedgerRowView& row);
  std::string kind_of(const LedgerRowView& row, const JsonNode* number);
  void check_lookup_member(std::string_view text, std::uint64_t seq);
  void check_lookups();
  void check_persons();
  void check_raw_chunks();
  void check_raw_files();

  // Heads, verify_heads.cpp
  void next_page_of_heads();
  void check_heads_at(std::uint64_t n);
  void check_head(const SignedHead& head);
  void check_end();
  void check_pin();

  // Anchors, verify_anchors.cpp
  void check_anchors_at(std::uint64_t n);
  void check_anchors_beyond();
  void doubt(const Anchor& anchor, std::uint64_t seq, std::uint64_t last_seq, Sentence sentence);
  void settle_doubted_anchors();
  void refuse_mistyped_anchors();

  const Ledger& ledger_;
  const VerifyOptions& options_;
  VerifyReport report_;
  LedgerSnapshot snapshot_;
  std::string store_id_;
  MerkleFrontier frontier_;
  std::vector<CanonicalMember> members_;
  std::uint64_t next_seq_ = 1;
  const UnorderedSetHash::Key sum_key_ = UnorderedSetHash::random_key();
  UnorderedSetHash expected_lookups_{sum_key_};
  std::vector<std::string_view> lookups_of_body_;
  std::string last_time_;         ///< a good one
  bool lookups_complete_ = true;  ///< every body could be read

  std::vector<SignedHead> heads_;
  std::size_t head_at_ = 0;
  bool heads_ended_ = false, root_failed_ = false;
  SignedHead last_head_;
  std::vector<KeyState> keys_;
  std::size_t signing_key_ = 0;  ///< index of the key that signs heads now
  std::multimap<std::uint64_t, const Anchor*> anchors_;
  std::vector<DoubtedAnchor> doubted_;
  std::map<std::string, std::pair<std::uint64_t, std::string>> chunk_roots_;  ///< by log: record, root
  std::map<std::string, std::string> key_owners_;  ///< by a person's key: the name's digest it is bound to
  std::map<std::string, std::uint64_t> problems_of_sort_;
};

}  // namespace seamtakt
