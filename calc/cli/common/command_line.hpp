#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

#include "cli/common/command_info.hpp"

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace seamtakt::cli {

/// One option of a command. A handle: copies refer to the same option, which lives as long as the program's
/// commands.
class Option {
 public:
  explicit Option(CLI::Option* option) : option_(option) {}

  const Option& required() const;
  /// Any other word is bad usage.
  const Option& one_of(const std::vector<std::string>& words) const;
  /// One value may hold several, with this between them.
  const Option& separated_by(char delimiter) const;
  /// Each use takes one value; without this a list takes all that follow.
  const Option& one_value_each() const;
  const Option& excludes(const Option& other) const;
  /// Help lists the option under this heading.
  const Option& below_heading(const std::string& heading) const;
  /// Is called with each text that is given, and refuses it by throwing InputError.
  const Option& checked_by(std::function<void(std::string)> check) const;
  /// What help says that the option takes, such as "N".
  const Option& takes(const std::string& what) const;
  /// Help shows the value that the option has now as its default.
  const Option& with_default_shown() const;

 private:
  CLI::Option* option_;
};

/// A command, or the program itself, whose options store their values in variables. The variables must live
/// until the command has run. A value that can't be read as a variable's type is bad usage: exit code 2, one
/// line. A handle: copies refer to the same command. The only code that knows the library behind it is
/// command_line.cpp, since reading that library's headers takes longer than compiling a command.
class Command {
 public:
  explicit Command(CLI::App& app) : app_(&app) {}

  Command command(const std::string& name, const std::string& text) const;

  /// "--name" for an option, "NAME" for a positional argument.
  Option option(const std::string& name, std::string& value, const std::string& text) const;
  Option option(const std::string& name, std::vector<std::string>& values, const std::string& text) const;
  Option option(const std::string& name, std::function<void(const std::string&)> take,
                const std::string& text) const;
  Option flag(const std::string& name, bool& given, const std::string& text) const;
  Option flag(const std::string& name, std::function<void()> take, const std::string& text) const;

  /// How many commands must be chosen below this one.
  void needs_commands(int least, int most) const;
  bool has_chosen_command() const;
  /// Help, manual and completions don't name it.
  const Command& hidden() const;
  /// The command as it is declared by now, and those below it.
  CommandInfo info() const;
  /// What to do when the command is chosen and its options are read.
  void run(std::function<void()> action) const;

 private:
  CLI::App* app_;
};

/// What was given isn't what the commands take.
struct UsageError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

/// The program with all its commands.
class Program {
 public:
  /// What help says: `text` above the commands, `footer` below them.
  Program(const std::string& text, const std::string& footer, const std::string& version);
  ~Program();
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;

  /// To which commands are added; one of them must be chosen. The options of the program itself may be given
  /// before a command or after it.
  Command commands() const { return Command(*app_); }

  /// Reads what was given and runs the chosen command. Prints help or the version on request and returns the
  /// exit code. UsageError: the arguments can't be read; exceptions of the command are passed on.
  std::optional<int> run(int argc, char** argv);
  /// Whether the chosen command was given one of these flags.
  bool has_flag(const std::vector<std::string>& names) const;

 private:
  std::unique_ptr<CLI::App> app_;
};

}  // namespace seamtakt::cli
