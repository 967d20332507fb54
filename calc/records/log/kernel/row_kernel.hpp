#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "records/log/log_header.hpp"
#include "records/log/log_quantity.hpp"

namespace seamtakt {

/// Readable bytes required before the first and after the last byte of the text that a kernel reads.
inline constexpr std::size_t kernel_margin_bytes = 192;
/// Digits of a cell, and decimals of a column, above which a row goes to the careful reader.
inline constexpr int kernel_digits = 8, kernel_decimals = 6, kernel_time_decimals = 9;
/// Bytes of a skipped cell, and of a row, above which the row goes to the careful reader: well within a log's
/// limits.
inline constexpr std::ptrdiff_t kernel_ignored_bytes = 1024, kernel_row_bytes = 16384;

/// One step through a row of a log in the common form.
struct RowStep {
  enum class Kind : std::uint8_t {
    time_seconds,  ///< digits with at most one decimal sign
    time_of_day,   ///< a text that repeats, seconds, a text that repeats
    number,
    texts,  ///< cells that repeat the row before byte by byte
    ignored
  } kind;
  std::uint8_t quantity = 0;  ///< index_of() a number's quantity
  bool last = false;          ///< the line's end follows, else the delimiter
  std::uint16_t cells = 1;    ///< of texts
};

/// What a row has to look like to be taken by the kernel: its texts are those of the head row, byte by byte,
/// and each number is in the form [-]digits[.digits] with no more decimals than its column has had so far.
struct RowPattern {
  std::vector<RowStep> steps;
  char delimiter = ',';
  bool decimal_comma = false;
  std::array<std::uint8_t, log_quantity_count> decimals{};  ///< of each column's whole numbers
  std::array<std::int32_t, log_quantity_count> lowest{}, highest{};
  std::uint32_t present = 0;  ///< quantities that every row of the run carries
  std::uint8_t time_decimals = 0;
  /// Texts of the head row: of each `texts` step with the delimiter that ends it; for time_of_day the text
  /// before and after the seconds.
  struct Text {
    const char* bytes = nullptr;
    std::size_t size = 0;
  };
  std::vector<Text> texts;
  std::int64_t minute_ticks = 0;  ///< time_of_day: ticks of the head row's whole minute
};

/// Columns into which rows go: whole numbers of the column's last decimal. ticks[i], value[q][i] belong
/// together.
struct RowColumns {
  std::int64_t* ticks = nullptr;
  std::array<std::int32_t*, log_quantity_count> value{};
};

struct RowsTaken {
  std::size_t rows = 0;
  const char* next = nullptr;  ///< the first row that wasn't taken
};

/// Sums of a block of rows over the intervals that end at them, as whole numbers of the columns' decimals and
/// the time's ticks. The row before the block belongs to the same run.
struct RowBlock {
  enum class Kind : std::uint8_t { one_by_one, arc_on, arc_off } kind = Kind::one_by_one;
  std::uint32_t first = 0, rows = 0;
  std::int64_t ticks = 0, least_step = 0;
  std::int64_t current = 0, voltage = 0, wire_feed = 0, travel_speed = 0, gas_flow = 0, power = 0;
  std::int64_t energy_twice = 0, travelled_twice = 0, current_squared = 0, voltage_squared = 0;
  std::int32_t min_current = 0, max_current = 0, min_voltage = 0, max_voltage = 0;
};
inline constexpr std::size_t block_rows = 64;

/// What a block is judged by.
struct BlockRules {
  std::int32_t arc_current = 0;   ///< the arc is on above it
  std::int64_t longest_step = 0;  ///< ticks; a longer one may be a hole
  std::int32_t standing = 0;      ///< the torch is at rest up to this travel speed
  bool power_logged = false;      ///< else power is voltage times current
  std::uint32_t present = 0;
};

/// The functions of one instruction set. All give the same numbers.
struct RowKernel {
  const char* name;
  /// Reads rows from `text` on as long as they fit the pattern, at most `most`; rows begin before `end`,
  /// which is just after a line's end. Columns are written from 0 on.
  RowsTaken (*take_rows)(const RowPattern& pattern, const char* text, const char* end,
                         const RowColumns& columns, std::size_t most);
  /// Adds up rows first .. first + rows - 1 (at most block_rows; first >= 1).
  RowBlock (*sum_rows)(const RowColumns& columns, std::size_t first, std::size_t rows,
                       const BlockRules& rules);
};

/// The kernels that this machine can run, the fastest first; the last is the plain one.
const std::vector<const RowKernel*>& row_kernels();

}  // namespace seamtakt
