#pragma once

#include <optional>
#include <string_view>

namespace seamtakt {

/// Shape factors of a joint; F2 depends on heat input over thickness within [f2_low, f2_high]. Each above 0,
/// to 1.
struct ShapeFactors {
  std::string_view joint;
  double f2, f2_low, f2_high, f3;
};

/// reference/shape_factors.csv (en-1011-2, Table D.1), read once; empty for a joint that it hasn't. A butt's
/// factors are those between runs, for any number of runs. InputError: the table is damaged.
std::optional<ShapeFactors> shape_factors_of(std::string_view joint);

}  // namespace seamtakt
