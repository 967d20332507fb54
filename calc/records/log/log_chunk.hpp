#pragma once

#include <cstddef>
#include <cstdint>
#include <deque>
#include <exception>
#include <string>
#include <string_view>
#include <vector>

#include "records/log/log_row.hpp"
#include "records/log/sample_run.hpp"

namespace seamtakt {

/// A row from the careful reader, and the run of rows after it that repeat its texts.
struct ChunkRow {
  LogRow row;  ///< its line counts from the chunk's first line, which is 0
  std::size_t run_first = 0, run_rows = 0;
  std::size_t first_block = 0, blocks = 0;
  std::size_t first_group = 0, groups = 0;
  RunScale scale;
};

/// A part of a log's text and the rows read from it.
struct LogChunk {
  // The text: whole lines, except for the log's last one.
  std::vector<char> bytes;     ///< with a margin before and after
  std::size_t text_begin = 0;  ///< after the margin at the begin
  std::size_t size = 0;
  bool last = false;
  std::uint64_t bytes_taken = 0;  ///< from the file or stream, up to the end of this text
  std::exception_ptr read_error;  ///< reading the log failed after this text

  // Its content.
  std::vector<ChunkRow> rows;
  std::vector<std::string_view> carried;  ///< of each of `rows`, as LogShape::carried
  std::deque<std::string> unescaped;      ///< texts of rows that aren't in `bytes` unchanged
  std::vector<std::int64_t> ticks;
  std::array<std::vector<std::int32_t>, log_quantity_count> values;
  std::vector<RowBlock> blocks, groups;  ///< groups: of the blocks of one run
  RejectedRows rejected;                 ///< lines as of `rows`
  std::uint64_t rows_read = 0, lines = 0;
  std::size_t unread_from = 0;  ///< `size`, or where a row begins that doesn't end in this text
  bool refused = false;         ///< that row can't be read, whatever follows
  double highest_A = 0;
  bool any_without_offset = false;

  char* text() { return bytes.data() + kernel_margin_bytes + text_begin; }
  const char* text() const { return bytes.data() + kernel_margin_bytes + text_begin; }
  /// Makes room for `capacity` bytes of text.
  void reserve_text(std::size_t capacity) {
    const std::size_t needed = text_begin + capacity + 2 * kernel_margin_bytes;
    if (bytes.size() < needed) bytes.resize(needed);
  }
  SampleRun run_of(const ChunkRow& row);
};

}  // namespace seamtakt
