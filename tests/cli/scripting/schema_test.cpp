// Schemas, SQL and examples: what is shipped is what the program makes, and it holds for the demo.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>

#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/file_bytes.hpp"
#include "support/folder_test.hpp"
#include "support/program_paths.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

std::string shell_quoted(const std::string& path) {
  return "'" + path + "'";
}

class Scripting : public FolderTest {
 protected:
  /// What a command of the shell prints, both streams.
  std::string shell(const std::string& command, int expected = 0) {
    const std::string file = path("said");
    const int status = std::system(
        ("SEAMTAKT=" + shell_quoted(seamtakt_program()) + " " + command + " >'" + file + "' 2>&1").c_str());
    EXPECT_EQ(WIFEXITED(status) ? WEXITSTATUS(status) : -1, expected) << command << "\n" << bytes_of(file);
    return bytes_of(file);
  }
};

bool has_python(const char* module) {
  return std::system(("python3 -c 'import " + std::string(module) + "' >/dev/null 2>&1").c_str()) == 0;
}

}  // namespace

TEST_F(Scripting, WhatIsShippedIsWhatTheProgramMakes) {
  const bool update = std::getenv("SEAMTAKT_UPDATE_SCHEMA") != nullptr;
  for (const std::string file : {"schemas/results.schema.json", "schemas/serve.schema.json",
                                 "sql/store-views.sqlite.sql", "sql/store-views.postgresql.sql"}) {
    const ProgramRun run = run_program({"manual", "seamtakt/" + file});
    ASSERT_EQ(run.exit_code, 0) << run.errors;
    const std::string shipped = source_path("/reference/" + file);
    if (update) std::ofstream(shipped, std::ios::binary) << run.output;
    EXPECT_TRUE(bytes_of(shipped) == run.output) << shipped << " isn't what seamtakt manual prints; "
                                                 << "SEAMTAKT_UPDATE_SCHEMA=1 writes it";
  }
}

TEST_F(Scripting, EveryJsonOutputOfTheDemoFitsItsSchema) {
  if (!has_python("jsonschema")) GTEST_SKIP() << "no python3 with jsonschema";
  const std::string said = shell("python3 " + shell_quoted(source_path("/tests/cli/scripting/validate.py")) +
                                 " " + shell_quoted(seamtakt_program()) + " " + shell_quoted(source_path()) +
                                 " " + shell_quoted(folder));
  EXPECT_TRUE(said.ends_with("serve\n")) << said;
}

TEST_F(Scripting, TheExampleInShellPrintsHeatInputs) {
  const std::string said = shell("sh " + shell_quoted(source_path("/packaging/examples/heat_inputs.sh")));
  // 24.8 V x 205 A x 0.8 / v: 30 cm/min are 5 mm/s.
  EXPECT_NE(said.find("30 cm/min: 0.8134 kJ/mm\n"), std::string::npos) << said;
  EXPECT_EQ(std::count(said.begin(), said.end(), '\n'), 4);
}

TEST_F(Scripting, TheExampleInPythonPrintsThePlansWorstHeatInputAndCycles) {
  if (!has_python("json")) GTEST_SKIP() << "no python3";
  const std::string said =
      shell("python3 " + shell_quoted(source_path("/packaging/examples/seamtakt_client.py")) + " " +
            shell_quoted(demo_plan));
  EXPECT_NE(said.find(" kJ/mm\n"), std::string::npos) << said;
  for (const char* weldment : {"BD: ", "TT: ", "BL: "})
    EXPECT_NE(said.find(weldment), std::string::npos) << said;
  EXPECT_NE(said.find("--leg: found unknown unit \"parrots\" in \"5 parrots\", expected "), std::string::npos)
      << said;
}

