#pragma once

#include <string>
#include <vector>

namespace seamtakt::test {

using Arguments = std::vector<std::string>;

struct ProgramRun {
  int exit_code = -1;
  std::string output, errors;
};

/// Runs the real program with these arguments and waits for it. With `input` that is its standard input.
ProgramRun run_program(const Arguments& arguments);
ProgramRun run_program(const Arguments& arguments, const std::string& input);
/// The same with `more` arguments after them.
ProgramRun run_with(Arguments arguments, const Arguments& more);

}  // namespace seamtakt::test
