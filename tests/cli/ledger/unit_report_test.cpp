#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>

#include "base/csv/csv.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// The demo's sample log in a store of its own.
class UnitReport : public FolderTest {
 protected:
  std::string store;

  void SetUp() override {
    std::filesystem::create_directories(folder / "records");
    setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
    store = "sqlite:" + (folder / "records/r.sqlite").string();
    const ProgramRun audit = run_program({"audit", demo_folder + "arc-log.csv.gz", "--plan",
                                          demo_folder + "ground-equipment.weldplan.json", "--manual",
                                          demo_folder + "manual-seams.csv", "--store", store, "--summary"});
    ASSERT_EQ(audit.exit_code, 1) << audit.errors;
    serial = read_csv(demo_folder + "orders.csv").rows.at(0).fields.at(0);
  }
  void TearDown() override { unsetenv("XDG_DATA_HOME"); }
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
  // In groups of four: tests/cli/anchor_test.cpp types it back.
  const std::string line = head.output.substr(head.output.find("head: ") + 6);
  EXPECT_NE(page.find(line.substr(0, 4) + " " + line.substr(4, 4) + " "), std::string::npos) << head.output;
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

TEST_F(UnitReport, ReportOfAShiftHoldsItsUnitsPassesAndSums) {
  const auto table = [&](const char* name, std::vector<std::string> words) {
    words.insert(words.begin(), {"report", "--store", store});
    words.insert(words.end(), {"--table", name, "--output", path("t.csv")});
    const ProgramRun run = run_program(words);
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return read_csv(path("t.csv"));
  };
  const CsvTable day = table("passes", {"--from", "2026-03-02", "--to", "2026-03-02"});
  EXPECT_GT(day.rows.size(), 50u);
  const std::size_t started = day.require("started"), unit = day.require("unit_serial");
  std::set<std::string> units;
  for (std::size_t i = 0; i < day.rows.size(); ++i) {
    units.insert(day.rows[i].fields[unit]);
    EXPECT_LE(day.rows[i > 0 ? i - 1 : 0].fields[started], day.rows[i].fields[started]);
  }
  EXPECT_EQ(table("units", {"--from", "2026-03-02", "--to", "2026-03-02"}).rows.size(), units.size());
  // The two halves of the day are the day.
  const std::string middle = day.rows[day.rows.size() / 2].fields[started];
  const CsvTable first = table("passes", {"--from", "2026-03-02", "--to", middle}),
                 second = table("passes", {"--from", middle, "--to", "2026-03-03"});
  EXPECT_EQ(first.rows.size() + second.rows.size(), day.rows.size());
  EXPECT_EQ(second.rows.at(0).fields[started], middle) << "the beginning belongs to a span, its end doesn't";
  ASSERT_EQ(run_program({"report", "--store", store, "--from", "2026-03-02", "--to", "2026-03-02", "--output",
                         path("s.html")})
                .exit_code,
            0);
  const std::string page = text("s.html");
  for (const char* part : {"Heat-input record: welding from 2026-03-02", "Complete by now", "ISO 10218",
                           "<svg role=\"img\" class=\"qr\"", "Open items and dispositions"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
  ASSERT_EQ(
      run_program({"report", "--store", store, "--from", "2026-03-02", "--output", path("s.xlsx")}).exit_code,
      0);
  EXPECT_EQ(text("s.xlsx").substr(0, 2), "PK");
}

TEST_F(UnitReport, ReportOfASeamShowsItOverTime) {
  ASSERT_EQ(run_program(
                {"report", "--store", store, "--unit", serial, "--output", path("u.csv"), "--table", "unit"})
                .exit_code,
            0);
  const std::string weldment = read_csv(path("u.csv")).rows.at(1).fields.at(1);
  ASSERT_EQ(run_program({"report", "--store", store, "--unit", serial, "--output", path("p.csv")}).exit_code,
            0);
  const CsvTable passes = read_csv(path("p.csv"));
  const std::string seam = passes.rows.at(0).fields.at(passes.require("seam"));
  const std::string place = weldment + "/" + seam;
  const ProgramRun run = run_program(
      {"report", "--store", store, "--seam", place, "--table", "statistics", "--output", path("s.csv")});
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const CsvTable statistics = read_csv(path("s.csv"));
  const std::size_t quantity = statistics.require("quantity"), mean = statistics.require("mean"),
                    records = statistics.require("records"), where = statistics.require("place");
  ASSERT_FALSE(statistics.rows.empty());
  // The mean of what the passes' table has.
  ASSERT_EQ(run_program({"report", "--store", store, "--seam", place, "--output", path("q.csv")}).exit_code,
            0);
  const CsvTable all = read_csv(path("q.csv"));
  double sum = 0;
  int count = 0;
  for (const CsvRow& row : all.rows)
    if (row.fields[all.require("pass")] == "1") {
      sum += std::stod(row.fields[all.require("heat_input_kJ_mm")]);
      ++count;
    }
  bool found = false;
  for (const CsvRow& row : statistics.rows)
    if (row.fields[quantity] == "heat_input_kJ_mm" && row.fields[where] == place + "/pass 1") {
      found = true;
      EXPECT_EQ(row.fields[records], std::to_string(count));
      EXPECT_NEAR(std::stod(row.fields[mean]), sum / count, 1e-9);
    }
  EXPECT_TRUE(found);
}

TEST_F(UnitReport, ARangeThatSaysNothingIsRefusedByItsOption) {
  const auto refused = [&](std::vector<std::string> words, const char* option) {
    words.insert(words.begin(), {"report", "--store", store, "--output", path("x.html")});
    const ProgramRun run = run_program(words);
    EXPECT_EQ(run.exit_code, 2) << run.output;
    EXPECT_NE(run.errors.find(option), std::string::npos) << run.errors;
    EXPECT_FALSE(std::filesystem::exists(path("x.html")));
  };
  refused({}, "--unit");
  refused({"--unit", serial, "--from", "2026-03-02"}, "--unit");
  refused({"--from", "tomorrow"}, "--from");
  refused({"--from", "2026-02-30"}, "--from");
  refused({"--from", "2026-03-02T10:00:00Z", "--to", "2026-03-02T09:00:00Z"}, "--to");
  refused({"--from", "1999-01-01", "--to", "1999-01-02"}, "--from");
  refused({"--from", "2027-01-01"}, "--from");
  refused({"--seam", "S01"}, "--seam");
  refused({"--seam", "BD/none"}, "--seam");
}

TEST_F(UnitReport, AlteredStoreIsReportedAsNotTrusted) {
  std::ofstream(folder / "alter.py") << R"(
import sqlite3, sys
store = sqlite3.connect(sys.argv[1])
triggers = store.execute("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'").fetchall()
for name, _ in triggers:
    store.execute("DROP TRIGGER " + name)
changed = store.execute("""UPDATE rec SET body = CAST(replace(CAST(body AS TEXT), '"pass"', '"fail"') AS BLOB)
                           WHERE kind = 'pass'""").rowcount
for _, text in triggers:
    store.execute(text)
store.commit()
sys.exit(0 if changed > 0 else 1)
)";
  ASSERT_EQ(std::system(("python3 " + path("alter.py") + " " + path("records/r.sqlite")).c_str()), 0);
  EXPECT_EQ(run_program({"report", "--store", store, "--unit", serial, "--output", path("u.html")}).exit_code,
            1);
  const std::string page = text("u.html");
  EXPECT_LT(page.find("NOT TRUSTED"), page.find("<h2>")) << "said before anything else is";
}

TEST_F(UnitReport, CertificateSaysWhetherTheUnitConformsAndByWhat) {
  const auto certificate = [&](const std::string& unit) {
    const ProgramRun run = run_program(
        {"report", "--store", store, "--unit", unit, "--certificate", "--output", path("c.html")});
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return text("c.html");
  };
  const std::string whole = certificate("AE-26-0101");
  for (const char* part :
       {"Certificate of conformity of unit AE-26-0101", "By its records the unit conforms to the plan",
        "It is no inspection and no test", "Schedules and qualifications", "Robot passes and their verdicts",
        "Deviations and dispositions", "Signing key", "Inspected: name, date, signature"})
    EXPECT_NE(whole.find(part), std::string::npos) << part;
  EXPECT_NE(certificate("AE-26-0102").find("No conformity is stated: the unit isn"), std::string::npos);
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"--from", "2026-03-02", "--certificate", "--output", path("d.html")},
        {"--unit", "AE-26-0101", "--certificate", "--output", path("d.csv")}}) {
    std::vector<std::string> all = {"report", "--store", store};
    all.insert(all.end(), words.begin(), words.end());
    const ProgramRun run = run_program(all);
    EXPECT_EQ(run.exit_code, 2);
    EXPECT_NE(run.errors.find("--certificate"), std::string::npos) << run.errors;
  }
}

