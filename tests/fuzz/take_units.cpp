// Quantities with units as people type them, and numbers as text.
#include <cmath>
#include <string>

#include "base/csv/csv.hpp"
#include "base/units/units.hpp"
#include "fuzz/fuzz_target.hpp"

namespace seamtakt::fuzz {

namespace {

void expect_text_of(double value) {
  double again = 0;
  promise(parse_number(number_text(value), again) && again == value, "a number's text is that number");
  for (const int digits : {1, 4, 17})
    promise(parse_number(rounded_text(value, digits), again), "a rounded number is a number");
}

}  // namespace

bool take_units(std::string_view input) {
  bool taken = false;
  for (const char* name : {"mm/s", "A", "C", "K", "kJ/mm", "l/min", "deg", "s", ""}) {
    const Unit* bare = find_unit(name);
    promise(bare != nullptr, "the unit is known");
    double value = 0;
    if (!is_taken([&] { value = parse_quantity(input, *bare, "--fuzzed"); })) continue;
    taken = true;
    promise(std::isfinite(value), "a quantity is finite");
    expect_text_of(value);
  }
  if (double number = 0; parse_number(input, number)) {
    promise(std::isfinite(number), "a number is finite");
    expect_text_of(number);
  }
  const Unit* named = find_unit(input);
  promise(named == nullptr || named->name == input, "a unit is found by its own name");
  unit_of_key(input);
  return taken;
}

}  // namespace seamtakt::fuzz
