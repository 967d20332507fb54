#pragma once

#include <string>
#include <string_view>

namespace seamtakt::cli {

/// The answer to a line, as one line without its end: {"id", "exit_code", "result"}, or {"id", "exit_code",
/// "error": {"where", "found", "expected", "pointer"}}. Never throws for what a line may hold.
std::string answer_line(std::string_view line);

/// The answer to a line that is longer than longest_request.
std::string answer_to_long_line();

}  // namespace seamtakt::cli
