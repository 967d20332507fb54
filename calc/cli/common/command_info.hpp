#pragma once

#include <string>
#include <vector>

namespace seamtakt::cli {

/// An option as it was declared, for the manual, the completions and the requests of `serve`.
struct OptionInfo {
  std::vector<std::string> names;  ///< "--from", "--from-date"; of a positional argument its name, "PLAN"
  std::string text;                ///< its help
  std::string takes;               ///< what it takes, such as "N"; of a flag nothing
  std::string heading;             ///< of the group of options that it belongs to
  std::vector<std::string> choices;
  bool is_positional = false, is_flag = false, is_required = false, is_list = false;
};

/// A command, or the program itself, as it was declared. Hidden commands aren't among its commands.
struct CommandInfo {
  std::string name, text, footer;
  std::vector<OptionInfo> options;
  std::vector<CommandInfo> commands;

  const CommandInfo* find_command(const std::string& wanted) const;
  /// `wanted` without dashes, as in a request: "from-date", "PLAN".
  const OptionInfo* find_option(const std::string& wanted) const;
};

/// Calls visit(words of the command, command) for a command and all below it: {} is the program, {"calc",
/// "fillet"} a command below another.
template <class Visit>
void each_command(const CommandInfo& command, std::vector<std::string>& words, const Visit& visit) {
  visit(words, command);
  for (const CommandInfo& below : command.commands) {
    words.push_back(below.name);
    each_command(below, words, visit);
    words.pop_back();
  }
}
template <class Visit>
void each_command(const CommandInfo& program, const Visit& visit) {
  std::vector<std::string> words;
  each_command(program, words, visit);
}

}  // namespace seamtakt::cli
