#include "cli/manual/completion_words.hpp"
#include "cli/manual/manual_files.hpp"

namespace seamtakt::cli {

namespace {

/// Patterns of the options of a command that take a value, and what it may be.
struct ValueCases {
  std::string files;    ///< "/fit:--output|/fit:--seam": the shell offers names of files
  std::string choices;  ///< cases, one an option
};

void add_value_cases(const std::string& path, const CommandInfo& command, ValueCases& cases) {
  for (const OptionInfo* option : named_options(command)) {
    if (option->is_flag) continue;
    // Options of the program may stand after any command.
    const std::string before = path.empty() ? "*:" : path + ":";
    for (const std::string& name : dashed_names(*option))
      if (option->choices.empty())
        cases.files += (cases.files.empty() ? "" : "|") + before + name;
      else
        cases.choices += "    " + before + name + ") COMPREPLY=($(compgen -W \"" +
                         joined(option->choices, " ") + "\" -- \"$word\")); return ;;\n";
  }
}

std::string words_of(const CommandInfo& command) {
  std::vector<std::string> words;
  for (const CommandInfo& below : command.commands) words.push_back(below.name);
  for (const OptionInfo* option : named_options(command))
    for (const std::string& name : dashed_names(*option)) words.push_back(name);
  return joined(words, " ");
}

}  // namespace

ManualFile bash_completion(const CommandInfo& program) {
  std::string paths, words;
  ValueCases cases;
  each_command(program, [&](const std::vector<std::string>& names, const CommandInfo& command) {
    const std::string path = command_path(names);
    if (!path.empty()) {
      paths += (paths.empty() ? "" : "|") + path;
      words += "    " + path + ") words=\"" + words_of(command) + "\" ;;\n";
    } else {
      words += "    \"\") words=\"" + words_of(command) + "\" ;;\n";
    }
    add_value_cases(path, command, cases);
  });
  std::vector<std::string> everywhere;
  for (const OptionInfo* option : named_options(program))
    for (const std::string& name : dashed_names(*option)) everywhere.push_back(name);

  std::string text =
      "# bash completion for seamtakt                            -*- shell-script -*-\n"
      "_seamtakt() {\n"
      "  local word=\"${COMP_WORDS[COMP_CWORD]}\" before=\"${COMP_WORDS[COMP_CWORD-1]}\" path=\"\" "
      "words=\"\" i\n"
      "  COMPREPLY=()\n"
      "  for ((i = 1; i < COMP_CWORD; i++)); do\n"
      "    case \"$path/${COMP_WORDS[i]}\" in\n"
      "      " +
      paths +
      ") path=\"$path/${COMP_WORDS[i]}\" ;;\n"
      "    esac\n"
      "  done\n"
      "  case \"$path:$before\" in\n" +
      cases.choices + "    " + cases.files +
      ") compopt -o default 2>/dev/null; return ;;\n"
      "  esac\n"
      "  case \"$path\" in\n" +
      words +
      "  esac\n"
      "  if [[ $word == -* ]]; then words+=\" " +
      joined(everywhere, " ") +
      "\"; fi\n"
      "  COMPREPLY=($(compgen -W \"$words\" -- \"$word\"))\n"
      "  # Where no command or option fits, names of files do.\n"
      "  if ((${#COMPREPLY[@]} == 0)); then compopt -o default 2>/dev/null; fi\n"
      "}\n"
      "complete -F _seamtakt seamtakt\n";
  return {"bash-completion/completions/seamtakt", text};
}

}  // namespace seamtakt::cli
