// What a plan becomes by a list: new and changed rows, refused cells, and a round trip without a change.
#include <gtest/gtest.h>

#include <chrono>
#include <fstream>
#include <iterator>

#include "base/error.hpp"
#include "base/sentences/language.hpp"
#include "exchange/lists/list_export.hpp"
#include "list_samples.hpp"
#include "support/source_path.hpp"

namespace seamtakt {
namespace {

TEST(ListImportOf, NewAndChangedSeamsAreToldApartById) {
  const ListImport result =
      import(small_plan(), csv("id,joint,thickness_mm,base_metals,leg_mm,throat_mm,schedules,path_mm\n"
                               "S01,,,,,4,,\n"
                               "S02,tee,8; 10,S355,5,,F4,0 0 0; 100 0 0\n"));
  EXPECT_TRUE(result.is_complete()) << (result.refused().empty() ? "" : text_of(result.refused().front()));
  EXPECT_EQ(result.count(State::changed), 1u);
  EXPECT_EQ(result.count(State::added), 1u);
  const auto& seams = result.plan.weldments[0].seams;
  ASSERT_EQ(seams.size(), 2u);
  EXPECT_EQ(seams[0].throat_mm, 4);
  EXPECT_FALSE(seams[0].leg_mm) << "the throat that the row gives replaces it";
  EXPECT_EQ(seams[0].position, "PB") << "what the list doesn't say stays";
  ASSERT_EQ(result.rows[0].changes.size(), 2u);
  EXPECT_EQ(result.rows[0].changes[0].key, "leg_mm");
  EXPECT_EQ(result.rows[0].changes[0].before, "6");
  EXPECT_EQ(result.rows[0].changes[0].after, "");
  EXPECT_EQ(seams[1].leg_mm, 5);
  EXPECT_EQ(parse_plan(write_plan(result.plan), "again").weldments[0].seams.size(), 2u);
}

TEST(ListImportOf, ADashTakesAValueOut) {
  const ListImport result = import(small_plan(), csv("id,position,gap_mm\nS01,-,0.5\n"));
  EXPECT_EQ(result.plan.weldments[0].seams[0].position, "");
  EXPECT_EQ(result.plan.weldments[0].seams[0].gap_mm, 0.5);
}

TEST(ListImportOf, EachKeyThatANewSeamLacksIsNamed) {
  const ListImport result = import(small_plan(), csv("id,joint\nS02,tee\n"));
  std::string all;
  for (const RefusedCell& cell : result.refused()) all += text_of(cell) + "\n";
  for (const char* key : {"thickness_mm", "base_metals", "schedules", "path_mm"})
    EXPECT_NE(all.find("no value for \"" + std::string(key) + "\""), std::string::npos) << all;
  const ListImport without_size =
      import(small_plan(), csv("id,joint,thickness_mm,base_metals,schedules,path_mm\n"
                               "S02,tee,8; 8,S355,F4,0 0 0; 1 0 0\n"));
  ASSERT_EQ(without_size.refused().size(), 1u);
  EXPECT_NE(text_of(without_size.refused()[0]).find("leg_mm, throat_mm"), std::string::npos)
      << text_of(without_size.refused()[0]);
}

TEST(ListImportOf, EveryBadCellIsNamedByItsPlaceAndNothingElseIsAskedOf) {
  const Rows rows = {{"id", "leg", "thickness", "position", "schedules", "gap"},
                     {"S01", "thick", "8; x", "PB", "F9", "-1"},
                     {"S01", "6"},
                     {"", "7"}};
  const ListImport result = import(small_plan(), workbook(rows));
  std::vector<std::string> places;
  for (const RefusedCell& cell : result.refused()) places.push_back(cell.place + " " + cell.heading);
  EXPECT_EQ(places, (std::vector<std::string>{"list.xlsx:Seams!B2 leg", "list.xlsx:Seams!C2 thickness",
                                              "list.xlsx:Seams!F2 gap", "list.xlsx:Seams!A3 id",
                                              "list.xlsx:Seams!A4 id"}));
  EXPECT_EQ(write_plan(result.plan), write_plan(small_plan()));
}

TEST(ListImportOf, AReferenceThatThePlanLacksIsRefusedAtItsCell) {
  const ListImport result = import(small_plan(), csv("id,schedules\nS01,F9\n"));
  ASSERT_EQ(result.refused().size(), 1u);
  EXPECT_EQ(result.refused()[0].heading, "schedules");
  EXPECT_NE(text_of(result.refused()[0]).find("\"F9\""), std::string::npos);
}

TEST(ListImportOf, WhatASeamAloneShowsIsRefusedToo) {
  const ListImport result = import(small_plan(), csv("id,path_mm\nS01,5 5 5; 5 5 5\n"));
  ASSERT_EQ(result.refused().size(), 1u);
  EXPECT_EQ(result.refused()[0].heading, "path_mm");
}

TEST(ListImportOf, DatesWhereNumbersBelongErrorsAndUncomputedFormulasAreRefused) {
  const std::string data = "<row r=\"1\">" + text_in("A1", "id") + text_in("B1", "leg") +
                           text_in("C1", "gap") + text_in("D1", "overlap") + "</row><row r=\"2\">" +
                           text_in("A2", "S01") + number_in("B2", "45000", " s=\"1\"") +
                           "<c r=\"C2\" t=\"e\"><v>#REF!</v></c><c r=\"D2\"><f>A1</f></c></row>";
  const Book book = parse_book(xlsx_of({{"Seams", "<sheetData>" + data + "</sheetData>"}}, "",
                                       "<cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/></cellXfs>"),
                               "list.xlsx");
  const ListImport result = import(small_plan(), book);
  ASSERT_EQ(result.refused().size(), 3u);
  EXPECT_EQ(result.refused()[0].found.english(), "the date 2023-03-15");
  EXPECT_EQ(result.refused()[1].found.english(), "the error #REF!");
  EXPECT_EQ(result.refused()[2].found.english(), "the error a formula without a stored result");
}

TEST(ListImportOf, PathsMayBeInColumnsOfTheirOwn) {
  const ListImport result = import(small_plan(), csv("id,x1,y1,x2,y2\nS01,0,0,300,40\n"));
  EXPECT_TRUE(result.is_complete());
  EXPECT_EQ(result.plan.weldments[0].seams[0].path_mm, (std::vector<Point_mm>{{0, 0, 0}, {300, 40, 0}}));
  const ListImport half = import(small_plan(), csv("id,x1,y1,x2,y2\nS01,0,0,300,\n"));
  ASSERT_EQ(half.refused().size(), 1u);
  EXPECT_EQ(half.refused()[0].heading, "y2");
}

TEST(ListImportOf, ANewWeldmentIsMadeOnlyWhereItIsMeant) {
  const Book book =
      csv("weldment,id,joint,thickness_mm,base_metals,leg_mm,schedules,path_mm\n"
          "BDX,S1,tee,8,S355,5,F4,0 0 0; 9 0 0\n");
  const ListImport slip = import(small_plan(), book);
  ASSERT_EQ(slip.refused().size(), 1u);
  EXPECT_NE(text_of(slip.refused()[0]).find("BD"), std::string::npos) << "the nearest";
  ListImportOptions options;
  options.weldment = "BDX";
  const ListImport meant = import(small_plan(), book, options);
  EXPECT_TRUE(meant.is_complete());
  EXPECT_EQ(meant.new_weldments, std::vector<std::string>{"BDX"});
  Plan empty = small_plan();
  empty.weldments.clear();
  EXPECT_EQ(import(empty, book).new_weldments, std::vector<std::string>{"BDX"});
}

TEST(ListImportOf, RowsThatReferToARefusedOneGoWithIt) {
  const std::string list =
      "id,joint,thickness_mm,base_metals,leg_mm,schedules,path_mm,after\n"
      "S02,tee,8,S355,x,F4,0 0 0; 9 0 0,\n"
      "S03,tee,8,S355,5,F4,0 0 0; 9 0 0,S02\n"
      "S04,tee,8,S355,5,F4,0 0 0; 9 0 0,S03\n"
      "S05,tee,8,S355,5,F4,0 0 0; 9 0 0,\n";
  EXPECT_EQ(import(small_plan(), csv(list)).refused().size(), 1u) << "the others aren't at fault";
  ListImportOptions options;
  options.skip_refused = true;
  const ListImport skipped = import(small_plan(), csv(list), options);
  EXPECT_EQ(skipped.count(State::refused), 3u);
  ASSERT_EQ(skipped.plan.weldments[0].seams.size(), 2u);
  EXPECT_EQ(skipped.plan.weldments[0].seams[1].id, "S05");
  const ListImport circle =
      import(small_plan(), csv("id,joint,thickness_mm,base_metals,leg_mm,schedules,path_mm,after\n"
                               "S02,tee,8,S355,5,F4,0 0 0; 9 0 0,S03\n"
                               "S03,tee,8,S355,5,F4,0 0 0; 9 0 0,S02\n"));
  EXPECT_FALSE(circle.is_complete());
}

TEST(ListImportOf, ALockedScheduleIsNotChanged) {
  ListImportOptions options;
  options.kind = ListKind::schedules;
  const ListImport result =
      import(small_plan(), csv("id,arc_voltage_V,limits.current_A\nF6,30,\nF4,28,200 to 240\n"), options);
  ASSERT_EQ(result.refused().size(), 1u);
  EXPECT_EQ(result.refused()[0].row, 2u);
  EXPECT_EQ(result.count(State::changed), 1u);
  EXPECT_EQ(result.plan.schedules[0].arc_voltage_V, 29);
  EXPECT_EQ(result.plan.schedules[1].arc_voltage_V, 28);
  ASSERT_TRUE(result.plan.schedules[1].limits);
  EXPECT_EQ(result.plan.schedules[1].limits->current_A->upper, 240);
}

TEST(ListImportOf, AThousandRowsWithTwentyBadCellsTakeLessThanASecond) {
  Rows rows = {
      {"id", "joint", "thickness", "base metals", "leg [mm]", "position", "schedules", "gap", "path"}};
  for (int i = 0; i < 1000; ++i)
    rows.push_back({"N" + std::to_string(i), "tee", "8; 10", "S355", i % 50 == 7 ? "six" : "6", "PB", "F4",
                    "0.5", "0 0 0; " + std::to_string(100 + i) + " 0 0"});
  const std::string bytes = xlsx_of({{"Seams", "<sheetData>" + sheet_data(rows) + "</sheetData>"}});
  const auto begin = std::chrono::steady_clock::now();
  const Book book = parse_book(bytes, "list.xlsx");
  const ListImport result = import(small_plan(), book);
  const std::chrono::duration<double> taken_s = std::chrono::steady_clock::now() - begin;
  EXPECT_EQ(result.count(State::refused), 20u);
  EXPECT_EQ(result.refused().size(), 20u);
  EXPECT_EQ(result.refused()[0].place, "list.xlsx:Seams!E9");
  EXPECT_EQ(result.count(State::added), 980u);
#ifdef SEAMTAKT_SANITIZED
  EXPECT_LT(taken_s.count(), 20);
#else
  EXPECT_LT(taken_s.count(), 1);
#endif
}

std::string file_text(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

TEST(ListRoundTrip, ImportOfTheExportChangesNothing) {
  for (const char* name :
       {"/reference/demo/ground-equipment.weldplan.json", "/tests/data/two-schedules.weldplan.json",
        "/tests/data/plan-v1-every-key.weldplan.json"}) {
    const Plan plan = parse_plan(file_text(source_path(name)), name);
    for (const ListKind kind : {ListKind::seams, ListKind::schedules})
      for (const std::string& code : language_codes()) {
        ListImportOptions options;
        options.kind = kind;
        const Sheet sheet = list_sheet(plan, kind);
        const SheetOrigin origin = {{"made_at_utc", std::string("2026-01-01T00:00:00Z"), "Made at"_word}};
        const std::string made[] = {
            sheets_xlsx({sheet}, "Title"_word, origin, TextView(*find_language(code))),
            sheet_csv(sheet, origin)};
        for (const std::string& bytes : made) {
          const ListImport result = import(plan, parse_book(bytes, "list"), options);
          for (const RefusedCell& cell : result.refused())
            ADD_FAILURE() << name << code << " " << text_of(cell);
          for (const ImportedRow& row : result.rows)
            for (const ChangedValue& change : row.changes)
              ADD_FAILURE() << name << code << " " << row.id << " " << change.key << ": " << change.before
                            << " -> " << change.after;
          EXPECT_EQ(result.count(State::unchanged), sheet.rows.size()) << name << code;
          EXPECT_EQ(write_plan(result.plan), write_plan(plan)) << name << code;
        }
      }
  }
}

TEST(ListRoundTrip, AnExportIntoAnEmptyPlanGivesTheSameSeams) {
  const Plan plan =
      parse_plan(file_text(source_path("/reference/demo/ground-equipment.weldplan.json")), "demo");
  Plan bare = plan;
  for (Weldment& weldment : bare.weldments) weldment.seams.clear();
  if (bare.cell) bare.cell->zones.clear();
  bare.accepted.clear();
  for (Weldment& weldment : bare.weldments) weldment.order.clear();
  const Book book = parse_book(
      sheets_xlsx({list_sheet(plan, ListKind::seams)}, "Title"_word, {}, TextView(*find_language("en"))),
      "list.xlsx");
  const ListImport result = import(bare, book);
  for (const RefusedCell& cell : result.refused()) ADD_FAILURE() << text_of(cell);
  ASSERT_EQ(result.plan.weldments.size(), plan.weldments.size());
  const Sheet before = list_sheet(plan, ListKind::seams), after = list_sheet(result.plan, ListKind::seams);
  const SheetOrigin origin = {{"plan", std::string("demo"), "Plan"_word}};
  EXPECT_EQ(sheet_csv(after, origin), sheet_csv(before, origin));
}

}  // namespace
}  // namespace seamtakt
