#include "plan/evaluate/cooling_case.hpp"

#include <algorithm>

namespace seamtakt {

CoolingCases cooling_cases(const Seam& seam, double cold_C, std::optional<double> upper_interpass_C) {
  const ShapeFactors shape = *shape_factors_of(seam.joint);
  const auto [thinner, thicker] = std::minmax_element(seam.thickness_mm.begin(), seam.thickness_mm.end());
  const double hot_C = upper_interpass_C && *upper_interpass_C < preheat_below_C
                           ? std::max(*upper_interpass_C, cold_C)
                           : cold_C;
  return {.nominal = {*thinner, cold_C, shape.f2, shape.f3},
          .fastest = {*thicker, cold_C, shape.f2_low, shape.f3},
          .slowest = {*thinner, hot_C, shape.f2_high, shape.f3}};
}

CoolingCases cooling_cases(const PassFacts& facts) {
  return cooling_cases(facts.seam, facts.schedule.preheat_C, upper_interpass_C(facts.schedule));
}

std::optional<double> upper_interpass_C(const Schedule& schedule) {
  if (!schedule.limits || !schedule.limits->interpass_C) return {};
  return schedule.limits->interpass_C->upper;
}

}  // namespace seamtakt
