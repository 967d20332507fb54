#include "cli/serve/answer_request.hpp"

#include <new>
#include <system_error>

#include "base/error.hpp"
#include "base/json/json_writer.hpp"
#include "cli/serve/served_command.hpp"

namespace seamtakt::cli {

namespace {

/// A document on one line: an end of a line is never part of a string, where it would be written as \n.
std::string on_one_line(std::string_view document) {
  std::string line;
  line.reserve(document.size());
  for (std::size_t at = 0; at < document.size(); ++at) {
    if (document[at] != '\n') {
      line += document[at];
      continue;
    }
    while (at + 1 < document.size() && document[at + 1] == ' ') ++at;
    if (line.ends_with(',')) line += ' ';
  }
  return line;
}

std::string head_of(const std::string& id, int exit_code) {
  return "{\"id\": " + id + ", \"exit_code\": " + std::to_string(exit_code);
}

struct Refusal {
  std::string where, found, expected, pointer;
};

std::string error_line(const std::string& id, int exit_code, const Refusal& refusal) {
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("where", refusal.where).member("found", refusal.found).member("expected", refusal.expected);
  if (!refusal.pointer.empty()) json.member("pointer", refusal.pointer);
  json.end_object();
  return head_of(id, exit_code) + ", \"error\": " + on_one_line(json.take()) + "}";
}

std::string result_line(const std::string& id, const Result& result) {
  std::string line = head_of(id, result.exit_code);
  if (!result.complaint.empty()) line += ", \"complaint\": " + json_string(result.complaint);
  return line + ", \"result\": " + on_one_line(result.output) + "}";
}

/// What a machine says is in its own words.
Refusal of_machine(const std::exception& error) {
  return {"", error.what(), "a machine that can do it", ""};
}

}  // namespace

std::string answer_line(std::string_view line) {
  Request request;
  try {
    read_request(line, request);
    return result_line(request.id, run_served(request));
  } catch (const InputError& error) {
    return error_line(request.id, bad_input,
                      {error.where(), error.found().english(), error.expected().english(), error.pointer()});
  } catch (const UsageError& error) {
    return error_line(
        request.id, bad_input,
        {"arguments", error.what(), "what seamtakt " + request.command_text() + " --help says", ""});
  } catch (const std::bad_alloc&) {
    return error_line(request.id, machine_failed, {"", "out of memory", "a smaller request", ""});
  } catch (const std::exception& error) {
    return error_line(request.id, machine_failed, of_machine(error));
  }
}

std::string answer_to_long_line() {
  return error_line(
      "null", bad_input,
      {"request", "a line of more than " + std::to_string(longest_request) + " bytes", "a shorter line", ""});
}

}  // namespace seamtakt::cli
