// Stores, bundles and texts of strangers.
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include "cli/ledger/ledger_fixture.hpp"
#include "support/program_paths.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Strangers : public LedgerCommand {
 protected:
  void SetUp() override {
    LedgerCommand::SetUp();
    ASSERT_LE(audit_demo().exit_code, 1);
  }
  /// Runs Python with the store's file as its first argument.
  void alter(const std::string& script) {
    write_file(path("alter.py"),
               "import sqlite3, sys\nstore = sqlite3.connect(sys.argv[1])\n" + script + "\nstore.commit()\n");
    ASSERT_EQ(std::system(("python3 " + path("alter.py") + " " + store_file()).c_str()), 0);
  }
  /// The guards off, a change, and the guards as they were.
  void alter_unguarded(const std::string& script) {
    alter(
        "guards = store.execute(\"SELECT name, sql FROM sqlite_master WHERE type = 'trigger'\").fetchall()\n"
        "for name, _ in guards: store.execute('DROP TRIGGER ' + name)\n" +
        script + "\nfor _, text in guards: store.execute(text)");
  }
  int second_verifier(const std::string& options = "") {
    return WEXITSTATUS(std::system(("timeout 20 python3 " + source_path("/reference/verify_log.py ") +
                                    store_file() + " " + options + " >/dev/null 2>&1")
                                       .c_str()));
  }
  static bool has_python() { return std::system("python3 -c pass >/dev/null 2>&1") == 0; }
};

}  // namespace

TEST_F(Strangers, VerifyFromARecordSaysWhatItLookedAtAndNoMore) {
  if (!has_python()) GTEST_SKIP() << "no python3";
  const std::string anchor = path("anchor.txt");
  ASSERT_EQ(write({"anchor", "--append", anchor}).exit_code, 0);
  const auto all = json({"list"}).find("records")->elements.size();
  const std::string span = "records 51-" + std::to_string(all);
  const ProgramRun good = ledger({"verify", "--from", "51", "--anchor", anchor});
  EXPECT_EQ(good.exit_code, 0) << good.output;
  EXPECT_NE(good.output.find("OK: " + span + "; 1-50 by their digests alone, anchored up to record"),
            std::string::npos)
      << good.output;
  EXPECT_NE(
      ledger({"verify", "--from", "51"}).output.find(span + " agree with one another; 1-50 not looked at"),
      std::string::npos);
  EXPECT_EQ(json({"verify", "--from", "51"}).find("looked_from")->number, 51);
  expect_refused(ledger({"verify", "--from", "100000"}), "--from");

  alter_unguarded(
      "store.execute(\"UPDATE rec SET body = CAST(replace(CAST(body AS TEXT), 'shift 1', 'shift 2') AS "
      "BLOB) WHERE seq = 50\")");
  const ProgramRun anchored = ledger({"verify", "--from", "51", "--anchor", anchor});
  EXPECT_EQ(anchored.exit_code, 1);
  EXPECT_NE(anchored.output.find("NOT TRUSTED: first bad record 50"), std::string::npos) << anchored.output;
  const ProgramRun part = ledger({"verify", "--from", "51"});
  EXPECT_EQ(part.exit_code, 0);
  EXPECT_NE(part.output.find("1-50 not looked at"), std::string::npos) << part.output;
  EXPECT_EQ(ledger({"verify"}).exit_code, 1);
}

TEST_F(Strangers, ABundleWithALineThatNobodySignedIsRefusedBeforeAnythingIsWritten) {
  const std::string bundle = path("bundle.jsonl");
  ASSERT_EQ(ledger({"export", "--output", bundle}).exit_code, 0);
  const std::string good = bytes_of(bundle);
  const std::string nobody =
      "{\"person\":{\"name\":\"x\",\"salt\":\"00\",\"sha256\":\"" + std::string(64, '0') + "\"}}\n";
  // SHA-256 of the byte 0 and "x": a name that is one, and that no record refers to.
  const std::string extra =
      "{\"person\":{\"name\":\"x\",\"salt\":\"00\",\"sha256\":"
      "\"3c7e9bc930dc93f01fa69985ef242d9f9e861f3c5355aa24ce5ef4b4b8a70ccb\"}}\n";
  const std::string raw = "{\"raw\":{\"digests\":\"" + std::string(64, '0') + "\",\"sha256\":\"" +
                          std::string(64, '1') + "\"}}\n";
  const std::string before = bytes_of(store_file());
  for (const std::string& line :
       {nobody, extra, raw, good.substr(good.find("{\"raw\"")).replace(20, 4, "0000")}) {
    write_file(bundle, good + line);
    const ProgramRun into_good = ledger({"import", bundle});
    expect_refused(into_good, "bundle.jsonl:");
    const std::string copy = path("copy.sqlite");
    expect_refused(run_program({"ledger", "import", bundle, "--store", "sqlite:" + copy}), "bundle.jsonl:");
    EXPECT_FALSE(std::filesystem::exists(copy)) << "no empty store is left";
  }
  EXPECT_EQ(bytes_of(store_file()), before) << "not a byte of the good store";
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
  write_file(bundle, good);
  EXPECT_EQ(ledger({"import", bundle}).exit_code, 0);
}

