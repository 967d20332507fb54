// What people read follows --language and --units; JSON doesn't.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

#include "base/error.hpp"
#include "base/json/json_document.hpp"
#include "base/sentences/sentence_json.hpp"
#include "base/sentences/sentence_text.hpp"
#include "base/text/comma_list.hpp"
#include "base/text/utf8.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "cli/text_lines.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

const Arguments evaluate = {"evaluate", demo_plan};
const Arguments cycle = {"cycle", demo_plan};
const Arguments line = {"line",   demo_plan, "--orders", demo_orders, "--carts", demo_folder + "carts",
                        "--runs", "8"};

/// The findings of a command's JSON.
struct Said {
  std::string english;
  Sentence sentence;
};
std::vector<Said> findings_of(const Arguments& command) {
  const ProgramRun run = run_with(command, {"--json"});
  const JsonDocument document(run.output, "output");
  std::vector<Said> said;
  document.root().member("findings")->each_element([&](std::size_t, const JsonValue& finding) {
    const std::string text = finding.member("text")->string();
    said.push_back({text, sentence_of_members(finding, text)});
  });
  EXPECT_FALSE(said.empty()) << command.front();
  return said;
}

/// The table of findings, whose last column holds a rule, a word without blanks, in every row.
std::vector<std::string> table_of_findings(const std::string& output) {
  std::vector<std::string> lines = lines_of(output);
  const auto begin = std::find_if(lines.rbegin(), lines.rend(), [](const std::string& each) {
    return each.starts_with("Schwere") || each.starts_with("Severity");
  });
  return {begin == lines.rend() ? lines.end() : begin.base() - 1, lines.end()};
}

class ThirdLanguage : public FolderTest {
 protected:
  ThirdLanguage() { setenv("SEAMTAKT_REFERENCE", folder.c_str(), 1); }
  ~ThirdLanguage() override { unsetenv("SEAMTAKT_REFERENCE"); }

  /// English with "qq " before every sentence, and some words of its own.
  void write_language() {
    std::filesystem::create_directory(folder / "languages");
    std::ifstream english(source_path("/reference/languages/en.json"));
    std::ofstream own(folder / "languages/qq.json");
    const std::regex sentence(R"x(^(    "[^"]+": ")(.*)$)x");
    for (std::string each; std::getline(english, each);) {
      if (each.starts_with("  \"words\"")) break;
      own << std::regex_replace(each, sentence, "$1qq $2") << "\n";
    }
    own << R"("words": {"Severity": "Graveco", "warn": "averto", "Air moves": "Flugoj"}})";
  }
};

}  // namespace

TEST(LanguageOfResults, GermanAndUsUnitsLeaveNoEnglishFinding) {
  const TextView view(*find_language("de"), UnitSystem::us);
  for (const Arguments& command : {evaluate, cycle, line}) {
    const ProgramRun run = run_with(command, {"--language", "de", "--units", "us"});
    EXPECT_EQ(run.exit_code, run_with(command, {"--json"}).exit_code) << run.errors;
    for (const Said& finding : findings_of(command)) {
      const std::string german = printable(sentence_text(finding.sentence, view), 400);
      EXPECT_NE(german, finding.english) << command.front();
      EXPECT_FALSE(contains(run.output, finding.english.substr(0, 60))) << finding.english;
      EXPECT_TRUE(contains(run.output, german)) << german;
    }
    EXPECT_TRUE(contains(run.output, "Befunde: ")) << command.front();
    EXPECT_FALSE(contains(run.output, "Findings")) << command.front();
  }
}

TEST(LanguageOfResults, UsUnitsAreInches) {
  const std::string si = run_program({"evaluate", demo_plan}).output;
  const std::string us = run_program({"evaluate", demo_plan, "--units", "us"}).output;
  // The undersized fillet of the demo: 5.11 of 6 mm.
  EXPECT_TRUE(contains(si, "Fillet leg is 5.11 of 6 mm"));
  EXPECT_TRUE(contains(us, "Fillet leg is 0.201 of 0.236\u202fin"));
  EXPECT_FALSE(contains(us, " mm"));
}

TEST(LanguageOfResults, TheDemosCyclesAreGerman) {
  const std::string text = run_with(cycle, {"--language", "de"}).output;
  for (const char* part :
       {"Bauteil", "Zykluszeit", "Schranke", "Größte Verluste neben dem Lichtbogen", "BD: Warten 1027\u202fs",
        "Die Zykluszeit ist 2785.1\u202fs; der Takt lässt 2160\u202fs.", "wie gezeichnet", "Brennerpflege",
        "Befunde: 1 Fehler, 6 Warnungen, 4 Hinweise"})
    EXPECT_TRUE(contains(text, part)) << part;
  for (const char* part : {"Weldment", "Margin", "Largest", "Robot ", "orientation", "fail "})
    EXPECT_FALSE(contains(text, part)) << part;
}

