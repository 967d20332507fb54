#include "exchange/drawing/drawing_program.hpp"

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <system_error>
#include <vector>

#include "base/error.hpp"
#include "base/files/descriptor.hpp"
#include "base/units/units.hpp"

extern char** environ;

namespace seamtakt {

namespace {

namespace fs = std::filesystem;
using Clock = std::chrono::steady_clock;

constexpr std::size_t most_output = std::size_t{256} << 20, most_complaint = 64u << 10;
constexpr const char* program_name = "seamtakt-drawing";

bool is_program(const fs::path& path) {
  std::error_code ignored;
  return fs::is_regular_file(path, ignored) && access(path.c_str(), X_OK) == 0;
}

[[noreturn]] void fail(int code, const std::string& text) {
  throw std::system_error(code, std::generic_category(), text);
}

/// A child that is killed where it is left running.
class Child {
 public:
  Child(const std::string& program, std::vector<std::string> words) {
    std::array<int, 2> output{}, complaint{};
    if (pipe2(output.data(), O_CLOEXEC) != 0) fail(errno, program_name);
    output_ = Descriptor(output[0]);
    const Descriptor output_end(output[1]);
    if (pipe2(complaint.data(), O_CLOEXEC) != 0) fail(errno, program_name);
    complaint_ = Descriptor(complaint[0]);
    const Descriptor complaint_end(complaint[1]);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    posix_spawn_file_actions_adddup2(&actions, output[1], STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&actions, complaint[1], STDERR_FILENO);
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const int error = posix_spawn(&id_, program.c_str(), &actions, nullptr, arguments.data(), environ);
    posix_spawn_file_actions_destroy(&actions);
    if (error != 0) {
      id_ = -1;
      fail(error, program_name);
    }
  }
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;
  ~Child() {
    if (id_ <= 0) return;
    kill(id_, SIGKILL);
    wait();
  }

  int output() const { return output_.get(); }
  int complaint() const { return complaint_.get(); }
  /// Its status as waitpid gives it.
  int wait() {
    int status = 0;
    while (waitpid(id_, &status, 0) < 0 && errno == EINTR) {
    }
    id_ = -1;
    return status;
  }

 private:
  pid_t id_ = -1;
  Descriptor output_, complaint_;
};

/// Reads both ends until they are closed.
void read_all(const Child& child, Clock::time_point end, const std::function<bool()>& is_stopped,
              std::string& output, std::string& complaint) {
  std::array<pollfd, 2> ends = {pollfd{child.output(), POLLIN, 0}, pollfd{child.complaint(), POLLIN, 0}};
  const std::array<std::string*, 2> texts = {&output, &complaint};
  std::vector<char> buffer(64u << 10);
  while (ends[0].fd >= 0 || ends[1].fd >= 0) {
    const auto left = std::chrono::duration_cast<std::chrono::milliseconds>(end - Clock::now()).count();
    if (left <= 0) fail(ETIMEDOUT, program_name);
    if (is_stopped && is_stopped()) fail(ECANCELED, program_name);
    const long long wait_ms = is_stopped ? 50 : 1000;
    const int ready = poll(ends.data(), ends.size(), static_cast<int>(std::min<long long>(left, wait_ms)));
    if (ready < 0 && errno != EINTR) fail(errno, program_name);
    if (ready <= 0) continue;
    for (std::size_t i = 0; i < ends.size(); ++i) {
      if (ends[i].fd < 0 || ends[i].revents == 0) continue;
      const ssize_t count = read(ends[i].fd, buffer.data(), buffer.size());
      if (count < 0 && errno == EINTR) continue;
      if (count <= 0) {
        ends[i].fd = -1;
        continue;
      }
      texts[i]->append(buffer.data(), static_cast<std::size_t>(count));
    }
    if (output.size() > most_output) fail(EFBIG, program_name);
    if (complaint.size() > most_complaint) complaint.resize(most_complaint);
  }
}

/// "FILE: found X, expected Y" as the program says it.
[[noreturn]] void pass_on(const std::string& complaint, const std::string& file) {
  const std::string line = complaint.substr(0, complaint.find('\n'));
  const std::size_t found = line.find(": found "), expected = line.rfind(", expected ");
  if (found == std::string::npos || expected == std::string::npos || expected < found)
    throw InputError(file, printable(line, 500), "a STEP file (ISO 10303-21)"_word);
  throw InputError(line.substr(0, found), printable(line.substr(found + 8, expected - found - 8), 500),
                   printable(line.substr(expected + 11), 500));
}

}  // namespace

std::string find_drawing_program() {
  if (const char* named = std::getenv("SEAMTAKT_DRAWING_PROGRAM")) return is_program(named) ? named : "";
  std::error_code error;
  const fs::path self = fs::read_symlink("/proc/self/exe", error);
  if (!error && is_program(self.parent_path() / program_name)) return self.parent_path() / program_name;
  const char* path = std::getenv("PATH");
  std::string_view rest = path ? path : "";
  while (!rest.empty()) {
    const std::size_t colon = rest.find(':');
    const std::string_view folder = rest.substr(0, colon);
    // An empty entry would be the working directory, which never has a say.
    if (folder.starts_with('/') && is_program(fs::path(folder) / program_name))
      return fs::path(folder) / program_name;
    rest = colon == std::string_view::npos ? std::string_view() : rest.substr(colon + 1);
  }
  return {};
}

std::string run_drawing_program(const DrawingProgramOptions& options) {
  const std::string program = find_drawing_program();
  if (program.empty())
    fail(ENOENT,
         "reading drawings needs seamtakt-drawing: run packaging/setup drawing and build again, or name it "
         "in SEAMTAKT_DRAWING_PROGRAM");
  const std::string file = options.file.starts_with('-') ? "./" + options.file : options.file;
  const double pair_seconds = std::min(10.0, options.seconds);
  std::vector<std::string> words = {program,
                                    file,
                                    "--json",
                                    "--gap",
                                    number_text(options.gap_mm),
                                    "--seconds",
                                    number_text(options.seconds),
                                    "--pair-seconds",
                                    number_text(pair_seconds)};
  if (!options.unit.empty()) words.insert(words.end(), {"--unit", options.unit});
  if (!options.up.empty()) words.insert(words.end(), {"--up", options.up});
  // It ends by itself after its time and a pair's; what comes later is a hang.
  const double limit_s = 1.5 * options.seconds + pair_seconds + 2;
  const auto end =
      Clock::now() + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double>(limit_s));
  Child child(program, words);
  std::string output, complaint;
  read_all(child, end, options.is_stopped, output, complaint);
  const int status = child.wait();
  if (WIFSIGNALED(status))
    fail(EIO, std::string(program_name) + " was ended by signal " + std::to_string(WTERMSIG(status)));
  if (WEXITSTATUS(status) == 2) pass_on(complaint, options.file);
  if (WEXITSTATUS(status) != 0)
    fail(EIO,
         std::string(program_name) + " failed: " + printable(complaint.substr(0, complaint.find('\n')), 500));
  return output;
}

}  // namespace seamtakt
