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
  const char* what;
};

using namespace std::string_view_literals;
constexpr std::array signatures = {
    Signature{"\xff\xfe"sv, "UTF-16 text"},
    Signature{"\xfe\xff"sv, "UTF-16 text"},
    Signature{"\x1f\x8b"sv, "gzip data"},
    Signature{"PK\x03\x04"sv, "a zip archive, such as a spreadsheet"},
    Signature{"\xd0\xcf\x11\xe0"sv, "an old spreadsheet or document"},
    Signature{"%PDF"sv, "a PDF document"},
    Signature{"SQLite format 3"sv, "an SQLite database"},
    Signature{"<"sv, "HTML or XML"},
    Signature{"{"sv, "JSON"},
    Signature{"["sv, "JSON"},
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
  if (text.empty()) throw InputError(printable(file), "an empty file", "a header row and data rows");
  for (const auto& [bytes, what] : signatures)
    if (begins_with(text, bytes)) throw InputError(printable(file), what, "CSV text in UTF-8");
  const std::string_view line = first_line(text);
  if (line.find('\0') != std::string_view::npos)
    throw InputError(printable(file) + ":1", "a NUL byte (UTF-16 text or no text at all)",
                     "CSV text in UTF-8");
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
    throw InputError(printable(file), "an empty file", named ? "a header row and data rows" : "data rows");
  const std::string where = printable(file) + ":" + std::to_string(record.line);
  if (record.count > limits.columns)
    throw InputError(where, std::to_string(record.count) + " columns",
                     "at most " + std::to_string(limits.columns));
  if (named && record.problem != nullptr) throw InputError(where, record.problem, "a header row");
  if (named && record.has_high_bytes && first_invalid_utf8(record.text) != std::string_view::npos)
    throw InputError(where, "bytes that aren't UTF-8", "UTF-8 text");
  std::vector<std::string> fields;
  for (std::size_t i = 0; i < record.count; ++i) fields.emplace_back(splitter.field(i));
  head.shape = read_log_header(fields, file, columns, carry);
  head.shape.delimiter = delimiter;
  head.first_row_is_data = !named;
  return head;
}

}  // namespace seamtakt
