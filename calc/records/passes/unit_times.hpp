#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "records/passes/pass_record.hpp"

namespace seamtakt {

/// Which unit was in the cell from when to when (end not included).
struct UnitTime {
  std::string unit_serial, weldment;
  std::int64_t start_ns = 0, end_ns = 0;
  bool counts_seconds = false;  ///< given as seconds of the log rather than as ISO 8601 instants
};

/// A --unit-times CSV: unit_serial, weldment, start, end; start and end as in the log (ISO 8601, or seconds).
/// Sorted by start. InputError: a missing column, a time that can't be read, end before start, two units at
/// one time.
std::vector<UnitTime> parse_unit_times(std::string_view csv, const std::string& file);
std::vector<UnitTime> load_unit_times(const std::string& path);

/// A --manual CSV: unit_serial, seam, pass, welder, schedule, date, result. Required are unit_serial, seam
/// and result; weldment is optional, an empty pass means 1. InputError: a required column or value missing, a
/// pass that is no number above 0.
std::vector<ManualSeam> parse_manual_seams(std::string_view csv, const std::string& file);
std::vector<ManualSeam> load_manual_seams(const std::string& path);

}  // namespace seamtakt
