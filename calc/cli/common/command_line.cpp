#include "cli/common/command_line.hpp"

#include <CLI/CLI.hpp>
#include <utility>

namespace seamtakt::cli {

const Option& Option::required() const {
  option_->required();
  return *this;
}

const Option& Option::one_of(const std::vector<std::string>& words) const {
  option_->check(CLI::IsMember(words));
  return *this;
}

const Option& Option::separated_by(char delimiter) const {
  option_->delimiter(delimiter);
  return *this;
}

const Option& Option::one_value_each() const {
  option_->allow_extra_args(false);
  return *this;
}

const Option& Option::excludes(const Option& other) const {
  option_->excludes(other.option_);
  return *this;
}

const Option& Option::below_heading(const std::string& heading) const {
  option_->group(heading);
  return *this;
}

const Option& Option::checked_by(std::function<void(std::string)> check) const {
  option_->each(check);
  return *this;
}

const Option& Option::takes(const std::string& what) const {
  option_->type_name(what);
  return *this;
}

const Option& Option::with_default_shown() const {
  option_->capture_default_str();
  return *this;
}

Command Command::command(const std::string& name, const std::string& text) const {
  return Command(*app_->add_subcommand(name, text));
}

Option Command::option(const std::string& name, std::string& value, const std::string& text) const {
  return Option(app_->add_option(name, value, text));
}

Option Command::option(const std::string& name, std::vector<std::string>& values,
                       const std::string& text) const {
  return Option(app_->add_option(name, values, text));
}

Option Command::option(const std::string& name, std::function<void(const std::string&)> take,
                       const std::string& text) const {
  return Option(app_->add_option_function<std::string>(name, std::move(take), text));
}

Option Command::flag(const std::string& name, bool& given, const std::string& text) const {
  return Option(app_->add_flag(name, given, text));
}

Option Command::flag(const std::string& name, std::function<void()> take, const std::string& text) const {
  return Option(app_->add_flag_callback(name, std::move(take), text));
}

void Command::needs_commands(int least, int most) const {
  app_->require_subcommand(least, most);
}

bool Command::has_chosen_command() const {
  return !app_->get_subcommands().empty();
}

const Command& Command::hidden() const {
  app_->group("");
  return *this;
}

namespace {

/// The words that one_of allows: the library describes them as "{given,best}".
std::vector<std::string> choices_of(const std::string& type) {
  const std::size_t open = type.find('{');
  if (open == std::string::npos || !type.ends_with('}')) return {};
  return CLI::detail::split(type.substr(open + 1, type.size() - open - 2), ',');
}

OptionInfo info_of(const CLI::Option& option) {
  OptionInfo info;
  info.is_positional = option.get_positional();
  if (info.is_positional) info.names.push_back(option.get_name(true));
  for (const std::string& name : option.get_snames()) info.names.push_back("-" + name);
  for (const std::string& name : option.get_lnames()) info.names.push_back("--" + name);
  info.text = option.get_description();
  info.is_flag = option.get_items_expected_max() == 0;
  info.is_required = option.get_required();
  info.is_list = option.get_items_expected_max() > 1;
  info.heading = option.get_group() == "Options" ? "" : option.get_group();
  const std::string type = option.get_type_name();
  info.choices = choices_of(type);
  if (!info.is_flag) info.takes = type.substr(0, type.find(':'));
  return info;
}

CommandInfo info_of_command(const CLI::App& app) {
  CommandInfo info{app.get_name(), app.get_description(), app.get_footer(), {}, {}};
  for (const CLI::Option* option : app.get_options()) info.options.push_back(info_of(*option));
  const auto all = [](const CLI::App*) { return true; };
  for (const CLI::App* below : app.get_subcommands(all))
    if (!below->get_group().empty()) info.commands.push_back(info_of_command(*below));
  return info;
}

}  // namespace

CommandInfo Command::info() const {
  return info_of_command(*app_);
}

void Command::run(std::function<void()> action) const {
  app_->callback(std::move(action));
}

Program::Program(const std::string& text, const std::string& footer, const std::string& version)
    : app_(std::make_unique<CLI::App>(text)) {
  app_->footer(footer);
  app_->set_version_flag("--version", version);
  app_->require_subcommand(1);
  app_->fallthrough();  // commands inherit it
}

Program::~Program() = default;

std::optional<int> Program::run(int argc, char** argv) {
  try {
    app_->parse(argc, argv);
    return std::nullopt;
  } catch (const CLI::Success& asked) {
    return app_->exit(asked);
  } catch (const CLI::ParseError& error) {
    throw UsageError(error.what());
  }
}

namespace {

bool was_given(const CLI::App& app, const std::vector<std::string>& flags) {
  for (const std::string& flag : flags)
    if (const CLI::Option* option = app.get_option_no_throw(flag); option != nullptr && option->count() > 0)
      return true;
  for (const CLI::App* chosen : app.get_subcommands())
    if (was_given(*chosen, flags)) return true;
  return false;
}

}  // namespace

bool Program::has_flag(const std::vector<std::string>& names) const {
  return was_given(*app_, names);
}

}  // namespace seamtakt::cli
