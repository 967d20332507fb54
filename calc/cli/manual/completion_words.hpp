#pragma once

#include <string>
#include <vector>

#include "cli/common/command_info.hpp"

namespace seamtakt::cli {

/// "/calc/fillet"; of the program "".
inline std::string command_path(const std::vector<std::string>& words) {
  std::string path;
  for (const std::string& word : words) path += "/" + word;
  return path;
}

/// The words with `between` between them.
inline std::string joined(const std::vector<std::string>& words, const std::string& between) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : between) + word;
  return text;
}

/// `text` between single quotes as POSIX shells read it: '\'' stands for a quote.
inline std::string in_single_quotes(const std::string& text) {
  std::string quoted = "'";
  for (const char c : text) quoted += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return quoted + "'";
}

/// The options that are written with dashes.
inline std::vector<const OptionInfo*> named_options(const CommandInfo& command) {
  std::vector<const OptionInfo*> named;
  for (const OptionInfo& option : command.options)
    if (option.names.size() > (option.is_positional ? 1u : 0u)) named.push_back(&option);
  return named;
}

/// Their names, "--from" and "--from-date".
inline std::vector<std::string> dashed_names(const OptionInfo& option) {
  return {option.names.begin() + (option.is_positional ? 1 : 0), option.names.end()};
}

}  // namespace seamtakt::cli
