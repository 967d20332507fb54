#pragma once

#include <algorithm>
#include <string>

#include "formula/heat/heat_input.hpp"
#include "formula/input_checks.hpp"

namespace seamtakt {

/// "111, 114, ... or 15": the process numbers whose thermal efficiency is known.
inline std::string known_processes() {
  const std::vector<ProcessEfficiency>& known = process_efficiencies();
  std::string text;
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (i > 0) text += i + 1 == known.size() ? " or " : ", ";
    text += known[i].process;
  }
  return text;
}

/// k from --efficiency, else from --process; empty where neither was given. InputError for a process number
/// that isn't one, or whose k isn't known and isn't given.
template <class Real>
std::optional<Real> find_efficiency(const Inputs<Real>& in) {
  std::optional<Real> given = in.find("efficiency");
  if (given && !(value_of(*given) > 0 && value_of(*given) <= 1))
    throw InputError("--efficiency", number_text(value_of(*given)), "a value above 0, at most 1");
  if (!in.has("process")) return given;
  std::string process = in.text("process");
  if (auto known = thermal_efficiency_of(process)) return given ? given : std::optional<Real>(Real(*known));
  bool is_number = !process.empty() && process.size() <= 4 &&
                   std::all_of(process.begin(), process.end(), [](char c) { return c >= '0' && c <= '9'; });
  if (given && is_number) return given;
  throw InputError("--process", printable(process),
                   known_processes() + (is_number ? ", or --efficiency as well" : ""));
}

}  // namespace seamtakt
