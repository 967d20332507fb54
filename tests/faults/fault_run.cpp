#include "fault_run.hpp"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <thread>

#include "support/program_paths.hpp"
#include "support/scratch_folder.hpp"

namespace seamtakt {

namespace {

std::string text_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

void redirect(int descriptor, const std::string& path) {
  const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_TRUNC, 0644);
  if (file < 0 || dup2(file, descriptor) < 0) _exit(99);
  close(file);
}

void set_up_faults(const std::string& folder, const std::string& log, const FaultPoint& point) {
#ifdef SEAMTAKT_ASAN_LIBRARY
  setenv("LD_PRELOAD", (std::string(SEAMTAKT_ASAN_LIBRARY " ") + iofault_library()).c_str(), 1);
#else
  setenv("LD_PRELOAD", iofault_library(), 1);
#endif
  setenv("IOFAULT_PATH", folder.c_str(), 1);
  setenv("IOFAULT_LOG", log.c_str(), 1);
  setenv("IOFAULT_MODE", point.mode.c_str(), 1);
  setenv("IOFAULT_CALL", std::to_string(point.call).c_str(), 1);
  if (point.sticky) setenv("IOFAULT_STICKY", "1", 1);
}

/// Lines "NUMBER NAME PATH" without their numbers.
std::vector<std::string> calls_of(const std::string& log) {
  std::vector<std::string> calls;
  std::istringstream lines(log);
  for (std::string line; std::getline(lines, line);) calls.push_back(line.substr(line.find(' ') + 1));
  return calls;
}

}  // namespace

bool long_tests() {
  const char* length = std::getenv("SEAMTAKT_TEST_LENGTH");
  return length != nullptr && std::string(length) == "long";
}

void exec_save_driver(const std::string& how, const std::string& path, unsigned first, unsigned last) {
  execl(save_driver(), save_driver(), how.c_str(), path.c_str(), std::to_string(version_size).c_str(),
        std::to_string(first).c_str(), std::to_string(last).c_str(), nullptr);
}

FaultOutcome run_with_fault(const std::vector<std::string>& words, const std::string& folder,
                            const FaultPoint& point, long kill_after_us) {
  const ScratchFolder notes;
  const pid_t child = fork();
  if (child < 0) throw std::runtime_error("fork failed");
  if (child == 0) {
    redirect(STDOUT_FILENO, notes / "out");
    redirect(STDERR_FILENO, notes / "err");
    set_up_faults(folder, notes / "log", point);
    std::vector<char*> arguments;
    for (const std::string& word : words) arguments.push_back(const_cast<char*>(word.c_str()));
    arguments.push_back(nullptr);
    execv(arguments[0], arguments.data());
    _exit(98);
  }
  if (kill_after_us >= 0) {
    std::this_thread::sleep_for(std::chrono::microseconds(kill_after_us));
    kill(child, SIGKILL);
  }
  int status = 0;
  while (waitpid(child, &status, 0) < 0 && errno == EINTR) {
  }
  FaultOutcome outcome;
  outcome.exit_code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  outcome.output = text_of(notes / "out");
  outcome.error = text_of(notes / "err");
  outcome.calls = calls_of(text_of(notes / "log"));
  return outcome;
}

FaultOutcome run_save_driver(const std::string& how, const std::string& path, unsigned first, unsigned last,
                             const FaultPoint& point) {
  FaultOutcome outcome = run_with_fault(
      {save_driver(), how, path, std::to_string(version_size), std::to_string(first), std::to_string(last)},
      path.substr(0, path.rfind('/')), point);
  std::istringstream numbers(outcome.output);
  for (unsigned version = 0; numbers >> version;) outcome.acknowledged.push_back(version);
  return outcome;
}

std::string all_lines(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text.append(line).append("\n");
  return text;
}

}  // namespace seamtakt
