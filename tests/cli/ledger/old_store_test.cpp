// A store that an older version of the program wrote verifies for ever, and takes new records.
#include <cstdlib>

#include "cli/ledger/ledger_fixture.hpp"

namespace seamtakt::test {
namespace {

class OldStore : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    const std::string command =
        "gzip -dc " + source_path("/tests/ledger/stores/body-v2.sqlite.gz") + " > " + store_file();
    ASSERT_EQ(std::system(command.c_str()), 0);
  }
  int python_verifier() const {
    const std::string command =
        "python3 " + source_path("/reference/verify_log.py ") + store_file() + " > " + path("said");
    return WEXITSTATUS(std::system(command.c_str()));
  }
};

TEST_F(OldStore, VerifiesWithItsAnchorByBothVerifiers) {
  const ProgramRun verified =
      ledger({"verify", "--anchor", source_path("/tests/ledger/stores/body-v2.anchor")});
  EXPECT_EQ(verified.exit_code, 0) << verified.output << verified.errors;
  EXPECT_NE(verified.output.find("10 records, anchored up to record 10"), std::string::npos)
      << verified.output;
  EXPECT_EQ(python_verifier(), 0) << bytes_of(path("said"));
}

TEST_F(OldStore, ShowsWhatItsRecordsSay) {
  const JsonNode shown = json({"show", "5"});
  EXPECT_NE(shown.find("body"), nullptr);
}

TEST_F(OldStore, IsRefusedWithABodyOfALaterVersionThanThisProgramKnows) {
  // The digit is part of the signed bytes: both verifiers say so.
  std::string bytes = bytes_of(store_file());
  const std::size_t at = bytes.find("\"v\":2,");
  ASSERT_NE(at, std::string::npos);
  bytes[at + 4] = '9';
  write_file(store_file(), bytes);
  EXPECT_EQ(ledger({"verify"}).exit_code, 1);
  EXPECT_EQ(python_verifier(), 1);
}

}  // namespace
}  // namespace seamtakt::test
