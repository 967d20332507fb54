#include "base/csv/csv.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "base/text/ascii.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

namespace {

/// Reads records one after another and tracks its position.
class RecordReader {
 public:
  RecordReader(std::string_view text, std::string file, char delimiter, const CsvLimits& limits)
      : text_(text), file_(std::move(file)), delimiter_(delimiter), limits_(limits) {}

  /// The next record that isn't a blank line; false at the end.
  bool next(CsvRow& row) {
    while (at_ < text_.size() && at_line_end()) take_line_end();
    if (at_ >= text_.size()) return false;
    row.line = line_;
    row.fields.clear();
    record_begin_ = at_;
    for (;;) {
      row.fields.push_back(field());
      if (row.fields.size() > limits_.columns) {
        refuse(at_, Sentence("csv.fields.too-many"_key, {{"count", limits_.columns}}), "fewer"_word);
      }
      if (at_ >= text_.size()) return true;
      if (text_[at_] == delimiter_) {
        ++at_;
        continue;
      }
      take_line_end();
      return true;
    }
  }

  [[noreturn]] void refuse(std::size_t at, Sentence found, Word expected) const {
    std::uint64_t column = 1;
    for (std::size_t i = line_begin_; i < at; ++i) column += begins_utf8_character(text_[i]);
    throw InputError(printable(file_) + ":" + std::to_string(line_) + ":" + std::to_string(column),
                     std::move(found), expected);
  }

 private:
  bool at_line_end() const { return text_[at_] == '\n' || text_[at_] == '\r'; }

  void take_line_end() {
    if (text_[at_] == '\r') {
      if (at_ + 1 >= text_.size() || text_[at_ + 1] != '\n') {
        refuse(at_, "a carriage return without a line feed"_word, "lines that end in LF or CRLF"_word);
      }
      ++at_;
    }
    ++at_;
    begin_line();
  }
  void begin_line() {
    ++line_;
    line_begin_ = at_;
  }

  std::string field() { return at_ < text_.size() && text_[at_] == '"' ? quoted_field() : bare_field(); }

  std::string bare_field() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && text_[at_] != delimiter_ && !at_line_end()) ++at_;
    check_size(at_ - begin, begin);
    return std::string(text_.substr(begin, at_ - begin));
  }

  std::string quoted_field() {
    const std::size_t begin = at_++;
    const std::uint64_t first_line = line_;
    const std::size_t first_line_begin = line_begin_;
    std::string value;
    for (;;) {
      if (at_ >= text_.size()) {
        line_ = first_line;
        line_begin_ = first_line_begin;
        refuse(begin, "a quote that is never closed"_word, "a closing quote"_word);
      }
      const char c = text_[at_++];
      if (c == '"') {
        if (at_ >= text_.size() || text_[at_] != '"') break;
        ++at_;
      }
      value += c;
      if (c == '\n') begin_line();
      check_size(value.size(), at_);
    }
    if (at_ < text_.size() && text_[at_] != delimiter_ && !at_line_end()) {
      refuse(at_, "text after a closing quote"_word, "a delimiter or the end of the line"_word);
    }
    return value;
  }

  void check_size(std::size_t field_bytes, std::size_t at) const {
    if (field_bytes > limits_.field_bytes) {
      refuse(at, Sentence("csv.field.too-long"_key, {{"bytes", limits_.field_bytes}}), "a shorter one"_word);
    }
    if (at_ - record_begin_ > limits_.record_bytes) {
      refuse(at, Sentence("csv.row.too-long"_key, {{"bytes", limits_.record_bytes}}), "a shorter one"_word);
    }
  }

  std::string_view text_;
  std::string file_;
  char delimiter_;
  const CsvLimits& limits_;
  std::size_t at_ = 0, line_begin_ = 0, record_begin_ = 0;
  std::uint64_t line_ = 1;
};

