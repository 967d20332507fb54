#include <gtest/gtest.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>

#include "base/csv/csv.hpp"
#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/file_bytes.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class Report : public FolderTest {
 protected:
  /// A workbook's content as read by a second reader, Python's own zip and XML modules.
  std::string python_on_workbook(const std::string& expression) {
    std::ofstream(folder / "read.py") << R"(
import re, sys, xml.dom.minidom, zipfile
book = zipfile.ZipFile(sys.argv[1])
parts = {name: book.read(name).decode() for name in book.namelist()}
for text in parts.values():
    xml.dom.minidom.parseString(text)
sheets = {name: text for name, text in parts.items() if name.startswith("xl/worksheets/sheet")}
print()" << expression << ")\n";
    const std::string command = "python3 " + path("read.py") + " " + path("report.xlsx") + " 2>&1";
    FILE* pipe = popen(command.c_str(), "r");
    std::string output;
    for (int c; (c = fgetc(pipe)) != EOF;) output += static_cast<char>(c);
    pclose(pipe);
    return output;
  }
};

TEST_F(Report, CsvHoldsTheSameNumbersAsTheEvaluation) {
  ASSERT_EQ(run_program({"report", demo_plan, "--output", path("passes.csv")}).exit_code, 0);
  const CsvTable table = read_csv(path("passes.csv"));
  const JsonNode evaluation = parse_json(run_program({"evaluate", demo_plan, "--json"}).output, "output");
  const JsonNode& passes = *evaluation.find("passes");
  ASSERT_EQ(table.rows.size(), passes.elements.size());
  const std::size_t seam = table.require("seam"), heat = table.require("heat_input_kJ_mm"),
                    low = table.require("cooling_time_span_s_lo"), origin = table.require("plan_sha256");
  for (std::size_t row = 0; row < table.rows.size(); ++row) {
    const auto& fields = table.rows[row].fields;
    double value = 0;
    EXPECT_EQ(fields[seam], passes.elements[row].find("seam")->string);
    ASSERT_TRUE(parse_number(fields[heat], value));
    EXPECT_EQ(value, passes.elements[row].find("heat_input_kJ_mm")->number);
    ASSERT_TRUE(parse_number(fields[low], value));
    EXPECT_EQ(value, passes.elements[row].find("cooling_time_span_s")->elements[0].number);
    EXPECT_EQ(fields[origin].size(), 64u);
  }
}

TEST_F(Report, CsvTableIsChosenByName) {
  for (const char* table :
       {"judgement", "seams", "weldments", "cycle", "order", "findings", "schedules", "about"}) {
    ASSERT_EQ(run_program({"report", demo_plan, "--table", table, "--output", path("t.csv")}).exit_code, 0)
        << table;
    EXPECT_FALSE(read_csv(path("t.csv")).rows.empty()) << table;
  }
  const ProgramRun unknown =
      run_program({"report", demo_plan, "--table", "pases", "--output", path("none.csv")});
  EXPECT_EQ(unknown.exit_code, 2);
  EXPECT_NE(unknown.errors.find("one of judgement, passes, seams"), std::string::npos) << unknown.errors;
  EXPECT_FALSE(std::filesystem::exists(path("none.csv")));
}

TEST_F(Report, OfOneScheduleIsItsSheetAlone) {
  ASSERT_EQ(run_program({"report", demo_plan, "--schedule", "F5S", "--output", path("f5s.html")}).exit_code,
            0);
  const std::string page = bytes_of(path("f5s.html"));
  for (const char* part : {"<section class=\"sheet\">", "<h3>Schedule F5S</h3>", "271 to 331 A", "BD/S11",
                           "<svg", "Reviewed: name, date, signature"})
    EXPECT_NE(page.find(part), std::string::npos) << part;
  for (const char* part : {"<h3>Schedule F6S</h3>", "Cycle sheets"})
    EXPECT_EQ(page.find(part), std::string::npos) << part;
  ASSERT_EQ(
      run_program({"report", demo_plan, "--schedule", "F5S,F4S", "--output", path("two.csv")}).exit_code, 0);
  const CsvTable table = read_csv(path("two.csv"));
  const std::size_t schedule = table.require("schedule");
  ASSERT_FALSE(table.rows.empty());
  EXPECT_EQ(table.rows.front().fields[schedule], "F4S") << "in the plan's order";
  EXPECT_EQ(table.rows.back().fields[schedule], "F5S");
}

TEST_F(Report, OfASheetInGermanHasADecimalComma) {
  ASSERT_EQ(run_program(
                {"--language", "de", "report", demo_plan, "--schedule", "F5S", "--output", path("f5s.html")})
                .exit_code,
            0);
  const std::string page = bytes_of(path("f5s.html"));
  EXPECT_NE(page.find("10,5\u202fmm/s (9,7 bis 11,3\u202fmm/s)"), std::string::npos);
  EXPECT_EQ(page.find("10.5\u202f"), std::string::npos);
}

