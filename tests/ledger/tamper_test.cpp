// Every way of altering a store that we could think of: each must be seen, the first bad record named, and
// the second verifier must say the same.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/body/signoff.hpp"
#include "ledger/store/sqlite.hpp"
#include "store_fixture.hpp"
#include "tamper_cases.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Tamper : public testing::Test {
 protected:
  void SetUp() override { sample_ = make_sample(uri("good")); }
  std::string file(const std::string& name) { return folder_ / (name + ".sqlite"); }
  std::string uri(const std::string& name) { return "sqlite:" + file(name); }
  std::vector<ForgedCommit> commits() {
    return take_apart(uri("good"), first_key(), sample_.keys.current(), 12);
  }
  SigningKey first_key() {
    const std::string id = body_text(body_of(Ledger::open(uri("good"), {}).record(1)), "results.key_id");
    return sample_.keys.provider()("", id);
  }
  /// The store is seen to be altered, by both verifiers.
  void expect_caught(const std::string& name, std::uint64_t first_bad,
                     const std::vector<std::string>& anchors = {}, const SigningKey* pinned = nullptr) {
    expect_caught_by_first(name, first_bad, anchors, pinned);
    expect_second(name, second_verdict(file(name), anchors, folder_,
                                       pinned != nullptr ? pinned->public_key().pem() : ""));
  }
  static void expect_second(const std::string& name, int verdict) {
    EXPECT_NE(verdict, 0) << name << ": the second verifier trusts it";
    EXPECT_LE(verdict, 1) << name << ": the second verifier broke";
  }
  void expect_caught_by_first(const std::string& name, std::uint64_t first_bad,
                              const std::vector<std::string>& anchors = {},
                              const SigningKey* pinned = nullptr) {
    const std::string id = pinned != nullptr ? pinned->public_key().id() : "";
    VerifyReport report;
    try {
      report = verified(uri(name), anchors, id);
    } catch (const std::exception& error) {
      report.problems.push_back({0, 0, Sentence::verbatim(error.what())});
    }
    EXPECT_FALSE(report.trusted) << name;
    if (first_bad != any_seq) {
      EXPECT_EQ(report.first_bad_seq(), first_bad) << name << "\n" << problems_text(report);
    }
  }
  /// Puts a record's body text in place of another one in a commit and signs all again.
  void forge(const std::string& name, const std::function<void(std::vector<ForgedCommit>&)>& change) {
    auto list = commits();
    change(list);
    put_together(uri(name), list);
  }

  ScratchFolder folder_{ScratchFolder::On::memory};
  SampleStore sample_;
};

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  const auto at = text.find(from);
  EXPECT_NE(at, std::string::npos) << from;
  return at == std::string::npos ? text : text.replace(at, from.size(), to);
}

/// The last record's body as a new one of the next number.
std::string next_body(const std::vector<ForgedCommit>& list, const std::string& kind,
                      const std::string& extra = "") {
  std::string body = list.back().bodies.back();
  JsonNode tree = parse_json(body, "body");
  std::string text = "{\"v\":2,\"kind\":\"" + kind + "\",\"seq\":18,\"store\":\"" + body_text(tree, "store") +
                     "\",\"t\":\"2026-03-02T06:30:00Z\",\"who\":\"\",\"why\":\"\",\"app\":\"\",\"keys\":[]" +
                     extra + "}";
  return canonical_json(parse_json(text, "body"));
}

}  // namespace

TEST(FirstBadRecord, is_the_one_that_is_known_rather_than_the_first_under_its_head) {
  VerifyReport report;
  EXPECT_EQ(report.summary(), "NOT TRUSTED");
  report.problems = {{1, 191, Sentence::verbatim("the head of 191")},
                     {1, 191, Sentence::verbatim("an anchor")}};
  EXPECT_EQ(report.summary(), "NOT TRUSTED: a record from 1 to 191 is bad");
  report.problems.push_back({60, 60, Sentence::verbatim("its body gives another leaf")});
  report.problems.push_back({70, 0, Sentence::verbatim("is missing")});
  EXPECT_EQ(report.summary(), "NOT TRUSTED: first bad record 60");
  report.problems.push_back(
      {20, 40, Sentence::verbatim("the head of 40, over records that are as they should be")});
  EXPECT_EQ(report.summary(), "NOT TRUSTED: a record from 20 to 40 is bad");
}

