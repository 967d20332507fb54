#pragma once

#include <string>
#include <vector>

#include "records/log/log_header.hpp"
#include "records/log/log_limits.hpp"
#include "records/log/record_splitter.hpp"

namespace seamtakt {

/// Reads a log's first line into the splitter's block, skips a UTF-8 byte order mark and sets the
/// delimiter, which it returns.
/// InputError: no bytes, not a CSV text (UTF-16, a zip archive, HTML, JSON, ...), a NUL in the
/// first line, a first line beyond the limits.
char open_log_text(RecordSplitter& splitter, const std::string& file, const LogLimits& limits);

/// What the first rows of a log tell. In a log without header the first record is data, and `first_row` is
/// it.
struct LogHead {
  LogShape shape;
  bool first_row_is_data = false;
  RecordSplitter::Record first_row;
};

/// Opens a log's text and reads its header. InputError: what makes the whole log unusable.
LogHead read_log_head(RecordSplitter& splitter, const std::string& file, const LogColumns* columns,
                      const std::vector<std::string>& carry, const LogLimits& limits);

}  // namespace seamtakt
