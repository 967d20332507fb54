#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt {

/// Thermal efficiency k of a process: reference/processes.csv (en-1011-1, Table 1), read once. 137 and 139
/// are numbers of older editions of ISO 4063.
struct ProcessEfficiency {
  std::string process;            ///< ISO 4063 number
  double thermal_efficiency = 0;  ///< above 0, to 1
};

/// Those that have one, in the table's order. InputError: the table is damaged.
const std::vector<ProcessEfficiency>& process_efficiencies();

/// k of a process; empty where the table gives none.
std::optional<double> thermal_efficiency_of(std::string_view process);

}  // namespace seamtakt
