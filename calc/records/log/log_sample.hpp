#pragma once

#include <array>
#include <cstdint>

#include "records/log/log_quantity.hpp"
#include "records/log/log_row.hpp"

namespace seamtakt {

/// The numbers of a row, without what borrows the reader's block.
struct LogSample {
  std::int64_t ns = 0;
  std::uint64_t line = 0;
  std::array<double, log_quantity_count> value{};
  std::uint32_t present = 0;
  std::int16_t utc_offset_min = 0;
  std::int8_t arc_on_logged = -1;
  bool arc_on = false;  ///< current above the threshold

  bool has(LogQuantity quantity) const { return (present & bit_of(quantity)) != 0; }
  double operator[](LogQuantity quantity) const { return value[index_of(quantity)]; }
};

inline LogSample sample_of(const LogRow& row, double arc_current_A) {
  LogSample sample;
  sample.ns = row.time.ns;
  sample.line = row.line;
  sample.value = row.value;
  sample.present = row.present;
  sample.utc_offset_min = row.time.utc_offset_min;
  sample.arc_on_logged = row.arc_on;
  sample.arc_on = row[LogQuantity::current_A] > arc_current_A;
  return sample;
}

}  // namespace seamtakt
