// An outside authority's time over the newest head: asked for, checked, stored, and checked again by both
// verifiers. The authority is made by the openssl program for each test; no connection is opened.
#include "cli/ledger/ledger_fixture.hpp"
#include "support/time_authority.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class LedgerTimestamp : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    ASSERT_TRUE(authority_.works());
    ASSERT_LE(audit_demo().exit_code, 1);
    records_ = count();
  }
  void ask_and_reply() {
    ASSERT_EQ(ledger({"timestamp", "--query", path("head.tsq")}).exit_code, 0);
    ASSERT_TRUE(authority_.reply(path("head.tsq"), path("head.tsr")));
  }
  std::size_t count() { return json({"list"}).find("records")->elements.size(); }
  int python_verifier(const std::string& more = "") const {
    const std::string command = "python3 " + source_path("/reference/verify_log.py ") + store_file() + " " +
                                more + " > " + path("said") + " 2>&1";
    return WEXITSTATUS(std::system(command.c_str()));
  }

  TimeAuthority authority_{path("authority")}, other_{path("other")};
  std::size_t records_ = 0;  ///< before a test begins
};

}  // namespace

TEST_F(LedgerTimestamp, IsStoredAndHoldsForBothVerifiers) {
  const JsonNode query = json({"timestamp", "--query", path("head.tsq")});
  EXPECT_EQ(query.find("n")->number, records_);
  EXPECT_EQ(query.find("head_sha256")->string.size(), 64u);
  ASSERT_TRUE(authority_.reply(path("head.tsq"), path("head.tsr")));
  // The store grows meanwhile: the stamp is over the requested head.
  ASSERT_EQ(write({"note"}).exit_code, 0);
  const ProgramRun stored =
      write({"timestamp", "--tsa", path("head.tsr"), "--query", path("head.tsq"), "--ca", authority_.root()});
  EXPECT_EQ(stored.exit_code, 0) << stored.errors;
  const JsonNode list = json({"list", "--kind", "timestamp"});
  ASSERT_EQ(list.find("records")->elements.size(), 1u);
  const JsonNode& results = *list.find("records")->elements[0].find("results");
  EXPECT_EQ(results.find("n")->number, records_);
  EXPECT_EQ(results.find("head_sha256")->string, query.find("head_sha256")->string);
  EXPECT_EQ(results.find("authority")->string, "CN=Invented time authority");
  EXPECT_EQ(results.find("policy")->string, "1.2.3.4.1");
  EXPECT_EQ(results.find("time")->string.size(), 20u);

  const ProgramRun verified = ledger({"verify"});
  EXPECT_EQ(verified.exit_code, 0) << verified.output;
  EXPECT_NE(verified.output.find("record " + std::to_string(records_ + 2) + ": the first " +
                                 std::to_string(records_) + " records were there at " +
                                 results.find("time")->string +
                                 ", by the time stamp of CN=Invented time authority"),
            std::string::npos)
      << verified.output;
  EXPECT_EQ(verified.output.find("nothing here says who"), std::string::npos) << verified.output;
  EXPECT_EQ(python_verifier(), 0) << bytes_of(path("said"));
  EXPECT_EQ(python_verifier("--ca " + authority_.root()), 0) << bytes_of(path("said"));
  EXPECT_EQ(ledger({"verify", "--ca", authority_.root()}).exit_code, 0);
  // The same holds of a bundle.
  ASSERT_EQ(ledger({"export", "--output", path("all.jsonl")}).exit_code, 0);
  ASSERT_EQ(run_program({"ledger", "import", path("all.jsonl"), "--store", "sqlite:" + path("copy.sqlite")})
                .exit_code,
            0);
  EXPECT_EQ(run_program({"ledger", "verify", "--store", "sqlite:" + path("copy.sqlite")}).exit_code, 0);
}

TEST_F(LedgerTimestamp, OfAnAuthorityThatTheVerifierDoesNotTrustIsSeen) {
  ask_and_reply();
  ASSERT_EQ(write({"timestamp", "--tsa", path("head.tsr"), "--ca", authority_.root()}).exit_code, 0);
  const JsonNode report = json({"verify", "--ca", other_.root()});
  EXPECT_FALSE(report.find("trusted")->boolean);
  EXPECT_EQ(report.find("first_bad_seq")->number, records_ + 1);
  EXPECT_EQ(python_verifier("--ca " + other_.root()), 1) << bytes_of(path("said"));
  expect_refused(ledger({"verify", "--ca", path("head.tsq")}), "no certificate");
}

