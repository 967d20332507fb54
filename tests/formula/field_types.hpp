#pragma once

#include "formula/heat/temperature_field.hpp"

namespace seamtakt {

/// Temperature fields are tested in plain numbers.
using Source = MovingSource<double>;
using Point = FieldPoint<double>;

}  // namespace seamtakt