TEST_F(Scripting, AStoreIsReadBySqlAndStaysAsItIs) {
  if (!has_python("sqlite3")) GTEST_SKIP() << "no python3";
  const std::string store = path("records.sqlite"), key = path("keys/k.pem");
  std::filesystem::create_directory(path("keys"));
  const std::vector<std::string> hand = {"--store", "sqlite:" + store, "--key", key, "--who",
                                         "Ada",     "--why",           "try"};
  const auto ledger = [&](std::vector<std::string> words) {
    words.insert(words.end(), hand.begin(), hand.end());
    const ProgramRun run = run_program(words);
    EXPECT_LE(run.exit_code, 1) << run.errors;
    return run;
  };
  ledger({"audit", demo_folder + "arc-log.csv.gz", "--plan", demo_plan, "--manual",
          demo_folder + "manual-seams.csv"});
  const std::string views = source_path("/reference/sql/store-views.sqlite.sql");
  const auto sql = [&](const std::string& query) {
    std::ofstream(path("ask.py")) << "import sqlite3\n"
                                     "base = sqlite3.connect('file:"
                                  << store
                                  << "?mode=ro', uri=True)\n"
                                     "base.executescript(open('"
                                  << views
                                  << "', encoding='utf-8').read())\n"
                                     "for row in base.execute(\"\"\""
                                  << query << "\"\"\"): print(*row)\n";
    return shell("python3 " + shell_quoted(path("ask.py")));
  };
  const std::string number = sql("SELECT min(seq) FROM passes WHERE robot = 'R1'");
  const std::string seq = number.substr(0, number.size() - 1);
  ledger({"ledger", "correct", seq, "--set", "results.robot=R2"});
  ledger({"ledger", "void", std::to_string(std::stoi(seq) + 1)});
  ledger({"ledger", "nonconformance", seq});
  const std::string before = bytes_of(store);

  // The record says what it said; the correction stands beside it.
  EXPECT_EQ(sql("SELECT robot, corrections, is_void, who FROM passes WHERE seq = " + seq), "R1 1 0 Ada\n");
  EXPECT_EQ(sql("SELECT member, old_value, new_value FROM changes"), "results.robot R1 R2\n");
  EXPECT_EQ(sql("SELECT about FROM corrections"), seq + "\n");
  EXPECT_EQ(sql("SELECT count(*) FROM passes WHERE is_void"), "1\n");
  EXPECT_EQ(sql("SELECT about FROM nonconformances WHERE about = " + seq), seq + "\n");
  // Each kind of record has a view with all its records.
  const std::string counts =
      "SELECT (SELECT count(*) FROM passes) = count(*) FILTER (WHERE kind = 'pass'), "
      "(SELECT count(*) FROM manual_seams) = count(*) FILTER (WHERE kind = 'manual'), "
      "(SELECT count(*) FROM schedules) = count(*) FILTER (WHERE kind = 'schedule'), "
      "count(*) FILTER (WHERE kind = 'manual') > 0 FROM rec";
  EXPECT_EQ(sql(counts), "1 1 1 1\n");
  EXPECT_EQ(sql("SELECT count(*) > 500, sum(heat_input_kJ_mm IS NULL), typeof(max(arc_time_s)) FROM passes "
                "WHERE steady_current_A > 0")
                .substr(2),
            "0 real\n");

  EXPECT_TRUE(bytes_of(store) == before) << "reading changed the store";
  EXPECT_EQ(run_program({"ledger", "verify", "--store", "sqlite:" + store}).exit_code, 0);
  const std::string unit = sql("SELECT min(unit_serial) FROM passes");
  const std::string said =
      shell("python3 " + shell_quoted(source_path("/packaging/examples/store_report.py")) + " " +
            shell_quoted(store) + " " + shell_quoted(views) + " " + unit.substr(0, unit.size() - 1));
  EXPECT_NE(said.find(" nonconformances\n"), std::string::npos) << said;
}

TEST_F(Scripting, TheSessionThatReadsCantWrite) {
  if (!has_python("sqlite3")) GTEST_SKIP() << "no python3";
  std::ofstream(path("try.py"))
      << "import sqlite3\n"
         "base = sqlite3.connect('"
      << path("own.sqlite")
      << "')\n"
         "base.executescript('CREATE TABLE rec(seq, kind, body); CREATE TABLE lookup(topic, key, "
         "seq); CREATE TABLE person(sha256, name);')\n"
         "base.executescript(open('"
      << source_path("/reference/sql/store-views.sqlite.sql")
      << "').read())\n"
         "base.execute('INSERT INTO rec VALUES(1, 2, 3)')\n";
  EXPECT_NE(shell("python3 " + shell_quoted(path("try.py")), 1).find("readonly"), std::string::npos);
}
