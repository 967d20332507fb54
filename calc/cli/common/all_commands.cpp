#include "cli/common/command.hpp"

namespace seamtakt::cli {

std::span<const CommandEntry> all_commands() {
  static constexpr CommandEntry commands[] = {
      {"calc", add_calc},     {"evaluate", add_evaluate}, {"window", add_window}, {"fit", add_fit},
      {"cycle", add_cycle},   {"line", add_line},         {"kit", add_kit},       {"audit", add_audit},
      {"ledger", add_ledger}, {"report", add_report},     {"learn", add_learn},   {"measure", add_measure},
      {"import", add_import}, {"export", add_export},     {"diff", add_diff},     {"merge", add_merge},
      {"serve", add_serve},   {"manual", add_manual},
  };
  return commands;
}

}  // namespace seamtakt::cli
