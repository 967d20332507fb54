// What the commands of records and ledgers print for people follows --language and --units; JSON and stored
// data don't.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "base/json/json_document.hpp"
#include "base/sentences/sentence_json.hpp"
#include "base/sentences/sentence_text.hpp"
#include "cli/ledger/ledger_fixture.hpp"
#include "cli/text_lines.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

const Arguments audit = {"audit",   demo_log,   "--plan",
                         demo_plan, "--manual", demo_folder + "manual-seams.csv"};
const Arguments learn = {"learn", demo_log, "--plan", demo_plan};
const Arguments measure = {"measure", demo_plan, "--weldment", "BD", "--points", demo_folder + "points.csv"};
const Arguments german_us = {"--language", "de", "--units", "us"};

class LanguageOfLedger : public LedgerCommand {
 protected:
  ProgramRun in_german(Arguments words) { return run_with_language(std::move(words), "de"); }
  ProgramRun run_with_language(Arguments words, const std::string& language) {
    words.insert(words.end(), {"--language", language});
    return ledger(words);
  }
};

}  // namespace

TEST(LanguageOfRecords, GermanAndUsUnitsLeaveNoEnglishFinding) {
  const TextView view(*find_language("de"), UnitSystem::us);
  for (const Arguments& command : {audit, learn, measure}) {
    const ProgramRun run = run_with(command, german_us), json = run_with(command, {"--json"});
    EXPECT_EQ(run.exit_code, json.exit_code) << run.errors;
    const JsonDocument document(json.output, "output");
    std::size_t findings = 0;
    document.root().member("findings")->each_element([&](std::size_t, const JsonValue& finding) {
      ++findings;
      const std::string english = finding.member("text")->string();
      const Sentence sentence = sentence_of_members(finding, english);
      EXPECT_EQ(sentence.english(), english);
      const std::string german = printable(sentence_text(sentence, view), 400);
      EXPECT_NE(german, english);
      EXPECT_TRUE(contains(run.output, german)) << german;
      EXPECT_FALSE(contains(run.output, english.substr(0, 60))) << english;
    });
    EXPECT_EQ(findings > 0, command.front() != "measure") << "the demo's points have no finding";
    EXPECT_TRUE(contains(run.output, "Befunde: ")) << run.output;
    EXPECT_FALSE(contains(run.output, " mm ")) << command.front();
  }
}

TEST(LanguageOfRecords, JsonStaysEnglishAndSi) {
  for (const Arguments& command : {audit, learn, measure}) {
    Arguments translated = german_us;
    translated.emplace_back("--json");
    EXPECT_EQ(run_with(command, translated).output, run_with(command, {"--json"}).output) << command.front();
  }
}

TEST(LanguageOfRecords, TheDemosAuditIsGerman) {
  const std::string text = run_with(audit, {"--language", "de"}).output;
  for (const char* part : {"Raupen\n", "Einheiten\n", "Urteil", "Wärmeeinbringung", "bestanden",
                           "Zeilen: ", " in Raupen + ", "nicht beurteilt", "Fehlende Raupen"})
    EXPECT_TRUE(contains(text, part)) << part;
  for (const char* part :
       {"Verdict", "Passes", "undecided", "not judged", "Rows", "Missing", " yes", "arc off"})
    EXPECT_FALSE(contains(text, part)) << part;
}