TEST_F(Tamper, the_unaltered_store_is_trusted_by_both_verifiers) {
  const VerifyReport report =
      verified(uri("good"), sample_.anchors, sample_.keys.current().public_key().id());
  EXPECT_TRUE(report.trusted) << problems_text(report);
  EXPECT_EQ(report.records, 17u);
  EXPECT_EQ(report.heads, 8u);
  EXPECT_EQ(report.anchored_to, 17u);
  EXPECT_TRUE(report.pinned);
  EXPECT_TRUE(verified(uri("good"), {}, first_key().public_key().id()).pinned) << "the key change was signed";
  EXPECT_EQ(verified(uri("good")).summary().substr(0, 17), "OK but unanchored");
  const int second =
      second_verdict(file("good"), sample_.anchors, folder_, sample_.keys.current().public_key().pem());
  if (second < 0) GTEST_SKIP() << "no python3: the second verifier wasn't run";
  EXPECT_EQ(second, 0);
  put_together(uri("again"), commits());
  EXPECT_TRUE(verified(uri("again")).trusted) << "what forges stores in these tests makes true ones";
}

TEST_F(Tamper, every_edit_of_the_database_is_caught_by_both_verifiers) {
  std::vector<std::string> files;
  for (const TamperCase& each : tamper_cases()) {
    const std::string name = "bad" + std::to_string(files.size());
    std::filesystem::copy_file(file("good"), file(name));
    {
      Sqlite store(file(name), Sqlite::Mode::read_write);
      each.alter(store);
    }
    SCOPED_TRACE(each.name);
    expect_caught_by_first(name, each.first_bad);
    files.push_back(file(name));
  }
  EXPECT_GE(tamper_cases().size(), 45u);
  files.push_back(file("good"));
  const std::vector<int> second = second_verdicts(files, {}, folder_);
  if (second.empty()) GTEST_SKIP() << "no python3: the second verifier wasn't run";
  for (std::size_t i = 0; i < tamper_cases().size(); ++i) expect_second(tamper_cases()[i].name, second[i]);
  EXPECT_EQ(second.back(), 0) << "many at once mustn't be taken for altered because one is";
}

TEST_F(Tamper, damage_to_the_file_is_caught) {
  const auto size = std::filesystem::file_size(file("good"));
  const auto damage = [&](const char* name, const std::function<void(std::fstream&)>& change,
                          std::uintmax_t cut = 0) {
    SCOPED_TRACE(name);
    std::filesystem::copy_file(file("good"), file("bad"), std::filesystem::copy_options::overwrite_existing);
    {
      std::fstream bytes(file("bad"), std::ios::in | std::ios::out | std::ios::binary);
      change(bytes);
    }
    if (cut > 0) std::filesystem::resize_file(file("bad"), cut);
    expect_caught("bad", any_seq);
  };
  const auto nothing = [](std::fstream&) {};
  damage("cut to a half", nothing, size / 2);
  damage("cut by a page", nothing, size - 4096);
  damage("cut by a byte", nothing, size - 1);
  damage("a page zeroed", [&](std::fstream& bytes) {
    bytes.seekp(4096);
    bytes << std::string(4096, '\0');
  });
  damage("two pages swapped", [&](std::fstream& bytes) {
    std::string a(4096, ' '), b(4096, ' ');
    bytes.seekg(4096);
    bytes.read(a.data(), 4096).read(b.data(), 4096);
    bytes.seekp(4096);
    bytes << b << a;
  });
  damage("no database at all", [&](std::fstream& bytes) { bytes << std::string(100, 'x'); });
}