TEST_F(Report, OfAllSchedulesIsAPageEach) {
  ASSERT_EQ(run_program({"report", two_schedules_plan, "--table", "schedules", "--output", path("all.html")})
                .exit_code,
            0);
  const std::string page = bytes_of(path("all.html"));
  EXPECT_NE(page.find("<h3>Schedule F</h3>"), std::string::npos);
  EXPECT_NE(page.find("<h3>Schedule C</h3>"), std::string::npos);
  EXPECT_EQ(page.find("Heat input by pass"), std::string::npos);
}

TEST_F(Report, OfAScheduleThatThePlanHasNotIsRefused) {
  const ProgramRun run =
      run_program({"report", demo_plan, "--schedule", "F99", "--output", path("none.html")});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find("--schedule: found \"F99\", expected the id of a schedule of the plan"),
            std::string::npos)
      << run.errors;
  EXPECT_FALSE(std::filesystem::exists(path("none.html")));
}

TEST_F(Report, UnknownEndingIsRefused) {
  const ProgramRun run = run_program({"report", demo_plan, "--output", path("report.doc")});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_NE(run.errors.find(".html, .csv or .xlsx"), std::string::npos) << run.errors;
}

TEST_F(Report, WorkbookHasASheetForEachTableAndNoFormula) {
  ASSERT_EQ(run_program({"report", demo_plan, "--output", path("report.xlsx")}).exit_code, 0);
  EXPECT_EQ(python_on_workbook("len(sheets), sum(t.count('<f>') + t.count('<f ') for t in sheets.values()), "
                               "'ISO 10218' in parts['xl/sharedStrings.xml']"),
            "9 0 True\n");
}

TEST_F(Report, WorkbookIsPrintedAsWideAsAPageWithItsHeadOnEach) {
  ASSERT_EQ(run_program({"report", demo_plan, "--output", path("report.xlsx")}).exit_code, 0);
  EXPECT_EQ(python_on_workbook(
                "sum('fitToPage=\"1\"' in t and 'fitToHeight=\"0\"' in t and 'landscape' in t for t in "
                "sheets.values()), parts['xl/workbook.xml'].count('_xlnm.Print_Titles')"),
            "9 9\n");
}

TEST_F(Report, TextThatLooksLikeAFormulaStaysText) {
  std::string plan = bytes_of(two_schedules_plan);
  const std::string key = "\"title\": \"";
  const std::size_t at = plan.find(key);
  ASSERT_NE(at, std::string::npos);
  plan.insert(at + key.size(), "=1+1 ");
  std::ofstream(path("hostile.weldplan.json")) << plan;
  ASSERT_LE(run_program({"report", path("hostile.weldplan.json"), "--output", path("report.xlsx")}).exit_code,
            1);
  EXPECT_EQ(python_on_workbook("sum(t.count('<f>') + t.count('<f ') for t in sheets.values()), "
                               "'=1+1 ' in parts['xl/sharedStrings.xml']"),
            "0 True\n");
  ASSERT_LE(
      run_program({"report", path("hostile.weldplan.json"), "--table", "about", "--output", path("a.csv")})
          .exit_code,
      1);
  EXPECT_NE(bytes_of(path("a.csv")).find("'=1+1 "), std::string::npos);
}

TEST_F(Report, AWorkbookOfTextsThatXmlCannotHoldIsStillXml) {
  std::string plan = bytes_of(two_schedules_plan);
  const std::string key = "\"title\": \"";
  const std::size_t at = plan.find(key);
  ASSERT_NE(at, std::string::npos);
  plan.insert(at + key.size(), "<a> & \\u001b\\u0001 \\ufffe\\uffff ");
  const std::string file = path("a&<\x1b>.weldplan.json");
  std::ofstream(file) << plan;
  ASSERT_LE(run_program({"report", file, "--output", path("report.xlsx")}).exit_code, 1);
  // Each part is parsed before the expression is looked at.
  EXPECT_EQ(python_on_workbook("'&lt;a&gt; &amp; \\\\x1B\\\\x01 \\\\u{FFFE}\\\\u{FFFF} ' in "
                               "parts['docProps/core.xml'], 'a&amp;&lt;\\\\x1B&gt;.weldplan.json' in "
                               "parts['docProps/core.xml'], '_x001B__x0001_ \\\\u{FFFE}' in "
                               "parts['xl/sharedStrings.xml']"),
            "True True True\n");
}

TEST_F(Report, SameMomentAndPlanGiveTheSameBytes) {
  setenv("SOURCE_DATE_EPOCH", "1767225600", 1);
  for (const char* name : {"a.xlsx", "b.xlsx", "a.csv", "b.csv", "a.html", "b.html"})
    ASSERT_EQ(run_program({"report", demo_plan, "--output", path(name)}).exit_code, 0) << name;
  unsetenv("SOURCE_DATE_EPOCH");
  EXPECT_EQ(bytes_of(path("a.xlsx")), bytes_of(path("b.xlsx")));
  EXPECT_EQ(bytes_of(path("a.csv")), bytes_of(path("b.csv")));
  EXPECT_EQ(bytes_of(path("a.html")), bytes_of(path("b.html")));
}

}  // namespace
