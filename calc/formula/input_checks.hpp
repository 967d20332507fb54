#pragma once

#include <charconv>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "base/error.hpp"
#include "base/units/units.hpp"
#include "formula/quantities/quantity.hpp"

namespace seamtakt {

/// A number of a refusal with its unit, with as many digits as it takes to read the same number back.
inline UnitValue exact_value(double value, const char* unit = "") {
  const auto reads_back = [value](int digits) {
    const std::string text = rounded_text(value, digits);
    double read = 0;
    std::from_chars(text.data(), text.data() + text.size(), read);
    return read == value;
  };
  int digits = 1;
  while (digits < 17 && !reads_back(digits)) ++digits;
  return {value, unit, digits};
}

/// Checks of a quantity's inputs. Each throws InputError("--name", found, expected) where the value
/// can't be used by any formula; a value that is merely unusual is a finding, made elsewhere.

inline void require_positive(std::string_view name, double value) {
  if (!(value > 0)) throw InputError("--" + std::string(name), number_text(value), "a value above 0"_word);
}

inline void require_not_negative(std::string_view name, double value) {
  if (!(value >= 0)) throw InputError("--" + std::string(name), number_text(value), "0 or more"_word);
}

inline void require_within(std::string_view name, double value, double lower, double upper) {
  if (!(value >= lower && value <= upper))
    throw InputError(
        "--" + std::string(name), number_text(value),
        Sentence("formula.value-within"_key, {{"lower", exact_value(lower)}, {"upper", exact_value(upper)}}));
}

/// The number where given, above 0.
template <class Real>
std::optional<Real> find_positive(const Inputs<Real>& inputs, std::string_view name) {
  std::optional<Real> given = inputs.find(name);
  if (given) require_positive(name, value_of(*given));
  return given;
}

template <class Real>
std::optional<Real> find_not_negative(const Inputs<Real>& inputs, std::string_view name) {
  std::optional<Real> given = inputs.find(name);
  if (given) require_not_negative(name, value_of(*given));
  return given;
}

template <class Real>
std::optional<Real> find_within(const Inputs<Real>& inputs, std::string_view name, double lower,
                                double upper) {
  std::optional<Real> given = inputs.find(name);
  if (given) require_within(name, value_of(*given), lower, upper);
  return given;
}

/// The number, which must be given and be above 0.
template <class Real>
Real positive(const Inputs<Real>& inputs, std::string_view name) {
  Real given = inputs.number(name);
  require_positive(name, value_of(given));
  return given;
}

template <class Real>
Real not_negative(const Inputs<Real>& inputs, std::string_view name) {
  Real given = inputs.number(name);
  require_not_negative(name, value_of(given));
  return given;
}

template <class Real>
Real within(const Inputs<Real>& inputs, std::string_view name, double lower, double upper) {
  Real given = inputs.number(name);
  require_within(name, value_of(given), lower, upper);
  return given;
}

/// Of several ways to give the same thing at most one may be used: InputError naming the two that were.
template <class Real>
void require_only_one(const Inputs<Real>& inputs, std::initializer_list<const char*> names) {
  const char* first = nullptr;
  for (const char* name : names) {
    if (!inputs.has(name)) continue;
    if (first)
      throw InputError("--" + std::string(name),
                       Sentence("formula.option-as-well"_key, {{"option", "--" + std::string(first)}}),
                       "one of the two"_word);
    first = name;
  }
}

}  // namespace seamtakt