TEST(LanguageOfResults, TheDemosLineIsGerman) {
  const std::string text = run_with(line, {"--language", "de"}).output;
  for (const char* part :
       {"Einheiten in ", "Engpass cell", "Taktverluste: ", "Mittel von 8 Läufen", "1 Platz mehr",
        "Zeit −10\u202f%", "fehlt (3 von 4 da)", "Als nächste freigegeben"})
    EXPECT_TRUE(contains(text, part)) << part;
  for (const char* part : {"units", "Throughput", " server", "missing", "Waits"})
    EXPECT_FALSE(contains(text, part)) << part;
}

TEST(LanguageOfResults, ColumnsOfATableStayBelowOneAnother) {
  for (const Arguments& command : {evaluate, cycle, line}) {
    const auto table = table_of_findings(run_with(command, {"--language", "de", "--units", "us"}).output);
    ASSERT_GT(table.size(), 1u) << command.front();
    const auto last_column = [](const std::string& row) {
      return display_width(row.substr(0, row.rfind(' ') + 1));
    };
    for (const std::string& row : table) EXPECT_EQ(last_column(row), last_column(table.front())) << row;
  }
}

TEST(LanguageOfResults, JsonStaysEnglishAndSi) {
  for (const Arguments& command : {evaluate, cycle, line})
    EXPECT_EQ(run_with(command, {"--json", "--language", "de", "--units", "us"}).output,
              run_with(command, {"--json"}).output)
        << command.front();
}

TEST(LanguageOfResults, OptionsOfTheProgramMayBeGivenBeforeTheCommand) {
  EXPECT_EQ(run_program({"--language", "de", "cycle", demo_plan}).output,
            run_program({"cycle", demo_plan, "--language", "de"}).output);
}

TEST(LanguageOfResults, ARefusalIsInTheLanguage) {
  const ProgramRun run =
      run_program({"line", demo_plan, "--orders", demo_orders, "--unit-count", "0", "--language", "de"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(run.output, "");
  EXPECT_EQ(run.errors, "--unit-count: gefunden: \"0\", erwartet: eine ganze Zahl von 1 bis 200000\n");
}

TEST(LanguageOfResults, AnUnknownLanguageOrSystemOfUnitsIsRefused) {
  for (const char* code : {"xx", "DE", "../de"}) {
    const ProgramRun run = run_with(cycle, {"--language", code});
    EXPECT_EQ(run.exit_code, 2) << code;
    EXPECT_EQ(run.output, "") << code;
    EXPECT_EQ(run.errors, "--language: found \"" + std::string(code) + "\", expected one of " +
                              comma_list(language_codes()) + "\n");
  }
  const ProgramRun run = run_with(cycle, {"--units", "feet"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(lines_of(run.errors).size(), 1u) << run.errors;
  EXPECT_TRUE(contains(run.errors, "--units")) << run.errors;
}

TEST_F(ThirdLanguage, OfAFolderIsAccepted) {
  write_language();
  const ProgramRun run = run_with(cycle, {"--summary", "--language", "qq"});
  ASSERT_EQ(run.exit_code, 1) << run.errors;
  EXPECT_TRUE(contains(run.output, "qq The cycle takes 2785.1\u202fs; the takt leaves 2160\u202fs."))
      << run.output;
  EXPECT_TRUE(contains(run.output, "qq Findings: qq 1 fail, 6 warn, 4 note"));
  EXPECT_TRUE(contains(run.output, "\nGraveco"));
  EXPECT_TRUE(contains(run.output, "\naverto"));
  // Words that it lacks are English, within a line in English spelling.
  EXPECT_TRUE(contains(run.output, "BD: waiting 1027\u202fs, Flugoj 120.3\u202fs")) << run.output;
}

TEST_F(ThirdLanguage, ThatIsDamagedIsRefusedInOneLine) {
  std::filesystem::create_directory(folder / "languages");
  write("languages/qq.json", R"({"name": "qq", "sentences": {"refusal": "{found"}, "words": {}})");
  const ProgramRun run = run_with(cycle, {"--language", "qq"});
  EXPECT_EQ(run.exit_code, 2);
  EXPECT_EQ(lines_of(run.errors).size(), 1u) << run.errors;
  EXPECT_TRUE(contains(run.errors, "qq.json")) << run.errors;
}
