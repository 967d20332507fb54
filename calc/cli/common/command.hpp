#pragma once

#include <functional>
#include <memory>
#include <span>
#include <string>

#include "base/files/ordered_output.hpp"
#include "base/finding.hpp"
#include "cli/common/command_line.hpp"

namespace seamtakt::cli {

/// A command's result: text for standard output, and the exit code that its findings require.
struct Outcome {
  /// Text for people; what a name in it could do to a terminal is escaped when it is printed (main.cpp).
  std::string output;
  /// Not for people (a bundle): printed byte for byte, as JSON is.
  bool for_machines = false;
  /// A line for standard error that says why the exit code is bad_input although there is a summary; else
  /// empty.
  std::string complaint;
  /// The rest of a result that is too long to be kept: writes it to a sink that is valid during the call.
  std::function<void(const TextSink&)> more_output;
  /// Objects of the command that are no longer needed; destroying a large plan takes longer than leaving it
  /// to the end of the program.
  std::shared_ptr<const void> left_over;
  int exit_code = 0;
};

/// Exit codes of the contract.
inline constexpr int done = 0, found_fail = 1, bad_input = 2, machine_failed = 3;

inline int exit_code_for(const Findings& findings) {
  return any_failed(findings) ? found_fail : done;
}

/// Where the chosen command puts its outcome. Nothing reaches standard output before a command has succeeded.
using Result = Outcome;

// One command a file; each adds its subcommand, options and callback to the application.
void add_calc(const Command& app, Result& result);
void add_evaluate(const Command& app, Result& result);
void add_cycle(const Command& app, Result& result);
void add_line(const Command& app, Result& result);
void add_kit(const Command& app, Result& result);
void add_audit(const Command& app, Result& result);
void add_ledger(const Command& app, Result& result);
void add_report(const Command& app, Result& result);
void add_window(const Command& app, Result& result);
void add_fit(const Command& app, Result& result);
void add_learn(const Command& app, Result& result);
void add_measure(const Command& app, Result& result);
void add_import(const Command& app, Result& result);
void add_export(const Command& app, Result& result);
void add_diff(const Command& app, Result& result);
void add_merge(const Command& app, Result& result);
void add_serve(const Command& app, Result& result);
void add_manual(const Command& app, Result& result);

/// What adds one command.
using AddCommand = void (*)(const Command& app, Result& result);
struct CommandEntry {
  const char* name;
  AddCommand add;
};

/// All commands, in the order in which help lists them.
std::span<const CommandEntry> all_commands();

}  // namespace seamtakt::cli
