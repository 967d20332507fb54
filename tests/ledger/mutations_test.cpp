// Stores, bundles and anchors changed at random: whatever was done, both verifiers say the same, nothing that
// was signed passes with another content, and an intact store is never called untrusted.
#include "mutations.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/store/sqlite.hpp"
#include "store_fixture.hpp"
#include "writers.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Mutated : public testing::Test {
 protected:
  void SetUp() override {
    sample_ = make_sample(uri("good"));
    signed_ = signed_content(uri("good"));
    good_ = read_file(file("good"), 64u << 20);
    export_bundle(Ledger::open(uri("good"), {}), {}, [&](std::string_view piece) { bundle_ += piece; });
  }
  std::string file(const std::string& name) const { return folder_ / (name + ".sqlite"); }
  std::string uri(const std::string& name) const { return "sqlite:" + file(name); }

  /// All that the signatures are about, to the byte.
  static std::string signed_content(const std::string& uri) {
    const Ledger ledger = Ledger::open(uri, {});
    std::string text;
    for (const LedgerRow& row : ledger.backend().records(1, 1000)) text += row.body + "\n";
    for (SignedHead& head : ledger.backend().heads(0, 1000)) {
      head.store = ledger.store_id();
      text += head.text() + hex(head.signature) + "\n";
    }
    return text;
  }
  bool is_beginning(const std::string& uri) const {
    const Ledger good = Ledger::open(this->uri("good"), {}), other = Ledger::open(uri, {});
    const auto bodies = good.backend().records(1, 1000), others = other.backend().records(1, 1000);
    return others.size() <= bodies.size() &&
           std::equal(others.begin(), others.end(), bodies.begin(),
                      [](const LedgerRow& a, const LedgerRow& b) { return a.body == b.body; });
  }
  static bool is_trusted(const std::string& uri) {
    try {
      return verify_store(uri, {}, {}).trusted;
    } catch (const InputError&) {
    } catch (const std::system_error&) {
    }
    return false;
  }
  bool imports(const std::string& bundle, const std::string& name) const {
    std::filesystem::remove(file(name));
    std::istringstream in(bundle);
    try {
      const auto backend = open_ledger_backend(uri(name), {StoreOpening::For::writing, true, false});
      import_bundle(*backend, in, "bundle");
      return true;
    } catch (const InputError&) {
      return false;
    }
  }
  /// Rounds of the long set make some 20,000 changes in all, those of the short one a few hundred.
  static int rounds() { return long_tests() ? 100 : sanitized ? 1 : 2; }

  const std::uint64_t seed_ = std::random_device()();
  ScratchFolder folder_{ScratchFolder::On::memory};
  SampleStore sample_;
  std::string signed_, good_, bundle_;
};

constexpr std::size_t a_round = 100;

}  // namespace

TEST_F(Mutated, stores_have_one_verdict_from_both_verifiers) {
  SCOPED_TRACE("seed " + std::to_string(seed_));
  Mutations mutations(seed_);
  std::size_t untrusted = 0;
  for (int round = 0; round < rounds(); ++round) {
    std::vector<std::string> how, files;
    std::vector<bool> trusted;
    for (std::size_t i = 0; i < a_round; ++i) {
      const std::string name = "m" + std::to_string(i);
      std::ofstream(file(name), std::ios::binary) << good_;
      how.push_back(mutations.change_store(file(name)));
      files.push_back(file(name));
      trusted.push_back(is_trusted(uri(name)));
      untrusted += !trusted.back();
      if (trusted.back()) {
        EXPECT_EQ(signed_content(uri(name)), signed_) << "silent: " << how.back();
      }
    }
    files.push_back(file("good"));
    const std::vector<int> second = second_verdicts(files, {}, folder_);
    if (second.empty()) GTEST_SKIP() << "no python3: the second verifier wasn't run";
    EXPECT_EQ(second.back(), 0);
    for (std::size_t i = 0; i < a_round; ++i) {
      EXPECT_TRUE(second[i] == 0 || second[i] == 1) << "the second verifier broke: " << how[i];
      // A change in the file's free space or in a counter of the library may be seen by one of them alone.
      const bool may_differ = how[i].starts_with("bytes");
      if (!may_differ) {
        EXPECT_EQ(trusted[i], second[i] == 0) << how[i];
      }
    }
  }
  EXPECT_GT(untrusted, a_round / 3) << "changes that change nothing prove nothing";
}

TEST_F(Mutated, bundles_are_taken_by_the_import_where_the_second_verifier_trusts_them) {
  SCOPED_TRACE("seed " + std::to_string(seed_));
  Mutations mutations(seed_ + 1);
  ASSERT_TRUE(imports(bundle_, "copy"));
  std::size_t refused = 0;
  for (int round = 0; round < rounds(); ++round) {
    std::vector<std::string> bundles, files;
    std::vector<bool> taken;
    for (std::size_t i = 0; i < a_round; ++i) {
      bundles.push_back(mutations.changed_bundle(bundle_));
      files.push_back(folder_ / ("m" + std::to_string(i) + ".jsonl"));
      std::ofstream(files.back(), std::ios::binary) << bundles.back();
      taken.push_back(imports(bundles.back(), "copy"));
      refused += !taken.back();
      EXPECT_EQ(std::filesystem::exists(file("copy")), taken.back()) << "all or nothing";
      if (!taken.back()) continue;
      EXPECT_TRUE(is_trusted(uri("copy"))) << "what was imported is trusted";
      EXPECT_TRUE(is_beginning(uri("copy"))) << "it may have fewer records, and no other ones";
    }
    const std::vector<int> second = second_verdicts(files, {}, folder_);
    if (second.empty()) GTEST_SKIP() << "no python3: the second verifier wasn't run";
    for (std::size_t i = 0; i < a_round; ++i) {
      const auto at = static_cast<std::size_t>(
          std::mismatch(bundle_.begin(), bundle_.end(), bundles[i].begin(), bundles[i].end()).first -
          bundle_.begin());
      EXPECT_EQ(taken[i], second[i] == 0) << "differs from byte " << at << ": "
                                          << printable(bundles[i].substr(at > 40 ? at - 40 : 0, 160), 600);
    }
  }
  EXPECT_GT(refused, a_round / 3);
}

