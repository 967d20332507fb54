#include <algorithm>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/text/ascii.hpp"
#include "exchange/workbook/book_forms.hpp"
#include "exchange/workbook/sheet_builder.hpp"
#include "exchange/workbook/xml_part.hpp"

namespace seamtakt {

namespace {

constexpr int deepest = 32;  ///< groups of rows, and spans of text, in one another

/// The text of a paragraph: spans, blanks, tabs and line breaks; notes are left out.
void append_text(const pugi::xml_node& node, std::string& text, int depth = 0) {
  for (const pugi::xml_node& child : node.children()) {
    if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) text += child.value();
    if (child.type() != pugi::node_element) continue;
    const std::string_view name = without_prefix(child.name());
    if (name == "s") {
      text.append(std::min<std::size_t>(count_of(child, "c", 1), 1000), ' ');
    } else if (name == "tab" || name == "line-break") {
      text += name == "tab" ? '\t' : '\n';
    } else if (name != "annotation" && name != "note" && depth < deepest) {
      append_text(child, text, depth + 1);
    }
  }
}

/// The paragraphs of a cell, a line each.
std::string text_of(const pugi::xml_node& cell) {
  std::string text;
  bool is_first = true;
  each_child(cell, "p", [&](const pugi::xml_node& paragraph) {
    if (!is_first) text += '\n';
    is_first = false;
    append_text(paragraph, text);
  });
  return text;
}

/// "2026-03-02T00:00:00" is a date without a time of day.
std::string date_of(std::string_view text) {
  if (text.ends_with("T00:00:00")) text.remove_suffix(9);
  return std::string(text);
}

BookCell cell_of(const pugi::xml_node& node) {
  BookCell cell;
  // "value-type" is there once for the format and, with another prefix, for extensions: the first counts.
  std::string_view type, error;
  for (const pugi::xml_attribute& attribute : node.attributes()) {
    if (std::string_view(attribute.name()) == "office:value-type") type = attribute.value();
    if (without_prefix(attribute.name()) == "value-type" && std::string_view(attribute.value()) == "error")
      error = attribute.value();
  }
  if (type.empty()) type = attribute_of(node, "value-type");
  if (!error.empty()) {
    cell.kind = BookCell::Kind::error;
    cell.text = text_of(node);
  } else if (type == "float" || type == "percentage" || type == "currency") {
    const bool is_number = parse_number(attribute_of(node, "value"), cell.number);
    cell.kind = is_number ? BookCell::Kind::number : BookCell::Kind::error;
    if (!is_number) cell.text = attribute_of(node, "value");
  } else if (type == "date") {
    cell.kind = BookCell::Kind::date;
    cell.text = date_of(attribute_of(node, "date-value"));
  } else if (type == "time") {
    cell.kind = BookCell::Kind::date;
    cell.text = attribute_of(node, "time-value");
  } else if (type == "boolean") {
    cell.kind = BookCell::Kind::boolean;
    cell.number = attribute_of(node, "boolean-value") == "true" ? 1 : 0;
  } else if (!type.empty()) {
    cell.text = attribute_of(node, "string-value");
    if (cell.text.empty()) cell.text = text_of(node);
    if (!trimmed(cell.text).empty()) cell.kind = BookCell::Kind::text;
  }
  return cell;
}

bool is_hidden(const pugi::xml_node& node) {
  const std::string_view visibility = attribute_of(node, "visibility");
  return visibility == "collapse" || visibility == "filter";
}

class TableReader {
 public:
  TableReader(SheetBuilder& builder, const BookLimits& limits) : builder_(builder), limits_(limits) {}

  /// Rows and columns may be in groups and heads.
  void read(const pugi::xml_node& table, int depth = 0) {
    for (const pugi::xml_node& child : table.children()) {
      const std::string_view name = without_prefix(child.name());
      if (name == "table-row") {
        read_row(child);
      } else if (name == "table-column") {
        const std::size_t count = std::max<std::size_t>(count_of(child, "number-columns-repeated", 1), 1);
        if (is_hidden(child)) builder_.hide_columns(column_, column_ + count - 1);
        column_ = std::min(column_ + count, limits_.columns);
      } else if ((name == "table-row-group" || name == "table-header-rows" || name == "table-rows" ||
                  name == "table-column-group" || name == "table-header-columns" ||
                  name == "table-columns") &&
                 depth < deepest) {
        read(child, depth + 1);
      }
    }
  }

