// Reports of plans and of stores speak the language and units asked for; CSV never does.
#include <gtest/gtest.h>

#include <cstdio>
#include <cstdlib>
#include <regex>
#include <set>

#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "cli/ledger/ledger_fixture.hpp"
#include "cli/text_lines.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// Words that both languages spell alike.
const std::set<std::string> same_in_german = {"Plan", "Position", "Takt"};

/// Whether a text holds three small letters in a row: a word, not a sign.
bool has_words(const std::string& text) {
  static const std::regex word("[a-z]{3}");
  return std::regex_search(text, word);
}

/// Fixed texts of a page: section titles, heads of columns, labels of items, places to sign.
std::set<std::string> labels_of(const std::string& page) {
  static const std::regex label("<(h2|h3|th|dt|div)(?: class=\"[nw]\")?>([^<]*)</");
  std::set<std::string> labels;
  for (std::sregex_iterator at(page.begin(), page.end(), label), end; at != end; ++at)
    if (has_words((*at)[2])) labels.insert((*at)[2]);
  return labels;
}

class ReportLanguage : public LedgerCommand {
 protected:
  /// The bytes of a report of these words.
  std::string report(Arguments words, const std::string& file, const Arguments& more = {}) {
    words.insert(words.begin(), "report");
    words.insert(words.end(), {"--output", path(file)});
    words.insert(words.end(), more.begin(), more.end());
    const ProgramRun run = run_program(words);
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return bytes_of(path(file));
  }

  void expect_no_english_label(const Arguments& words, std::size_t least) {
    const auto english = labels_of(report(words, "en.html")),
               german = labels_of(report(words, "de.html", {"--language", "de"}));
    EXPECT_GT(english.size(), least) << words.front();
    EXPECT_GT(german.size(), least) << words.front();
    for (const std::string& label : english)
      if (!same_in_german.contains(label)) {
        EXPECT_FALSE(german.contains(label)) << label;
      }
  }

  /// What Python's own zip module finds in a workbook.
  std::string python_on(const std::string& workbook, const std::string& expression) {
    write_file(path("read.py"),
               "import sys, zipfile\nbook = zipfile.ZipFile(sys.argv[1])\n"
               "parts = {name: book.read(name).decode() for name in book.namelist()}\n"
               "texts, book = parts['xl/sharedStrings.xml'], parts['xl/workbook.xml']\nprint(" +
                   expression + ")\n");
    FILE* pipe = popen(("python3 " + path("read.py") + " " + path(workbook) + " 2>&1").c_str(), "r");
    std::string output;
    for (int c; (c = fgetc(pipe)) != EOF;) output += static_cast<char>(c);
    pclose(pipe);
    return output;
  }
};

}  // namespace

TEST_F(ReportLanguage, APlansReportHasNoEnglishLabelInGerman) {
  expect_no_english_label({demo_plan}, 80);
}

TEST_F(ReportLanguage, ReportsOfAUnitAShiftAndASeamHaveNoEnglishLabelInGerman) {
  ASSERT_LE(audit_demo().exit_code, 1);
  const std::string serial = read_csv(demo_folder + "orders.csv").rows.at(0).fields.at(0);
  expect_no_english_label({"--store", store_, "--unit", serial}, 40);
  expect_no_english_label({"--store", store_, "--from", "2026-03-02", "--to", "2026-03-02"}, 40);
  expect_no_english_label({"--store", store_, "--seam", "BD/S03"}, 40);
}

TEST_F(ReportLanguage, AUnitsReportSaysInGermanWhetherTheStoreIsTrusted) {
  ASSERT_LE(audit_demo().exit_code, 1);
  const std::string serial = read_csv(demo_folder + "orders.csv").rows.at(0).fields.at(0);
  const std::string page =
      report({"--store", store_, "--unit", serial}, "u.html", {"--language", "de", "--units", "us"});
  for (const char* part :
       {"OK, aber nicht verankert: ", "<h1>Schweißnachweis der Einheit ",
        "Die Zeile unten außerhalb des Speichers", "aria-label=\"Die Ankerzeile als QR-Code\"",
        ">bestanden</td>", "Wärmeeinbringung, kJ/in", "Nur Schätzungen."})
    EXPECT_TRUE(contains(page, part)) << part;
  for (const char* part :
       {"OK but unanchored", "Keep the line below", ">pass</td>", "kJ/mm", "Estimates only"})
    EXPECT_FALSE(contains(page, part)) << part;
}

TEST_F(ReportLanguage, ASeamsStatisticsNameTheirQuantityToPeople) {
  ASSERT_LE(audit_demo().exit_code, 1);
  const Arguments seam = {"--store", store_, "--seam", "BD/S03"};
  const std::string page = report(seam, "s.html", {"--language", "de", "--units", "us"});
  EXPECT_TRUE(contains(page, ">Wärmeeinbringung, kJ/in</td>"));
  EXPECT_TRUE(contains(page, "BD/S03/Raupe 1"));
  EXPECT_FALSE(contains(page, ">heat_input_kJ_mm</td>"));
  EXPECT_TRUE(contains(report(seam, "e.html"), ">heat_input_kJ_mm</td>")) << "as files have it";
}

