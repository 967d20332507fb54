// By what a plan is judged is on the report's first page and in the workbook's first sheet; a pass that only
// some limits judge is said to be partly judged.
#include <gtest/gtest.h>

#include "cell/timeline/timeline.hpp"
#include "exchange/report/report.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "plan/evaluate/evaluate.hpp"
#include "plan/fields/plan_file.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

Plan tee() {
  return load_plan(source_path("/tests/data/two-schedules.weldplan.json"));
}

std::string page(const Plan& plan, const char* language = "en") {
  return report_html(plan, evaluate(plan), {}, {}, TextView(*find_language(language)));
}

/// What is above the first heading of the page: its opening.
std::string opening(const Plan& plan, const char* language = "en") {
  const std::string all = page(plan, language);
  const std::size_t body = all.find("<h1"), heading = all.find("<h2", body);
  return all.substr(body, heading - body);
}

std::vector<std::vector<std::string>> judgement_rows(const Plan& plan, const TextView& view) {
  const std::vector<Sheet> sheets = report_sheets(plan, evaluate(plan), {}, {});
  EXPECT_EQ(sheets.front().name, "judgement");
  std::vector<std::vector<std::string>> rows;
  for (const auto& cells : sheets.front().rows) {
    rows.emplace_back();
    for (const SheetCell& cell : cells) rows.back().push_back(file_text(cell, view));
  }
  return rows;
}

TEST(JudgementReport, HasTheCodeAndTheSeveritiesThatThePlanChoosesOnItsFirstPage) {
  Plan plan = tee();
  plan.code = "AWS D1.1";
  plan.severity.emplace();
  plan.severity->preheat_needed = "fail";
  plan.severity->certificate = "note";
  const std::string english = opening(plan);
  for (const char* part : {"Code", "AWS D1.1", "whose sources recommend", "preheat below the need", "fail",
                           "no certificate", "note"})
    EXPECT_NE(english.find(part), std::string::npos) << part << "\n" << english;
  EXPECT_EQ(english.find("large tacks"), std::string::npos) << "as its rule has it";
  const std::string german = opening(plan, "de");
  for (const char* part : {"Regelwerk", "AWS D1.1", "deren Quellen empfehlen", "Vorwärmung unter dem Bedarf",
                           "Fehler", "ohne Zeugnis", "Hinweis"})
    EXPECT_NE(german.find(part), std::string::npos) << part << "\n" << german;
}

TEST(JudgementReport, SaysThatNoCodeIsStatedAndNothingOfSeveritiesThatAreNotChosen) {
  Plan plan = tee();
  EXPECT_NE(opening(plan).find("not stated"), std::string::npos);
  EXPECT_EQ(opening(plan).find("whose sources recommend"), std::string::npos);
  plan.severity.emplace();  // there, and empty
  EXPECT_EQ(opening(plan).find("whose sources recommend"), std::string::npos);
  using Rows = std::vector<std::vector<std::string>>;
  EXPECT_EQ(judgement_rows(plan, TextView::plain_english()), (Rows{{"Code", "not stated", ""}}));
}

TEST(JudgementReport, HasThemInTheWorkbooksFirstSheetWithTheirRules) {
  Plan plan = tee();
  plan.code = "EN 1090-2";
  plan.severity.emplace();
  plan.severity->tack_length = "fail";
  using Rows = std::vector<std::vector<std::string>>;
  EXPECT_EQ(judgement_rows(plan, TextView::plain_english()),
            (Rows{{"Code", "EN 1090-2", ""}, {"short tacks", "fail", "tack.length.short"}}));
}

TEST(JudgementReport, CallsAPassPartlyJudgedWhereSizeHeatOrPositionIsNot) {
  Plan plan = tee();
  const auto states = [](const Plan& of) {
    const std::vector<Sheet> sheets = report_sheets(of, evaluate(of), {}, {});
    const Sheet& passes = sheet_named(sheets, "passes");
    std::size_t column = 0;
    while (passes.columns[column].key != "judged_state") ++column;
    std::vector<std::string> texts;
    for (const auto& row : passes.rows) texts.push_back(file_text(row[column], TextView::plain_english()));
    return texts;
  };
  for (const std::string& state : states(plan)) EXPECT_EQ(state, "partly judged");
  EXPECT_NE(page(plan).find("Partly judged: nothing judges"), std::string::npos);
  EXPECT_NE(page(plan, "de").find("teils beurteilt"), std::string::npos);
  // With limits of heat and positions on every pass, all is judged.
  for (Schedule& schedule : plan.schedules) {
    if (!schedule.limits) schedule.limits = ScheduleLimits{};
    schedule.limits->heat_input_kJ_mm = Interval{0.1, 5};
    schedule.current_A = 300;
    schedule.use = ScheduleUse{};
    schedule.use->positions = {"PB", "PA"};
  }
  for (Seam& seam : plan.weldments[0].seams) seam.position = seam.groove ? "PA" : "PB";
  for (const std::string& state : states(plan)) EXPECT_EQ(state, "judged");
  EXPECT_EQ(page(plan).find("Partly judged: nothing judges"), std::string::npos);
  EXPECT_EQ(page(plan).find("partly judged"), std::string::npos);
}

}  // namespace
}  // namespace seamtakt
