#include <algorithm>

#include "cli/manual/completion_words.hpp"
#include "cli/manual/manual_files.hpp"

namespace seamtakt::cli {

namespace {

/// Text as roff shows it word for word: a backslash and a dash are escaped, and no line begins with a
/// request.
std::string roff(const std::string& text) {
  std::string out;
  bool at_begin = true;
  for (const char c : text) {
    if (at_begin && (c == '.' || c == '\'')) out += "\\&";
    at_begin = c == '\n';
    if (c == '\\')
      out += "\\e";
    else if (c == '-')
      out += "\\-";
    else if (c == '\n')
      out += "\n.br\n";
    else
      out += c;
  }
  return out;
}

std::string bold(const std::string& text) {
  return "\\fB" + roff(text) + "\\fR";
}

std::string italic(const std::string& text) {
  return "\\fI" + roff(text) + "\\fR";
}

/// What an option takes: its choices, or a word for it.
std::string taken(const OptionInfo& option) {
  if (option.is_flag) return {};
  if (!option.choices.empty()) return " " + italic(joined(option.choices, "|"));
  return " " + italic(option.takes.empty() ? "TEXT" : option.takes);
}

std::string option_item(const OptionInfo& option) {
  std::string head;
  if (option.is_positional) {
    head = italic(option.names.front());
  } else {
    for (const std::string& name : option.names) head += (head.empty() ? "" : ", ") + bold(name);
    head += taken(option);
  }
  const std::string must = option.is_required ? " (required)" : "";
  return ".TP\n" + head + "\n" + roff(option.text + must) + "\n";
}

/// Those without a heading first, then heading by heading.
std::string option_list(const CommandInfo& command) {
  std::vector<std::string> headings = {""};
  for (const OptionInfo& option : command.options)
    if (std::find(headings.begin(), headings.end(), option.heading) == headings.end())
      headings.push_back(option.heading);
  std::string text;
  for (const std::string& heading : headings) {
    if (!heading.empty()) text += ".PP\n" + bold(heading) + "\n";
    for (const OptionInfo& option : command.options)
      if (option.heading == heading) text += option_item(option);
  }
  return text;
}

std::string synopsis(const std::string& called, const CommandInfo& command) {
  std::string text = bold(called);
  if (!command.commands.empty()) text += " " + italic("COMMAND");
  for (const OptionInfo& option : command.options)
    if (option.is_positional) {
      const std::string name = italic(option.names.front()) + (option.is_list ? "..." : "");
      text += option.is_required ? " " + name : " [" + name + "]";
    } else if (option.is_required) {
      text += " " + bold(option.names.front()) + taken(option);
    }
  return text + " [" + italic("options") + "]\n";
}

std::string head_of(const std::string& page, const std::string& text, const std::string& version) {
  std::string capitals = page;
  for (char& c : capitals) c = static_cast<char>(c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c);
  return ".TH " + roff(capitals) + " 1 \"\" \"seamtakt " + version + "\" \"User Commands\"\n.SH NAME\n" +
         roff(page) + " \\- " + roff(text) + "\n.SH SYNOPSIS\n";
}

std::string exit_status() {
  return ".SH EXIT STATUS\n"
         ".TP\n0\nDone, and no finding failed.\n"
         ".TP\n1\nDone, and at least one finding failed.\n"
         ".TP\n2\nBad usage or bad input: one line says where, what was found and what was expected.\n"
         ".TP\n3\nThe machine failed; nothing is half written.\n";
}

std::string environment() {
  return ".SH ENVIRONMENT\n"
         ".TP\n" +
         bold("SEAMTAKT_REFERENCE") +
         "\nA folder whose tables come before those of the program.\n"
         ".TP\n" +
         bold("SEAMTAKT_KEY_PASSPHRASE") +
         "\nOpens a store's protected key.\n"
         ".TP\n" +
         bold("PGPASSWORD") +
         "\nThe password of a postgresql:// store.\n"
         ".TP\n" +
         bold("XDG_DATA_HOME") +
         "\nWhere the keys of stores are kept, below seamtakt/keys.\n"
         ".TP\n" +
         bold("SOURCE_DATE_EPOCH") + "\nThe moment that reports are stamped with.\n";
}

std::string page_name(const std::string& command) {
  return "seamtakt-" + command;
}

std::string see_also(const CommandInfo& program, const std::string& without) {
  std::string text = ".SH SEE ALSO\n";
  if (!without.empty()) text += bold("seamtakt") + "(1)";
  for (const CommandInfo& command : program.commands)
    if (command.name != without)
      text += std::string(text.ends_with('\n') ? "" : ",\n") + bold(page_name(command.name)) + "(1)";
  return text + "\n";
}

ManualFile page_of_program(const CommandInfo& program, const std::string& version) {
  std::string text = head_of("seamtakt", "plans robot weld cells and audits their arc logs", version) +
                     synopsis("seamtakt", program) + ".SH DESCRIPTION\n" + roff(program.text) + "\n" +
                     ".SH COMMANDS\n";
  for (const CommandInfo& command : program.commands)
    text += ".TP\n" + bold(page_name(command.name)) + "(1)\n" + roff(command.text) + "\n";
  text += ".SH OPTIONS\nThey may stand before a command or after it.\n" + option_list(program) +
          exit_status() + environment() + ".SH CAVEATS\n" + roff(program.footer) + "\n" +
          see_also(program, "");
  return {"man/man1/seamtakt.1", text};
}

ManualFile page_of(const CommandInfo& program, const CommandInfo& command, const std::string& version) {
  const std::string called = "seamtakt " + command.name;
  std::string text = head_of(page_name(command.name), command.text, version) + synopsis(called, command) +
                     ".SH DESCRIPTION\n" + roff(command.text) + ".\n.SH OPTIONS\nThose of\n" +
                     bold("seamtakt") + "(1), and:\n" + option_list(command);
  if (!command.commands.empty()) text += ".SH COMMANDS\n";
  for (const CommandInfo& below : command.commands)
    text += ".SS " + roff(below.name) + "\n" + synopsis(called + " " + below.name, below) + ".PP\n" +
            roff(below.text) + "\n" + option_list(below);
  return {"man/man1/" + page_name(command.name) + ".1",
          text + exit_status() + see_also(program, command.name)};
}

}  // namespace

std::vector<ManualFile> man_pages(const CommandInfo& program, const std::string& version) {
  std::vector<ManualFile> pages = {page_of_program(program, version)};
  for (const CommandInfo& command : program.commands) pages.push_back(page_of(program, command, version));
  return pages;
}

}  // namespace seamtakt::cli
