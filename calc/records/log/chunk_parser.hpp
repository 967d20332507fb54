#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records/log/log_chunk.hpp"
#include "records/log/log_limits.hpp"
#include "records/log/record_splitter.hpp"
#include "records/log/row_reader.hpp"
#include "records/log/run_pattern.hpp"

namespace seamtakt {

/// What the parser of a log's chunks needs to know beside the log's shape.
struct ChunkRules {
  double arc_current_A = 5;
  std::int64_t longest_step_ns = 1'000'000'000;  ///< a longer step is looked at sample by sample
  const RowKernel* kernel = nullptr;             ///< nullptr: every row goes to the careful reader
  LogLimits limits;
};

/// Parses chunks of one log. A parser works on one chunk at a time; its result for a chunk doesn't depend on
/// earlier chunks. Each row is either read by the careful reader, field by field, or by the row kernel, which
/// reads only rows in the common form that repeat the texts of the row before; both give the same.
class ChunkParser {
 public:
  ChunkParser(const LogShape& shape, const LogColumns* columns, const std::string& file, ByteSource& bytes,
              const ChunkRules& rules);

  /// Reads the chunk's text from its beginning, where a row begins. Never throws because of the chunk's
  /// content.
  void parse(LogChunk& chunk);
  /// Throws the error of the row at which the chunk was refused; `line`: on which it begins.
  [[noreturn]] void refuse(LogChunk& chunk, std::uint64_t line);

 private:
  void read_row(LogChunk& chunk, const RecordSplitter::Record& record);
  void take_run(LogChunk& chunk, const RecordSplitter::Record& record, std::size_t& at);
  void add_up(LogChunk& chunk, ChunkRow& row);

  const LogShape& shape_;
  const std::string& file_;
  ChunkRules rules_;
  RecordSplitter splitter_;
  RowReader reader_;
  std::optional<RunPattern> pattern_;  ///< empty: the log isn't in the common form
  int tries_in_vain_ = 0;
};

}  // namespace seamtakt