TEST_F(Tamper, what_a_thief_of_the_key_writes_against_the_rules_is_caught) {
  forge("clock", [](auto& list) { list.back().utc = minute(-60); });
  expect_caught("clock", 13);
  forge("forward", [](auto& list) { list.back().bodies.push_back(next_body(list, "note", ",\"ref\":18")); });
  expect_caught("forward", 18);
  forge("genesis", [](auto& list) { list.back().bodies.push_back(next_body(list, "genesis")); });
  expect_caught("genesis", 18);
  forge("kind", [](auto& list) { list.back().bodies.push_back(next_body(list, "gift")); });
  expect_caught("kind", 18);
  forge("number", [](auto& list) {
    list.back().bodies.push_back(replaced(next_body(list, "note"), "\"seq\":18", "\"seq\":19"));
  });
  expect_caught("number", 18);
  forge("store", [](auto& list) {
    std::string& body = list.back().bodies.back();
    const auto at = body.find("\"store\":\"") + 9;
    body[at] = body[at] == '0' ? '1' : '0';
  });
  expect_caught("store", 17);
  forge("version", [](auto& list) {
    list.back().bodies.back() = replaced(list.back().bodies.back(), "\"v\":3", "\"v\":4");
  });
  expect_caught("version", 17);
}

TEST_F(Tamper, sign_offs_and_keys_that_nobody_signed_are_caught) {
  forge("signoff", [](auto& list) {
    std::string& body = list[6].bodies[0];
    const auto at = body.find("\"signature\":\"") + 13;
    body[at] = body[at] == '0' ? '1' : '0';
  });
  expect_caught("signoff", 12);
  forge("signoff-moved",
        [](auto& list) { list[6].bodies[0] = replaced(list[6].bodies[0], "\"ref\":5", "\"ref\":4"); });
  expect_caught("signoff-moved", 12);
  const SigningKey thief = SigningKey::generate();
  forge("rotation", [&](auto& list) {
    const std::string store = body_text(parse_json(list[0].bodies[0], "body"), "store");
    std::string body = next_body(list, "key", ",\"results\":" + key_members(thief, store)[0].second);
    list.push_back({{body}, minute(30), thief, ""});
  });
  expect_caught("rotation", 18);
  forge("wrong-key", [&](auto& list) { list.back().key = thief; });
  expect_caught("wrong-key", 13);
  forge("wrong-key-named-right", [&](auto& list) {
    list.back().key_id = list.back().key.public_key().id();
    list.back().key = thief;
  });
  expect_caught("wrong-key-named-right", 13);
  forge("old-key", [&](auto& list) { list.back().key = list.front().key; });
  expect_caught("old-key", 13);
}

TEST_F(Tamper, whole_stores_that_agree_with_themselves_are_caught_by_what_is_kept_outside) {
  std::filesystem::copy_file(file("good"), file("backup"));
  {
    Sqlite store(file("backup"), Sqlite::Mode::read_write);
    unguarded(store, "SELECT 1");
  }
  forge("cut", [](auto& list) { list.resize(5); });
  EXPECT_TRUE(verified(uri("cut")).trusted) << "nothing inside shows a cut";
  expect_caught("cut", 11, {sample_.anchors.back()});
  expect_caught("cut", 11, sample_.anchors);
  EXPECT_TRUE(verified(uri("cut"), {sample_.anchors[3]}).trusted) << "an anchor from before still agrees";

  forge("rewritten", [](auto& list) { list[2].bodies[0] = replaced(list[2].bodies[0], "0.505", "0.405"); });
  EXPECT_TRUE(verified(uri("rewritten")).trusted) << "nothing inside shows a rewrite with the stolen key";
  expect_caught("rewritten", 8, sample_.anchors);
  expect_caught("rewritten", 1, {sample_.anchors.back()});

  const SigningKey thief = SigningKey::generate();
  const auto taken_over = [&](auto& list) {
    const std::string store = body_text(parse_json(list[0].bodies[0], "body"), "store");
    JsonNode genesis = parse_json(list[0].bodies[0], "genesis");
    for (auto& [key, value] : genesis.members)
      if (key == "results") value = parse_json(key_members(thief, store)[0].second, "key");
    list[0].bodies[0] = canonical_json(genesis);
    list.resize(5);
    for (ForgedCommit& commit : list) commit.key = thief;
  };
  forge("taken-over", taken_over);
  EXPECT_TRUE(verified(uri("taken-over")).trusted) << "nothing inside shows another key";
  const SigningKey honest = first_key();
  expect_caught("taken-over", any_seq, {}, &honest);
  expect_caught("taken-over", 1, {sample_.anchors[4]});

  make_sample(uri("other"));
  expect_caught("other", any_seq, {sample_.anchors.back()});
}

