#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// Bytes of a table that is read whole.
inline constexpr std::size_t largest_small_table = 64u << 20;

struct CsvLimits {
  std::size_t field_bytes = 4096;
  std::size_t record_bytes = 65536;
  std::size_t columns = 256;
};

struct CsvRow {
  std::uint64_t line = 0;  ///< 1-based line on which the record begins
  std::vector<std::string> fields;
};

/// A small table (orders, carts, reference data) read whole: RFC 4180, delimiter ',', ';' or tab found
/// from the header, quoted fields, CRLF, BOM and a missing last newline accepted. Blank lines are skipped.
struct CsvTable {
  std::string file;
  char delimiter = ',';
  std::vector<std::string> header;
  std::vector<CsvRow> rows;

  /// Index of a column, ignoring case; -1 where absent.
  int column(std::string_view name) const;
  /// Index of a column that must be there; InputError naming the file's columns where it isn't.
  std::size_t require(std::string_view name) const;
};

/// The character of ',', ';' and tab that is most frequent in the first line that isn't blank, outside
/// quotes; of equals the first, so ',' if there is none.
char csv_delimiter(std::string_view text);

/// Parses `text`. InputError with FILE:LINE:COLUMN for an open quote, text after a quote, a row whose
/// number of fields differs from the header's, a column twice, an empty file, NUL, invalid UTF-8, a limit
/// passed.
CsvTable parse_csv(std::string_view text, const std::string& file, const CsvLimits& limits = {});
CsvTable read_csv(const std::string& path, const CsvLimits& limits = {});

/// A finite number; '.' is the decimal sign, or ',' where `decimal_comma`. Leading or trailing blanks are
/// refused. False where `text` isn't one.
bool parse_number(std::string_view text, double& value, bool decimal_comma = false);

/// One field, quoted where RFC 4180 asks; text that a spreadsheet would take for a formula gets a leading '.
std::string csv_field(std::string_view text);
/// The text of a field as csv_field was given it: without the ' that it put ahead of what looks like a
/// formula.
std::string csv_unguarded(std::string_view field);

}  // namespace seamtakt
