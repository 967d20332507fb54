#include "cli/common/command_info.hpp"

namespace seamtakt::cli {

const CommandInfo* CommandInfo::find_command(const std::string& wanted) const {
  for (const CommandInfo& command : commands)
    if (command.name == wanted) return &command;
  return nullptr;
}

const OptionInfo* CommandInfo::find_option(const std::string& wanted) const {
  for (const OptionInfo& option : options)
    for (const std::string& own : option.names)
      if (own == (option.is_positional ? wanted : "--" + wanted)) return &option;
  return nullptr;
}

}  // namespace seamtakt::cli
