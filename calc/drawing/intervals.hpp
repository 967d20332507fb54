#pragma once

#include <functional>
#include <utility>
#include <vector>

namespace seamtakt::drawing {

using Stretch = std::pair<double, double>;

/// Where `holds` is true between the first and the last cut, if it only changes at the cuts or once between
/// the middles of neighbouring cells; such borders are found within `fine`.
std::vector<Stretch> stretches_where(std::vector<double> cuts, double fine,
                                     const std::function<bool(double)>& holds);

}  // namespace seamtakt::drawing
