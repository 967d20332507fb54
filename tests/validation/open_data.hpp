#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace seamtakt::validation {

/// A folder of the public records that the environment's SEAMTAKT_OPEN_DATA names; empty where it isn't
/// there.
inline std::filesystem::path open_data(const std::string& name) {
  const char* folder = std::getenv("SEAMTAKT_OPEN_DATA");
  if (!folder || !std::filesystem::exists(std::filesystem::path(folder) / name)) return {};
  return std::filesystem::path(folder) / name;
}

/// The parts of a text between separators; the last may be empty.
inline std::vector<std::string> parts_of(std::string_view text, char separator) {
  std::vector<std::string> parts;
  for (std::size_t at = 0;;) {
    const std::size_t end = text.find(separator, at);
    parts.emplace_back(text.substr(at, end - at));
    if (end == std::string_view::npos) return parts;
    at = end + 1;
  }
}

}  // namespace seamtakt::validation