TEST_F(LanguageOfLedger, RefusalsOfALogAreGerman) {
  const auto refused = [&](const std::string& name, const std::string& bytes) {
    const ProgramRun run =
        run_program({"audit", FolderTest::write(name, bytes), "--process", "135", "--language", "de"});
    EXPECT_EQ(run.exit_code, 2) << name;
    EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
    return run.errors;
  };
  EXPECT_TRUE(
      refused("a.csv", "time_s,voltage_V\n0,25\n")
          .ends_with("a.csv:1: gefunden: die Spalten time_s, voltage_V, erwartet: current_A (oder eine "
                     "Spaltendatei, --columns, die sagt, wo es steht)\n"));
  EXPECT_TRUE(refused("b.csv", "time_s,current_kA,voltage_V\n0,0.2,25\n")
                  .ends_with("b.csv:1:2: gefunden: die Spalte „current_kA“, erwartet: current_A (oder eine "
                             "Spaltendatei, --columns, die ihre Einheit nennt)\n"));
  EXPECT_TRUE(
      refused("c.csv", "time_s,current_A,voltage_V\n0,x,25\n")
          .ends_with("c.csv:2: gefunden: 1 von 1 Zeilen, die nicht lesbar sind, diese zuerst (current_A: "
                     "gefunden: \"x\", erwartet: eine Zahl), erwartet: höchstens 0 (--max-rejected)\n"));
  EXPECT_TRUE(contains(refused("d.csv", ""), "gefunden: eine leere Datei"));
}

TEST_F(LanguageOfLedger, WhatWasStoredIsReadBackInGerman) {
  const ProgramRun stored = audit_demo();
  ASSERT_LE(stored.exit_code, 1) << stored.errors;
  const std::string verified = in_german({"verify"}).output;
  EXPECT_TRUE(verified.starts_with("OK, aber nicht verankert: ")) << verified;
  EXPECT_TRUE(contains(verified, "\nKopf: ")) << verified;

  const JsonNode json_list = json({"nonconformance"});
  const auto& list = json_list.find("nonconformances")->elements;
  ASSERT_FALSE(list.empty());
  const std::string german = in_german({"nonconformance"}).output;
  for (const JsonNode& each : list)
    EXPECT_FALSE(contains(german, each.find("text")->string.substr(0, 60))) << each.find("text")->string;
  EXPECT_TRUE(contains(german, "Was nicht bestand")) << german;
  EXPECT_EQ(run_with_language({"nonconformance", "--json"}, "de").output,
            ledger({"nonconformance", "--json"}).output);

  const std::string rows = in_german({"list", "--kind", "pass", "--limit", "3"}).output;
  EXPECT_TRUE(contains(rows, "Nachweis")) << rows;
  EXPECT_TRUE(contains(rows, "bestanden")) << rows;
  const std::uint64_t pass = first_of_kind("pass");
  EXPECT_TRUE(in_german({"show", std::to_string(pass)})
                  .output.starts_with("Nachweis " + std::to_string(pass) + ", pass, geschrieben "));
}

TEST_F(LanguageOfLedger, RefusalsOfCorrectionsAreGerman) {
  ASSERT_LE(audit_demo().exit_code, 1);
  const std::string pass = std::to_string(first_of_kind("pass"));
  const auto refused = [&](Arguments words) {
    words.insert(words.end(), {"--language", "de"});
    const ProgramRun run = LedgerCommand::write(words);
    EXPECT_EQ(run.exit_code, 2) << run.output;
    return run.errors;
  };
  EXPECT_EQ(refused({"correct", pass, "--set", "results.pass=0"}),
            "--set: gefunden: results.pass=0, erwartet: eine ganze Zahl von 1 bis 10000\n");
  EXPECT_EQ(
      refused({"correct", pass, "--set", "results.heat_input_kJ_mm=1"}),
      "--set: gefunden: results.heat_input_kJ_mm, das aus anderen folgt, erwartet: das, woraus es folgt: "
      "energy_J, length_mm und das Verfahren der Schweißanweisung\n");
  EXPECT_EQ(
      refused({"void", "1"}),
      "record 1: gefunden: ein Nachweis der Art genesis, erwartet: einer, der für ungültig erklärt werden "
      "darf\n");
  EXPECT_EQ(ledger({"correct", pass, "--set", "results.pass=2", "--language", "de"}).errors,
            "--who: gefunden: nichts, erwartet: wer das schreibt\n");
}
