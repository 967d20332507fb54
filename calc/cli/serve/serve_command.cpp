#include <fcntl.h>
#include <signal.h>

#include <memory>
#include <system_error>

#include "base/error.hpp"
#include "cli/common/command.hpp"
#include "cli/serve/answer_request.hpp"
#include "cli/serve/line_source.hpp"
#include "cli/serve/request.hpp"

namespace seamtakt::cli {

namespace {

[[noreturn]] void fail(const char* what) {
  throw std::system_error(errno, std::generic_category(), what);
}

/// Takes a standard stream away from whatever a command may do: it has `other` in its place.
Descriptor taken_stream(int stream, int other) {
  Descriptor own(::fcntl(stream, F_DUPFD_CLOEXEC, 3));
  if (!own.is_open() || ::dup2(other, stream) < 0) fail("standard streams");
  return own;
}

void write_all(int to, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = retried([&] { return ::write(to, text.data(), text.size()); });
    if (written < 0) fail("standard output: could not be written");
    text.remove_prefix(static_cast<std::size_t>(written));
  }
}

bool is_blank(std::string_view line) {
  return line.find_first_not_of(" \t\r") == std::string_view::npos;
}

void serve() {
  ::signal(SIGPIPE, SIG_IGN);  // an asker who has gone is an error of writing
  const Descriptor nothing(::open("/dev/null", O_RDONLY | O_CLOEXEC));
  if (!nothing.is_open()) fail("/dev/null");
  LineSource lines(taken_stream(STDIN_FILENO, nothing.get()), longest_request);
  const Descriptor answers = taken_stream(STDOUT_FILENO, STDERR_FILENO);
  while (const auto line = lines.next()) {
    if (!line->is_too_long && is_blank(line->text)) continue;
    write_all(answers.get(), (line->is_too_long ? answer_to_long_line() : answer_line(line->text)) + "\n");
  }
}

}  // namespace

void add_serve(const Command& app, Result&) {
  const auto stdio = std::make_shared<bool>(false);
  const Command command = app.command(
      "serve", "Answers requests of another program: a line of JSON in, a line of JSON out, no network");
  command.flag("--stdio", *stdio, "requests on standard input, answers on standard output (the only way)");
  command.run([stdio] {
    if (!*stdio)
      throw InputError("serve", "no --stdio"_word, "serve --stdio: requests on standard input"_word);
    serve();
  });
}

}  // namespace seamtakt::cli
