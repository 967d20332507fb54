#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace seamtakt {

/// A file's bytes; none where it can't be read.
inline std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace seamtakt