 private:
  /// A row that is repeated is read as often, one without a value not at all.
  void read_row(const pugi::xml_node& node) {
    const std::size_t begin = row_;
    const std::size_t count = std::max<std::size_t>(count_of(node, "number-rows-repeated", 1), 1);
    const bool has_values = read_cells(node);
    if (is_hidden(node) && has_values) builder_.hide_row(begin);
    if (has_values)
      for (std::size_t i = 1; i < count; ++i) {
        row_ = begin + i;
        read_cells(node);
        if (is_hidden(node)) builder_.hide_row(row_);
      }
    constexpr std::size_t most_rows = std::size_t{1} << 24;
    row_ = std::min(begin + std::min(count, most_rows), most_rows);
  }

  bool read_cells(const pugi::xml_node& row) {
    std::size_t column = 0;
    bool has_values = false;
    for (const pugi::xml_node& node : row.children()) {
      const bool is_covered = is_named(node, "covered-table-cell");
      if (!is_covered && !is_named(node, "table-cell")) continue;
      const std::size_t count = std::max<std::size_t>(count_of(node, "number-columns-repeated", 1), 1);
      const BookCell cell = is_covered ? BookCell() : cell_of(node);
      if (!cell.is_empty()) {
        has_values = true;
        for (std::size_t i = 0; i < count; ++i) builder_.put(row_, column + i, cell);
        if (!attribute_of(node, "formula").empty()) builder_.count_formula();
        const std::size_t rows = std::max<std::size_t>(count_of(node, "number-rows-spanned", 1), 1);
        const std::size_t columns = std::max<std::size_t>(count_of(node, "number-columns-spanned", 1), 1);
        if (rows > 1 || columns > 1) builder_.merge({row_, row_ + rows - 1, column, column + columns - 1});
      }
      column = std::min(column + count, std::size_t{1} << 24);
    }
    return has_values;
  }

  SheetBuilder& builder_;
  const BookLimits& limits_;
  std::size_t row_ = 0, column_ = 0;
};

void check_kind(ZipArchive& archive) {
  const auto refuse = [&](Word found, Word expected) {
    throw InputError(printable(archive.file()), found, expected);
  };
  if (archive.has("META-INF/manifest.xml") &&
      archive.part("META-INF/manifest.xml").find("encryption-data") != std::string::npos)
    refuse("a workbook with a password"_word, "one without"_word);
  if (archive.has("mimetype") &&
      archive.part("mimetype").find("opendocument.spreadsheet") == std::string::npos)
    refuse("a document that is no spreadsheet"_word, "a workbook (.xlsx, .ods) or a table (.csv)"_word);
}

}  // namespace

Book read_ods(ZipArchive& archive) {
  check_kind(archive);
  const XmlPart part(archive, "content.xml");
  const pugi::xml_node sheets = child_of(child_of(part.root(), "body"), "spreadsheet");
  if (!sheets)
    throw InputError(printable(archive.file()), "a document that is no spreadsheet"_word,
                     "a workbook (.xlsx, .ods) or a table (.csv)"_word);
  Book book;
  book.file = archive.file();
  book.form = Book::Form::ods;
  std::size_t cells_left = archive.limits().cells;
  each_child(sheets, "table", [&](const pugi::xml_node& table) {
    if (book.sheets.size() >= archive.limits().sheets)
      throw InputError(printable(archive.file()),
                       Sentence("workbook.sheets"_key, {{"count", archive.limits().sheets}}), "fewer"_word);
    SheetBuilder builder(archive.file(), std::string(attribute_of(table, "name")), archive.limits(),
                         cells_left);
    TableReader(builder, archive.limits()).read(table);
    book.sheets.push_back(builder.take());
  });
  return book;
}

}  // namespace seamtakt
