#pragma once

#include <string>
#include <vector>

namespace seamtakt::test {

/// A pass as the plain reader adds it up.
struct PlainPass {
  std::string unit, weldment, seam, pass;
  std::uint64_t samples = 0, arc_starts = 0;
  long double arc_time_s = 0, current = 0, voltage = 0, power = 0, energy_J = 0, travelled_mm = 0,
              frozen_s = 0;
  long double first_s = 0, last_s = 0;
};

/// A second, independent reading of a well-formed log with the columns time_s, unit_serial, weldment, seam,
/// pass, current_A, voltage_V, travel_speed_mm_s in any order: all rows kept, long double, one plain loop a
/// figure. Written from the definitions, without the program's code.
std::vector<PlainPass> plain_audit(const std::string& text);

}  // namespace seamtakt::test
