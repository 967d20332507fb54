#include "records/log/log_opening.hpp"

#include <array>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/text/utf8.hpp"
#include "records/log/log_header.hpp"

namespace seamtakt {

namespace {

struct Signature {
  std::string_view bytes;
  Word what;
};

using namespace std::string_view_literals;
constexpr std::array signatures = {
    Signature{"\xff\xfe"sv, "UTF-16 text"_word},
    Signature{"\xfe\xff"sv, "UTF-16 text"_word},
    Signature{"\x1f\x8b"sv, "gzip data"_word},
    Signature{"PK\x03\x04"sv, "a zip archive, such as a spreadsheet"_word},
    Signature{"\xd0\xcf\x11\xe0"sv, "an old spreadsheet or document"_word},
    Signature{"%PDF"sv, "a PDF document"_word},
    Signature{"SQLite format 3"sv, "an SQLite database"_word},
    Signature{"<"sv, "HTML or XML"_word},
    Signature{"{"sv, "JSON"_word},
    Signature{"["sv, "JSON"_word},
};

bool begins_with(std::string_view text, std::string_view start) {
  return text.substr(0, start.size()) == start;
}

std::string_view first_line(std::string_view text) {
  return text.substr(0, text.find('\n'));
}

}  // namespace

char open_log_text(RecordSplitter& splitter, const std::string& file, const LogLimits& limits) {
  while (!splitter.at_end_of_bytes() && splitter.pending().find('\n') == std::string_view::npos &&
         splitter.pending().size() < limits.record_bytes)
    splitter.refill();
  if (begins_with(splitter.pending(), "\xef\xbb\xbf")) splitter.skip(3);
  const std::string_view text = splitter.pending();
  if (text.empty())
    throw InputError(printable(file), "an empty file"_word, "a header row and data rows"_word);
  for (const auto& [bytes, what] : signatures)
    if (begins_with(text, bytes)) throw InputError(printable(file), what, "CSV text in UTF-8"_word);
  const std::string_view line = first_line(text);
  if (line.find('\0') != std::string_view::npos)
    throw InputError(printable(file) + ":1", "a NUL byte (UTF-16 text or no text at all)"_word,
                     "CSV text in UTF-8"_word);
  const char delimiter = csv_delimiter(line);
  splitter.set_delimiter(delimiter);
  return delimiter;
}

LogHead read_log_head(RecordSplitter& splitter, const std::string& file, const LogColumns* columns,
                      const std::vector<std::string>& carry, const LogLimits& limits) {
  const bool named = columns == nullptr || columns->header_present;
  const char delimiter = open_log_text(splitter, file, limits);
  LogHead head;
  RecordSplitter::Record& record = head.first_row;
  RecordSplitter::Step step = RecordSplitter::Step::end;
  while ((step = splitter.next(record)) == RecordSplitter::Step::need_bytes) splitter.refill();
  if (step == RecordSplitter::Step::end)
    throw InputError(printable(file), "an empty file"_word,
                     named ? "a header row and data rows"_word : "data rows"_word);
  const std::string where = printable(file) + ":" + std::to_string(record.line);
  if (record.count > limits.columns)
    throw InputError(where, Sentence("log.columns.count"_key, {{"count", record.count}}),
                     Sentence("refusal.at-most"_key, {{"count", limits.columns}}));
  if (named && record.problem != nullptr) throw InputError(where, *record.problem, "a header row"_word);
  if (named && record.has_high_bytes && first_invalid_utf8(record.text) != std::string_view::npos)
    throw InputError(where, "bytes that aren't UTF-8"_word, "UTF-8 text"_word);
  std::vector<std::string> fields;
  for (std::size_t i = 0; i < record.count; ++i) fields.emplace_back(splitter.field(i));
  head.shape = read_log_header(fields, file, columns, carry);
  head.shape.delimiter = delimiter;
  head.first_row_is_data = !named;
  return head;
}

}  // namespace seamtakt
