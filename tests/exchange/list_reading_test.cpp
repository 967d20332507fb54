// Seam lists of other programs: their heads, units, numbers, and which table of a sheet is the list.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "base/sentences/language.hpp"
#include "exchange/lists/heading_reader.hpp"
#include "exchange/lists/list_export.hpp"
#include "list_samples.hpp"

namespace seamtakt {
namespace {

std::vector<std::string> keys_of(const ListMapping& mapping) {
  std::vector<std::string> keys;
  for (const MappedColumn& column : mapping.columns) keys.push_back(column.key);
  return keys;
}

std::string json_of(const std::string& text, const char* key, DecimalSign decimal = DecimalSign::either,
                    ListKind kind = ListKind::seams) {
  BookCell cell;
  cell.kind = BookCell::Kind::text;
  cell.text = text;
  try {
    return cell_json(cell, *list_column(kind, key), {nullptr, decimal});
  } catch (const InputError& error) {
    return "refused: " + error.expected().english();
  }
}

TEST(ListHeads, EachColumnIsKnownByItsKeyAndItsLabelInEachLanguage) {
  for (const ListKind kind : {ListKind::seams, ListKind::schedules}) {
    const HeadingReader reader(kind);
    const Sheet sheet = list_sheet({}, kind);
    for (const Sheet::Column& column : sheet.columns) {
      const auto by_key = reader.recognise(column.key);
      ASSERT_TRUE(by_key) << column.key;
      EXPECT_EQ(by_key->column.key, column.key);
      for (const std::string& code : language_codes()) {
        const std::string heading = column_heading_text(column, TextView(*find_language(code)));
        const auto read = reader.recognise(heading);
        ASSERT_TRUE(read) << heading;
        EXPECT_EQ(read->column.key, column.key) << heading;
        if (!column.heading.unit.empty()) {
          ASSERT_NE(read->unit, nullptr) << heading;
          EXPECT_EQ(read->unit->name, column.heading.unit) << heading;
        }
      }
    }
  }
}

TEST(ListHeads, WordsOfTheTradeAreKnownWithTheirUnits) {
  const HeadingReader reader(ListKind::seams);
  const auto key = [&](const char* heading) {
    const auto read = reader.recognise(heading);
    return read ? read->column.key + (read->unit ? std::string(" ") + read->unit->name : "")
                : std::string("-");
  };
  EXPECT_EQ(key("leg [mm]"), "leg_mm mm");
  EXPECT_EQ(key("Leg (in)"), "leg_mm in");
  EXPECT_EQ(key("leg_in"), "leg_mm in");
  EXPECT_EQ(key("Kehlnahtdicke a in mm"), "throat_mm mm");
  EXPECT_EQ(key("a-Maß"), "throat_mm");
  EXPECT_EQ(key("Blechdicke 2 [mm]"), "thickness_mm[2] mm");
  EXPECT_EQ(key("t1"), "thickness_mm[1]");
  EXPECT_EQ(key("Naht-Nr."), "id");
  EXPECT_EQ(key("Stoßart"), "joint");
  EXPECT_EQ(key("Position (ISO 6947)"), "position");
  EXPECT_EQ(key("x1"), "path_mm[1].x");
  EXPECT_EQ(key("z 2 [mm]"), "path_mm[2].z mm");
  EXPECT_EQ(key("Remark"), "-");
  EXPECT_EQ(key("12"), "-");
}

TEST(ListHeads, AUnitThatDoesNotFitIsRefusedAtItsHead) {
  try {
    find_list(workbook({{"id", "leg [kg]"}, {"S1", "6"}}), ListKind::seams);
    FAIL();
  } catch (const InputError& error) {
    EXPECT_EQ(error.where(), "list.xlsx:Seams!B1");
    EXPECT_NE(std::string(error.what()).find("mm, cm, m, in"), std::string::npos) << error.what();
  }
}

TEST(ListValues, NumbersAreReadWithPointCommaAndUnit) {
  EXPECT_EQ(json_of("6.5", "leg_mm"), "6.5");
  EXPECT_EQ(json_of("6,5", "leg_mm"), "6.5");
  EXPECT_EQ(json_of(" 6 mm ", "leg_mm"), "6");
  EXPECT_EQ(json_of("0,25 in", "leg_mm"), "6.35");  // 0.25 x 25.4
  EXPECT_EQ(json_of("6\xC2\xA0mm", "leg_mm"), "6");
  EXPECT_EQ(json_of("1,250", "leg_mm"), "refused: a number whose comma can't be a sign for thousands");
  EXPECT_EQ(json_of("1,250", "leg_mm", DecimalSign::comma), "1.25");
  EXPECT_EQ(json_of("6,5", "leg_mm", DecimalSign::point).substr(0, 7), "refused");
  EXPECT_EQ(json_of("6.x", "leg_mm").substr(0, 7), "refused");
  EXPECT_EQ(json_of("6 kg", "leg_mm").substr(0, 7), "refused");
}

TEST(ListValues, ListsHaveOneNotation) {
  EXPECT_EQ(json_of("8; 12", "thickness_mm"), "[8, 12]");
  EXPECT_EQ(json_of("8,5; 12", "thickness_mm"), "[8.5, 12]");
  EXPECT_EQ(json_of("8,5, 12", "thickness_mm"), "[8.5, 12]");
  EXPECT_EQ(json_of("8/12", "thickness_mm"), "[8, 12]");
  EXPECT_EQ(json_of("10", "thickness_mm"), "[10, 10]");
  EXPECT_EQ(json_of("8,12", "thickness_mm"), "refused: elements separated by a semicolon, such as 8; 12");
  EXPECT_EQ(json_of("F6; F4", "schedules"), R"(["F6", "F4"])");
  EXPECT_EQ(json_of("\"a;b\"; c", "schedules"), R"(["a;b", "c"])");
  EXPECT_EQ(json_of("S355", "base_metals"), R"(["S355", "S355"])");
  EXPECT_EQ(json_of("0 0 0; 100,5 0 0", "path_mm"), "[[0, 0, 0], [100.5, 0, 0]]");
  EXPECT_EQ(json_of("(0, 0, 0); (10, 0, 0)", "path_mm"), "[[0, 0, 0], [10, 0, 0]]");
}

TEST(ListValues, IntervalsAndChoicesAreReadAsPeopleWriteThem) {
  for (const char* text : {"253 .. 309", "253 to 309", "253 bis 309", "253 - 309", "253-309", "253\u2013309"})
    EXPECT_EQ(json_of(text, "limits.current_A", DecimalSign::either, ListKind::schedules), "[253, 309]")
        << text;
  EXPECT_EQ(json_of(">= 4", "limits.current_A", DecimalSign::either, ListKind::schedules), "[4, null]");
  EXPECT_EQ(json_of(".. 380", "limits.hardness_HV", DecimalSign::either, ListKind::schedules), "[null, 380]");
  EXPECT_EQ(json_of("T-Stoß", "joint"), "\"tee\"");
  EXPECT_EQ(json_of("Butt joint", "joint"), "\"butt\"");
  EXPECT_EQ(json_of("02.03.2026", "effective_from", DecimalSign::either, ListKind::schedules),
            "\"2026-03-02\"");
}

TEST(ListPlace, TheTableWhoseHeadsFitBestIsRead) {
  const Rows rows = {{"Parts of BD"},
                     {"id", "quantity", "material"},
                     {"P1", "2", "S355"},
                     {},
                     {"Seams of BD"},
                     {"Seam", "Joint", "Plate", "", "Size", "Path", "WPS"},
                     {"", "", "t1", "t2", "Leg [mm]", "", ""},
                     {"S02", "tee", "8", "10", "5", "0 0 0; 100 0 0", "F4"},
                     {},
                     {"S03", "tee", "8", "10", "5", "0 0 0; 200 0 0", "F4"},
                     {},
                     {"Remark", "By", "", "", "", "", ""},
                     {"none", "me", "", "", "", "", ""}};
  const Book book = workbook(rows, "<mergeCells><mergeCell ref=\"C6:D6\"/></mergeCells>");
  const ListMapping mapping = find_list(book, ListKind::seams);
  EXPECT_EQ(mapping.head_row, 7u);
  EXPECT_EQ(mapping.head_rows, 2u);
  EXPECT_EQ(keys_of(mapping), (std::vector<std::string>{"id", "joint", "thickness_mm[1]", "thickness_mm[2]",
                                                        "leg_mm", "path_mm", "schedules"}));
  ASSERT_EQ(mapping.rows.size(), 2u) << "an empty row is left out, another table isn't read";
  EXPECT_EQ(mapping.rows_below, 2u);
  ListImportOptions options;
  options.standards = {{"base_metals", "S355"}};
  const ListImport result = import(small_plan(), book, options);
  EXPECT_TRUE(result.is_complete()) << (result.refused().empty() ? "" : text_of(result.refused().front()));
  ASSERT_EQ(result.plan.weldments[0].seams.size(), 3u);
  EXPECT_EQ(result.plan.weldments[0].seams[1].thickness_mm, (std::vector<double>{8, 10}));
}

TEST(ListPlace, TablesSideBySideAndRepeatedHeadsAreToldApart) {
  const Rows rows = {{"id", "leg", "", "Part", "id"},
                     {"S01", "5", "", "plate", "P1"},
                     {"id", "leg", "", "Part", "id"},
                     {"S01b", "6", "", "bar", "P2"}};
  const Book book = workbook(rows);
  const ListMapping mapping = find_list(book, ListKind::seams);
  EXPECT_EQ(keys_of(mapping), (std::vector<std::string>{"id", "leg_mm"}));
  EXPECT_EQ(mapping.rows.size(), 2u);
}

TEST(ListPlace, WithoutKnownHeadsNothingIsGuessed) {
  for (const Rows& rows :
       {Rows{{"one", "two"}, {"1", "2"}}, Rows{{"leg", "gap"}, {"6", "1"}}, Rows{{"id"}, {"S1"}}}) {
    try {
      find_list(workbook(rows), ListKind::seams);
      FAIL() << rows[0][0];
    } catch (const InputError& error) {
      EXPECT_NE(std::string(error.what()).find("no table with known heads"), std::string::npos)
          << error.what();
    }
  }
}

TEST(ListPlace, AColumnsFileSaysWhatHeadsMean) {
  const char* file = R"({"x_about": "of the drawing office", "leg_mm": {"column": "Größe", "unit": "in"},
    "id": 1, "base_metals": {"default": "S355"}, "ignore": ["gap"], "weldment": "BD"})";
  const ListColumnsFile columns = parse_list_columns(file, "columns.json", ListKind::seams);
  const Book book = csv("What,Größe,gap\nS01,0.25,7\n");
  const ListMapping mapping = find_list(book, ListKind::seams, columns);
  EXPECT_EQ(keys_of(mapping), (std::vector<std::string>{"id", "leg_mm", ""}));
  const ListImport result = import(small_plan(), book, {}, columns);
  ASSERT_EQ(result.count(State::changed), 1u);
  EXPECT_EQ(result.plan.weldments[0].seams[0].leg_mm, 6.35);
  for (const char* wrong : {R"({"legg_mm": "a"})", R"({"leg_mm": {"column": "a", "unit": "kg"}})",
                            R"({"leg_mm": true})", R"({"decimal": "dot"})", R"([1])"})
    EXPECT_THROW(parse_list_columns(wrong, "columns.json", ListKind::seams), InputError) << wrong;
  const auto absent = parse_list_columns(R"({"leg_mm": "Size"})", "columns.json", ListKind::seams);
  EXPECT_THROW(find_list(csv("id,gap\nS1,1\n"), ListKind::seams, absent), InputError);
}

}  // namespace
}  // namespace seamtakt
