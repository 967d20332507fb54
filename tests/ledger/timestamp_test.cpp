// Time stamp records that don't say what their authority said: both verifiers see each, however well the
// store itself is signed.
#include "ledger/body/timestamp.hpp"

#include <gtest/gtest.h>

#include <fstream>

#include "base/error.hpp"
#include "store_fixture.hpp"
#include "support/file_bytes.hpp"
#include "support/time_authority.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class TimestampRecord : public testing::Test {
 protected:
  void SetUp() override {
    ASSERT_TRUE(authority_.works());
    add(some_pass(1));
    add(some_pass(2));
  }
  SignedHead head() {
    SignedHead head = *ledger_.backend().snapshot().newest_head;
    head.store = ledger_.store_id();
    return head;
  }
  void add(const LedgerEntry& entry) {
    ledger_.write(keys_.provider(), stamp(at_++), [&](LedgerBatch& batch) { batch.add(entry); });
  }
  /// The newest head, stamped.
  Timestamp stamped(bool with_certificates = true) {
    std::ofstream(folder_ / "q", std::ios::binary) << time_query(*digest_from_hex(head().text_sha256()));
    EXPECT_TRUE(authority_.reply(folder_ / "q", folder_ / "r"));
    return timestamp_of(ledger_, bytes_of(folder_ / "r"),
                        with_certificates ? bytes_of(authority_.root()) : "", "reply");
  }
  static LedgerEntry with(LedgerEntry entry, const std::string& from, const std::string& to) {
    std::string& results = entry.members.at(0).second;
    const std::size_t at = results.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    if (at != std::string::npos) results.replace(at, from.size(), to);
    return entry;
  }
  void expect_bad(std::uint64_t seq) {
    const VerifyReport report = verified(uri_);
    EXPECT_FALSE(report.trusted);
    EXPECT_EQ(report.first_bad_seq(), seq) << problems_text(report);
    if (const int second = second_verdict(folder_ / "store.sqlite", {}, folder_); second >= 0) {
      EXPECT_EQ(second, 1) << "reference/verify_log.py";
    }
  }

  ScratchFolder folder_;
  std::string uri_ = "sqlite:" + (folder_ / "store.sqlite");
  Ledger ledger_ = Ledger::open(uri_, {StoreOpening::For::writing, true, false});
  KeyRing keys_;
  int at_ = 0;
  TimeAuthority authority_{folder_ / "authority"}, other_{folder_ / "other"};
};

}  // namespace

TEST_F(TimestampRecord, holds_as_it_was_made) {
  const Timestamp timestamp = stamped();
  EXPECT_EQ(timestamp.head.n, 3u);
  add(some_pass(3));
  add(timestamp_entry(timestamp));
  const VerifyReport report = verified(uri_);
  EXPECT_TRUE(report.trusted) << problems_text(report);
  ASSERT_GE(report.warnings.size(), 1u);
  EXPECT_EQ(report.warnings[0].key(), "verify.time.kept"_key);
  if (const int second = second_verdict(folder_ / "store.sqlite", {}, folder_); second >= 0) {
    EXPECT_EQ(second, 0) << "reference/verify_log.py";
  }
}

TEST_F(TimestampRecord, of_another_head_is_seen) {
  const Timestamp timestamp = stamped();
  add(with(timestamp_entry(timestamp), "\"n\": 3", "\"n\": 2"));
  expect_bad(4);
}

TEST_F(TimestampRecord, of_a_head_that_is_not_there_is_seen) {
  add(with(timestamp_entry(stamped()), "\"n\": 3", "\"n\": 4"));
  expect_bad(4);
}

TEST_F(TimestampRecord, with_another_time_is_seen) {
  const Timestamp timestamp = stamped();
  const std::string time = read_time_reply(timestamp.reply_der, "reply").utc;
  add(with(timestamp_entry(timestamp), time, "2025-01-02T03:04:05Z"));
  expect_bad(4);
}

TEST_F(TimestampRecord, with_a_digest_of_its_own_is_seen) {
  const Timestamp timestamp = stamped();
  add(with(timestamp_entry(timestamp), timestamp.head.text_sha256(), std::string(64, '0')));
  expect_bad(4);
}

TEST_F(TimestampRecord, altered_after_the_authority_signed_is_seen) {
  Timestamp timestamp = stamped();
  std::string altered = timestamp.reply_der;
  altered[altered.size() - 5] = static_cast<char>(altered[altered.size() - 5] ^ 1);
  add(with(timestamp_entry(timestamp), hex(timestamp.reply_der), hex(altered)));
  expect_bad(4);
}

TEST_F(TimestampRecord, with_certificates_that_do_not_vouch_for_it_is_seen) {
  Timestamp timestamp = stamped();
  timestamp.trusted_pem = bytes_of(other_.root());
  add(timestamp_entry(timestamp));
  expect_bad(4);
}

TEST_F(TimestampRecord, without_certificates_is_trusted_by_those_of_the_verifier_alone) {
  add(timestamp_entry(stamped(false)));
  const VerifyReport report = verified(uri_);
  EXPECT_TRUE(report.trusted) << problems_text(report);
  EXPECT_EQ(report.warnings.at(0).key(), "verify.time.unknown"_key);
  VerifyOptions options;
  options.trusted_time_pem = bytes_of(authority_.root());
  const VerifyReport vouched = verify_ledger(ledger_, options);
  EXPECT_TRUE(vouched.trusted) << problems_text(vouched);
  EXPECT_EQ(vouched.warnings.at(0).key(), "verify.time.vouched-for"_key);
  options.trusted_time_pem = bytes_of(other_.root());
  EXPECT_FALSE(verify_ledger(ledger_, options).trusted);
}

TEST_F(TimestampRecord, of_a_text_that_is_no_reply_is_refused) {
  for (const std::string& text :
       {std::string(), std::string("text"), std::string(3000, '\x30'), bytes_of(authority_.root())}) {
    EXPECT_THROW(read_time_reply(text, "reply"), InputError);
    EXPECT_THROW(read_time_query(text, "query"), InputError);
  }
}
