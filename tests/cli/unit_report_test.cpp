#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "base/csv.hpp"
#include "cli/program.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

const std::string demo = SEAMTAKT_SOURCE_DIR "/reference/demo/";

/// The demo's sample log in a store of its own.
class UnitReport : public testing::Test {
 protected:
  std::filesystem::path folder;
  std::string store;

  void SetUp() override {
    char name[] = "/tmp/seamtakt-unit-XXXXXX";
    folder = mkdtemp(name);
    std::filesystem::create_directories(folder / "records");
    setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
    store = "sqlite:" + (folder / "records/r.sqlite").string();
    const ProgramRun audit =
        run_program({"audit", demo + "arc-log.csv.gz", "--plan", demo + "ground-equipment.weldplan.json",
                     "--manual", demo + "manual-seams.csv", "--store", store, "--summary"});
    ASSERT_LE(audit.exit_code, 1) << audit.errors;
    serial = read_csv(demo + "orders.csv").rows.at(0).fields.at(0);
  }
  void TearDown() override {
    unsetenv("XDG_DATA_HOME");
    std::filesystem::remove_all(folder);
  }
  std::string path(const char* name) const { return (folder / name).string(); }
  std::string text(const char* name) const {
    std::ifstream file(folder / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
  }
  std::string serial;
};

TEST_F(UnitReport, PageHoldsPassesOpenItemsAndTheHeadToKeep) {
  const ProgramRun run =
      run_program({"report", "--store", store, "--unit", serial, "--output", path("u.html")});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const std::string page = text("u.html");
  const ProgramRun head = run_program({"ledger", "verify", "--store", store});
  const std::string line = head.output.substr(head.output.find("head: ") + 6);
  EXPECT_NE(page.find(line.substr(0, line.find('\n'))), std::string::npos) << head.output;
  for (const char* part :
       {"Heat input by robot pass", "Open items and dispositions", "Instruments on the day",
        "<svg role=\"img\" class=\"qr\"", "OK but unanchored", "ISO 10218"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
}

TEST_F(UnitReport, TableOfPassesHasTheContractsKeys) {
  ASSERT_EQ(run_program({"report", "--store", store, "--unit", serial, "--output", path("u.csv")}).exit_code,
            0);
  const CsvTable table = read_csv(path("u.csv"));
  ASSERT_FALSE(table.rows.empty());
  for (const char* key : {"seam", "pass", "heat_input_kJ_mm", "U_heat_input_kJ_mm", "verdict", "head"})
    table.require(key);
  ASSERT_EQ(run_program({"report", "--store", store, "--unit", serial, "--output", path("u.xlsx")}).exit_code,
            0);
  EXPECT_EQ(text("u.xlsx").substr(0, 2), "PK");
}

TEST_F(UnitReport, AlteredStoreIsReportedAsNotTrusted) {
  std::ofstream(folder / "alter.py") << R"(
import sqlite3, sys
store = sqlite3.connect(sys.argv[1])
for (name,) in store.execute("SELECT name FROM sqlite_master WHERE type = 'trigger'").fetchall():
    store.execute("DROP TRIGGER " + name)
changed = store.execute("""UPDATE rec SET body = CAST(replace(CAST(body AS TEXT), '"pass"', '"fail"') AS BLOB)
                           WHERE kind = 'pass'""").rowcount
store.commit()
sys.exit(0 if changed > 0 else 1)
)";
  ASSERT_EQ(std::system(("python3 " + path("alter.py") + " " + path("records/r.sqlite")).c_str()), 0);
  ASSERT_EQ(run_program({"report", "--store", store, "--unit", serial, "--output", path("u.html")}).exit_code,
            0);
  EXPECT_NE(text("u.html").find("NOT TRUSTED"), std::string::npos);
}

TEST_F(UnitReport, UnknownSerialIsRefusedAndNothingIsWritten) {
  const ProgramRun run =
      run_program({"report", "--store", store, "--unit", "NONE-1", "--output", path("none.html")});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find("NONE-1"), std::string::npos) << run.errors;
  EXPECT_FALSE(std::filesystem::exists(path("none.html")));
  EXPECT_EQ(run_program({"report", "--store", store, "--output", path("none.html")}).exit_code, 2);
  EXPECT_EQ(run_program({"report", demo + "ground-equipment.weldplan.json", "--store", store, "--unit",
                         serial, "--output", path("none.html")})
                .exit_code,
            2);
}

}  // namespace
