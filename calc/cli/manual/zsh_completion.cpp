#include "cli/manual/completion_words.hpp"
#include "cli/manual/manual_files.hpp"

namespace seamtakt::cli {

namespace {

/// A description within a specification of _arguments or _describe: brackets and colons would end it.
std::string described(const std::string& text) {
  std::string escaped;
  for (const char c : text) {
    if (c == '[' || c == ']' || c == ':' || c == '\\') escaped += '\\';
    escaped += c;
  }
  return escaped;
}

std::string value_of(const OptionInfo& option) {
  const std::string action = option.choices.empty() ? "_files" : "(" + joined(option.choices, " ") + ")";
  return ":" + described(option.takes.empty() ? "value" : option.takes) + ":" + action;
}

/// "    '*--anchor[file of anchors]:TEXT:_files' \", one for each name.
std::string specifications(const CommandInfo& command) {
  std::string text;
  for (const OptionInfo* option : named_options(command))
    for (const std::string& name : dashed_names(*option))
      text += "    " +
              in_single_quotes((option->is_list ? "*" : "") + name + "[" + described(option->text) + "]" +
                               (option->is_flag ? "" : value_of(*option))) +
              " \\\n";
  return text;
}

std::string function_name(const std::vector<std::string>& words) {
  std::string name = "_seamtakt";
  for (const std::string& word : words) name += "_" + word;
  return name;
}

/// Offers the commands below, and hands on to the function of the one that is chosen.
std::string function_with_commands(const std::vector<std::string>& words, const CommandInfo& command,
                                   const std::string& everywhere) {
  std::string listed, cases;
  for (const CommandInfo& below : command.commands) {
    listed += "    " + in_single_quotes(described(below.name) + ":" + below.text) + "\n";
    std::vector<std::string> inner = words;
    inner.push_back(below.name);
    cases += "        " + below.name + ") " + function_name(inner) + " ;;\n";
  }
  return function_name(words) +
         "() {\n"
         "  local context state state_descr line\n"
         "  typeset -A opt_args\n"
         "  local -a commands\n"
         "  commands=(\n" +
         listed +
         "  )\n"
         "  _arguments -C \\\n" +
         everywhere + (words.empty() ? "" : specifications(command)) +
         "    '1: :->command' '*:: :->rest'\n"
         "  case $state in\n"
         "    command) _describe -t commands 'command' commands ;;\n"
         "    rest)\n"
         "      case $line[1] in\n" +
         cases +
         "      esac ;;\n"
         "  esac\n"
         "}\n\n";
}

std::string function_of(const std::vector<std::string>& words, const CommandInfo& command,
                        const std::string& everywhere) {
  if (!command.commands.empty()) return function_with_commands(words, command, everywhere);
  return function_name(words) + "() {\n  _arguments \\\n" + everywhere + specifications(command) +
         "    '*:file:_files'\n}\n\n";
}

}  // namespace

ManualFile zsh_completion(const CommandInfo& program) {
  const std::string everywhere = specifications(program);
  std::string functions;
  each_command(program, [&](const std::vector<std::string>& words, const CommandInfo& command) {
    CommandInfo own = command;
    // Help is an option of each command; those of the program are in every list.
    if (!words.empty())
      std::erase_if(own.options, [&](const OptionInfo& option) {
        return !option.is_positional && program.find_option(option.names.back().substr(2)) != nullptr;
      });
    functions += function_of(words, own, everywhere);
  });
  return {"zsh/site-functions/_seamtakt", "#compdef seamtakt\n\n" + functions + "_seamtakt \"$@\"\n"};
}

}  // namespace seamtakt::cli
