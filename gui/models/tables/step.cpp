#include "models/tables/step.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "base/units/units.hpp"

namespace seamtakt::desk {

std::optional<std::string> stepped_text(const std::string& text, double steps, double lower) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc()) return std::nullopt;
  // Two significant places: a step is one to ten per cent of the value.
  const double step = value == 0 ? 1 : std::pow(10, std::floor(std::log10(std::abs(value))) - 1);
  // To the next multiple in the step's direction: 245 goes up to 250 and down to 240.
  double place = value / step;
  if (std::abs(place - std::round(place)) < 1e-9) place = std::round(place);
  const double next =
      std::max(lower, (steps > 0 ? std::floor(place + steps) : std::ceil(place + steps)) * step);
  const std::string rest(end, text.data() + text.size());
  return rounded_text(next, 10) + rest;
}

}  // namespace seamtakt::desk