TEST_F(Strangers, AnImportIsAllOrNothing) {
  const std::string bundle = path("bundle.jsonl"), copy = path("copy.sqlite");
  ASSERT_EQ(ledger({"export", "--output", bundle}).exit_code, 0);
  const std::string first = bytes_of(bundle);
  ASSERT_EQ(run_program({"ledger", "import", bundle, "--store", "sqlite:" + copy}).exit_code, 0);
  for (int i = 0; i < 3; ++i) ASSERT_EQ(write({"note"}).exit_code, 0);
  ASSERT_EQ(ledger({"export", "--output", bundle}).exit_code, 0);
  std::string more = bytes_of(bundle);
  // The last head's signature is another one: the records before it would do.
  const auto at = more.rfind("\"signature\":\"") + 14;
  more[at] = more[at] == '0' ? '1' : '0';
  write_file(bundle, more);
  const std::string before = bytes_of(copy);
  expect_refused(run_program({"ledger", "import", bundle, "--store", "sqlite:" + copy}), "signature");
  EXPECT_EQ(bytes_of(copy), before);
  EXPECT_EQ(run_program({"ledger", "verify", "--store", "sqlite:" + copy}).exit_code, 0);
}

TEST_F(Strangers, TextsThatEnterARecordAreChecked) {
  const auto records = json({"list"}).find("records")->elements.size();
  const auto note = [&](const std::string& who, const std::string& why) {
    return ledger({"note", "--who", who, "--why", why});
  };
  expect_refused(note(std::string(100000, 'a'), "why"),
                 "--who: found a text of 100000 bytes, expected at most 200");
  expect_refused(note(std::string(201, 'a'), "why"), "at most 200 bytes");
  expect_refused(note("bea", std::string(2001, 'a')), "at most 2000 bytes");
  expect_refused(note("b\xff"
                      "a",
                      "why"),
                 "--who: found bytes that aren't UTF-8");
  expect_refused(note("bea", "w\xc3"), "--why: found bytes that aren't UTF-8");
  for (const char* blank : {" ", "\t\n", "\xC2\xA0", "\xE3\x80\x80 \xE2\x80\x8B"}) {
    expect_refused(note(blank, "why"), "--who: found a blank text");
    expect_refused(note("bea", blank), "--why: found a blank text");
  }
  expect_refused(note("", "why"), "--who");
  expect_refused(write({"calibrate", "--instrument", " ", "--certificate", "C", "--date", "2026-01-01",
                        "--due", "2027-01-01"}),
                 "--instrument");
  expect_refused(write({"calibrate", "--instrument", "R\xff", "--certificate", "C", "--date", "2026-01-01",
                        "--due", "2027-01-01"}),
                 "--instrument");
  expect_refused(run_program({"audit", demo_folder + "arc-log.csv.gz", "--store",
                              "sqlite:" + path("new.sqlite"), "--who", std::string(300, 'a')}),
                 "--who");
  EXPECT_FALSE(std::filesystem::exists(path("new.sqlite")));
  EXPECT_EQ(json({"list"}).find("records")->elements.size(), records);
  EXPECT_EQ(note(std::string(200, 'a'), std::string(2000, 'b')).exit_code, 0) << "as long as they may be";
  EXPECT_EQ(ledger({"verify"}).exit_code, 0);
}

