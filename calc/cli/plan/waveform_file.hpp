#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace seamtakt {
struct Unit;
}

namespace seamtakt::cli {

/// Reads the CSV of `calc waveform --file`: columns time_s, voltage_V, current_A (any order, case ignored;
/// the unit may be left out). Series by the names time, voltage, current. InputError with file, line and
/// column.
std::map<std::string, std::vector<double>, std::less<>> read_waveform(const std::string& path);

/// As parse_quantity, for a difference: "2F" of temperature is 2/1.8 K, without the offset.
double parse_difference(const std::string& text, const Unit& bare, const std::string& where);

}  // namespace seamtakt::cli
