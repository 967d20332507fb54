#pragma once

#include <optional>
#include <string_view>

namespace seamtakt {

/// Largest leg (mm) of a fillet laid in a single pass by gas-shielded or cored-wire welding, by position
/// (ISO 6947); empty for a position without a row. Source: aws-d1-1, Table 5.1 of the 2020 edition (part
/// read), for prequalified procedures; rows in reference/largest_single_pass.csv. InputError where the table
/// can't be read.
std::optional<double> largest_single_pass_leg_mm(std::string_view position);

}  // namespace seamtakt
