#pragma once

#include <string>
#include <vector>

namespace seamtakt::rules {

/// What a source defines at the scope of its namespaces, whatever these are: functions, types, constants,
/// aliases, macros that it leaves defined, and tests as "Suite.name". Read off the text alone: PrintTo and
/// operators, of which each type has its own, and definitions of members don't count.
std::vector<std::string> scope_names(const std::string& source);

}  // namespace seamtakt::rules
