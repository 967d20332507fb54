#pragma once

#include <string>

#include "records/log_limits.hpp"
#include "records/record_splitter.hpp"

namespace seamtakt {

/// Reads a log's first line into the splitter's block, passes over a UTF-8 byte order mark and sets the
/// delimiter, which it returns.
/// InputError: no bytes at all, what is no CSV text (UTF-16, a zip archive, HTML, JSON, ...), a NUL in the
/// first line, a first line beyond the limits.
char open_log_text(RecordSplitter& splitter, const std::string& file, const LogLimits& limits);

}  // namespace seamtakt