TEST_F(ReportLanguage, FindingsAndTheirSourcesAreGerman) {
  const std::string page = report({demo_plan}, "p.html", {"--language", "de"});
  const ProgramRun json = run_program({"evaluate", demo_plan, "--json"});
  const JsonNode evaluation = parse_json(json.output, "output");
  const auto& findings = evaluation.find("findings")->elements;
  ASSERT_FALSE(findings.empty());
  for (const JsonNode& finding : findings)
    EXPECT_FALSE(contains(page, finding.find("text")->string)) << finding.find("text")->string;
  EXPECT_TRUE(contains(page, "(aus dem Gedächtnis)"));
  EXPECT_FALSE(contains(page, "(recalled)"));
}

TEST_F(ReportLanguage, UsUnitsConvertAHeatInputAPreheatTemperatureAndAThroat) {
  const std::string page = report({demo_plan}, "us.html", {"--units", "us"});
  for (const char* head : {"<th class=\"n\">Heat input, kJ/in</th>",
                           "<th class=\"n\">Preheat needed, °F</th>", "<th class=\"n\">Throat, in</th>"})
    EXPECT_TRUE(contains(page, head)) << head;
  const auto column = [&](const char* table, const char* key) {
    report({demo_plan, "--table", table}, "t.csv");
    const CsvTable rows = read_csv(path("t.csv"));
    std::vector<double> values;
    for (const CsvRow& row : rows.rows)
      if (double value = 0; parse_number(row.fields[rows.require(key)], value)) values.push_back(value);
    EXPECT_FALSE(values.empty()) << key;
    return values;
  };
  const auto shown = [&](double value, int digits) {
    return contains(page, "<td class=\"n\">" + rounded_text(value, digits) + "</td>");
  };
  for (const double kJ_mm : column("passes", "heat_input_kJ_mm"))
    EXPECT_TRUE(shown(kJ_mm * 25.4, 4)) << kJ_mm;
  for (const double C : column("passes", "preheat_needed_C"))
    if (C > 20) {
      EXPECT_TRUE(shown(C * 9 / 5 + 32, 3)) << C;
    }
  for (const double mm : column("seams", "throat_mm")) EXPECT_TRUE(shown(mm / 25.4, 3)) << mm;
}

TEST_F(ReportLanguage, CsvStaysEnglishAndSi) {
  setenv("SOURCE_DATE_EPOCH", "1767225600", 1);
  for (const char* table :
       {"judgement", "passes", "seams", "weldments", "cycle", "order", "findings", "schedules", "about"})
    EXPECT_EQ(report({demo_plan, "--table", table}, "a.csv", {"--language", "de", "--units", "us"}),
              report({demo_plan, "--table", table}, "b.csv"))
        << table;
  unsetenv("SOURCE_DATE_EPOCH");
}

TEST_F(ReportLanguage, AWorkbookIsGermanInItsTabsHeadsAndProperties) {
  report({demo_plan}, "report.xlsx", {"--language", "de", "--units", "us"});
  EXPECT_EQ(
      python_on("report.xlsx",
                "all('name=\"' + tab + '\"' in book for tab in ['Raupen', 'Nähte', 'Bauteile', 'Zyklus', "
                "'Befunde', 'Schweißanweisungen', 'Angaben']), "
                "'Wärmeeinbringung, kJ/in' in texts, 'nicht angegeben' in texts, "
                "'Heat input' in texts, 'not stated' in texts, 'kJ/mm' in texts, "
                "'Plan der Schweißungen' in parts['docProps/core.xml'], "
                "'Seite &amp;P von &amp;N' in parts['xl/worksheets/sheet1.xml']"),
      "True True True False False False True True\n");
}

TEST_F(ReportLanguage, AThirdLanguageOfAFolderReachesTheReport) {
  std::filesystem::create_directories(folder / "languages");
  write_file(path("languages/qq.json"),
             R"({"name": "Q", "sentences": {}, "words": {"Schedule sheets": "Grafoj", "Heat input": "Varmo",)"
             R"( "Schedule {1}": "Plano {1}", "passes": "a[b]", "seams": "weldments"}})");
  setenv("SEAMTAKT_REFERENCE", folder.c_str(), 1);
  const std::string page = report({demo_plan}, "q.html", {"--language", "qq"});
  report({demo_plan}, "q.xlsx", {"--language", "qq"});
  unsetenv("SEAMTAKT_REFERENCE");
  for (const char* part : {"<html lang=\"qq\">", "<h2>Grafoj</h2>", "<h3>Plano F4S</h3>",
                           "<th class=\"n\">Varmo, kJ/mm</th>", "<h2>Findings</h2>"})
    EXPECT_TRUE(contains(page, part)) << part;
  // A tab that a workbook can't have keeps its own name, two never share one.
  EXPECT_EQ(python_on("q.xlsx",
                      "'name=\"passes\"' in book, book.count('name=\"weldments\"'), "
                      "book.count('<sheet ')"),
            "True 1 9\n");
}