TEST_F(Tamper, an_edited_anchor_is_none_and_says_nothing_of_the_store) {
  const auto edited = [&](std::size_t word) {
    std::string line = sample_.anchors.back();
    std::size_t at = 0;
    for (; word > 0; --word) at = line.find(' ', at) + 1;
    at += 3;
    line[at] = line[at] == '1' ? '2' : '1';
    return line;
  };
  for (const std::size_t word : {0u, 2u, 3u, 4u, 5u}) {
    SCOPED_TRACE(word);
    EXPECT_THROW(verified(uri("good"), {edited(word)}), InputError);
    const int second = second_verdict(file("good"), {edited(word)}, folder_);
    EXPECT_TRUE(second == 2 || second == -1) << second;
  }
}

TEST_F(Tamper, a_lost_key_is_replaced_only_where_an_anchor_or_the_new_key_vouches) {
  {
    Ledger ledger = Ledger::open(uri("good"), {StoreOpening::For::writing, false, false});
    const SigningKey next = SigningKey::generate();
    ledger.write_with_lost_key(next, stamp(40), [&](LedgerBatch& batch) {
      batch.add({record_kind::key_revoke, {}, key_members(next, batch.store_id()), {{"signing_key", ""}}});
    });
    const SigningKey old = sample_.keys.current();
    sample_.keys.add(next);
    ledger.write(sample_.keys.provider(), stamp(41), [](LedgerBatch& batch) { batch.add(some_pass(20)); });
    EXPECT_TRUE(verified(uri("good"), sample_.anchors).trusted);
    EXPECT_FALSE(verified(uri("good")).warnings.empty());
    EXPECT_TRUE(verified(uri("good"), {}, next.public_key().id()).trusted);
    expect_caught("good", any_seq, {}, &old);
  }
  EXPECT_LE(second_verdict(file("good"), {}, folder_), 0);
}

TEST_F(Tamper, a_changed_raw_log_is_named_with_its_first_damaged_part) {
  const auto raw = [&](const std::string& bytes) {
    std::ofstream(folder_ / "log.csv", std::ios::binary) << bytes;
    return verified(uri("good"), {}, {}, folder_.path());
  };
  EXPECT_TRUE(raw(sample_.raw_bytes).trusted);
  std::string bytes = sample_.raw_bytes;
  bytes[2 * (1 << 20) + 77] ^= 1;
  const VerifyReport flipped = raw(bytes);
  EXPECT_EQ(flipped.first_bad_seq(), 2u);
  EXPECT_NE(problems_text(flipped).find("MiB 3"), std::string::npos) << problems_text(flipped);
  EXPECT_FALSE(raw(sample_.raw_bytes.substr(0, 1 << 20)).trusted);
  EXPECT_FALSE(raw("").trusted);
  std::filesystem::remove(folder_ / "log.csv");
  const VerifyReport absent = verified(uri("good"), {}, {}, folder_.path());
  EXPECT_TRUE(absent.trusted);
  EXPECT_EQ(absent.warnings.size(), 1u);
}

TEST_F(Tamper, an_erased_name_leaves_the_records_whole) {
  {
    Sqlite store(file("good"), Sqlite::Mode::read_write);
    store.run("DELETE FROM person WHERE name = 'anna'");
  }
  EXPECT_TRUE(verified(uri("good"), sample_.anchors).trusted);
}
