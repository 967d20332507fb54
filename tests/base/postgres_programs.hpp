#pragma once

#include <algorithm>
#include <filesystem>
#include <string>

namespace seamtakt {

/// The folder of the newest PostgreSQL server's programs as Debian installs them; empty where none is
/// installed.
inline std::string postgres_programs() {
  std::string newest;
  const std::filesystem::path base = "/usr/lib/postgresql";
  if (!std::filesystem::exists(base)) return {};
  for (const auto& version : std::filesystem::directory_iterator(base))
    if (std::filesystem::exists(version.path() / "bin/initdb"))
      newest = std::max(newest, (version.path() / "bin").string());
  return newest;
}

}  // namespace seamtakt
