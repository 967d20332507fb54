#pragma once

#include <stdexcept>
#include <string_view>
#include <system_error>

#include "base/error.hpp"

namespace seamtakt::fuzz {

/// Thrown where a reader took or refused its input, but not as it promises.
struct BrokenPromise : std::logic_error {
  using std::logic_error::logic_error;
};

inline void promise(bool kept, const char* what) {
  if (!kept) throw BrokenPromise(what);
}

/// Runs `work` on input that may be anything; false where the input was refused, as InputError or
/// std::system_error. Whatever else is thrown goes through, and is a defect.
template <class Work>
bool is_taken(const Work& work) {
  try {
    work();
    return true;
  } catch (const InputError& refusal) {
    promise(*refusal.what() != '\0', "a refusal says why");
  } catch (const std::system_error&) {
  }
  return false;
}

// The targets: each takes any bytes, and says whether they were taken for what they should be.
bool take_bundle(std::string_view input);
bool take_cart(std::string_view input);
bool take_columns(std::string_view input);
bool take_json(std::string_view input);
bool take_log(std::string_view input);
bool take_options(std::string_view input);
bool take_orders(std::string_view input);
bool take_plan(std::string_view input);
bool take_points(std::string_view input);
bool take_units(std::string_view input);

/// A target and its folder of inputs, tests/fuzz/corpus/NAME.
struct Target {
  const char* name;
  bool (*take)(std::string_view input);
};

inline constexpr Target targets[] = {
    {"bundle", take_bundle}, {"cart", take_cart},       {"columns", take_columns}, {"json", take_json},
    {"log", take_log},       {"options", take_options}, {"orders", take_orders},   {"plan", take_plan},
    {"points", take_points}, {"units", take_units},
};

}  // namespace seamtakt::fuzz