TEST_F(UnitReport, ATableHoldsTheRawLogsAndTheFindings) {
  const auto table = [&](const char* name) {
    EXPECT_EQ(run_program({"report", "--store", store, "--unit", "AE-26-0102", "--output", path("t.csv"),
                           "--table", name})
                  .exit_code,
              0);
    return read_csv(path("t.csv"));
  };
  const CsvTable logs = table("logs");
  ASSERT_EQ(logs.rows.size(), 1u);
  EXPECT_TRUE(logs.rows[0].fields[logs.require("name")].ends_with("arc-log.csv.gz"));
  EXPECT_EQ(logs.rows[0].fields[logs.require("sha256")].size(), 64u);
  const CsvTable findings = table("findings");
  ASSERT_FALSE(findings.rows.empty());
  for (const char* key : {"record", "where", "severity", "rule", "text"}) findings.require(key);
}

TEST_F(UnitReport, UnknownSerialIsRefusedAndNothingIsWritten) {
  const ProgramRun run =
      run_program({"report", "--store", store, "--unit", "NONE-1", "--output", path("none.html")});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find("NONE-1"), std::string::npos) << run.errors;
  EXPECT_FALSE(std::filesystem::exists(path("none.html")));
  EXPECT_EQ(run_program({"report", "--store", store, "--output", path("none.html")}).exit_code, 2);
  EXPECT_EQ(run_program({"report", demo_folder + "ground-equipment.weldplan.json", "--store", store, "--unit",
                         serial, "--output", path("none.html")})
                .exit_code,
            2);
}

}  // namespace
