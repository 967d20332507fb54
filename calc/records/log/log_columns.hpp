#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/time/log_time.hpp"
#include "base/units/units.hpp"
#include "records/log/log_quantity.hpp"

namespace seamtakt {

/// A column, by its name in the header (case ignored) or by its number (from 1).
struct ColumnRef {
  std::string name;
  int number = 0;  ///< 0: by name
};

struct NumberColumn {
  ColumnRef column;
  double scale = 1;            ///< value = raw * scale, in `unit`
  const Unit* unit = nullptr;  ///< nullptr: already in the quantity's own unit
};

/// What a job number of the robot or power source means.
struct JobIdentity {
  std::optional<std::string> weldment, seam;
  std::optional<int> pass;
};

enum class LogSignal {
  instantaneous,  ///< u and i sampled as they are: their product is power
  averaged        ///< means over some span (a display's values): only the product of means can be had
};

/// How the columns of a log with names of its own are read: a --columns file. Columns that it doesn't mention
/// are still known by the standard names.
struct LogColumns {
  std::vector<ColumnRef> time;  ///< joined with a blank; empty: time_s or timestamp
  std::vector<TimeFormat>
      time_formats;  ///< tried in order; empty: seconds (where time_scale_s is given) or ISO 8601
  std::optional<double> time_scale_s;  ///< seconds per unit of a counting time column
  std::array<std::optional<NumberColumn>, log_quantity_count> numbers;
  std::array<std::optional<ColumnRef>, log_text_count> texts;
  std::map<std::string, JobIdentity, std::less<>> jobs;
  LogSignal signal = LogSignal::instantaneous;
  bool accept_short_rows = false;  ///< missing last fields are taken as empty
  bool header_present = true;
};

/// Parses a --columns file. InputError at FILE:LINE:COLUMN for unknown keys (keys that begin with x_ are
/// free), wrong types, a unit that doesn't fit the quantity, a pattern that can't be read.
LogColumns parse_log_columns(std::string_view json, const std::string& file);
LogColumns load_log_columns(const std::string& path);

}  // namespace seamtakt
