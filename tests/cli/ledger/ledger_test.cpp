// The ledger commands as a person uses them, on the demo's log.
#include <gtest/gtest.h>
#include <sys/stat.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "cli/ledger/ledger_fixture.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

TEST_F(LedgerCommand, AnAuditIsStoredListedShownAndVerified) {
  const ProgramRun audit = audit_demo();
  ASSERT_EQ(audit.exit_code, 1) << audit.errors;
  const JsonNode list = json({"list"});
  const auto& records = list.find("records")->elements;
  ASSERT_GT(records.size(), 100u);
  for (std::size_t i = 0; i < records.size(); ++i)
    EXPECT_EQ(records[i].find("seq")->number, static_cast<double>(i + 1));
  EXPECT_EQ(records[0].find("kind")->string, "genesis");
  EXPECT_EQ(records[0].find("who")->string, "anna");
  const JsonNode failed = json({"list", "--kind", "pass", "--verdict", "fail"});
  EXPECT_EQ(failed.find("records")->elements.size(), 1u);
  const JsonNode unit = json({"list", "--unit", "AE-26-0101", "--kind", "pass", "--seam", "S01"});
  EXPECT_EQ(unit.find("records")->elements.size(), 1u);
  EXPECT_NE(ledger({"show", "20"}).output.find("heat_input_kJ_mm"), std::string::npos);

  const ProgramRun verify = ledger({"verify"});
  EXPECT_EQ(verify.exit_code, 0) << verify.output;
  EXPECT_NE(verify.output.find("unanchored"), std::string::npos);
  const ProgramRun twice = audit_demo();
  EXPECT_EQ(twice.output.find("record.schedule.changed"), std::string::npos) << "the same plan is no change";
  EXPECT_NE(twice.output.find("Nothing added"), std::string::npos) << twice.output;
  EXPECT_EQ(json({"list"}).find("records")->elements.size(), records.size());
}

