#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/sentences/sentence.hpp"
#include "base/time/log_time.hpp"
#include "records/log/log_quantity.hpp"

namespace seamtakt {

/// One sample. Texts refer to the log's chunk that contains the row.
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
  Sentence reason;  ///< "travel_speed_mm_s: found "x", expected a number"
};

/// Rows that couldn't be used: all counted, the first ones listed.
struct RejectedRows {
  std::uint64_t count = 0;
  std::vector<RejectedRow> listed;
};

}  // namespace seamtakt
