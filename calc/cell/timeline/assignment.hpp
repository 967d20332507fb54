#pragma once

#include <vector>

namespace seamtakt {

/// The least sum of costs that gives every row a column of its own; `cost` is [row * count + column],
/// infinity forbids a pair. Infinity where there is no such choice. Work grows with count^3. Source: the
/// Hungarian method with shortest augmenting paths (kuhn-1955, jonker-volgenant-1987; recalled).
double assignment_cost(const std::vector<double>& cost, int count);

}  // namespace seamtakt