/// Refuses bytes that can't be a table, with the place of the first.
void check_bytes(std::string_view text, const std::string& file) {
  const std::string name = printable(file);
  const auto begins = [text](std::string_view bytes) { return text.starts_with(bytes); };
  if (begins("\xff\xfe") || begins("\xfe\xff"))
    throw InputError(name, "UTF-16 text"_word, "a table in UTF-8"_word);
  if (begins("\x1f\x8b")) throw InputError(name, "a gzip file"_word, "a table in UTF-8"_word);
  if (begins("PK\x03\x04"))
    throw InputError(name, "a zip file or a spreadsheet"_word, "a table in UTF-8"_word);
  const std::size_t nul = text.find('\0');
  const std::size_t bad = std::min(nul, first_invalid_utf8(text));
  if (bad == std::string_view::npos) return;
  const std::string_view before = text.substr(0, bad);
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const std::size_t line_begin = before.rfind('\n') + 1;  // npos + 1 is 0
  const auto column =
      1 + std::count_if(before.begin() + static_cast<std::ptrdiff_t>(line_begin), before.end(),
                        [](char c) { return (static_cast<unsigned char>(c) & 0xc0) != 0x80; });
  throw InputError(name + ":" + std::to_string(line) + ":" + std::to_string(column),
                   bad == nul ? "the byte NUL"_word : "a byte that isn't UTF-8"_word, "text in UTF-8"_word);
}

void take_header(CsvTable& table, const CsvRow& row) {
  for (const std::string& field : row.fields) {
    const std::string name(trimmed(field, " "));
    // Nameless columns come from a delimiter at the line's end and can't be asked for, so they may repeat.
    if (!name.empty() && table.column(name) >= 0) {
      throw InputError(printable(table.file) + ":" + std::to_string(row.line) + ":1",
                       Sentence("csv.column.twice"_key, {{"column", printable(name)}}),
                       "each column once"_word);
    }
    table.header.push_back(name);
  }
}

}  // namespace

char csv_delimiter(std::string_view text) {
  constexpr std::string_view delimiters = ",;\t";
  std::size_t counts[delimiters.size()] = {};
  bool quoted = false, any = false;
  for (char c : text) {
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if ((c == '\n' || c == '\r') && any) break;
    any = any || (c != '\n' && c != '\r');
    if (const auto at = delimiters.find(c); at != std::string_view::npos) ++counts[at];
  }
  return delimiters[static_cast<std::size_t>(std::max_element(std::begin(counts), std::end(counts)) -
                                             counts)];
}

int CsvTable::column(std::string_view name) const {
  const auto at = std::find_if(header.begin(), header.end(), [name](const std::string& column) {
    return lower_case(column) == lower_case(name);
  });
  return at == header.end() ? -1 : static_cast<int>(at - header.begin());
}

std::size_t CsvTable::require(std::string_view name) const {
  const int index = column(name);
  if (index >= 0) return static_cast<std::size_t>(index);
  std::string columns;
  for (const std::string& column_name : header)
    columns += (columns.empty() ? "" : ", ") + printable(column_name, 40);
  throw InputError(printable(file) + ":1:1",
                   Sentence("csv.columns"_key, {{"columns", printable(columns, 400)}}),
                   Sentence("csv.column.needed"_key, {{"column", name}}));
}

CsvTable parse_csv(std::string_view text, const std::string& file, const CsvLimits& limits) {
  check_bytes(text, file);
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  CsvTable table;
  table.file = file;
  table.delimiter = csv_delimiter(text);
  RecordReader reader(text, file, table.delimiter, limits);
  CsvRow row;
  if (!reader.next(row)) throw InputError(printable(file), "an empty file"_word, "a header row"_word);
  take_header(table, row);
  while (reader.next(row)) {
    if (row.fields.size() != table.header.size()) {
      throw InputError(printable(file) + ":" + std::to_string(row.line) + ":1",
                       Sentence("csv.field-count"_key, {{"count", row.fields.size()}}),
                       Sentence("csv.field-count.of-header"_key, {{"count", table.header.size()}}));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

CsvTable read_csv(const std::string& path, const CsvLimits& limits) {
  return parse_csv(read_file(path, largest_small_table), path, limits);
}

}  // namespace seamtakt
