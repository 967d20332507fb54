#pragma once

#include <string>

#include "cli/common/command_line.hpp"
#include "records/passes/audit.hpp"

namespace seamtakt::cli {

/// When a stretch outside a limit counts, as it is typed.
struct GivenExcursions {
  std::string window, gas_window = "3s", note = "10mm", share = "5%", fail = "25mm", within = "100mm";
};

void add_excursion_options(const Command& command, GivenExcursions& given);
/// InputError at the option that isn't a quantity in its range.
ExcursionOptions excursion_options(const GivenExcursions& given);

}  // namespace seamtakt::cli
