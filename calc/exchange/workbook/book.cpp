#include "exchange/workbook/book.hpp"

#include <algorithm>

#include "base/csv/csv.hpp"
#include "base/csv/csv_place.hpp"
#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/text/ascii.hpp"
#include "exchange/workbook/book_forms.hpp"
#include "exchange/workbook/zip_archive.hpp"

namespace seamtakt {

namespace {

constexpr Word workbook_expected = "a workbook (.xlsx, .ods) or a table (.csv)"_word;

/// Names the kinds of file that people take for a workbook or a CSV.
void refuse_other_kinds(std::string_view bytes, const std::string& file) {
  const auto refuse = [&](Word found) { throw InputError(printable(file), found, workbook_expected); };
  const auto begins = [&](std::string_view start) { return bytes.starts_with(start); };
  if (begins("\xD0\xCF\x11\xE0")) refuse("an older binary workbook (.xls), or one with a password"_word);
  if (begins("%PDF")) refuse("a PDF"_word);
  if (begins("{\\rtf")) refuse("a text document"_word);
  const std::string start = lower_case(trimmed(bytes.substr(0, 64)));
  if (start.starts_with("<html") || start.starts_with("<!doctype html")) refuse("an HTML page"_word);
  if (start.starts_with("<?xml") || start.starts_with("<")) refuse("an XML file"_word);
  if (start.starts_with("{")) refuse("a JSON file"_word);
}

Book book_of_zip(std::string_view bytes, const std::string& file, const BookLimits& limits) {
  ZipArchive archive(bytes, file, limits);
  if (archive.has("xl/workbook.bin"))
    throw InputError(printable(file), "a binary workbook (.xlsb)"_word, workbook_expected);
  if (archive.has("word/document.xml"))
    throw InputError(printable(file), "a text document"_word, workbook_expected);
  if (archive.has("content.xml")) return read_ods(archive);
  if (archive.has("_rels/.rels") || archive.has("xl/workbook.xml")) return read_xlsx(archive);
  throw InputError(printable(file), "a zip archive without a workbook"_word, workbook_expected);
}

BookRow row_of_csv(const std::vector<std::string>& fields, std::size_t line) {
  BookRow row{line, false, {}};
  for (const std::string& field : fields) {
    BookCell cell;
    cell.text = csv_unguarded(field);
    if (!trimmed(cell.text).empty()) cell.kind = BookCell::Kind::text;
    row.cells.push_back(std::move(cell));
  }
  while (!row.cells.empty() && row.cells.back().is_empty()) row.cells.pop_back();
  return row;
}

Book book_of_csv(std::string_view bytes, const std::string& file, const BookLimits& limits) {
  // A seam's line may have many points.
  const CsvTable table = parse_csv(bytes, file, {std::size_t{1} << 20, std::size_t{4} << 20, limits.columns});
  Book book;
  book.file = file;
  book.has_decimal_comma = table.delimiter != ',';
  BookSheet& sheet = book.sheets.emplace_back();
  if (table.header.size() * (table.rows.size() + 1) > limits.cells)
    throw InputError(printable(file), Sentence("workbook.cells"_key, {{"count", limits.cells}}),
                     "fewer"_word);
  sheet.rows.push_back(row_of_csv(table.header, 1));
  for (const CsvRow& row : table.rows)
    sheet.rows.push_back(row_of_csv(row.fields, static_cast<std::size_t>(row.line)));
  return book;
}

}  // namespace

const BookCell& BookRow::at(std::size_t column) const {
  static const BookCell empty;
  return column < cells.size() ? cells[column] : empty;
}

bool BookRow::is_empty() const {
  return std::all_of(cells.begin(), cells.end(), [](const BookCell& cell) { return cell.is_empty(); });
}

Book parse_book(std::string_view bytes, const std::string& file, const BookLimits& limits) {
  if (bytes.starts_with("PK\x03\x04") || bytes.starts_with("PK\x05\x06"))
    return book_of_zip(bytes, file, limits);
  refuse_other_kinds(bytes, file);
  Book book = book_of_csv(bytes, file, limits);
  if (lower_case(file).ends_with(".xlsx") && book.sheets.front().rows.front().cells.size() < 2)
    throw InputError(printable(file), "text without columns"_word, workbook_expected);
  return book;
}

Book read_book(const std::string& path, const BookLimits& limits) {
  return parse_book(read_file(path, limits.file_bytes), path, limits);
}

std::string column_letters(std::size_t column) {
  std::string letters;
  for (std::size_t rest = column + 1; rest > 0; rest = (rest - 1) / 26)
    letters.insert(letters.begin(), static_cast<char>('A' + (rest - 1) % 26));
  return letters;
}

std::string cell_place(const Book& book, const BookSheet& sheet, std::size_t row_number, std::size_t column) {
  const std::string row = std::to_string(row_number), file = printable(book.file);
  if (book.form == Book::Form::csv) return file + ":" + row + ":" + std::to_string(column + 1);
  return file + ":" + printable(sheet.name) + "!" + column_letters(column) + row;
}

}  // namespace seamtakt
