#include <algorithm>
#include <array>

#include "formula/metal/preheat.hpp"

namespace seamtakt {
namespace {

// Degrees Fahrenheit as the annex prints them; `above_65` stands for its "65-": no preheat above 65 degF.
constexpr int above_65 = -65;
using Groups = std::array<int, 7>;

// Bounds in inches: below 3/8, to 3/4, to 1-1/2, to 3, above.
constexpr std::array<std::array<Groups, 5>, 3> table_F = {{
    {{{above_65, above_65, above_65, above_65, 140, 280, 300},
      {above_65, above_65, 65, 140, 210, 280, 300},
      {above_65, above_65, 65, 175, 230, 280, 300},
      {65, 65, 100, 200, 250, 280, 300},
      {65, 65, 100, 200, 250, 280, 300}}},
    {{{above_65, above_65, above_65, above_65, 160, 280, 320},
      {above_65, above_65, 65, 175, 240, 290, 320},
      {above_65, 65, 165, 230, 280, 300, 320},
      {65, 175, 230, 265, 300, 300, 320},
      {200, 250, 280, 300, 320, 320, 320}}},
    {{{above_65, above_65, above_65, 100, 230, 300, 320},
      {above_65, 65, 150, 220, 280, 320, 320},
      {65, 185, 240, 280, 300, 320, 320},
      {240, 265, 300, 300, 320, 320, 320},
      {240, 265, 300, 300, 320, 320, 320}}},
}};

/// Bounds in mm as exact decimals: 0.75*25.4 isn't 19.05 to the last bit.
std::size_t thickness_row(double thickness_mm) {
  if (thickness_mm < 9.525) return 0;
  if (thickness_mm <= 19.05) return 1;
  if (thickness_mm <= 38.1) return 2;
  return thickness_mm <= 76.2 ? 3 : 4;
}

}  // namespace

char susceptibility_group_of_index(double index) {
  constexpr std::array upper = {3.0, 3.5, 4.0, 4.5, 5.0, 5.5};
  // The annex gives one decimal: 3.04 is 3.0, group A.
  double printed = std::round(index * 10) / 10;
  auto group = std::find_if(upper.begin(), upper.end(), [&](double limit) { return printed <= limit; });
  return static_cast<char>('A' + (group - upper.begin()));
}

std::optional<char> susceptibility_group_of_table(double pcm_pct, HydrogenLevel level) {
  constexpr std::array below = {0.18, 0.23, 0.28, 0.33, 0.38};
  auto column = std::find_if(below.begin(), below.end(), [&](double limit) { return pcm_pct < limit; });
  if (column == below.end()) return std::nullopt;
  return static_cast<char>('A' + (column - below.begin()) + static_cast<int>(level));
}

std::optional<Restraint> restraint_of(std::string_view name) {
  if (name == "low") return Restraint::low;
  if (name == "medium") return Restraint::medium;
  if (name == "high") return Restraint::high;
  return std::nullopt;
}

AwsPreheat aws_preheat(Restraint restraint, char group, double thickness_mm) {
  const auto& row = table_F[static_cast<std::size_t>(restraint)][thickness_row(thickness_mm)];
  int fahrenheit = row[static_cast<std::size_t>(group - 'A')];
  bool none_needed = fahrenheit == above_65;
  return {celsius_from_fahrenheit(none_needed ? 65 : fahrenheit), none_needed};
}

}  // namespace seamtakt
