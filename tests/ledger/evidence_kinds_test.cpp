// The kinds of records that tell whose a key is, judge a pass again, or cover many passes: what breaks their
// rules is seen by both verifiers.
#include <gtest/gtest.h>

#include "base/json/json_writer.hpp"
#include "ledger/body/person_key.hpp"
#include "ledger/body/signoff.hpp"
#include "store_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// A store whose records 2 to 4 are passes and whose record 5 is a calibration.
class EvidenceKinds : public testing::Test {
 protected:
  EvidenceKinds() : ledger_(Ledger::open(uri_, {StoreOpening::For::writing, true, false})) {
    for (int i = 0; i < 3; ++i) add(some_pass(i));
    add({record_kind::calibration, {}, {{"results", "{\"instrument\":\"I\"}"}}, {{"instrument", "I"}}});
  }
  std::uint64_t add(const LedgerEntry& entry, const std::string& who = "anna") {
    std::uint64_t seq = 0;
    ledger_.write(keys_.provider(), stamp(at_++, who), [&](LedgerBatch& batch) { seq = batch.add(entry); });
    return seq;
  }
  std::uint64_t bind(const SigningKey& key, const std::string& who) {
    std::uint64_t seq = 0;
    ledger_.write(keys_.provider(), stamp(at_++, who), [&](LedgerBatch& batch) {
      seq = batch.add({record_kind::person,
                       {},
                       person_key_members(key, batch.store_id(), batch.person(who)),
                       {{person_key_topic, key.public_key().id()}}});
    });
    return seq;
  }
  LedgerEntry signoff(const SigningKey& key, std::uint64_t about) {
    return {record_kind::signoff,
            about,
            signoff_members(key, ledger_.store_id(), about, leaf_digest(ledger_.record(about).body)),
            {{person_key_topic, key.public_key().id()}}};
  }
  static LedgerEntry judgement(std::uint64_t about, std::uint64_t calibration) {
    return {record_kind::judgement,
            about,
            {{"results", "{\"cause\":\"c\",\"calibration\":" + std::to_string(calibration) + "}"}},
            {}};
  }
  static LedgerEntry covering(std::uint64_t first, const std::string& records,
                              std::vector<std::pair<std::string, std::string>> keys) {
    return {record_kind::disposition,
            first,
            {{"results", "{\"cause\":\"c\",\"decision\":\"use-as-is\",\"records\":" + records + "}"}},
            std::move(keys)};
  }
  void expect_trusted() {
    const VerifyReport report = verified(uri_);
    EXPECT_TRUE(report.trusted) << problems_text(report);
    if (const int second = second_verdict(folder_ / "store.sqlite", {}, folder_); second >= 0) {
      EXPECT_EQ(second, 0);
    }
  }
  void expect_caught(std::uint64_t seq) {
    const VerifyReport report = verified(uri_);
    EXPECT_FALSE(report.trusted);
    EXPECT_EQ(report.first_bad_seq(), seq) << problems_text(report);
    if (const int second = second_verdict(folder_ / "store.sqlite", {}, folder_); second >= 0) {
      EXPECT_EQ(second, 1);
    }
  }

  ScratchFolder folder_;
  std::string uri_ = "sqlite:" + (folder_ / "store.sqlite");
  Ledger ledger_;
  KeyRing keys_;
  int at_ = 0;
};

}  // namespace

TEST_F(EvidenceKinds, that_keep_their_rules_are_trusted_by_both_verifiers) {
  const SigningKey key = SigningKey::generate();
  bind(key, "bea");
  add(signoff(key, 2), "bea");
  bind(SigningKey::generate(), "bea");
  bind(key, "bea");
  add(judgement(2, 5));
  add(covering(2, "[2]", {{"unit", "U0"}}));
  add(covering(2, "[2,3,4]", {{"unit", "U0"}, {"ref", "3"}, {"ref", "4"}}));
  expect_trusted();
  EXPECT_EQ(ledger_.person_name(owner_of_key(ledger_.backend(), key.public_key().id())), "bea");
  EXPECT_EQ(owner_of_key(ledger_.backend(), "nobody's"), "");
}

TEST_F(EvidenceKinds, a_second_name_with_a_bound_key_is_caught) {
  const SigningKey key = SigningKey::generate();
  bind(key, "bea");
  expect_caught(add(signoff(key, 2), "carl"));
}

TEST_F(EvidenceKinds, a_key_bound_to_two_names_is_caught) {
  const SigningKey key = SigningKey::generate();
  bind(key, "bea");
  expect_caught(bind(key, "carl"));
}

TEST_F(EvidenceKinds, a_binding_that_another_person_signed_for_is_caught) {
  const SigningKey key = SigningKey::generate();
  const auto members = person_key_members(key, ledger_.store_id(), std::string(64, '0'));
  expect_caught(add({record_kind::person, {}, members, {}}, "carl"));
}

TEST_F(EvidenceKinds, a_judgement_by_what_is_no_calibration_is_caught) {
  expect_caught(add(judgement(2, 3)));
}

TEST_F(EvidenceKinds, a_judgement_of_what_is_no_pass_is_caught) {
  expect_caught(add(judgement(5, 5)));
}

TEST_F(EvidenceKinds, a_disposition_that_hides_a_record_it_covers_is_caught) {
  expect_caught(add(covering(2, "[2,3,4]", {{"ref", "4"}})));
}

TEST_F(EvidenceKinds, a_disposition_that_points_at_a_record_it_does_not_cover_is_caught) {
  expect_caught(add(covering(2, "[2,3]", {{"ref", "3"}, {"ref", "4"}})));
}

TEST_F(EvidenceKinds, a_disposition_that_covers_records_out_of_order_is_caught) {
  expect_caught(add(covering(3, "[3,2]", {{"ref", "2"}})));
}
