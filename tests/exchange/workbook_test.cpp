// Workbooks of other programs, written by hand here: what is read of them, and hostile ones, which are
// refused with one line.
#include <gtest/gtest.h>

#include "base/error.hpp"
#include "exchange/workbook/book.hpp"
#include "exchange/workbook/book_forms.hpp"
#include "zip_writer.hpp"

namespace seamtakt {
namespace {

using Kind = BookCell::Kind;

Book read(const std::string& bytes, const BookLimits& limits = {}) {
  return parse_book(bytes, "list.xlsx", limits);
}

std::string refusal(const std::string& bytes, const BookLimits& limits = {},
                    const std::string& file = "list.xlsx") {
  try {
    parse_book(bytes, file, limits);
  } catch (const InputError& error) {
    return error.what();
  }
  return "not refused";
}

void expect_refused(const std::string& bytes, const std::string& text, const BookLimits& limits = {}) {
  const std::string line = refusal(bytes, limits);
  EXPECT_NE(line.find(text), std::string::npos) << line;
  EXPECT_EQ(line.find('\n'), std::string::npos) << line;
}

Book one_sheet(const std::string& data, const std::string& strings = "", const std::string& styles = "") {
  return read(xlsx_of({{"Seams", "<sheetData>" + data + "</sheetData>"}}, strings, styles));
}

TEST(Xlsx, ReadsSharedStringsInRunsAndInlineStrings) {
  const Book book = one_sheet(
      "<row r=\"1\"><c r=\"A1\" t=\"s\"><v>1</v></c><c r=\"B1\" "
      "t=\"inlineStr\"><is><t>leg</t></is></c></row>",
      "<si><t>other</t></si><si><r><t>S</t></r><r><t xml:space=\"preserve\"> </t></r><r><t>01</t></r>"
      "<rPh><t>guide</t></rPh></si>");
  ASSERT_EQ(book.sheets.size(), 1u);
  EXPECT_EQ(book.sheets[0].name, "Seams");
  EXPECT_EQ(book.sheets[0].rows.at(0).at(0).text, "S 01");
  EXPECT_EQ(book.sheets[0].rows.at(0).at(1).text, "leg");
}

TEST(Xlsx, ReadsNumbersTruthsErrorsAndTheStoredResultsOfFormulas) {
  const Book book =
      one_sheet("<row r=\"3\">" + number_in("A3", "6.5") +
                "<c r=\"B3\" t=\"b\"><v>1</v></c>"
                "<c r=\"C3\" t=\"e\"><v>#N/A</v></c><c r=\"D3\"><f>2*3</f><v>6</v></c>"
                "<c r=\"E3\" t=\"str\"><f>\"P\"&amp;\"B\"</f><v>PB</v></c><c r=\"F3\"><f>1+1</f></c></row>");
  const BookRow& row = book.sheets[0].rows.at(0);
  EXPECT_EQ(row.number, 3u);
  EXPECT_EQ(row.at(0).number, 6.5);
  EXPECT_EQ(row.at(1).kind, Kind::boolean);
  EXPECT_EQ(row.at(2).kind, Kind::error);
  EXPECT_EQ(row.at(2).text, "#N/A");
  EXPECT_EQ(row.at(3).number, 6);
  EXPECT_EQ(row.at(4).text, "PB");
  EXPECT_EQ(row.at(5).kind, Kind::error) << "nobody computed it";
  EXPECT_EQ(book.sheets[0].formulas, 3u);
}

TEST(Xlsx, CellsAndRowsWithoutAPlaceFollowTheOnesBefore) {
  const Book book = one_sheet(
      "<row><c><v>1</v></c><c><v>2</v></c></row><row><c r=\"C2\"><v>3</v></c><c><v>4</v></c></row>");
  EXPECT_EQ(book.sheets[0].rows.at(0).at(1).number, 2);
  EXPECT_EQ(book.sheets[0].rows.at(1).number, 2u);
  EXPECT_EQ(book.sheets[0].rows.at(1).at(3).number, 4);
}

TEST(Xlsx, ADayNumberIsADateByItsFormatAlone) {
  const std::string styles =
      "<numFmts><numFmt numFmtId=\"164\" formatCode=\"dd/mm/yyyy;@\"/><numFmt numFmtId=\"165\" "
      "formatCode=\"0.0&quot; days&quot;\"/></numFmts><cellXfs><xf numFmtId=\"0\"/><xf numFmtId=\"14\"/>"
      "<xf numFmtId=\"164\"/><xf numFmtId=\"165\"/></cellXfs>";
  const std::string row = "<row r=\"1\">" + number_in("A1", "45000") + number_in("B1", "45000", " s=\"1\"") +
                          number_in("C1", "45000.25", " s=\"2\"") + number_in("D1", "45000", " s=\"3\"") +
                          "</row>";
  const Book book = one_sheet(row, "", styles);
  const BookRow& cells = book.sheets[0].rows.at(0);
  EXPECT_EQ(cells.at(0).kind, Kind::number);
  EXPECT_EQ(cells.at(1).text, "2023-03-15");  // datetime(1899,12,30) + 45000 days, by Python
  EXPECT_EQ(cells.at(2).text, "2023-03-15T06:00:00");
  EXPECT_EQ(cells.at(3).kind, Kind::number) << "its letters are a text to be shown";
}

TEST(Xlsx, DayNumbersCountFrom1900OrFrom1904) {
  // The system of 1900 counts a 29 February that there wasn't, as day 60.
  EXPECT_EQ(date_of_serial(1, false), "1900-01-01");
  EXPECT_EQ(date_of_serial(59, false), "1900-02-28");
  EXPECT_EQ(date_of_serial(61, false), "1900-03-01");
  EXPECT_EQ(date_of_serial(43538, true), "2023-03-15");  // 1,462 days after the other system
  EXPECT_EQ(date_of_serial(-1, false), std::nullopt);
  EXPECT_EQ(date_of_serial(1e9, false), std::nullopt);
}

TEST(Xlsx, AMergedGroupsValueIsThatOfEachOfItsRows) {
  const Book book = read(xlsx_of(
      {{"Seams", "<sheetData>" + sheet_data({{"BD-2", "S01", "6"}, {"", "S02", "5"}, {"", "S03", ""}}) +
                     "</sheetData><mergeCells count=\"2\"><mergeCell ref=\"A1:A2\"/><mergeCell "
                     "ref=\"B3:C3\"/></mergeCells>"}}));
  const auto& rows = book.sheets[0].rows;
  EXPECT_EQ(rows.at(1).at(0).text, "BD-2");
  EXPECT_FALSE(rows.at(1).at(0).from_left);
  EXPECT_TRUE(rows.at(2).at(0).is_empty());
  EXPECT_EQ(rows.at(2).at(2).text, "S03");
  EXPECT_TRUE(rows.at(2).at(2).from_left) << "only heads have it in each column";
  EXPECT_EQ(book.sheets[0].merged, 2u);
}

TEST(Xlsx, HiddenSheetsRowsAndColumnsAreReadAndMarked) {
  const Book book =
      read(xlsx_of({{"Old",
                     "<cols><col min=\"2\" max=\"2\" hidden=\"1\"/></cols><sheetData><row r=\"1\" "
                     "hidden=\"1\">" +
                         text_in("A1", "id") + text_in("B1", "leg") + "</row></sheetData>",
                     "veryHidden"}}));
  EXPECT_TRUE(book.sheets[0].is_hidden);
  EXPECT_TRUE(book.sheets[0].rows.at(0).is_hidden);
  EXPECT_FALSE(book.sheets[0].is_hidden_column(0));
  EXPECT_TRUE(book.sheets[0].is_hidden_column(1));
}

TEST(Xlsx, ACharacterThatXmlCannotHoldIsWrittenOut) {
  const Book book = one_sheet("<row>" + text_in("A1", "a_x000A_b _x005F_x0041_") + "</row>");
  EXPECT_EQ(book.sheets[0].rows.at(0).at(0).text, "a\nb _x0041_");
}

const std::string ods_head =
    "<office:document-content><office:body><office:spreadsheet><table:table table:name=\"Nähte\">";
const std::string ods_end = "</table:table></office:spreadsheet></office:body></office:document-content>";

std::string ods_of(const std::string& rows) {
  return zip_of({{"mimetype", "application/vnd.oasis.opendocument.spreadsheet"},
                 {"content.xml", ods_head + rows + ods_end}});
}

TEST(Ods, ReadsTypesRepetitionsAndParagraphs) {
  const Book book = read(ods_of(
      "<table:table-column table:number-columns-repeated=\"2\"/><table:table-column "
      "table:visibility=\"collapse\"/>"
      "<table:table-row table:number-rows-repeated=\"3\"><table:table-cell "
      "table:number-columns-repeated=\"1024\"/>"
      "</table:table-row>"
      "<table:table-header-rows><table:table-row><table:table-cell "
      "office:value-type=\"string\"><text:p>a<text:s "
      "text:c=\"2\"/>b</text:p><text:p>c</text:p><office:annotation><text:p>note</text:p></office:annotation>"
      "</table:table-cell><table:table-cell office:value-type=\"float\" office:value=\"0.1\" "
      "table:number-columns-repeated=\"2\"><text:p>0,1</text:p></table:table-cell><table:table-cell "
      "office:value-type=\"date\" office:date-value=\"2026-03-02T00:00:00\"/><table:table-cell "
      "office:value-type=\"boolean\" office:boolean-value=\"true\"/><table:table-cell "
      "office:value-type=\"string\" calcext:value-type=\"error\" "
      "office:string-value=\"\"><text:p>#N/A</text:p>"
      "</table:table-cell></table:table-row></table:table-header-rows>"
      "<table:table-row table:number-rows-repeated=\"1048570\"><table:table-cell/></table:table-row>"));
  ASSERT_EQ(book.sheets.size(), 1u);
  EXPECT_EQ(book.form, Book::Form::ods);
  EXPECT_EQ(book.sheets[0].name, "Nähte");
  ASSERT_EQ(book.sheets[0].rows.size(), 1u);
  const BookRow& row = book.sheets[0].rows[0];
  EXPECT_EQ(row.number, 4u);
  EXPECT_EQ(row.at(0).text, "a  b\nc");
  EXPECT_EQ(row.at(2).number, 0.1);
  EXPECT_EQ(row.at(3).text, "2026-03-02");
  EXPECT_EQ(row.at(4).kind, Kind::boolean);
  EXPECT_EQ(row.at(5).kind, Kind::error);
  EXPECT_TRUE(book.sheets[0].is_hidden_column(2));
}

TEST(Ods, ASpanIsAMergedGroup) {
  const Book book = read(ods_of(
      "<table:table-row><table:table-cell office:value-type=\"string\" table:number-rows-spanned=\"2\" "
      "table:number-columns-spanned=\"1\"><text:p>BD</text:p></table:table-cell><table:table-cell "
      "office:value-type=\"string\"><text:p>S1</text:p></table:table-cell></table:table-row><table:table-row>"
      "<table:covered-table-cell/><table:table-cell office:value-type=\"string\"><text:p>S2</text:p>"
      "</table:table-cell></table:table-row>"));
  EXPECT_EQ(book.sheets[0].rows.at(1).at(0).text, "BD");
}

TEST(HostileWorkbooks, APartThatInflatesFarBeyondItsSizeIsRefused) {
  // 40 MB of blanks are some 40 kB packed: a thousand times longer.
  const std::string blanks(40'000'000, ' ');
  expect_refused(xlsx_of({{"A", blanks}}), "too large once unpacked");
  BookLimits limits;
  limits.ratio = 1'000'000;
  limits.part_bytes = 10'000'000;
  expect_refused(xlsx_of({{"A", blanks}}), "at most 10000000 bytes", limits);
  limits.part_bytes = std::size_t{1} << 30;
  limits.total_bytes = 60'000'000;
  expect_refused(xlsx_of({{"A", blanks}, {"B", blanks}}), "too large once unpacked", limits);
}

TEST(HostileWorkbooks, NamesThatLeadOutOfTheArchiveAreRefused) {
  for (const char* name : {"../evil.xml", "/etc/passwd", "xl\\evil.xml", "C:evil.xml", "xl/../../evil.xml"}) {
    auto parts = xlsx_parts({{"A", "<sheetData/>"}});
    parts.push_back({name, "x"});
    expect_refused(zip_of(parts), "leads out of the archive");
  }
}

TEST(HostileWorkbooks, PasswordsRepeatedPartsAndTooManyAreRefused) {
  auto parts = xlsx_parts({{"A", "<sheetData/>"}});
  parts.front().flags = 1;
  expect_refused(zip_of(parts), "password");
  parts = xlsx_parts({{"A", "<sheetData/>"}});
  parts.push_back({parts.front().name, "<worksheet/>"});
  expect_refused(zip_of(parts), "twice");
  BookLimits limits;
  limits.parts = 3;
  expect_refused(xlsx_of({{"A", "<sheetData/>"}}), "more than 3 parts", limits);
}

TEST(HostileWorkbooks, ADocumentTypeWithEntitiesIsRefused) {
  auto parts = xlsx_parts({{"A", "<sheetData/>"}});
  for (ZipPart& part : parts)
    if (part.name == "xl/worksheets/sheet1.xml")
      part.bytes = "<!DOCTYPE w [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;\">]><worksheet><sheetData><row>" +
                   text_in("A1", "&b;") + "</row></sheetData></worksheet>";
  expect_refused(zip_of(parts), "a document type");
}

TEST(HostileWorkbooks, CellsBeyondTheLimitsAreRefused) {
  expect_refused(xlsx_of({{"A", "<sheetData><row r=\"1\">" + number_in("XFD1", "1") + "</row></sheetData>"}}),
                 "more than 1024 columns");
  BookLimits limits;
  limits.cells = 5;
  expect_refused(xlsx_of({{"A", "<sheetData><row r=\"1\">" + number_in("F1", "1") + "</row></sheetData>"}}),
                 "more than 5 cells", limits);
  limits = {};
  limits.xml_pieces = 10;
  expect_refused(xlsx_of({{"A", "<sheetData/>"}}), "elements and attributes", limits);
}

TEST(HostileWorkbooks, MergedGroupsCannotTakeForever) {
  std::string groups;
  for (int i = 0; i < 2000; ++i) groups += "<mergeCell ref=\"A1:Z1000\"/>";
  // Two rows of 26 columns: each group fills 51 cells, 2,000 of them 102,000.
  std::vector<std::string> row(26, "1");
  BookLimits limits;
  limits.cells = 50'000;
  expect_refused(xlsx_of({{"A", "<sheetData>" + sheet_data({row, row}) + "</sheetData><mergeCells>" + groups +
                                    "</mergeCells>"}}),
                 "more than 50000 cells", limits);
}

TEST(HostileWorkbooks, ARepeatedRowCannotFillTheMemory) {
  expect_refused(ods_of("<table:table-row table:number-rows-repeated=\"1000000000\"><table:table-cell "
                        "office:value-type=\"float\" office:value=\"1\"/></table:table-row>"),
                 "more than 1000000 cells");
  expect_refused(ods_of("<table:table-row><table:table-cell table:number-columns-repeated=\"1000000000\" "
                        "office:value-type=\"float\" office:value=\"1\"/></table:table-row>"),
                 "more than 1024 columns");
}

TEST(HostileWorkbooks, DamagedOnesAreRefusedAtEachLength) {
  const std::string whole =
      xlsx_of({{"Seams", "<sheetData>" + sheet_data({{"id", "leg"}, {"S1", "6"}}) + "</sheetData>"}});
  ASSERT_EQ(read(whole).sheets.size(), 1u);
  for (std::size_t size = 0; size < whole.size(); size += 7)
    EXPECT_NE(refusal(whole.substr(0, size)), "not refused") << size;
  for (std::size_t at = 0; at < whole.size(); at += 3) {
    std::string damaged = whole;
    damaged[at] = static_cast<char>(damaged[at] ^ 0x55);
    refusal(damaged);  // refused or not, it ends and nothing else is thrown
  }
}

TEST(OtherFiles, AreNamedByWhatTheyAre) {
  expect_refused(std::string("\xD0\xCF\x11\xE0\xA1\xB1", 6) + "rest", "older binary workbook (.xls)");
  expect_refused("%PDF-1.7\n", "a PDF");
  expect_refused("<!DOCTYPE html><html></html>", "an HTML page");
  expect_refused("<?xml version=\"1.0\"?><a/>", "an XML file");
  expect_refused("{\"format\": \"weldplan\"}", "a JSON file");
  expect_refused(zip_of({{"xl/workbook.bin", "x"}}), ".xlsb");
  expect_refused(zip_of({{"word/document.xml", "x"}}), "a text document");
  expect_refused(zip_of({{"readme.txt", "x"}}), "a zip archive without a workbook");
  expect_refused(zip_of({{"mimetype", "application/vnd.oasis.opendocument.text"}, {"content.xml", "<a/>"}}),
                 "no spreadsheet");
  expect_refused("just words\nand more\n", "text without columns");
}

TEST(OtherFiles, ACsvNamedAsAWorkbookIsReadAsWhatItIs) {
  const Book book = parse_book("id;leg [mm]\nS1;6,5\n", "list.xlsx");
  EXPECT_EQ(book.form, Book::Form::csv);
  EXPECT_TRUE(book.has_decimal_comma);
  EXPECT_EQ(book.sheets.at(0).rows.at(1).at(1).text, "6,5");
  EXPECT_EQ(cell_place(book, book.sheets[0], 2, 1), "list.xlsx:2:2");
}

TEST(OtherFiles, PlacesAreNamedAsASpreadsheetDoes) {
  EXPECT_EQ(column_letters(0), "A");
  EXPECT_EQ(column_letters(25), "Z");
  EXPECT_EQ(column_letters(26), "AA");
  EXPECT_EQ(column_letters(701), "ZZ");
  EXPECT_EQ(column_letters(702), "AAA");
}

}  // namespace
}  // namespace seamtakt
