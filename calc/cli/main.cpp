#include <cstdio>
#include <cstdlib>
#include <system_error>

#include "base/error.hpp"
#include "base/files/catalogue.hpp"
#include "base/version.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output_view.hpp"
#include "cli/common/password_option.hpp"
#include "exchange/report/caution.hpp"
#include "formula/reference_check.hpp"
#include "ledger/store/given_arguments.hpp"

namespace {

using namespace seamtakt;

constexpr std::size_t longest_message = 4000;

int fail(int code, const std::string& message) {
  std::fprintf(stderr, "%s\n", printable(message, longest_message).c_str());
  return code;
}

/// Messages of the library that parses options may have several lines; the contract requires one.
std::string one_line(std::string text) {
  for (char& c : text)
    if (c == '\n') c = ' ';
  while (!text.empty() && text.back() == ' ') text.pop_back();
  return text;
}

/// Ends the program once standard output is complete, so that the system frees the command's objects.
int print(const cli::Outcome& outcome) {
  bool written = true;
  const TextSink write = [&](std::string_view text) {
    written = written && std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
  };
  write(outcome.for_machines ? outcome.output : printable_lines(outcome.output));
  if (outcome.more_output) outcome.more_output(write);
  if (!written || std::fflush(stdout) != 0)
    return fail(cli::machine_failed, "standard output: could not be written");
  if (!outcome.complaint.empty()) fail(outcome.exit_code, outcome.complaint);
#ifndef SEAMTAKT_SANITIZED  // there, everything is destroyed, so that leaks are seen
  if (outcome.left_over) std::_Exit(outcome.exit_code);
#endif
  return outcome.exit_code;
}

}  // namespace

int main(int argc, char** argv) {
  GivenArguments given(argc, argv);
  cli::Program whole(
      "Seamtakt plans robot weld cells: from the drawing's fillet to heat, cycle, takt and the audited arc "
      "log.",
      caution_text(), program_version);
  cli::Result result;
  const cli::Command program = whole.commands();
  cli::add_view_options(program);
  cli::add_password_option(program);
  for (const cli::CommandEntry& command : cli::all_commands()) command.add(program, result);

  const auto refuse = [&](int code, const std::string& message) {
    return fail(code, given.without_passwords(message));
  };
  try {
    if (has_reference_folder()) check_reference_tables();
    if (const auto asked = whole.run(given.count(), given.values())) return *asked;  // --help, --version
    result.for_machines = result.for_machines || whole.has_flag({"--json", "--proof"});
    if (given.held_password())
      std::fprintf(stderr, "%s\n", cli::shown_text(Sentence("cli.password-in-uri"_key)).c_str());
    return print(result);
  } catch (const cli::UsageError& error) {
    return refuse(cli::bad_input, one_line(error.what()) + " (see --help)");
  } catch (const InputError& error) {
    return refuse(cli::bad_input, cli::refusal_line(error));
  } catch (const std::system_error& error) {
    return refuse(cli::machine_failed, one_line(error.what()));
  } catch (const std::bad_alloc&) {
    return fail(cli::machine_failed, "out of memory");
  }
}
