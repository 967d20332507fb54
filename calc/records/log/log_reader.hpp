#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "base/files/byte_source.hpp"
#include "records/log/log_header.hpp"
#include "records/log/log_row.hpp"
#include "records/log/log_sweep.hpp"

namespace seamtakt {

/// Reads a log block by block on one thread, each row by the careful reader: rows come in batches, in the
/// order of the file, for callers that need the samples themselves (the audit uses LogSweep). The first bytes
/// and the header are read by the constructor. InputError: what makes the whole log unusable (no header, no
/// text, an open quote, a row beyond the limits). A row that can't be used goes to `rejected`.
class LogReader {
 public:
  LogReader(ByteSource& bytes, std::string file, const LogColumns* columns,
            const std::vector<std::string>& carry, RejectedRows& rejected,
            const LogReaderOptions& options = {});
  ~LogReader();

  /// The next rows; empty at the end. Their texts hold until the next call.
  std::span<const LogRow> next_rows();

  const LogShape& shape() const;
  const std::string& file() const;
  /// Data rows seen: those given out and those rejected. Blank lines aren't rows.
  std::uint64_t rows_read() const;
  std::uint64_t bytes_read() const;
  bool any_time_without_offset() const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace seamtakt
