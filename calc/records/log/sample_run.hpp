#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>

#include "records/log/kernel/row_kernel.hpp"
#include "records/log/log_row.hpp"

namespace seamtakt {

/// What the whole numbers of a run's columns mean.
struct RunScale {
  std::array<std::uint8_t, log_quantity_count> decimals{};
  std::uint8_t time_decimals = 0;
  std::uint32_t present = 0;  ///< quantities that its rows carry

  std::int64_t ns_of(std::int64_t ticks) const;
  double value_of(std::int32_t number, std::size_t quantity) const;
};

/// Rows that follow a row and repeat its texts, line by line. Row 0 is in no block; the blocks hold the
/// others in order.
struct SampleRun {
  RowColumns columns;
  std::size_t rows = 0;
  std::span<const RowBlock> blocks;
  std::span<const RowBlock> groups;  ///< each joins `group_blocks` of them, the last one the remainder
  RunScale scale;

  /// Time, numbers and line of row `i`, replacing those of the row that the run follows.
  void fill(std::size_t i, std::uint64_t head_line, LogRow& row) const;
  std::int64_t ns_at(std::size_t i) const { return scale.ns_of(columns.ticks[i]); }
};

}  // namespace seamtakt
