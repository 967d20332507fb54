// Measured points.
#include <cmath>
#include <set>

#include "fuzz/fuzz_target.hpp"
#include "records/measure/measure.hpp"

namespace seamtakt::fuzz {

bool take_points(std::string_view input) {
  return is_taken([&] {
    std::set<std::string> ids;
    for (const MeasuredPoint& point : parse_measured_points(input, "points.csv")) {
      promise(ids.insert(point.id).second, "a point is there once");
      for (const double at_mm : point.at_mm) promise(std::isfinite(at_mm), "a place is finite");
      promise(point.part_C >= -40 && point.part_C <= 200, "a part's temperature is in its range");
    }
  });
}

}  // namespace seamtakt::fuzz
