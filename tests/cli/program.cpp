#include "cli/program.hpp"
#include "support/program_paths.hpp"

#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cstdio>
#include <cstdlib>

namespace seamtakt::test {

namespace {

std::string take_text(std::FILE* file) {
  std::string text;
  char block[65536];
  std::rewind(file);
  for (std::size_t n; (n = std::fread(block, 1, sizeof block, file)) > 0;) text.append(block, n);
  std::fclose(file);
  return text;
}

/// `input`: nullptr where the program has the test's own standard input.
ProgramRun run(const Arguments& arguments, std::FILE* input) {
  std::FILE *output = std::tmpfile(), *errors = std::tmpfile();
  const pid_t child = fork();
  if (child == 0) {
    if (input) dup2(fileno(input), STDIN_FILENO);
    dup2(fileno(output), STDOUT_FILENO);
    dup2(fileno(errors), STDERR_FILENO);
    std::vector<char*> argv{const_cast<char*>(seamtakt_program())};
    for (const std::string& argument : arguments) argv.push_back(const_cast<char*>(argument.c_str()));
    argv.push_back(nullptr);
    execv(seamtakt_program(), argv.data());
    _exit(127);
  }
  int status = 0;
  waitpid(child, &status, 0);
  ProgramRun made;
  made.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
  made.output = take_text(output);
  made.errors = take_text(errors);
  return made;
}

}  // namespace

ProgramRun run_program(const Arguments& arguments) {
  return run(arguments, nullptr);
}

ProgramRun run_program(const Arguments& arguments, const std::string& input) {
  std::FILE* file = std::tmpfile();
  std::fwrite(input.data(), 1, input.size(), file);
  std::rewind(file);
  ProgramRun made = run(arguments, file);
  std::fclose(file);
  return made;
}

ProgramRun run_with(Arguments arguments, const Arguments& more) {
  arguments.insert(arguments.end(), more.begin(), more.end());
  return run_program(arguments);
}

}  // namespace seamtakt::test
