#pragma once

#include <string>
#include <vector>

#include "cli/common/command_info.hpp"
#include "cli/serve/request.hpp"

namespace seamtakt::cli {

/// One argument as the command line would have it: a text, or several of an array; true is a flag.
struct Argument {
  std::vector<std::string> texts;
  bool is_truth = false, truth = false;
};

/// InputError at arguments.NAME: an object, null, a NUL byte.
Argument argument_of(const JsonMember& member);

/// InputError at arguments.NAME: the command has no such option.
[[noreturn]] void refuse_argument(const Request& request, const std::string& name,
                                  const std::vector<std::string>& known);

/// The words of the command line that the request stands for, with --json: the command, positional arguments,
/// options. InputError where an argument isn't one of the command's, or is missing.
std::vector<std::string> command_words(const Request& request, const CommandInfo& command);

}  // namespace seamtakt::cli
