#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "records/log/log_columns.hpp"
#include "records/log/log_limits.hpp"

namespace seamtakt {

/// The column of each quantity in a row of one log. An index of -1: not logged.
struct LogShape {
  std::vector<std::string> names;  ///< of the header, outer blanks removed
  std::size_t columns = 0;
  char delimiter = ',';
  std::vector<std::size_t> time;
  enum class TimeKind { seconds, iso8601, formats } time_kind = TimeKind::seconds;
  double time_scale_s = 1;
  struct Number {
    std::size_t column;
    LogQuantity quantity;
    double scale = 1;            ///< to the quantity's own unit
    const Unit* from = nullptr;  ///< for units with an offset
    const Unit* to = nullptr;
  };
  std::vector<Number> numbers;
  std::array<int, log_text_count> texts;
  std::vector<std::size_t> carried;        ///< in the order asked for; columns of the log only
  std::vector<std::size_t> carried_index;  ///< index of each into what was asked for
  std::vector<std::string> ignored;        ///< names of the columns that were given no meaning
  std::uint32_t logged = 0;                ///< bit_of() each quantity that has a column

  bool has(LogQuantity quantity) const { return (logged & bit_of(quantity)) != 0; }
  bool counts_seconds() const { return time_kind == TimeKind::seconds; }
};

/// Reads a header. `fields`: its fields; for a log without header, those of its first row
/// (`columns->header_present` is false then). InputError: a required column missing, a column twice, a known
/// name with another unit, numbers instead of names, more than 256 columns.
LogShape read_log_header(const std::vector<std::string>& fields, const std::string& file,
                         const LogColumns* columns, const std::vector<std::string>& carry);

}  // namespace seamtakt
