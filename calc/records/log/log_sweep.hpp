#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/files/byte_source.hpp"
#include "records/log/log_chunk.hpp"
#include "records/log/log_header.hpp"
#include "records/log/log_limits.hpp"
#include "records/log/log_row.hpp"

namespace seamtakt {

struct LogReaderOptions {
  std::size_t block_bytes = 1u << 18;
  unsigned threads = 0;  ///< 0: as many as the machine runs at once
  /// Name of the row kernel; empty: the fastest that the machine can run; "none": every row goes to the
  /// careful reader.
  std::string kernel;
  LogLimits limits;
  std::function<void(std::string_view)> observe;  ///< sees each block of (uncompressed) bytes; may be empty
};

/// One sweep over a log: chunks of whole lines are read one after the other, parsed on all threads, and
/// passed on in the order of the file. The result is the same for any number of threads and any size of
/// chunks. Memory: a few chunks. The first bytes and the header are read by the constructor. InputError: what
/// makes the whole log unusable (no header, no text, an open quote, a row beyond the limits). A row that
/// can't be used goes to `rejected`.
class LogSweep {
 public:
  LogSweep(ByteSource& bytes, std::string file, const LogColumns* columns,
           const std::vector<std::string>& carry, RejectedRows& rejected,
           const LogReaderOptions& options = {});
  ~LogSweep();

  /// Takes the rows of a chunk; their lines are those of the log. One call at a time, on any thread.
  using Take = std::function<void(LogChunk& chunk)>;
  void run(double arc_current_A, std::int64_t longest_step_ns, const Take& take);

  const LogShape& shape() const;
  const std::string& file() const;
  /// Data rows seen: those given out and those rejected. Blank lines aren't rows.
  std::uint64_t rows_read() const;
  std::uint64_t bytes_read() const;
  bool any_time_without_offset() const;
  double highest_A() const;

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace seamtakt
