#include "cli/manual/completion_words.hpp"
#include "cli/manual/manual_files.hpp"

namespace seamtakt::cli {

namespace {

/// Between single quotes, where fish reads \' and \\ as signs of their own.
std::string quoted(const std::string& text) {
  std::string out = "'";
  for (const char c : text) {
    if (c == '\'' || c == '\\') out += '\\';
    out += c;
  }
  return out + "'";
}

std::string option_line(const std::string& condition, const OptionInfo& option) {
  std::string line = "complete -c seamtakt" + condition;
  for (const std::string& name : dashed_names(option))
    line += name.starts_with("--") ? " -l " + name.substr(2) : " -s " + name.substr(1);
  if (!option.is_flag) line += " -r";
  if (!option.choices.empty()) line += " -f -a " + quoted(joined(option.choices, " "));
  return line + " -d " + quoted(option.text) + "\n";
}

}  // namespace

ManualFile fish_completion(const CommandInfo& program) {
  std::string paths, lines;
  each_command(program, [&](const std::vector<std::string>& words, const CommandInfo& command) {
    const std::string path = command_path(words);
    if (!path.empty()) paths += " " + path;
    const std::string here = " -n " + quoted("__seamtakt_at \"" + path + "\"");
    for (const CommandInfo& below : command.commands)
      lines += "complete -c seamtakt" + here + " -f -a " + below.name + " -d " + quoted(below.text) + "\n";
    // Those of the program may stand anywhere; help is an option of each command.
    for (const OptionInfo* option : named_options(command))
      if (path.empty())
        lines += option_line("", *option);
      else if (!program.find_option(option->names.back().substr(2)))
        lines += option_line(here, *option);
  });
  return {"fish/vendor_completions.d/seamtakt.fish",
          "# Whether the commands typed so far are those of a path such as /calc/fillet.\n"
          "function __seamtakt_at\n"
          "  set -l path ''\n"
          "  for word in (commandline -opc)[2..-1]\n"
          "    if contains -- \"$path/$word\"" +
              paths +
              "\n"
              "      set path \"$path/$word\"\n"
              "    end\n"
              "  end\n"
              "  test \"$path\" = \"$argv[1]\"\n"
              "end\n\n" +
              lines};
}

}  // namespace seamtakt::cli
