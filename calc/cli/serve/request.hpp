#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/json/json_node.hpp"

namespace seamtakt::cli {

/// A line of more bytes is refused; what it holds is read past.
inline constexpr std::size_t longest_request = std::size_t{1} << 20;

/// A line that was asked: {"id": 7, "command": "calc fillet", "arguments": {"leg": "5mm"}}.
struct Request {
  std::string id = "null";           ///< as JSON; what the answer repeats
  std::vector<std::string> command;  ///< "calc", "fillet"
  JsonNode arguments;                ///< an object, or null where there are none

  std::string command_text() const;
};

/// InputError where the line isn't a request. `request` has the id by then, if the line has one.
void read_request(std::string_view line, Request& request);

}  // namespace seamtakt::cli
