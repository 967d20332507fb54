#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace seamtakt {

/// The most numbers of a list that rise from one to the next, as their positions in it; of several such
/// choices the one that keeps the least numbers. Empty ones are left out.
std::vector<std::size_t> rising_positions(const std::vector<std::optional<std::size_t>>& numbers);

/// For each arc the position of the planned arc that it is, by order and time alone: the assignment that
/// keeps both orders and whose ratios of times differ least from 1, where leaving out an arc on either side
/// costs as much as a ratio of 2 (common practice, no source). Empty where an arc has none. An empty list:
/// too many to compare (above 4 million pairs).
std::vector<std::optional<std::size_t>> aligned_by_time(const std::vector<double>& times_s,
                                                        const std::vector<double>& planned_s);

}  // namespace seamtakt
