#pragma once

#include <string>
#include <vector>

#include "ledger/store/ledger.hpp"
#include "ledger/verify/verify.hpp"
#include "support/sanitized.hpp"
#include "support/scratch_folder.hpp"

namespace seamtakt::test {

/// "2026-03-02T06:00:00Z" and so many minutes later.
std::string minute(int count);

WriteStamp stamp(int at_minute, const std::string& who = "anna");

/// Gives the keys of test stores from memory.
class KeyRing {
 public:
  KeyProvider provider();
  const SigningKey& current() const { return keys_.back(); }
  void add(const SigningKey& key) { keys_.push_back(key); }

 private:
  std::vector<SigningKey> keys_;
};

/// A pass as an importer writes it, with a body of its own.
LedgerEntry some_pass(int number);

/// A correction of a record by what holds now.
LedgerEntry correction_of(const Ledger& ledger, std::uint64_t seq, const std::string& member,
                          const std::string& value);

/// A store of a few commits with every sort of thing in it: passes, a correction, a sign-off, a key change, a
/// raw log. Its anchors after each commit.
struct SampleStore {
  KeyRing keys;
  std::vector<std::string> anchors;
  std::vector<std::uint64_t> commit_ends;
  std::string raw_name, raw_bytes, raw_sha256;
};
SampleStore make_sample(const std::string& uri);

/// A store's commits in parts, to be reassembled as someone would who has (or lacks) a key.
struct ForgedCommit {
  std::vector<std::string> bodies;
  std::string utc;
  SigningKey key;
  std::string key_id;  ///< empty: the key's own
};
std::vector<ForgedCommit> take_apart(const std::string& uri, const SigningKey& first, const SigningKey& later,
                                     std::uint64_t later_from);
void put_together(const std::string& uri, const std::vector<ForgedCommit>& commits);

VerifyReport verified(const std::string& uri, const std::vector<std::string>& anchors = {},
                      const std::string& pinned = {}, const std::string& raw_folder = {});

/// A store as its bundle.
std::string bundle_of(const std::string& uri);

/// All problems, a line each.
std::string problems_text(const VerifyReport& report);

/// Exit code of the second verifier; -1 where there is no Python, and for seven calls of eight under the
/// sanitizers, which see nothing of it.
int second_verdict(const std::string& file, const std::vector<std::string>& anchors,
                   const ScratchFolder& folder, const std::string& pinned_pem = {});
/// The same of many stores, in one run of Python; empty where there is none, 99 for each store that it gave
/// no verdict on.
std::vector<int> second_verdicts(const std::vector<std::string>& files,
                                 const std::vector<std::string>& anchors, const ScratchFolder& folder);

}  // namespace seamtakt::test