TEST_F(LedgerCommand, TheKeyIsTheOwnersAloneAndNeverInTheStoresFolder) {
  audit_demo();
  int keys = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder / "data/seamtakt/keys")) {
    struct stat status {};
    ASSERT_EQ(stat(entry.path().c_str(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777, 0600u);
    ++keys;
  }
  EXPECT_EQ(keys, 1);
  const ProgramRun beside = write({"note", "--key", (folder / "store/key.pem").string()});
  EXPECT_EQ(beside.exit_code, 2) << beside.output;
  EXPECT_EQ(write({"note", "--key", (folder / "absent.pem").string()}).exit_code, 2);
  std::filesystem::remove_all(folder / "data");
  EXPECT_EQ(write({"note"}).exit_code, 2) << "without its key a store takes nothing";
  EXPECT_EQ(ledger({"verify"}).exit_code, 0) << "to verify takes no key";
}

TEST_F(LedgerCommand, AnAlterationEndsInOneAndNamesTheRecordAndACutNeedsTheAnchor) {
  audit_demo();
  const std::string anchor = (folder / "anchor.txt").string(),
                    file = (folder / "store/records.sqlite").string();
  EXPECT_EQ(write({"anchor", "--append", anchor}).exit_code, 0);
  EXPECT_EQ(ledger({"verify", "--anchor", anchor}).exit_code, 0);
  EXPECT_EQ(ledger({"verify", "--anchor", anchor}).output.find("unanchored"), std::string::npos);
  std::string bytes = read_file(file, 64u << 20);
  const auto at = bytes.find("\"heat_input_kJ_mm\":0.");
  ASSERT_NE(at, std::string::npos);
  bytes[at + 22] = bytes[at + 22] == '1' ? '2' : '1';
  std::ofstream(file, std::ios::binary) << bytes;
  const ProgramRun verify = ledger({"verify"});
  EXPECT_EQ(verify.exit_code, 1);
  EXPECT_NE(verify.output.find("NOT TRUSTED: first bad record "), std::string::npos) << verify.output;
  const JsonNode report = json({"verify"});
  EXPECT_FALSE(report.find("trusted")->boolean);
  EXPECT_GT(report.find("first_bad_seq")->number, 0);
  EXPECT_EQ(ledger({"verify", "--anchor", (folder / "none.txt").string()}).exit_code, 2);
}

TEST_F(LedgerCommand, ANonconformanceRunsFromFailureToDisposition) {
  audit_demo();
  const JsonNode open = json({"nonconformance", "--open"});
  ASSERT_EQ(open.find("nonconformances")->elements.size(), 1u);
  const JsonNode& each = open.find("nonconformances")->elements[0];
  const std::string unit = each.find("unit_serial")->string,
                    number = std::to_string(static_cast<int>(each.find("seq")->number));
  EXPECT_FALSE(json({"show", "--unit", unit}).find("unit")->find("complete")->boolean);
  EXPECT_EQ(write({"disposition", number, "--decision", "paint-over"}).exit_code, 2);
  EXPECT_EQ(write({"disposition", number, "--decision", "repair"}).exit_code, 2);
  EXPECT_EQ(ledger({"disposition", number, "--decision", "use-as-is"}).exit_code, 2)
      << "who and why are asked for";
  EXPECT_EQ(write({"disposition", number, "--decision", "use-as-is"}).exit_code, 0);
  EXPECT_TRUE(json({"nonconformance", "--open"}).find("nonconformances")->elements.empty());
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
}

TEST_F(LedgerCommand, EveryKindOfWriteIsKeptAndTheWholeVerifies) {
  audit_demo();
  EXPECT_EQ(write({"correct", "40", "--set", "results.robot=R9"}).exit_code, 0);
  EXPECT_NE(ledger({"show", "40"}).output.find("corrected, was"), std::string::npos);
  EXPECT_EQ(write({"void", "41"}).exit_code, 0);
  EXPECT_EQ(write({"sign", "40"}).exit_code, 0);
  EXPECT_EQ(write({"calibrate", "--instrument", "R1-current", "--certificate", "C-1", "--date", "2026-01-01",
                   "--due", "2027-01-01"})
                .exit_code,
            0);
  EXPECT_EQ(write({"calibrate", "--instrument", "R1-current", "--certificate", "C-1", "--date", "2026-13-01",
                   "--due", "2027-01-01"})
                .exit_code,
            2);
  EXPECT_EQ(write({"nonconformance", "42"}).exit_code, 0);
  EXPECT_EQ(write({"key", "--rotate"}).exit_code, 0);
  EXPECT_EQ(write({"note"}).exit_code, 0) << "the new key signs";
  EXPECT_EQ(write({"key", "--replace-lost"}).exit_code, 0);
  EXPECT_EQ(write({"note", "40"}).exit_code, 0);
  for (const char* kind :
       {"correction", "void", "signoff", "calibration", "nonconformance", "key", "key_revoke", "note"})
    EXPECT_GT(first_of_kind(kind), 0u) << kind;
  const ProgramRun verify = ledger({"verify"});
  EXPECT_EQ(verify.exit_code, 0) << verify.output;
  const JsonNode signed_off = json({"show", "40"});
  EXPECT_EQ(signed_off.find("record")->find("signed_off_by")->elements.size(), 1u);
  EXPECT_EQ(signed_off.find("record")->find("corrected_by")->elements.size(), 1u);
}

TEST_F(LedgerCommand, ALogOfAnInstrumentOverdueInTheStoreIsUndecided) {
  std::ofstream(folder / "one.csv") << "time_s,current_A,voltage_V\n0,0,0\n1,250.1,25\n2,250.2,25\n3,0,0\n";
  ASSERT_LE(run_program({"audit", folder / "one.csv", "--store", store_, "--who", "anna", "--why", "first"})
                .exit_code,
            1);
  for (const char* instrument : {"R1-current", "R2-current"})
    ASSERT_EQ(write({"calibrate", "--instrument", instrument, "--certificate", "C-1", "--date", "2026-01-01",
                     "--due", "2026-02-01"})
                  .exit_code,
              0);
  audit_demo();
  const JsonNode undecided = json({"list", "--kind", "pass", "--verdict", "undecided"});
  EXPECT_GT(undecided.find("records")->elements.size(), 100u);
  EXPECT_TRUE(json({"list", "--kind", "pass", "--verdict", "pass"}).find("records")->elements.empty());
}

TEST_F(LedgerCommand, ABundleCarriesTheStoreOverAndOpensslChecksTheHead) {
  audit_demo();
  const std::string bundle = folder / "bundle.jsonl", again = folder / "again.jsonl",
                    copy = "sqlite:" + (folder / "copy.sqlite").string();
  EXPECT_EQ(ledger({"export", "--output", bundle}).exit_code, 0);
  EXPECT_EQ(run_program({"ledger", "import", bundle, "--store", copy}).exit_code, 0);
  EXPECT_NE(run_program({"ledger", "import", bundle, "--store", copy}).output.find("Nothing added"),
            std::string::npos);
  EXPECT_EQ(run_program({"ledger", "export", "--store", copy, "--output", again}).exit_code, 0);
  EXPECT_EQ(read_file(bundle, 64u << 20), read_file(again, 64u << 20));
  EXPECT_EQ(run_program({"ledger", "head", "--store", copy}).output, ledger({"head"}).output);
  const std::string prefix = folder / "head";
  EXPECT_EQ(ledger({"head", "--files", prefix}).exit_code, 0);
  EXPECT_EQ(std::system(("openssl pkeyutl -verify -rawin -pubin -inkey " + prefix + ".pem -in " + prefix +
                         ".txt -sigfile " + prefix + ".sig >/dev/null")
                            .c_str()),
            0);
  EXPECT_EQ(ledger({"verify", "--pub", prefix + ".pem"}).exit_code, 0);
  const ProgramRun log = run_program({"ledger", "import", demo_folder + "orders.csv", "--store",
                                      "sqlite:" + (folder / "new.sqlite").string()});
  EXPECT_EQ(log.exit_code, 2);
  EXPECT_FALSE(std::filesystem::exists(folder / "new.sqlite")) << "nothing is left of a refused import";
}

TEST_F(LedgerCommand, BadUsageEndsInTwoWithOneLine) {
  audit_demo();
  const std::vector<std::vector<std::string>> bad = {{"show", "99999"},
                                                     {"show"},
                                                     {"list", "--kind", "gift"},
                                                     {"void", "1"},
                                                     {"correct", "40"},
                                                     {"sign", "0"},
                                                     {"show", "--unit", "nobody"},
                                                     {"verify", "--pub", "none.pem"},
                                                     {"verify", "--raw", "/none"}};
  for (const auto& words : bad) {
    const bool reads = words[0] == "show" || words[0] == "list" || words[0] == "verify";
    const ProgramRun run = reads ? ledger(words) : write(words);
    EXPECT_EQ(run.exit_code, 2) << words[0] << run.output;
    EXPECT_EQ(run.output, "") << words[0];
    EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  }
  EXPECT_EQ(
      run_program({"ledger", "list", "--store", "sqlite:" + (folder / "none.sqlite").string()}).exit_code, 2);
  EXPECT_EQ(
      run_program({"ledger", "verify", "--store", "sqlite:" + (folder / "none.sqlite").string()}).exit_code,
      2);
  EXPECT_EQ(run_program({"ledger", "list", "--store", "mysql:x"}).exit_code, 2);
  EXPECT_EQ(
      run_program({"ledger", "list", "--store", "postgresql://127.0.0.1:1/none?connect_timeout=1"}).exit_code,
      3);
  EXPECT_FALSE(std::filesystem::exists(folder / "none.sqlite"));
}
