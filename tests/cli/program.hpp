#pragma once

#include <string>
#include <vector>

namespace seamtakt::test {

struct ProgramRun {
  int exit_code = -1;
  std::string output, errors;
};

/// Runs the real program with these arguments and waits for it. With `input` that is its standard input.
ProgramRun run_program(const std::vector<std::string>& arguments);
ProgramRun run_program(const std::vector<std::string>& arguments, const std::string& input);

}  // namespace seamtakt::test
