#pragma once

#include <string>
#include <vector>

#include <CLI/CLI.hpp>

#include "base/finding.hpp"

namespace seamtakt::cli {

/// What a command leaves behind: text for standard output, and the exit code that its findings ask for.
struct Outcome {
  std::string output;
  std::vector<std::string>
      more_output;  ///< what follows it, where a result is too long to be kept in one text
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
void add_calc(CLI::App& app, Result& result);
void add_evaluate(CLI::App& app, Result& result);
void add_cycle(CLI::App& app, Result& result);
void add_line(CLI::App& app, Result& result);
void add_kit(CLI::App& app, Result& result);
void add_audit(CLI::App& app, Result& result);
void add_ledger(CLI::App& app, Result& result);
void add_report(CLI::App& app, Result& result);
void add_window(CLI::App& app, Result& result);
void add_fit(CLI::App& app, Result& result);
void add_learn(CLI::App& app, Result& result);
void add_measure(CLI::App& app, Result& result);

}  // namespace seamtakt::cli