TEST_F(LedgerTimestamp, WithoutCertificatesSaysThatNobodyVouchesForTheAuthority) {
  ask_and_reply();
  ASSERT_EQ(write({"timestamp", "--tsa", path("head.tsr")}).exit_code, 0);
  const ProgramRun verified = ledger({"verify"});
  EXPECT_EQ(verified.exit_code, 0) << verified.output;
  EXPECT_NE(verified.output.find("nothing here says who that is"), std::string::npos) << verified.output;
  EXPECT_EQ(python_verifier(), 0) << bytes_of(path("said"));
  EXPECT_NE(bytes_of(path("said")).find("isn't checked"), std::string::npos) << bytes_of(path("said"));
}

TEST_F(LedgerTimestamp, RefusesAReplyThatIsNoneOfThisHead) {
  ask_and_reply();
  const std::size_t records = count();
  const auto store = [&](const std::string& reply, std::vector<std::string> more = {}) {
    more.insert(more.begin(), {"timestamp", "--tsa", reply});
    return write(more);
  };
  ASSERT_TRUE(authority_.query(std::string(64, 'a'), path("foreign.tsq")));
  ASSERT_TRUE(authority_.reply(path("foreign.tsq"), path("foreign.tsr")));
  expect_refused(store(path("foreign.tsr")), "a time stamp over something else");
  ASSERT_TRUE(authority_.query(std::string(128, 'a'), path("longer.tsq"), "sha512"));
  ASSERT_TRUE(authority_.reply(path("longer.tsq"), path("longer.tsr")));
  expect_refused(store(path("longer.tsr")), "another kind of digest");
  expect_refused(store(path("head.tsq")), "no reply of a time stamping authority");
  expect_refused(store(path("head.tsr"), {"--ca", other_.root()}),
                 "a time stamp of CN=Invented time authority");
  expect_refused(store(path("head.tsr"), {"--ca", path("head.tsr")}), "no certificate");
  expect_refused(store(path("head.tsr"), {"--query", path("foreign.tsq")}), "a reply to another query");
  expect_refused(store(path("head.tsr"), {"--query", path("head.tsr")}), "no query for a time stamp");
  std::string altered = bytes_of(path("head.tsr"));
  altered[altered.size() - 5] = static_cast<char>(altered[altered.size() - 5] ^ 1);
  write_file(path("altered.tsr"), altered);
  expect_refused(store(path("altered.tsr")), "the certificate within it didn't sign");
  write_file(path("more.tsr"), bytes_of(path("head.tsr")) + "more");
  expect_refused(store(path("more.tsr")), "no reply of a time stamping authority");
  // The same head asked for twice: each reply belongs to its own query.
  ASSERT_EQ(ledger({"timestamp", "--query", path("again.tsq")}).exit_code, 0);
  EXPECT_NE(bytes_of(path("again.tsq")), bytes_of(path("head.tsq")));
  expect_refused(store(path("head.tsr"), {"--query", path("again.tsq")}), "a reply to another query");
  EXPECT_EQ(count(), records);
  expect_refused(ledger({"timestamp", "--tsa", path("head.tsr")}), "--who");
  expect_refused(ledger({"timestamp"}), "neither --query nor --tsa");
  expect_refused(ledger({"timestamp", "--query", path("x.tsq"), "--ca", other_.root()}),
                 "no reply to check by it");
}

TEST_F(LedgerTimestamp, TheQueryCoversNothingOfValue) {
  for (const std::string& file : {store_file(), authority_.root(), authority_.root() + ".txt"}) {
    if (file.ends_with(".txt")) write_file(file, "a person's own file");
    const std::string before = bytes_of(file);
    EXPECT_EQ(ledger({"timestamp", "--query", file}).exit_code, 2) << file;
    EXPECT_EQ(bytes_of(file), before) << file;
  }
  ASSERT_EQ(ledger({"timestamp", "--query", path("head.tsq")}).exit_code, 0);
  EXPECT_EQ(ledger({"timestamp", "--query", path("head.tsq")}).exit_code, 0) << "a query may be made again";
}
