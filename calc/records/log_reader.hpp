#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "records/byte_source.hpp"
#include "records/log_header.hpp"
#include "records/log_quantity.hpp"

namespace seamtakt {

/// One sample. Texts borrow the reader's block: they hold until the next call of next_rows().
struct LogRow {
  LogTime time;
  std::array<double, log_quantity_count> value{};  ///< 0 where absent
  std::uint32_t present = 0;                       ///< bit_of() each quantity that this row carries
  std::int8_t arc_on = -1;                         ///< as logged: 0, 1; -1: not logged
  int pass = 0;                                    ///< 0: not logged
  std::uint64_t line = 0;                          ///< 1-based line on which the row begins
  std::array<std::string_view, log_text_count> text;
  std::span<const std::string_view> carried;  ///< as LogShape::carried

  bool has(LogQuantity quantity) const { return (present & bit_of(quantity)) != 0; }
  double operator[](LogQuantity quantity) const { return value[index_of(quantity)]; }
  std::string_view operator[](LogText what) const { return text[index_of(what)]; }
};

struct RejectedRow {
  std::string file;
  std::uint64_t line = 0;
  std::string reason;
};

/// Rows that couldn't be used: all counted, the first ones listed.
struct RejectedRows {
  std::uint64_t count = 0;
  std::vector<RejectedRow> listed;
};

struct LogReaderOptions {
  std::size_t block_bytes = 1u << 18;
  LogLimits limits;
  std::function<void(std::string_view)> observe;  ///< sees each block of (uncompressed) bytes; may be empty
};

/// Reads a log block by block: rows come in batches, in the order of the file. This is all that the audit
/// knows of the text, so that a faster way of taking it apart needs no other change. The first bytes and the
/// header are read by the constructor. InputError: what makes the whole log unusable (no header, no text, an
/// open quote, a row beyond the limits). A row that can't be used goes to `rejected`.
class LogReader {
 public:
  LogReader(ByteSource& bytes, std::string file, const LogColumns* columns,
            const std::vector<std::string>& carry, RejectedRows& rejected,
            const LogReaderOptions& options = {});
  ~LogReader();

  /// The next rows; empty at the end.
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
