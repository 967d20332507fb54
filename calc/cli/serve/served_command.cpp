#include "cli/serve/served_command.hpp"

#include <cstdlib>
#include <optional>

#include "base/error.hpp"
#include "base/text/comma_list.hpp"
#include "cli/common/output_view.hpp"
#include "cli/common/password_option.hpp"
#include "cli/serve/request_arguments.hpp"

namespace seamtakt::cli {

namespace {

/// What a request may change for those after it: the language and units that are shown, and the password.
class KeptState {
 public:
  KeptState() {
    if (const char* password = std::getenv("PGPASSWORD")) password_ = password;
    set_output_view(TextView::plain_english());
  }
  ~KeptState() {
    if (password_)
      ::setenv("PGPASSWORD", password_->c_str(), 1);
    else
      ::unsetenv("PGPASSWORD");
  }
  KeptState(const KeptState&) = delete;
  KeptState& operator=(const KeptState&) = delete;

 private:
  std::optional<std::string> password_;
};

const CommandEntry* entry_of(const Request& request) {
  for (const CommandEntry& entry : all_commands())
    if (request.command.front() == entry.name) return &entry;
  return nullptr;
}

std::vector<std::string> names_below(const CommandInfo& command) {
  std::vector<std::string> names;
  for (const CommandInfo& below : command.commands) names.push_back(below.name);
  return names;
}

std::vector<std::string> all_names() {
  std::vector<std::string> names;
  for (const CommandEntry& entry : all_commands()) names.push_back(entry.name);
  return names;
}

[[noreturn]] void refuse_command(const Request& request, const std::string& expected) {
  throw InputError("command", "\"" + printable(request.command_text()) + "\"", expected);
}

/// The command that the words name, with the options of the program itself.
CommandInfo command_of(const Request& request, const CommandInfo& program) {
  const CommandInfo* at = &program;
  for (const std::string& word : request.command) {
    const CommandInfo* below = at->find_command(word);
    if (!below)
      refuse_command(request, at->commands.empty() ? "a command without more words"
                                                   : "one of " + comma_list(names_below(*at)));
    at = below;
  }
  if (!at->commands.empty()) refuse_command(request, "one of " + comma_list(names_below(*at)) + " after it");
  if (!at->find_option("json")) refuse_command(request, "a command that has --json");
  CommandInfo command = *at;
  command.options.insert(command.options.end(), program.options.begin(), program.options.end());
  return command;
}

}  // namespace

Result run_served(const Request& request) {
  if (request.command.front() == "calc") return run_served_calc(request);
  const CommandEntry* entry = entry_of(request);
  if (!entry) refuse_command(request, "one of " + comma_list(all_names()));
  const KeptState kept;
  Program program("", "", "");
  Result result;
  add_password_option(program.commands());
  entry->add(program.commands(), result);
  const CommandInfo command = command_of(request, program.commands().info());
  if (request.arguments.find("follow"))
    throw InputError("arguments.follow", "a log that is still being written", "logs that are whole");
  std::vector<std::string> words = command_words(request, command);
  std::string name = "seamtakt";
  std::vector<char*> given{name.data()};
  for (std::string& word : words) given.push_back(word.data());
  given.push_back(nullptr);
  program.run(static_cast<int>(words.size()) + 1, given.data());
  if (result.for_machines)
    throw InputError("arguments.output", "nothing", "a file: what would be printed is no JSON document");
  if (result.more_output) {
    // The rest of a result may refer to the command, which ends here.
    result.more_output([&](std::string_view text) { result.output += text; });
    result.more_output = nullptr;
  }
  return result;
}

}  // namespace seamtakt::cli