TEST_F(Mutated, bundles_that_are_refused_leave_a_good_store_as_it_was) {
  SCOPED_TRACE("seed " + std::to_string(seed_));
  Mutations mutations(seed_ + 2);
  // Into a store that has the first records already.
  const std::size_t first_commits =
      bundle_.find("{\"body\":", bundle_.rfind("{\"head\":", bundle_.size() / 2));
  ASSERT_NE(first_commits, std::string::npos);
  ASSERT_TRUE(imports(bundle_.substr(0, first_commits), "half"));
  const std::string half = read_file(file("half"), 64u << 20);
  int taken = 0;
  for (std::size_t i = 0; i < static_cast<std::size_t>(rounds()) * a_round / 2; ++i) {
    std::ofstream(file("half"), std::ios::binary) << half;
    std::istringstream in(mutations.changed_bundle(bundle_));
    try {
      import_bundle(*open_ledger_backend(uri("half"), {StoreOpening::For::writing, false, false}), in,
                    "bundle");
      ++taken;
    } catch (const InputError&) {
      EXPECT_EQ(read_file(file("half"), 64u << 20), half);
    }
    EXPECT_TRUE(is_trusted(uri("half"))) << in.str().substr(0, 400);
  }
  EXPECT_GT(taken, 0);
}

TEST_F(Mutated, a_name_of_nobody_stays_in_the_store_and_out_of_its_bundle) {
  // An import that names a welder whose seam the store has already leaves such a name.
  std::filesystem::copy_file(file("good"), file("more"));
  {
    Sqlite store(file("more"), Sqlite::Mode::read_write);
    const std::string salt(16, 'a');
    store.run(("INSERT INTO person VALUES('" + hex(Sha256().add(salt).add("nobody").take()) + "', '" +
               hex(salt) + "', 'nobody')")
                  .c_str());
  }
  EXPECT_TRUE(is_trusted(uri("more")));
  std::string bundle;
  export_bundle(Ledger::open(uri("more"), {}), {}, [&](std::string_view piece) { bundle += piece; });
  EXPECT_EQ(bundle, bundle_);
  EXPECT_TRUE(imports(bundle, "copy"));
  EXPECT_LE(second_verdict(file("more"), {}, folder_), 0);
}

TEST_F(Mutated, anchors_never_make_an_intact_store_untrusted) {
  SCOPED_TRACE("seed " + std::to_string(seed_));
  Mutations mutations(seed_ + 3);
  int refused = 0, agreed = 0;
  for (std::size_t i = 0; i < static_cast<std::size_t>(rounds()) * a_round; ++i) {
    const std::string anchor = mutations.changed_anchor(sample_.anchors[i % sample_.anchors.size()]);
    SCOPED_TRACE(printable(anchor, 1000));
    try {
      const VerifyReport report = verified(uri("good"), {anchor});
      EXPECT_TRUE(report.trusted) << problems_text(report);
      ++agreed;
    } catch (const InputError& error) {
      EXPECT_NE(std::string(error.what()).find("an anchor"), std::string::npos) << error.what();
      ++refused;
    }
    if (i % 20 == 0) {
      const int second = second_verdict(file("good"), {anchor}, folder_);
      EXPECT_TRUE(second == -1 || second == 0 || second == 2) << "the second verifier says " << second;
    }
  }
  EXPECT_GT(refused, 0);
  EXPECT_GT(agreed, 0);
}

TEST_F(Mutated, an_anchor_with_a_slip_is_no_anchor_and_one_of_other_records_still_tells) {
  std::string slip = sample_.anchors.back();
  char& digit = slip[slip.rfind(' ') + 7];
  digit = digit == '0' ? '1' : '0';
  try {
    verified(uri("good"), {slip});
    FAIL() << "it was taken for an anchor";
  } catch (const InputError& error) {
    EXPECT_NE(std::string(error.what())
                  .find("not an anchor: 1 of its characters isn't that of the store's head of 17 records"),
              std::string::npos)
        << error.what();
  }
  const int second = second_verdict(file("good"), {slip}, folder_);
  EXPECT_TRUE(second == 2 || second == -1) << second;
  // The same slip beside a store that is altered: that is said first.
  std::filesystem::copy_file(file("good"), file("bad"));
  {
    Sqlite store(file("bad"), Sqlite::Mode::read_write);
    store.run("DROP TRIGGER rec_stays");
  }
  const std::vector<Anchor> anchors = parse_anchors(slip, "anchors");
  VerifyOptions options;
  options.anchors = anchors;
  const VerifyReport bad = verify_store(uri("bad"), {}, options);
  EXPECT_FALSE(bad.trusted);
  // Another root altogether isn't a slip.
  std::string other = sample_.anchors.back();
  const std::size_t root = other.find(' ', 33) + 1;
  for (std::size_t i = 0; i < 64; ++i) other[root + i] = other[root + i] == '7' ? '8' : '7';
  EXPECT_FALSE(verified(uri("good"), {other}).trusted);
}
