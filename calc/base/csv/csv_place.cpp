#include "base/csv/csv_place.hpp"

#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

std::size_t line_begin(std::string_view text, std::uint64_t line) {
  std::size_t at = 0;
  for (std::uint64_t i = 1; i < line; ++i) {
    at = text.find('\n', at);
    if (at == std::string_view::npos) return text.size();
    ++at;
  }
  return at;
}

}  // namespace

std::string field_place(std::string_view text, const CsvTable& table, const CsvRow& row, std::size_t field) {
  std::uint64_t line = row.line, column = 1;
  bool quoted = false;
  for (std::size_t at = line_begin(text, row.line), fields = 0; at < text.size() && fields < field; ++at) {
    const char c = text[at];
    if (c == '"') quoted = !quoted;
    if (c == table.delimiter && !quoted) ++fields;
    if (c == '\n') {
      ++line;
      column = 1;
    } else if (begins_utf8_character(c)) {
      ++column;
    }
  }
  return printable(table.file) + ":" + std::to_string(line) + ":" + std::to_string(column);
}

void refuse_field(std::string_view text, const CsvTable& table, const CsvRow& row, std::size_t field,
                  Phrase expected) {
  const std::string& given = row.fields[field];
  Phrase found = given.empty() ? Phrase(Sentence("csv.field.empty"_key, {{"column", table.header[field]}}))
                               : Phrase("\"" + printable(given) + "\"");
  throw InputError(field_place(text, table, row, field), std::move(found), std::move(expected));
}

}  // namespace seamtakt