TEST_F(Strangers, AForeignViewOrTriggerNeverRuns) {
  if (!has_python()) GTEST_SKIP() << "no python3";
  const std::string good = bytes_of(store_file());
  const char* hostile[] = {
      // A table that never ends.
      "store.execute('ALTER TABLE rec RENAME TO kept')\n"
      "store.execute(\"CREATE VIEW rec AS WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) "
      "SELECT i AS "
      "seq, 'pass' AS kind, x'00' AS body, x'00' AS leaf FROM n\")",
      "store.execute('CREATE TRIGGER more AFTER INSERT ON head BEGIN DELETE FROM person; END')",
      "store.execute('CREATE VIEW more AS SELECT 1')"};
  for (const char* script : hostile) {
    SCOPED_TRACE(script);
    write_file(store_file(), good);
    alter(script);
    for (const std::vector<std::string>& words : {std::vector<std::string>{"ledger", "list"},
                                                  {"ledger", "export"},
                                                  {"ledger", "head"},
                                                  {"ledger", "anchor"}}) {
      std::vector<std::string> command = words;
      command.insert(command.end(), {"--store", store_});
      expect_refused(run_program(command), "tables or triggers");
    }
    expect_refused(write({"note"}), "tables or triggers");
    EXPECT_NE(bytes_of(store_file()).find("anna"), std::string::npos) << "the trigger didn't run";
    const ProgramRun verify = ledger({"verify"});
    EXPECT_EQ(verify.exit_code, 1) << verify.errors;
    EXPECT_NE(verify.output.find("NOT TRUSTED"), std::string::npos);
    EXPECT_EQ(second_verifier(), 1) << "the second verifier says the same, in time";
  }
}

TEST_F(Strangers, AStoreThatCannotBeReadEndsInThreeAndSaysNothingOfTrust) {
  if (geteuid() == 0) std::filesystem::permissions(folder, std::filesystem::perms::all);
  std::filesystem::permissions(folder / "store", std::filesystem::perms::all);
  std::filesystem::permissions(store_file(), std::filesystem::perms::none);
  const auto as_a_stranger = [&](std::vector<std::string> words) {
    if (geteuid() == 0) {
      words.insert(words.begin(), {"--reuid=65534", "--clear-groups", seamtakt_program()});
      std::string command = "setpriv";
      for (const std::string& word : words) command += " '" + word + "'";
      return WEXITSTATUS(std::system((command + " >" + path("out.txt") + " 2>&1").c_str()));
    }
    const ProgramRun run = run_program(words);
    write_file(path("out.txt"), run.output + run.errors);
    return run.exit_code;
  };
  if (as_a_stranger({"--version"}) != 0) GTEST_SKIP() << "the program can't be run as another user here";
  EXPECT_EQ(as_a_stranger({"ledger", "verify", "--store", store_}), 3) << bytes_of(path("out.txt"));
  EXPECT_EQ(bytes_of(path("out.txt")).find("TRUSTED"), std::string::npos) << bytes_of(path("out.txt"));
  std::filesystem::permissions(store_file(), std::filesystem::perms::owner_all);
  std::filesystem::permissions(folder / "store", std::filesystem::perms::owner_read);
  EXPECT_EQ(as_a_stranger({"ledger", "verify", "--store", store_}), 3) << bytes_of(path("out.txt"));
  std::filesystem::permissions(folder / "store", std::filesystem::perms::owner_all);
}

TEST_F(Strangers, ACreationThatFailsLeavesNoStore) {
  const std::string fresh = path("fresh.sqlite");
  write_file(path("some.pem"), "no key at all");
  std::filesystem::permissions(path("some.pem"), std::filesystem::perms::owner_read);
  std::filesystem::create_directory(folder / "keys");
  const auto audit_into = [&](const std::string& key) {
    return run_program({"audit", demo_folder + "arc-log.csv.gz", "--plan",
                        demo_folder + "ground-equipment.weldplan.json", "--store", "sqlite:" + fresh, "--key",
                        key, "--summary"});
  };
  EXPECT_EQ(audit_into(path("beside.pem")).exit_code, 2) << "a key in the store's own folder";
  EXPECT_FALSE(std::filesystem::exists(fresh));
  write_file(path("keys/bad.pem"), "no key at all");
  std::filesystem::permissions(path("keys/bad.pem"), std::filesystem::perms::owner_read);
  EXPECT_EQ(audit_into(path("keys/bad.pem")).exit_code, 2);
  EXPECT_FALSE(std::filesystem::exists(fresh));
  EXPECT_FALSE(std::filesystem::exists(fresh + "-journal"));
  EXPECT_LE(audit_into(path("keys/good.pem")).exit_code, 1);
  EXPECT_EQ(run_program({"ledger", "verify", "--store", "sqlite:" + fresh}).exit_code, 0);
}
