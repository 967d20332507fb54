#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "base/sentences/name_list.hpp"
#include "formula/heat/heat_input.hpp"
#include "formula/input_checks.hpp"

namespace seamtakt {

/// The process numbers whose thermal efficiency is known: "111, 114, ... or 15".
inline Sentence known_processes() {
  std::vector<std::string_view> processes;
  for (const auto& each : process_efficiencies()) processes.push_back(each.process);
  return one_of_names(processes);
}

/// k from --efficiency, else from --process; empty where neither was given. InputError for a process number
/// that isn't one, or whose k isn't known and isn't given.
template <class Real>
std::optional<Real> find_efficiency(const Inputs<Real>& in) {
  std::optional<Real> given = in.find("efficiency");
  if (given && !(value_of(*given) > 0 && value_of(*given) <= 1))
    throw InputError("--efficiency", number_text(value_of(*given)), "a value above 0, at most 1"_word);
  if (!in.has("process")) return given;
  std::string process = in.text("process");
  if (auto known = thermal_efficiency_of(process)) return given ? given : std::optional<Real>(Real(*known));
  bool is_number = !process.empty() && process.size() <= 4 &&
                   std::all_of(process.begin(), process.end(), [](char c) { return c >= '0' && c <= '9'; });
  if (given && is_number) return given;
  Sentence expected = known_processes();
  if (is_number)
    expected = Sentence("formula.process-or-efficiency"_key, {{"processes", std::move(expected)}});
  throw InputError("--process", printable(process), std::move(expected));
}

}  // namespace seamtakt
